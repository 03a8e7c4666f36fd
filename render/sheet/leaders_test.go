package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// note is a note of a figure with the place that its line points at.
type note struct {
	at        draw.Point
	text, ref string
}

// notesOf finds the notes in a figure's items: a line with an elbow, its dot or arrowhead, and a text over its level end.
func notesOf(items []draw.Item) []note {
	var out []note
	for i := 0; i+2 < len(items); i++ {
		line, ok := items[i].(draw.Path)
		head, ok2 := items[i+1].(draw.Path)
		words, ok3 := items[i+2].(draw.Text)
		if !ok || !ok2 || !ok3 || line.Layer != "dimension" || !head.Filled || len(line.Segs) != 3 {
			continue
		}
		at, elbow, end := line.Segs[0].P[2], line.Segs[1].P[2], line.Segs[2].P[2]
		box := draw.Bounds([]draw.Item{words})
		if mid := (box.Min.X + box.Max.X) / 2; elbow.Y != end.Y || words.Turn != 0 || mid < min(elbow.X, end.X) || mid > max(elbow.X, end.X) || box.Min.Y < elbow.Y {
			continue
		}
		out = append(out, note{at, words.Text, words.Ref})
	}
	return out
}

// projection tells which parts lie at a place of a view, seen or hidden.
type projection map[string]fronts

func projected(parts []*part.Part, d view.Direction) projection {
	out := projection{}
	for _, q := range parts {
		if q.Solid != nil {
			out[q.ID] = newFronts(view.NewScene(&form.Piece{Parts: []*part.Part{q}}, flattening), d)
		}
	}
	return out
}

func (p projection) holds(id string, at draw.Point) bool { return p[id].at(at) != "" }

// pointsAt complains of a note that does not lie on the part that it names.
func pointsAt(t *testing.T, what string, p *form.Piece, f *figure, items []draw.Item, on func(id string, at draw.Point) bool) int {
	t.Helper()
	named := 0
	for _, n := range notesOf(items) {
		q := p.Part(n.ref)
		if q == nil || !strings.HasPrefix(n.text, q.Mark+" ") {
			continue
		}
		named++
		if at := scaled(n.at, 1/f.scale); !on(q.ID, at) {
			t.Errorf("%s: the note %q ends at %.1f, %.1f mm, where that part is not", what, n.text, at.X, at.Y)
		}
	}
	return named
}

// inFace tells whether a place lies in a cut face, and so far off its outline, mm, that the dot is not on the next board.
func inFace(c view.CutFace, at draw.Point, off float64) bool {
	f := frontFace{box: loopsBox(c.Loops), loops: c.Loops}
	return f.holds(at) && roomAt(at, c.Loops, nil, draw.EmptyBox()) > off
}

func sectionNotes(t *testing.T, p *form.Piece) {
	named := map[string]bool{}
	for _, c := range cutsOf(p, Options{}) {
		s := view.NewSection(p, flattening, c.Cut)
		f := sectionFigure(p, s, 0.125, Options{}, named)
		got := pointsAt(t, p.Title+", section "+c.letter, p, f, f.Finish(), func(id string, at draw.Point) bool {
			return slices.ContainsFunc(s.Faces, func(c view.CutFace) bool { return c.Part == id && inFace(c, at, 1.5) })
		})
		if got == 0 && c.letter == "A" && len(s.Faces) > 0 {
			t.Errorf("%s: section A names no part", p.Title)
		}
	}
}

func jointNotesPoint(t *testing.T, p *form.Piece) {
	_, cuts := details(p, Options{}.fill(p))
	for _, d := range cuts {
		f := d.draw(1, false)
		items := f.Finish()
		got := pointsAt(t, d.title, p, f, items, func(id string, at draw.Point) bool {
			for _, it := range items { // a line of its hatching passes there
				if path, ok := it.(draw.Path); ok && path.Layer == "hatch" && path.Ref == id && fromSegment(at, path.Segs[0].P[2], path.Segs[1].P[2]) < 0.01 {
					return true
				}
			}
			return false
		})
		sawn := map[string]bool{}
		for _, it := range items {
			if path, ok := it.(draw.Path); ok && path.Layer == "hatch" {
				sawn[path.Ref] = true
			}
		}
		if got < 2 || got != len(sawn) { // the two boards, and what holds them together where it is of wood
			t.Errorf("%s, %s: %d parts are named, %d are cut through", p.Title, d.title, got, len(sawn))
		}
	}
}

func assemblyNotes(t *testing.T, p *form.Piece) {
	if len(p.Assembly.Moves) == 0 {
		return
	}
	e := explode(p)
	d := view.Pictorial(usualTurn, usualTip)
	scene := view.NewScene(e.piece, flattening)
	front := newFronts(scene, d)
	f := e.picture(scene.Project(d), front, 0.125, Options{})
	lone := projected(e.piece.Parts, d)
	got := pointsAt(t, p.Title+", assembly", p, f, f.Finish(), func(id string, at draw.Point) bool {
		return front.at(at) == id || lone.holds(id, at) && !anywhereSeen(lone, front, id)
	})
	if got != len(p.Parts) {
		t.Errorf("%s, assembly: %d of %d parts are named", p.Title, got, len(p.Parts))
	}
	for _, l := range e.seenWays(d, front) {
		if !front.onWood(l[0], l[1]) || !front.onWood(l[1], l[0]) {
			t.Errorf("%s: a way home from %.0f, %.0f to %.0f, %.0f begins or ends in the air", p.Title, l[0].X, l[0].Y, l[1].X, l[1].Y)
		}
	}
}

