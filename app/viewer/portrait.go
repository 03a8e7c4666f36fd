package viewer

import (
	"image"

	"splaywright/export/png"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// Inks are the colours of a portrait.
type Inks struct{ Line, Paper draw.Ink }

// SheetInks are those of the drawing table in the theme of the moment.
func SheetInks() Inks { return Inks{litInk(), inkOf(sheetColour())} }

// Portrait is a small picture of a piece from its first side, w × h dots. Its diagonal is in mm. It
// may run on any goroutine.
func Portrait(s *view.Scene, diagonal float64, w, h int, i Inks) *image.RGBA {
	const dots = 2 * unitsPerMM // a millimetre; twice the screen's, for fine screens
	f := frame{w: float64(w) / dots, h: float64(h) / dots}
	f.scale = portraitFill * min(f.w, f.h) / diagonal
	return png.Render(f.page(s.Project(view.Pictorial(firstTurn, firstTip)), i.Line, i.Paper), dots)
}

// portraitFill lets a piece fill its picture: seen from its first side it is less high than its
// diagonal.
const portraitFill = 1.15
