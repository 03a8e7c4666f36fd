package sheet

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
	"splaywright/render/view"
)

// extension is an extension line with the place that it stands off from.
type extension struct {
	at      draw.Point
	upright bool
	text    string
}

// extensionsOf finds the extension lines of straight dimensions in a figure's items: two of them, the dimension line,
// arrowheads and a value.
func extensionsOf(items []draw.Item) []extension {
	var out []extension
	straight := func(i int) (a, b draw.Point, ok bool) {
		p, is := items[i].(draw.Path)
		if !is || p.Layer != "dimension" || p.Filled || len(p.Segs) != 2 {
			return a, b, false
		}
		return p.Segs[0].P[2], p.Segs[1].P[2], true
	}
	for i := 0; i+3 < len(items); i++ {
		var ends [2]draw.Point
		found := true
		for k := range 2 {
			a, b, ok := straight(i + k)
			n := math.Hypot(b.X-a.X, b.Y-a.Y)
			const off = 1.0 // what extension lines stand off, mm
			ends[k] = draw.Point{X: a.X - (b.X-a.X)/n*off, Y: a.Y - (b.Y-a.Y)/n*off}
			found = found && ok && n > 0
		}
		a, b, ok := straight(i + 2)
		if !found || !ok {
			continue
		}
		value := i + 3
		for value < len(items) {
			if head, is := items[value].(draw.Path); !is || !head.Filled {
				break
			}
			value++
		}
		if value >= len(items) || value == i+3 {
			continue
		}
		if text, is := items[value].(draw.Text); is && (a.X == b.X || a.Y == b.Y) {
			out = append(out, extension{ends[0], a.Y == b.Y, text.Text}, extension{ends[1], a.Y == b.Y, text.Text})
		}
	}
	return out
}

// drawnAt tells whether an extension line leads to something that is drawn: a corner, or the utmost of a curve, of the view
// or of lines that run on to a corner that a joint took away.
func drawnAt(items []draw.Item, e extension, near float64) bool {
	along := func(p draw.Point) bool {
		if e.upright {
			return math.Abs(p.X-e.at.X) < near
		}
		return math.Abs(p.Y-e.at.Y) < near
	}
	for _, it := range items {
		p, ok := it.(draw.Path)
		if !ok || p.Layer == "dimension" || p.Layer == "mark" {
			continue
		}
		from := draw.Point{}
		for _, s := range p.Segs {
			if along(s.P[2]) || s.Kind == draw.Curve && slices.ContainsFunc(chords(from, s), along) {
				return true
			}
			from = s.P[2]
		}
	}
	return false
}

// How far from what it leads to an extension line may start, mm on paper: less than half of a narrow line, and in details, of whose
// lines hidden ones that run beside others are left out, half of what looks like two lines.
const (
	nearLine   = 0.06
	nearDetail = besideLine / 2
)

// chords are points of a curve.
func chords(from draw.Point, s draw.Seg) []draw.Point {
	const n = 64
	var out []draw.Point
	for i := range n {
		t := float64(i+1) / n
		u := 1 - t
		at := func(a, b, c, d float64) float64 { return u*u*u*a + 3*u*u*t*b + 3*u*t*t*c + t*t*t*d }
		out = append(out, draw.Point{X: at(from.X, s.P[0].X, s.P[1].X, s.P[2].X), Y: at(from.Y, s.P[0].Y, s.P[1].Y, s.P[2].Y)})
	}
	return out
}

// dimensionsEnd complains of a dimension of a board's sheet whose extension line starts where nothing is drawn.
func dimensionsEnd(t *testing.T, p *form.Piece) int {
	t.Helper()
	seen := 0
	for _, q := range p.Parts {
		if q.Solid == nil {
			continue
		}
		o := Options{}.fill(p)
		v := partViews{p: p, q: q, group: []*part.Part{q}, o: o, ink: o.ink()}
		v.project()
		for _, f := range []*figure{
			faceFigure(p, q, v.figure(v.face, 1), o),
			edgeFigure(p, q, v.figure(v.edge, 1), o, true),
			tipFigure(q, v.figure(v.tip, 1), o, true),
		} {
			items := f.Finish()
			for _, e := range extensionsOf(items) {
				seen++
				if !drawnAt(items, e, nearLine) {
					t.Errorf("%s, %s, %s: the dimension %s leads to nothing, at %.2f, %.2f", p.Title, q.Name, f.dir.Name, e.text, e.at.X, e.at.Y)
				}
			}
		}
	}
	return seen
}

// arrangementEnds complains the same of the views of the whole piece.
func arrangementEnds(t *testing.T, p *form.Piece) (seen int) {
	t.Helper()
	for _, projection := range []string{"first", "third"} {
		o := Options{Projection: projection}.fill(p)
		pics := threePictures(view.NewScene(p, flattening), o)
		for _, f := range []*figure{
			frontFigure(p, newFigure(pics.front, 1, o.ink(), true), o),
			endFigure(p, newFigure(pics.end, 1, o.ink(), true), o),
			topFigure(p, newFigure(pics.top, 1, o.ink(), true), o),
		} {
			items := f.Finish()
			for _, e := range extensionsOf(items) {
				seen++
				if !drawnAt(items, e, nearLine) {
					t.Errorf("%s, %s, %s angle: the dimension %s leads to nothing, at %.2f, %.2f", p.Title, f.dir.Name, projection, e.text, e.at.X, e.at.Y)
				}
			}
		}
	}
	return seen
}

// detailsEnd complains the same of the details of joints.
func detailsEnd(t *testing.T, p *form.Piece) (seen int) {
	t.Helper()
	ends, cuts := details(p, Options{}.fill(p))
	for _, d := range append(ends, cuts...) {
		items := d.draw(1, false).Finish()
		for _, e := range extensionsOf(items) {
			seen++
			if !drawnAt(items, e, nearDetail) {
				t.Errorf("%s, %s: the dimension %s leads to nothing, at %.2f, %.2f", p.Title, d.title, e.text, e.at.X, e.at.Y)
			}
		}
	}
	return seen
}

// Every dimension of a joint's detail ends on something that is drawn: pins behind a lap are not measured on the face that hides them.
func TestDimensionsOfDetailsEndOnWhatIsDrawn(t *testing.T) {
	looked := map[string]int{}
	for _, d := range append(unlikeWalls(), manyPieces(200)...) {
		if p := sharpEdged(d); !p.Stopped() {
			looked[d.Corners.Joint] += detailsEnd(t, p)
		}
	}
	for _, joint := range []string{form.ThroughDovetail, form.HalfBlindDovetail, form.FingerJoint} {
		if looked[joint] < 20 {
			t.Errorf("%d ends of dimensions of a %s", looked[joint], joint)
		}
	}
}

// unlikeWalls are a tray and a chest of which no wall leans as another does, sized at the rim and at the floor.
func unlikeWalls() []form.Design {
	var out []form.Design
	back, left, right := 3*measure.Degree, 25*measure.Degree, 5*measure.Degree
	for _, name := range []string{"tray", "chest"} {
		for _, at := range []form.TakenAt{"", form.AtFloor} {
			d := form.Design{Title: "unlike " + name + " " + string(at), Form: name, Timber: "black cherry",
				Size:   form.Size{Height: 140, Width: 400, Depth: 300, TakenAt: at},
				Splay:  form.Splay{Ends: 10 * measure.Degree, Front: 15 * measure.Degree, Back: &back, EndLeft: &left, EndRight: &right},
				Boards: form.Boards{Side: form.Board{Thickness: 16}}, Corners: form.Corners{Joint: form.ThroughDovetail}}
			out = append(out, d)
			if name == "chest" {
				d.Title += " with a lid"
				d.Lid = &form.Lid{Thickness: 18, Overhang: 12}
				out = append(out, d)
			}
		}
	}
	return out
}

// Every dimension of the whole piece ends on something that is drawn: of all examples, of walls that lean unlike each other, and
// of random pieces.
func TestDimensionsOfTheWholeEndOnWhatIsDrawn(t *testing.T) {
	list := unlikeWalls()
	for _, p := range examplePieces(t) {
		list = append(list, p.Design)
	}
	list = append(list, manyPieces(150)...)
	looked := map[string]int{}
	for _, d := range list {
		p := sharpEdged(d)
		if p.Stopped() {
			continue
		}
		if n := arrangementEnds(t, p); n < 8 {
			t.Errorf("%s: only %d ends of dimensions are found", p.Title, n)
		}
		looked[d.Form]++
	}
	for _, name := range []string{"stool", "steps", "tray", "chest", "ring"} {
		if looked[name] < 3 {
			t.Errorf("%d of %s looked at", looked[name], name)
		}
	}
}

// The lean of each of two unlike walls stands at its own edge, by its own path.
func TestUnlikeLeansStandAtTheirEdges(t *testing.T) {
	for _, d := range unlikeWalls() {
		p := model.Derive(d)
		page := Papers(p, Options{})[0]
		for path, want := range map[string]string{"splay.end-left": "25.0°", "splay.end-right": "5.0°", "splay.front": "15.0°", "splay.back": "3.0°"} {
			if got := values(page, path); !slices.Contains(got, want) {
				t.Errorf("%s: %s reads %q, not %q", d.Title, path, got, want)
			}
		}
		for _, v := range drawtest.Overlaps(page, allowed...) {
			t.Error(v)
		}
	}
}

// sharpEdged is the piece without its round-overs: to an edge that is rounded over a length is taken as if it were sharp,
// which it is when it is measured.
func sharpEdged(d form.Design) *form.Piece {
	d.Features = slices.DeleteFunc(slices.Clone(d.Features), func(f form.Feature) bool { return f.Kind == "round-over" })
	return model.Derive(d)
}

// manyPieces are random pieces of all forms, joints and leans, of which some cannot be cut.
func manyPieces(n uint64) (out []form.Design) {
	for seed := range n {
		d := formtest.Random(seed)
		d.Title = fmt.Sprintf("random %s %d", d.Form, seed)
		out = append(out, d)
	}
	return out
}

// Every dimension of a board ends on something that is drawn, over all examples, where stretchers have tenons and walls lean
// unlike each other; and of what random pieces can be cut: a row of pins of one end, say, does not stand at the other.
func TestDimensionsEndOnWhatIsDrawn(t *testing.T) {
	list := unlikeWalls()
	for _, p := range examplePieces(t) {
		list = append(list, p.Design)
	}
	for _, set := range []string{"on edge", "flat"} {
		for _, joint := range []string{form.ThroughTenon, form.HousedTenon} {
			d := formtest.Full()
			d.Title = joint + " " + set
			d.Stretchers[0].Set, d.Stretchers[0].Joint, d.Stretchers[0].Screws = set, joint, nil
			d.Stretchers = d.Stretchers[:1]
			list = append(list, d)
		}
	}
	for _, d := range list {
		p := sharpEdged(d)
		if p.Stopped() {
			t.Fatalf("%s: %v", d.Title, p.Findings)
		}
		if n := dimensionsEnd(t, p); n < 2*len(p.Parts) {
			t.Errorf("%s: only %d ends of dimensions are found", p.Title, n)
		}
	}
	for _, d := range manyPieces(250) {
		if p := sharpEdged(d); !p.Stopped() {
			dimensionsEnd(t, p)
		}
	}
}

// The same over random pieces of all forms; -pieces says how many.
func TestDimensionsEndOnWhatIsDrawnOnRandomPieces(t *testing.T) {
	randomPieces(t, sharpEdged, func(p *form.Piece, _ int) { dimensionsEnd(t, p) })
}
