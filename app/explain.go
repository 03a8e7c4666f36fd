package app

import (
	"splaywright/app/field"
	"splaywright/app/panel"
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
	if spec.Choices == nil { // a list shows what there is
		limit = w.s.Limit(spec.Path)
	}
	w.card.Say(spec.Label, e, limit)
}
