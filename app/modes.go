package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/say"
)

// modeBar lies on the foot of the drawing table while taps or drags do something else than they usually do, says what, and
// ends it. It takes no room from the sheet, which stays where it is.
type modeBar struct {
	text  *widget.Label
	all   fyne.CanvasObject
	leave func() // ends what is said; nil = nothing is
}

func newModeBar() *modeBar {
	m := &modeBar{text: widget.NewLabel("")}
	m.text.Wrapping = fyne.TextWrapWord
	done := keyed.NewButton(say.It("Done"), m.end)
	m.all = panel.Backed(look.Strip, container.NewBorder(nil, nil, nil, container.NewCenter(done), m.text))
	m.all.Hide()
	return m
}

// over lays the bar on the foot of a picture.
func (m *modeBar) over(picture fyne.CanvasObject) fyne.CanvasObject {
	return container.New(onFoot{}, picture, m.all)
}

// begin says what taps or drags do until end, and what ends it.
func (m *modeBar) begin(text string, leave func()) {
	m.leave = leave
	m.say(text)
}

// say says something else about the same.
func (m *modeBar) say(text string) {
	m.text.SetText(text)
	m.all.Show()
	m.all.Refresh()
}

// end lets taps and drags do what they usually do.
func (m *modeBar) end() {
	leave := m.leave
	m.leave = nil
	m.all.Hide()
	if leave != nil {
		leave()
	}
}

// onFoot gives the picture all of the room, and the bar a strip of it.
type onFoot struct{}

func (onFoot) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(size)
	bar := objects[1]
	bar.Resize(fyne.NewSize(size.Width, bar.Size().Height)) // the text is broken for the width
	high := bar.MinSize().Height
	bar.Resize(fyne.NewSize(size.Width, high))
	bar.Move(fyne.NewPos(0, size.Height-high))
}

func (onFoot) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }
