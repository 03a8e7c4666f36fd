package sheet

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

// examplePieces are the built-in designs that are not stopped.
func examplePieces(t *testing.T) map[string]*form.Piece {
	t.Helper()
	out := map[string]*form.Piece{}
	for _, e := range filetest.Examples(t) {
		d := e.Design
		if p := model.Derive(d); !p.Stopped() {
			out[e.Name] = p
		}
	}
	return out
}

// enlargedPages are the sheets of sections and details.
func enlargedPages(p *form.Piece, o Options) []draw.Page {
	o = o.fill(p)
	return number(sectionSheets(p, set{o: o, piece: p.Title, form: p.Form, note: sizesNote(o)}))
}

// Every example has its sections and details; on none of them does a text lie on a text or a line, and
// nothing leaves its room, on small sheets and large, in one unit and in both.
func TestSectionsAndDetailsOfTheExamples(t *testing.T) {
	for name, p := range examplePieces(t) {
		both := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 32, Both: true}
		for _, o := range []Options{{}, {Sheet: "A3", Projection: "third"}, {Sheet: "Letter", Projection: "first"}, {Sheet: "Tabloid", Style: both}} {
			pages := enlargedPages(p, o)
			if len(pages) < 2 {
				t.Errorf("%s: %d sheets of sections and details", name, len(pages))
			}
			look(t, "sections "+name+o.Sheet, pages)
			for _, page := range pages {
				for _, v := range drawtest.Overlaps(page, allowed...) {
					t.Errorf("%s %s: %s", name, o.Sheet, v)
				}
				outside(t, page)
			}
		}
	}
}

// Random pieces, walls and stools.
func TestSectionsAndDetailsOfRandomPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := randomDesign(t)
		if rapid.IntRange(0, 2).Draw(t, "walls") == 0 {
			d = walled(rapid.SampledFrom([]string{"tray", "ring"}).Draw(t, "form"), rapid.IntRange(5, 10).Draw(t, "staves"))
		}
		p := model.Derive(d)
		if p.Stopped() {
			return
		}
		for _, page := range enlargedPages(p, Options{Sheet: rapid.SampledFrom([]string{"A4", "A3"}).Draw(t, "sheet")}) {
			for _, v := range drawtest.Overlaps(page, allowed...) {
				t.Error(v)
			}
			outside(t, page)
		}
	})
}

// nearest is how far the nearest corner of a part is from a place in its frame.
func nearest(q *part.Part, at mgl64.Vec3) float64 {
	d := math.Inf(1)
	for _, v := range q.Solid.Vertices {
		d = min(d, v.Sub(at).Len())
	}
	return d
}

// What the details dimension is where the wood is: tails and pins begin and end at corners of the solids on
// the end's arris, and the slope drawn from a tail's corner meets the baseline in one.
func TestDetailsDimensionTheWood(t *testing.T) {
	seen := 0
	for name, p := range examplePieces(t) {
		for _, j := range p.Joints {
			if len(j.Tails) == 0 || len(j.Pins) == 0 {
				continue
			}
			tail, ok := endOf(p, j, p.Part(j.TailBoard))
			pin, ok2 := endOf(p, j, p.Part(j.PinBoard))
			if !ok || !ok2 {
				t.Errorf("%s, %s: an end was not found", name, j.ID)
				continue
			}
			seen++
			for _, s := range j.Tails {
				for _, u := range []float64{s.Start.MM(), s.End.MM()} {
					if d := nearest(tail.q, tail.on(u, 0)); d > 1e-6 {
						t.Errorf("%s, %s: a tail's corner at %.3f is %.2g mm from the wood's", name, j.ID, u, d)
					}
				}
			}
			for i, s := range j.Pins[:len(j.Pins)-1] {
				if d := nearest(pin.q, pin.on(s.End.MM(), 0)); d > 1e-6 {
					t.Errorf("%s, %s: pin %d ends %.2g mm from a corner of the wood", name, j.ID, i, d)
				}
			}
			cheek := tail.cheek(j)
			foot := tail.on(j.Tails[0].Start.MM(), 0).Sub(cheek.Mul(j.Baseline.Outer.MM() / cheek.Dot(tail.out())))
			if d := nearest(tail.q, foot); d > 1e-6 {
				t.Errorf("%s, %s: the slope ends %.2g mm from the tail's root", name, j.ID, d)
			}
		}
	}
	if seen < 10 {
		t.Errorf("%d dovetailed joints in the examples", seen)
	}
}

// The cuts are marked with their letters at both ends on the view from above, and stand over the sections.
func TestCutsAreMarked(t *testing.T) {
	p := examplePieces(t)["windfall-tray"]
	page := enlargedPages(p, Options{})[0]
	count := map[string]int{}
	for _, it := range page.Items {
		if t, ok := it.(draw.Text); ok && t.Layer != "frame" { // the frame's fields have letters too
			count[t.Text]++
		}
	}
	for text, want := range map[string]int{"A": 2, "B": 2, "A–A": 1, "B–B": 1} {
		if count[text] != want {
			t.Errorf("%q stands %d times, want %d", text, count[text], want)
		}
	}
}

// Whatever the corners of a leaning tray are joined by, a detail shows it.
func TestEveryKindOfCornerIsShown(t *testing.T) {
	for _, kind := range []string{form.Mitre, form.Butt, form.Housing} {
		d := walled("tray", 0)
		d.Corners.Joint = kind
		p := model.Derive(d)
		if p.Stopped() {
			t.Fatalf("%s: %v", kind, p.Findings)
		}
		_, cuts := details(p, Options{}.fill(p))
		if len(cuts) == 0 || !strings.Contains(cuts[0].title, kind) {
			t.Errorf("%s: %d sections, none of the corner", kind, len(cuts))
		}
	}
}

// The details of the joints of an example take no more sheets than what they cover would half fill, one at least; none
// overlaps another.
func TestDetailsShareSheets(t *testing.T) {
	for name, p := range examplePieces(t) {
		o := Options{}.fill(p)
		s := set{o: o, piece: p.Title, form: p.Form}
		tails, cuts := details(p, o)
		room := s.sheet(entry{}, true).room
		covered := 0.0
		for _, pic := range drawn(append(tails, cuts...), 1, false, o) {
			covered += (pic.box.Width() + gap) * (pic.box.Height() + gap)
		}
		sheets := detailSheets(p, s)
		if most := math.Ceil(2 * covered / (room.Width() * room.Height())); float64(len(sheets)) > most {
			t.Errorf("%s: %d sheets for what half fills %g", name, len(sheets), most)
		}
		pages, _ := laidOut(drawn(append(tails, cuts...), 1, false, o), room)
		for _, page := range pages {
			for i, a := range page {
				for _, b := range page[:i] {
					if a.box.Moved(a.by).Meets(b.box.Moved(b.by)) {
						t.Errorf("%s: details lie on one another", name)
					}
				}
				if m := a.box.Moved(a.by); m.Min.X < room.Min.X-0.01 || m.Max.X > room.Max.X+0.01 || m.Min.Y < room.Min.Y-0.01 || m.Max.Y > room.Max.Y+0.01 {
					t.Errorf("%s: a detail leaves the room", name)
				}
			}
		}
	}
}
