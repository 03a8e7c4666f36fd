package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// drawnPart is a part's face with its dimensions, at full size.
func drawnPart(p *form.Piece, id string) (*part.Part, []draw.Item) {
	q := p.Part(id)
	o := Options{}.fill(p)
	return q, faceFigure(p, q, newFigure(partScene(q).Project(faceView), 1, onPaper, true), o).Finish()
}

// textsOf are the texts among items.
func textsOf(items []draw.Item) []string {
	var out []string
	for _, it := range items {
		if s, ok := it.(draw.Text); ok {
			out = append(out, s.Text)
		}
	}
	return out
}

// A bottom of many sides is told by how many there are and how long they are: six staves 240 across the flats at the floor lean
// out by 3°, and the bottom of 12 stands 6 deep in their groove, 20 up. An edge is the width across the flats times tan 30°.
func TestBottomOfManySides(t *testing.T) {
	p := model.Derive(filetest.Design(t, []byte(`splaywright: 1
form: ring
size: {height: 520, width: 240, staves: 6, taken-at: floor}
splay: {ends: 3}
timber: white oak
boards: {side: {thickness: 18}}
corners: {joint: mitre}
bottom: {thickness: 12, joint: groove, up: 20, depth: 6}
round: {to: 0.1}
`)))
	q, items := drawnPart(p, "bottom")
	o := Options{}.fill(p)
	low, high := faceEdges(q, 0)
	want := "6 equal edges, each " + o.label(q.Cuts[0].Length) + " on the outer face"
	if across := (high - low) * math.Tan(math.Pi/6); math.Abs(across-q.Cuts[0].Length.MM()) > 1e-6 {
		t.Errorf("an edge is %.4f mm, by the width across the flats %.4f", q.Cuts[0].Length.MM(), across)
	}
	n := partNotes(p, []*part.Part{q}, o)
	if !slices.Contains(n.text, want) {
		t.Errorf("%q is not said: %q", want, n.text)
	}
	if want := [][4]string{{"2 edges", "0.0°", "3.0°", "inner"}, {"4 edges", "30.0°", "3.0°", "inner"}}; !slices.Equal(n.cuts, want) {
		t.Errorf("the cuts are %q, want %q", n.cuts, want)
	}
	box := extent(q)
	for _, it := range items {
		if b := draw.Bounds([]draw.Item{it}); b.Min.X < box.Min.X-40 || b.Max.X > box.Max.X+40 {
			t.Errorf("something is drawn from %.1f to %.1f, the board lies from %.1f to %.1f", b.Min.X, b.Max.X, box.Min.X, box.Max.X)
		}
	}
	for _, s := range textsOf(items) {
		if strings.Contains(s, "cut out") {
			t.Errorf("%q: no corner is cut out", s)
		}
	}
}

// A key runs out in a point: nothing is as long as nothing.
func TestNoSizeOfNothing(t *testing.T) {
	p := model.Derive(filetest.Design(t, []byte(`splaywright: 1
form: tray
size: {height: 32, width: 360, depth: 110, taken-at: top}
splay: {front: 20, ends: 3}
timber: hard maple
boards: {side: {thickness: 8}}
corners: {joint: mitre with keys}
`)))
	_, items := drawnPart(p, "key-1")
	if texts := textsOf(items); slices.Contains(texts, "0.0") || len(texts) < 2 {
		t.Errorf("the key's sizes are %q", texts)
	}
}

// An end that is swung has its angle, whichever end it is: the ends of a crate whose back is plumb and whose front leans.
func TestSwingOfEitherEnd(t *testing.T) {
	p := model.Derive(filetest.Design(t, []byte(`splaywright: 1
form: tray
size: {height: 240, width: 500, depth: 320, taken-at: floor}
splay: {front: 3, ends: 20, back: 0}
timber: ash
boards: {side: {thickness: 15}, end: {thickness: 20}}
corners: {joint: butt, over: end}
`)))
	for _, id := range []string{"end-left", "end-right"} {
		q, items := drawnPart(p, id)
		i := slices.IndexFunc(q.Cuts, func(c part.Cut) bool { return c.Swing > 0 && c.Kind == part.Crosscut })
		if i < 0 {
			t.Fatalf("%s: no end is swung", id)
		}
		if want := degrees(q.Cuts[i].Swing); !slices.Contains(textsOf(items), want) {
			t.Errorf("%s: the swing of its %s, %s, is not drawn: %q", id, q.Cuts[i].ID, want, textsOf(items))
		}
	}
}

// A spline, a key or a wedge that a joint is cut through is hatched and named there, not left white like a hollow.
func TestLoosePartsInJoints(t *testing.T) {
	p := model.Derive(filetest.Design(t, []byte(`splaywright: 1
form: stool
size: {height: 420, width: 400, depth: 320, taken-at: top}
splay: {ends: 3, edges: 3}
timber: ash
boards: {top: {thickness: 22}, side: {thickness: 22}}
corners: {joint: mitre with splines}
`)))
	_, cuts := details(p, Options{}.fill(p))
	if len(cuts) == 0 {
		t.Fatal("no joint is cut through")
	}
	items := cuts[0].draw(1, false).Finish()
	hatched := slices.ContainsFunc(items, func(it draw.Item) bool {
		path, ok := it.(draw.Path)
		return ok && path.Layer == "hatch" && path.Ref == "spline-1"
	})
	if !hatched || !slices.ContainsFunc(textsOf(items), func(s string) bool { return strings.HasSuffix(s, "Spline 1") }) {
		t.Errorf("the spline is not hatched (%v) or not named: %q", hatched, textsOf(items))
	}
}

// Thick stock is drawn at half its size where each of its details would take a sheet at its full size.
func TestThickDetailsShareASheet(t *testing.T) {
	p := model.Derive(filetest.Design(t, []byte(`splaywright: 1
units: in
form: stool
size: {height: 11 3/16, width: 16 5/8, depth: 9 7/8, taken-at: top}
splay: {ends: 20, edges: 0}
timber: red oak
boards: {top: {thickness: 2 1/4}, side: {thickness: 2}}
corners: {joint: through dovetail, tails-on: top, slope: "1:6", tails: 3}
`)))
	o := Options{}.fill(p)
	if got := detailSheets(p, set{o: o, piece: p.Title, form: p.Form, note: sizesNote(o)}); len(got) != 1 || got[0].entry.scale != "1:2" {
		t.Errorf("the details take %d sheets at %s, want one at 1:2", len(got), got[0].entry.scale)
	}
}

// Where a tread's tails do not lean alike at both of its ends, each is told with the side that comes there.
func TestCheeksOfTwoEnds(t *testing.T) {
	p := model.Derive(filetest.Named(t, "pantry-steps"))
	for id, want := range map[string][]string{
		"top-upper": {"Cheeks lean 0.00° from square where 4 comes", "Cheeks lean 0.85° from square where 5 comes"},
		"top-lower": {"Cheeks lean 0.85° from square"},
	} {
		q := p.Part(id)
		n := partNotes(p, []*part.Part{q}, Options{}.fill(p))
		for _, w := range want {
			if !slices.Contains(n.text, w) {
				t.Errorf("%s: %q is not said: %q", id, w, n.text)
			}
		}
	}
}
