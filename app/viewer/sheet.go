package viewer

import (
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/look"
	"splaywright/export/png"
	"splaywright/render/draw"
)

// SetPage puts another sheet on the table. A table that was fitted stays fitted.
func (t *Table) SetPage(p draw.Page) { t.SetPainted(p, t.ruler, nil) }

// SetPainted puts another sheet and rulers for it on the table, with the picture that Ahead has made of them; nil = none.
// It tells whether that picture shows them as the table stands now; else another is made.
func (t *Table) SetPainted(p draw.Page, r Ruler, a *Ahead) bool {
	t.page, t.has, t.gauge, t.ruler, t.zero = p, true, Gauge{}, r, r.Zero // what was measured is gone with the sheet
	t.tellGauge(false)
	if t.fitted {
		t.fit()
	}
	return t.picture.take(a)
}

// OnGiven has a function called whenever the window's painter is given a picture of the sheet.
func (t *Table) OnGiven(f func()) { t.picture.given = f }

// Ahead gives what paints a sheet to come, and rulers for it, as the table stands now; it may run on any goroutine. It is
// nil while the table has no place.
func (t *Table) Ahead() func(draw.Page, Ruler) *Ahead {
	ahead := t.picture.ahead()
	if ahead == nil || t.size.Width <= 0 {
		return nil
	}
	s, fitted := t.sight(), t.fitted
	s.over = t.cut.items(s.ink)
	return func(p draw.Page, r Ruler) *Ahead {
		s.page, s.ruler = p, r
		if fitted {
			s.fit()
		}
		return ahead(s.paint)
	}
}

// sightOfTable is all that a picture of the table needs, so that it can be made elsewhere.
type sightOfTable struct {
	page        draw.Page
	over        []draw.Item // what is drawn on top of the sheet: what was measured, the line of a cut
	corner      draw.Point
	zoom        float32
	size        fyne.Size
	ruler       Ruler
	lit         func(ref string) bool
	paper, ink  draw.Ink // of the sheet, and of what is lit
	faint, band draw.Ink // of the rulers
}

func (t *Table) sight() sightOfTable {
	return sightOfTable{
		page: t.page, corner: t.corner, zoom: t.zoom, size: t.size, ruler: t.ruler, lit: t.picture.lit,
		paper: inkOf(sheetColour()), ink: litInk(), faint: inkOf(theme.Color(theme.ColorNameForeground)), band: inkOf(theme.Color(look.Strip)),
	}
}

// paint paints the table at so many dots; what it gives as well is the sheet as far as it is seen.
func (s sightOfTable) paint(old *image.RGBA, dotsWide, dotsHigh int) (*image.RGBA, draw.Page) {
	page, zoom := s.page, float64(s.zoom)
	page.Items = append(slices.Clip(page.Items), s.over...)
	w := float64(s.size.Width) / zoom
	dots := float64(dotsWide) / w // dots a millimetre
	h := float64(dotsHigh) / dots
	seen := window(page, s.corner.X, s.corner.Y, w, h, s.paper)
	all := lighted(seen, s.lit, s.ink)
	all.Items = append(slices.Clip(all.Items), s.ruler.items(s.corner, w, h, zoom, s.faint, s.band)...)
	return png.RenderOn(old, all, dots), seen
}

// fit puts the whole sheet into the place that the rulers leave.
func (s *sightOfTable) fit() {
	if s.page.Width <= 0 || s.page.Height <= 0 || s.size.Width <= 0 {
		return
	}
	w, h, rim := float32(s.page.Width), float32(s.page.Height), s.ruler.rim()
	wide, high := s.size.Width-rim, s.size.Height-rim
	s.zoom = within(min(wide/w, high/h))
	s.corner = draw.Point{
		X: float64((w-wide/s.zoom)/2 - rim/s.zoom),
		Y: float64(h-high/s.zoom) / 2,
	}
}