// anywhereSeen tells whether one sees a part at any of many places.
func anywhereSeen(lone projection, front fronts, id string) bool {
	box := draw.EmptyBox()
	for _, g := range lone[id].list {
		box = box.Join(g.box)
	}
	const steps = 60
	for i := range steps {
		for k := range steps {
			at := draw.Point{X: box.Min.X + box.Width()*(float64(i)+0.5)/steps, Y: box.Min.Y + box.Height()*(float64(k)+0.5)/steps}
			if front.at(at) == id {
				return true
			}
		}
	}
	return false
}

// thicknessNotes: the board whose thickness is told stands at the place, and no line of another runs through the dot.
func thicknessNotes(t *testing.T, p *form.Piece) {
	o := Options{}.fill(p)
	pics := project(p, o)
	for _, v := range []struct {
		pic  *view.Picture
		draw func(*form.Piece, *figure, Options) *figure
	}{{pics.front, frontFigure}, {pics.end, endFigure}} {
		f := newFigure(v.pic, 0.2, onPaper, true)
		lone := projected(p.Parts, f.dir)
		lines := f.linesBut(edgeOnLeft)
		items := v.draw(p, f, o).Finish()
		for _, n := range notesOf(items) {
			at := scaled(n.at, 1/f.scale)
			if !strings.HasPrefix(n.ref, "boards.") || n.ref == "boards.top.thickness" {
				continue
			}
			if !slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return edgeOnLeft(q.ID) && lone.holds(q.ID, at) }) {
				t.Errorf("%s: the note %q lies on no board that leans there", p.Title, n.text)
			}
			if free := roomAt(n.at, nil, lines, draw.EmptyBox()); free < 0.3 && form.OnSides(p.Form) {
				t.Errorf("%s: the note %q lies %.2f mm off the line of another board", p.Title, n.text, free)
			}
		}
	}
}

// boreNotesPoint: the note of a hole ends on a hole of that kind, that of a housing in it and in no other.
func boreNotesPoint(t *testing.T, p *form.Piece) {
	o := Options{}.fill(p)
	for _, group := range kinds(p) {
		q := group[0]
		f := fineFigure(partScene(q).Project(faceView), 0.2, onPaper, true)
		lone := partFronts(q)
		for _, n := range notesOf(faceFigure(p, q, f, o).Finish()) {
			at := scaled(n.at, 1/f.scale)
			if strings.Contains(n.text, "Ø") {
				near := slices.ContainsFunc(q.Bores, func(b part.Bore) bool {
					from, to := b.Entry, b.Entry.Add(b.Axis.Mul(b.Depth.MM()))
					return fromSegment(at, draw.Point{X: from.X(), Y: from.Y()}, draw.Point{X: to.X(), Y: to.Y()}) < b.Diameter.MM()/2+0.01
				})
				if !near {
					t.Errorf("%s, %s: the note %q ends at no hole", p.Title, q.ID, n.text)
				}
				continue
			}
			box := extent(q).Grow(1)
			if at.X < box.Min.X || at.X > box.Max.X || at.Y < box.Min.Y || at.Y > box.Max.Y {
				t.Errorf("%s, %s: the note %q ends beside the board", p.Title, q.ID, n.text)
			}
			if strings.HasPrefix(n.text, "housing") && lone.at(at) == "" {
				t.Errorf("%s, %s: the note %q ends in the air", p.Title, q.ID, n.text)
			}
		}
	}
}

func partFronts(q *part.Part) fronts { return newFronts(partScene(q), faceView) }

// Every note ends on what it names, over all examples.
func TestNotesEndOnWhatTheyName(t *testing.T) {
	for _, p := range examplePieces(t) {
		notesEnd(t, p)
	}
}

func notesEnd(t *testing.T, p *form.Piece) {
	sectionNotes(t, p)
	jointNotesPoint(t, p)
	assemblyNotes(t, p)
	thicknessNotes(t, p)
	boreNotesPoint(t, p)
}

// The same over random pieces of all forms; -pieces says how many.
func TestNotesEndOnWhatTheyNameOnRandomPieces(t *testing.T) {
	randomPieces(t, model.Derive, func(p *form.Piece, seed int) {
		p.Title += " " + string(rune('0'+seed%10))
		notesEnd(t, p)
	})
}

// randomPieces looks at as many random pieces as -pieces says, all like the examples and made as told, and names the first that fails.
func randomPieces(t *testing.T, derive func(form.Design) *form.Piece, look func(p *form.Piece, seed int)) {
	t.Helper()
	var starts []form.Design
	for _, p := range examplePieces(t) {
		starts = append(starts, p.Design)
	}
	sortByTitle(starts)
	gen := likeExample(starts)
	for seed, seen := 1, 0; seen < *howMany; seed++ {
		if seed > 40*(*howMany) {
			t.Fatalf("only %d of %d pieces can be cut", seen, seed)
		}
		p := derive(gen.Example(seed))
		if p.Stopped() {
			continue
		}
		seen++
		before := t.Failed()
		look(p, seed)
		if t.Failed() && !before {
			t.Logf("the first piece that fails is %d", seed)
		}
	}
}

// A note that points beside its part is found.
func TestANoteInTheAirIsFound(t *testing.T) {
	for _, p := range examplePieces(t) {
		f := emptyFigure(view.Front, 1, onPaper)
		q := p.Parts[0]
		f.Leader(draw.Point{X: 1e4}, true, q.Mark+" "+q.Name, q.ID)
		list := notesOf(f.Finish())
		if len(list) != 1 || math.Abs(list[0].at.X-1e4) > 1e-9 || projected(p.Parts, view.Front).holds(q.ID, list[0].at) {
			t.Errorf("%s: the note is %v", p.Title, list)
		}
		break
	}
}
