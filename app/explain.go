package app

import (
	"strings"

	"splaywright/app/field"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
)

// prefCard is the preference that tells that the card which explains a size is folded.
const prefCard = "card-folded"

// explains makes the card that explains the size that is being typed.
func (w *Window) explains() {
	w.card = panel.NewCard()
	w.card.Fold(w.app.Preferences().Bool(prefCard))
	w.card.OnFold = func(folded bool) { w.app.Preferences().SetBool(prefCard, folded) }
	w.sizes.OnFocus, w.sizes.OnKey = w.explain, w.takesKey
}

// explain shows what a size is.
func (w *Window) explain(spec field.Spec) {
	d := w.s.Design()
	e, ok := panel.Explain(&d, spec.Path)
	if !ok {
		return
	}
	limit := ""
	if name, own := strings.CutPrefix(spec.Path, "names."); own {
		limit = w.usesOf(name)
	} else if text := w.s.Limit(spec.Path); text != "" && spec.Choices == nil { // a list shows what there is
		limit = say.With("Limits: %s", say.It(text))
	}
	w.explained = spec.Path
	w.card.Say(spec.Label, e, limit)
}

// usesOf says where a named value stands.
func (w *Window) usesOf(name string) string {
	var uses []string
	for _, path := range w.s.Document().Uses(name) {
		uses = append(uses, say.It(session.Words(path)))
	}
	if len(uses) == 0 {
		return ""
	}
	return say.With("It stands in: %s.", strings.Join(uses, "; "))
}

// explainNoMore empties the card where the size that it explains is gone.
func (w *Window) explainNoMore() {
	if w.explained != "" && w.sizes.Field(w.explained) == nil && w.boards.fields.Field(w.explained) == nil {
		w.explained = ""
		w.card.Clear()
	}
}
