package panel

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/render/table"
)

// Blank is what stands in place of a table without rows: what would fill it, and a button that begins with that.
type Blank struct {
	Text  string // in English
	Said  string // in the language that is spoken; "" = the text is said
	Label string // of the button; "" = there is none
	Do    func()
}

// nothingHere is said of a table that this piece has nothing for.
var nothingHere = say.Key("This piece has nothing that stands in this table.")

// WhenBlank sets what stands in place of a table without rows.
func (t *Tables) WhenBlank(b Blank) {
	said := b.Said
	if said == "" {
		said = say.It(b.Text)
	}
	text := widget.NewLabel(said)
	text.Wrapping = fyne.TextWrapWord
	text.Alignment = fyne.TextAlignCenter
	box := container.NewVBox(text)
	if b.Label != "" {
		button := keyed.NewButton(say.It(b.Label), func() { b.Do() })
		box.Add(container.NewHBox(layout.NewSpacer(), button, layout.NewSpacer()))
	}
	t.blank.Objects = []fyne.CanvasObject{container.NewVScroll(box)}
}

// isBlank tells of a table that has columns and neither rows nor a note that says why, and of no table at all where the piece has
// none of the kind.
func (t *Tables) isBlank(tb table.Table) bool {
	if len(t.tables) == 0 {
		return t.made && !t.awaits.Visible()
	}
	return len(tb.Columns) > 0 && len(tb.Rows) == 0 && len(tb.Notes) == 0
}
