package viewer

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"splaywright/model/measure"
	"splaywright/render/draw"
)

// Ruler is what stands along the upper and the left rim of the drawing table: lengths of the piece at
// the scale of its views, from a zero of their own.
type Ruler struct {
	Scale float64 // of the views: millimetres of the sheet a millimetre of the piece
	Unit  measure.Unit
	Zero  draw.Point // on the sheet, mm
}

// Sizes of a ruler on the screen, window units.
const (
	rulerWide   = 16
	rulerText   = 6
	longTick    = 9
	shortTick   = 4
	betweenText = 44 // the least way from number to number
	betweenTick = 5
)

// rungs are the steps of a ruler, in millimetres or inches, each with how many ticks it is divided in. Those that follow are
// ten times the last three.
func rungs(u measure.Unit) [][2]float64 {
	if u == measure.Imperial {
		return [][2]float64{{1. / 8, 2}, {1. / 4, 4}, {1. / 2, 4}, {1, 8}, {2, 4}, {6, 6}, {12, 12}, {24, 4}, {48, 4}, {120, 10}, {240, 4}, {600, 5}}
	}
	return [][2]float64{{0.5, 5}, {1, 2}, {2, 4}, {5, 5}, {10, 10}, {20, 4}, {50, 5}, {100, 10}, {200, 4}, {500, 5}, {1000, 10}, {2000, 4}, {5000, 5}}
}

// rung is the smallest step whose numbers stand far enough apart; per is window units a unit of it.
func rung(u measure.Unit, per float64) (step float64, parts int) {
	list := rungs(u)
	r := list[0]
	for i := 0; r[0]*per < betweenText && !math.IsInf(r[0], 1); i++ {
		if i < len(list) {
			r = list[i]
		} else { // ten times as long as the one three before it
			r = [2]float64{10 * list[i-3][0], list[i-3][1]}
			list = append(list, r)
		}
	}
	parts = int(r[1])
	for parts > 1 && r[0]*per/float64(parts) < betweenTick {
		parts /= 2
	}
	return r[0], max(parts, 1)
}

// items draws both rulers over what the table shows of the sheet: w × h mm whose lower left corner lies
// at corner; zoom is window units a millimetre.
func (r Ruler) items(corner draw.Point, w, h, zoom float64, ink, paper draw.Ink) []draw.Item {
	if r.Scale <= 0 || zoom <= 0 {
		return nil
	}
	mm := 1 / zoom // of the sheet, a window unit
	unit := 1.0    // millimetres of the piece a unit of the ruler
	if r.Unit == measure.Imperial {
		unit = measure.Inch.MM()
	}
	long := r.Scale * unit // mm of the sheet a unit of the ruler
	step, parts := rung(r.Unit, long*zoom)
	band := rulerWide * mm
	box := func(a, b draw.Point) draw.Item {
		return draw.Path{Segs: draw.Rect(draw.Box{Min: a, Max: b}), Filled: true, Fill: paper, Layer: rulerLayer}
	}
	out := []draw.Item{
		box(draw.Point{X: 0, Y: h - band}, draw.Point{X: w, Y: h}),
		box(draw.Point{X: 0, Y: 0}, draw.Point{X: band, Y: h}),
	}
	pen := draw.Pen{Width: 0.7 * mm, Ink: ink}
	line := func(a, b draw.Point) {
		out = append(out, draw.Path{Segs: draw.Polyline([]draw.Point{a, b}), Pen: pen, Layer: rulerLayer})
	}
	line(draw.Point{X: 0, Y: h - band}, draw.Point{X: w, Y: h - band})
	line(draw.Point{X: band, Y: 0}, draw.Point{X: band, Y: h})
	each := func(from, to, zero float64, tick func(at, length float64, label string)) {
		small := step / float64(parts)
		for n := math.Ceil((from - zero) / long / small); ; n++ {
			at := zero + n*small*long
			if at > to {
				return
			}
			whole := math.Mod(math.Abs(n), float64(parts)) < 0.5
			length, label := shortTick*mm, ""
			if whole {
				length, label = longTick*mm, r.number(n*small)
			}
			tick(at, length, label)
		}
	}
	// A number that runs over the ruler's end would be read as another.
	fits := func(at, end float64, label string) bool {
		return label != "" && at+2*mm+draw.TextWidth(label, rulerText*mm, false) <= end
	}
	each(corner.X+band, corner.X+w, r.Zero.X, func(at, length float64, label string) {
		x := at - corner.X
		line(draw.Point{X: x, Y: h - band}, draw.Point{X: x, Y: h - band + length})
		if fits(x, w, label) {
			out = append(out, draw.Text{At: draw.Point{X: x + 2*mm, Y: h - rulerText*mm - 1.5*mm}, Size: rulerText * mm, Ink: ink, Text: label, Layer: rulerLayer})
		}
	})
	each(corner.Y, corner.Y+h-band, r.Zero.Y, func(at, length float64, label string) {
		y := at - corner.Y
		line(draw.Point{X: band, Y: y}, draw.Point{X: band - length, Y: y})
		if fits(y, h-band, label) {
			out = append(out, draw.Text{At: draw.Point{X: rulerText*mm + 1.5*mm, Y: y + 2*mm}, Turn: 90, Size: rulerText * mm, Ink: ink, Text: label, Layer: rulerLayer})
		}
	})
	out = append(out, box(draw.Point{X: 0, Y: h - band}, draw.Point{X: band, Y: h}))
	out = append(out, draw.Text{At: draw.Point{X: band / 2, Y: h - band/2 - rulerText*mm/2}, Size: rulerText * mm, Align: draw.Centre, Ink: ink, Layer: rulerLayer,
		Text: map[bool]string{true: "in", false: "mm"}[r.Unit == measure.Imperial]})
	return out
}

