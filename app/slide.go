package app

import (
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/app/say"
	"splaywright/app/viewer"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/sheet"
	"splaywright/render/view"
)

// slides lets single parts be taken off in the pictorial.
func (w *Window) slides() viewer.Slides {
	return viewer.Slides{
		Way: func(part string) (mgl64.Vec3, bool) {
			if p := w.s.Looked(); p != nil {
				return sheet.WayOff(p, part)
			}
			return mgl64.Vec3{}, false
		},
		At:   func(part string) float64 { return w.apart.slid[part] },
		To:   w.slidePart,
		Home: w.slideHome,
		Took: w.takePart,
	}
}

// slideOne makes dragging on a part of the pictorial slide it, or turn the piece again.
func (w *Window) slideOne() {
	w.menu.slide.Checked = !w.menu.slide.Checked
	w.menu.main.Refresh()
	w.turner.Slide(w.slides(), w.menu.slide.Checked)
}

// slidePart takes a part off along its way, mm from its place. While it is being dragged the picture keeps its
// scale, so that the part stays under the pointer.
func (w *Window) slidePart(part string, mm float64, done bool) {
	b := w.apart
	b.slider.Value, b.want = 0, 0
	b.slider.Refresh()
	if b.scale = w.turner.Diagonal(); done {
		b.scale = 0
	}
	b.about = part
	if mm > 0 {
		b.slid[part] = mm
	} else {
		delete(b.slid, part)
	}
	w.slideApart()
}

// slideHome puts every part back into its place.
func (w *Window) slideHome() {
	b := w.apart
	b.about, b.scale = "", 0
	w.over("", false)
	clear(b.slid)
	b.slider.Value, b.want = 0, 0
	b.slider.Refresh()
	w.slideApart()
}

// takePart lights a part that was taken hold of and speaks of it.
func (w *Window) takePart(part string) {
	w.apart.about = part
	w.over(part, false)
	w.apart.said.SetText(w.apart.saying(w.s.Looked()))
}

// saying tells of the part that was taken hold of, or else of what comes off.
func (b *apartBar) saying(p *form.Piece) string {
	if p == nil {
		return ""
	}
	q := p.Part(b.about)
	if q == nil && b.together() {
		return say.It(slideHint)
	}
	if q == nil {
		return comesOff(p, b.slider.Value)
	}
	name := q.Mark + " " + say.It(q.Name)
	if _, ok := sheet.WayOff(p, q.ID); !ok {
		return say.With("%s stands first; the others come to it.", name)
	}
	if mm := b.slid[q.ID]; mm > 0 {
		st := p.Design.Style()
		name = say.With("%s, %s from its place", name, st.Text(st.FormatUnit(measure.Length(mm))))
	}
	if later := after(p, q.ID); len(later) > 0 {
		return say.With("%s. After it go on: %s", name, strings.Join(later, ", "))
	}
	return name
}

// after are the parts that go on after a part, and have to come off before it.
func after(p *form.Piece, id string) []string {
	var out []string
	found := false
	for _, m := range p.Assembly.Moves {
		for _, other := range m.Parts {
			if q := p.Part(other); found && q != nil {
				out = append(out, q.Mark+" "+say.It(q.Name))
			}
		}
		for _, other := range m.Parts {
			found = found || other == id
		}
	}
	return out
}

// reaching is the diagonal by which a piece with parts off is scaled, so that it is seen whole about the middle
// of what stays.
func reaching(still, moved *view.Scene, whole float64) float64 {
	most := 1.0
	for _, d := range []view.Direction{view.Front, view.End, view.Top} {
		a, b := still.Bounds(d), moved.Bounds(d)
		x, y := (a.Min.X+a.Max.X)/2, (a.Min.Y+a.Max.Y)/2
		far := max(b.Max.X-x, x-b.Min.X, b.Max.Y-y, y-b.Min.Y)
		most = max(most, 2*far/whole)
	}
	return most * whole
}
