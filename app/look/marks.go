package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/model/part"
)

// A finding's level is told by a word and a shape, and only then by a colour.
const (
	stopShape = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="#000000" d="M5 1h6l4 4v6l-4 4H5l-4-4V5zM4 7v2h8V7z" fill-rule="evenodd"/></svg>`
	warnShape = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="#000000" d="M8 1l7.5 14H0.5zM7 6v4h2V6zM7 11.5v2h2v-2z" fill-rule="evenodd"/></svg>`
	noteShape = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="#000000" d="M8 2a6 6 0 1 0 0 12a6 6 0 1 0 0-12zM8 4a4 4 0 1 1 0 8a4 4 0 1 1 0-8z" fill-rule="evenodd"/></svg>`
)

// Mark is the shape that stands for a level.
func Mark(l part.Level) fyne.Resource {
	name, shape := "note", noteShape
	switch l {
	case part.Stop:
		name, shape = "stop", stopShape
	case part.Warning:
		name, shape = "warning", warnShape
	}
	return theme.NewColoredResource(fyne.NewStaticResource("mark-"+name+".svg", []byte(shape)), Colour(l))
}

// Colour is the colour that goes with a level.
func Colour(l part.Level) fyne.ThemeColorName {
	switch l {
	case part.Stop:
		return Stop
	case part.Warning:
		return Warn
	}
	return Note
}

// Word is the word that stands for a level.
func Word(l part.Level) string {
	switch l {
	case part.Stop:
		return "Stop"
	case part.Warning:
		return "Warning"
	}
	return "Note"
}

// A padlock of ours: its bow stands over the body, shut or swung to the side.
const (
	padlockShut = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="#000000" fill-rule="evenodd" d="M3 7h1V5a4 4 0 0 1 8 0v2h1v8H3zM6 7h4V5a2 2 0 0 0-4 0zM7 9v4h2V9z"/></svg>`
	padlockOpen = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="#000000" fill-rule="evenodd" d="M3 8h7V5a2 2 0 0 1 4 0v1h1.5V5a3.5 3.5 0 0 0-7 0v3zM3 8h9v7H3zM4.5 9.500v4h6v-4z"/></svg>`
)

// Padlock says whether a size is kept when the piece is resized. The two differ in shape.
func Padlock(shut bool) fyne.Resource {
	if shut {
		return theme.NewColoredResource(fyne.NewStaticResource("padlock-shut.svg", []byte(padlockShut)), theme.ColorNameForeground)
	}
	return theme.NewColoredResource(fyne.NewStaticResource("padlock-open.svg", []byte(padlockOpen)), theme.ColorNameDisabled)
}