func (r Ruler) number(n float64) string {
	if r.Unit != measure.Imperial {
		return trimZeros(n)
	}
	st := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 8}
	return st.Format(measure.Length(n) * measure.Inch)
}

// marks are the two lines that show on the rulers where the pointer is. They are moved, not drawn anew.
type marks struct{ across, up *canvas.Line }

func newMarks() marks {
	m := marks{canvas.NewLine(color.Transparent), canvas.NewLine(color.Transparent)}
	for _, l := range []*canvas.Line{m.across, m.up} {
		l.StrokeWidth = 2
		l.Hide()
	}
	return m
}

// put shows where the pointer is; on = false hides it.
func (m marks) put(at fyne.Position, on bool) {
	ink := theme.Color(theme.ColorNamePrimary)
	m.across.Position1, m.across.Position2 = fyne.NewPos(at.X, 0), fyne.NewPos(at.X, rulerWide)
	m.up.Position1, m.up.Position2 = fyne.NewPos(0, at.Y), fyne.NewPos(rulerWide, at.Y)
	for _, l := range []*canvas.Line{m.across, m.up} {
		l.StrokeColor = ink
		if on {
			l.Show()
		} else {
			l.Hide()
		}
		l.Refresh()
	}
}

func trimZeros(n float64) string {
	st := measure.Style{Step: 0.5}
	text := st.Format(measure.Length(n))
	if len(text) > 2 && text[len(text)-2:] == ".0" {
		return text[:len(text)-2]
	}
	return text
}

const rulerLayer = "ruler"

// rim is what the rulers take of the table at the left and above, window units.
func (r Ruler) rim() float32 {
	if r.Scale > 0 {
		return rulerWide
	}
	return 0
}

// SetRuler puts rulers along the table's rim, or takes them away with a scale of 0.
func (t *Table) SetRuler(r Ruler) {
	t.ruler, t.zero = r, r.Zero
	if t.fitted {
		t.fit()
	}
	t.picture.redraw()
}

// Ruler is what the rulers count.
func (t *Table) Ruler() Ruler { return t.ruler }
