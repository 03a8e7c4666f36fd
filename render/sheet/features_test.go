package sheet

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/solid"
	"splaywright/render/draw"
	"splaywright/render/pattern"
)

// small is a feature of a kind, small enough for any board.
func small(kind, on, edge, from, face string) form.Feature {
	f := form.Feature{Kind: kind, On: on, Edge: edge, Face: face}
	switch kind {
	case "arch":
		f.Width, f.Rise = 40, 12
	case "ogee":
		f.Width, f.Rise, f.Radius, f.Hollow = 50, 10, 6, 6
	case "hand hole", "slot":
		f.Length, f.Width = 40, 14
	case "hole":
		f.Diameter = 9
	case form.RowOfHoles:
		f.Diameter, f.Count, f.Pitch = 7, 3, 21
	case "notch":
		f.Width, f.Depth = 17, 6
	case "taper":
		f.Length, f.Depth, f.From = 33, 6, from
	case "groove":
		f.Width, f.Depth, f.Length = 5, 4, 31
	case "chamfer":
		f.Width = 2.5
	case "round-over":
		f.Radius = 2.5
	}
	if face != "" && slices.Contains([]string{"hole", form.RowOfHoles, "slot", "hand hole"}, kind) {
		f.Depth = 4 // through hollows have no face
	}
	return f
}

// edged tells which kinds stand on an edge, and faced which are cut from a face.
func edged(kind string) bool {
	return slices.Contains([]string{"arch", "ogee", "notch", "taper", "chamfer", "round-over"}, kind)
}

func faced(kind string) bool {
	return slices.Contains([]string{"hole", form.RowOfHoles, "slot", "hand hole", "groove", "chamfer", "round-over"}, kind)
}

// boardNames are the boards of a piece as a feature may be on them, one of each kind.
func boardNames(p *form.Piece) map[string]*part.Part {
	out := map[string]*part.Part{}
	for _, q := range p.Parts {
		if q.Slip != "" || strings.HasPrefix(q.ID, "batten") {
			continue
		}
		name := q.ID
		for _, group := range []string{"stretcher", "apron", "stave"} {
			if strings.HasPrefix(q.ID, group) {
				name = group
			}
		}
		if out[name] == nil {
			out[name] = q
		}
	}
	return out
}

// Every kind of feature on every board of every example, from both faces and on every edge: it is refused with a
// reason that names it, or it takes wood, no more than its sizes say, has its sizes and its place on the drawing of the
// board, and a pattern where its shape needs one.
func TestEveryFeatureOnEveryBoard(t *testing.T) {
	refused := map[string]int{}
	cut := map[string]int{}
	names := []string{"reading-nook-step", "hallway-bench", "windfall-tray", "boot-room-chest", "herb-ring", "pantry-steps"}
	all := examplePieces(t)
	for _, name := range names {
		d := all[name].Design
		d.Features = nil
		plain := form.Build(d)
		boards := boardNames(plain)
		for _, on := range slices.Sorted(maps.Keys(boards)) {
			for _, f := range variants(boards[on], on) {
				e := d
				e.Features = []form.Feature{f}
				p := form.Build(e)
				what := fmt.Sprintf("%s: %s on %s, edge %q, face %q", name, f.Kind, f.On, f.Edge, f.Face)
				if p.Stopped() {
					refused[refusal(t, what, p)]++
					continue
				}
				for _, q := range p.Parts {
					if q.ID == on || strings.HasPrefix(q.ID, on+"-") {
						cut[f.Kind]++
						looked(t, what, f, p, plain.Part(q.ID), q)
					}
				}
			}
		}
	}
	for _, k := range form.FeatureKinds() {
		if cut[k] < len(names) {
			t.Errorf("only %d of kind %s were cut", cut[k], k)
		}
	}
	t.Logf("cut %v, refused %v", cut, refused)
}

// variants are the features of all kinds on one board: from each face, and on each edge.
func variants(q *part.Part, on string) []form.Feature {
	var out []form.Feature
	for _, kind := range form.FeatureKinds() {
		faces, edges := []string{""}, []string{""}
		if faced(kind) {
			faces = []string{"outer", form.InnerFace}
		}
		if edged(kind) {
			edges = nil
			for _, c := range q.Cuts {
				edges = append(edges, c.ID)
			}
		}
		for _, face := range faces {
			for i, edge := range edges {
				from := ""
				if kind == "taper" {
					from = crossing(q, q.Cuts[i])
				}
				out = append(out, small(kind, on, edge, from, face))
			}
		}
	}
	return out
}

// crossing is a cut that a cut ends at.
func crossing(q *part.Part, c part.Cut) string {
	for _, other := range q.Cuts {
		if other.ID != c.ID && math.Abs(other.Normal.Dot(c.Normal)) < 0.7 {
			return other.ID
		}
	}
	return ""
}

// refusal is the id of the finding that refuses the feature: it tells why, and which size would change it.
func refusal(t *testing.T, what string, p *form.Piece) string {
	t.Helper()
	for _, f := range p.Findings {
		if f.Level != part.Stop {
			continue
		}
		if strings.Contains(f.Text, "runs 0.0 mm over") {
			t.Errorf("%s: %s", what, f.Text)
		}
		ours := slices.ContainsFunc(f.Sizes, func(s string) bool { return strings.HasPrefix(s, "features.0.") })
		if !ours || f.Text == "" {
			t.Errorf("%s is refused without saying so: %s: %s (%v)", what, f.ID, f.Text, f.Sizes)
		}
		return f.ID
	}
	return ""
}

func looked(t *testing.T, what string, f form.Feature, p *form.Piece, plain, q *part.Part) {
	t.Helper()
	if len(q.Features) == 0 || q.Solid == nil {
		t.Errorf("%s: nothing is noted on %s", what, q.ID)
		return
	}
	if err := q.Solid.Check(); err != nil {
		t.Errorf("%s, %s: %v", what, q.ID, err)
	}
	took, most := plain.Volume-q.Volume, 0.0
	for _, s := range q.Features {
		most += takes(q, s)
	}
	bare := math.Abs(hull(q).Volume()-plain.Volume) < 1e-6 // nothing else is cut into it
	if exact := bare && f.Kind != "arch" && f.Kind != "ogee" && f.Kind != "round-over"; took <= 0 || took > most*(1+1e-9)+1e-6 || exact && math.Abs(took-most) > 1e-7*most+1e-6 {
		t.Errorf("%s, %s: took %.6g mm³, its sizes say %.6g (bare %v)", what, q.ID, took, most, bare)
	}
	o := Options{Style: measure.Style{Unit: measure.Metric, Step: 0.1}}
	texts := map[string]bool{}
	sketch := faceFigure(p, q, emptyFigure(faceView, 1, ink{}), o)
	for _, it := range sketch.Finish() {
		if text, ok := it.(draw.Text); ok {
			texts[text.Text] = true
		}
	}
	for _, want := range said(p, f, q, o) {
		if !texts[want] {
			t.Errorf("%s: the drawing of %s has no %q: %q", what, q.ID, want, slices.Sorted(maps.Keys(texts)))
		}
	}
	if needsPattern(f) && !slices.ContainsFunc(pattern.For(q, o.Style), func(p pattern.Pattern) bool { return patternShows(p, f) }) {
		t.Errorf("%s: %s has no pattern of it", what, q.ID)
	}
}

func needsPattern(f form.Feature) bool { return f.Kind != "round-over" && f.Kind != "chamfer" }

func patternShows(p pattern.Pattern, f form.Feature) bool {
	if strings.Contains(f.Kind, "hole") && f.Kind != "hand hole" {
		return strings.Contains(fmt.Sprint(p.Labels), "Ø"+measure.Style{Step: 0.1}.FormatUnit(f.Diameter))
	}
	return strings.Contains(fmt.Sprint(p.Labels), f.Kind)
}

// said are the texts that a drawing must have: the sizes, and the places along and across the blank.
func said(p *form.Piece, f form.Feature, q *part.Part, o Options) []string {
	var out []string
	box := extent(q)
	place := func(at float64) {
		if math.Abs(at) < 0.01 {
			out = append(out, "0")
			return
		}
		out = append(out, o.label(measure.Length(at)))
	}
	x := func(at float64) { place(at - box.Min.X) }
	y := func(at float64) { place(across(p, q, at)) }
	for _, s := range q.Features {
		face := ""
		if s.Inner {
			face = ", inner face"
		}
		switch s.Kind {
		case part.Hole:
			text := "Ø" + bit(f.Diameter, o)
			if s.Inner {
				text = "inner face: " + text
			}
			if f.Depth > 0 {
				text += " × " + o.label(f.Depth)
			}
			if n := len(q.Features); n > 1 {
				text = fmt.Sprintf("%d × %s", n, text)
			}
			out = append(out, text)
			x(s.Centre.X())
			y(s.Centre.Y())
		case part.Slot, part.HandHole:
			text := fmt.Sprintf("%s %s × %s", f.Kind, o.label(f.Length), o.label(f.Width))
			if f.Depth > 0 {
				text += ", " + o.label(f.Depth) + " deep"
			}
			out = append(out, text+face)
			x(s.Centre.X())
			y(s.Centre.Y())
		case part.Groove:
			out = append(out, fmt.Sprintf("groove %s wide, %s deep%s", o.label(f.Width), o.label(f.Depth), face))
			x(s.Centre.X() - f.Length.MM()/2)
			x(s.Centre.X() + f.Length.MM()/2)
			y(s.Centre.Y() - f.Width.MM()/2)
			y(s.Centre.Y() + f.Width.MM()/2)
		case part.Arch:
			out = append(out, o.label(f.Rise), "R "+o.label(s.Radius))
		case part.Ogee:
			out = append(out, o.label(f.Rise), fmt.Sprintf("ogee R %s and %s", o.label(f.Radius), o.label(f.Hollow)))
		case part.Notch:
			out = append(out, fmt.Sprintf("notch %s × %s", o.label(f.Width), o.label(f.Depth)))
		case part.Taper:
			out = append(out, fmt.Sprintf("taper %s × %s", o.label(f.Length), o.label(f.Depth)))
		case part.Chamfer:
			out = append(out, fmt.Sprintf("chamfer %s at 45.0°%s", o.label(f.Width), face))
		case part.RoundOver:
			out = append(out, "round-over R "+o.label(f.Radius)+face)
		}
		if s.Edge != "" && s.Kind != part.Chamfer && s.Kind != part.RoundOver {
			xs, ys := edgeMarks(s)
			for _, at := range xs {
				x(at)
			}
			for _, at := range ys {
				y(at)
			}
		}
	}
	return out
}

// hull is the board that its cuts and faces bound.
func hull(q *part.Part) solid.HalfSpaces {
	h := solid.HalfSpaces{{N: mgl64.Vec3{0, 0, 1}}, {N: mgl64.Vec3{0, 0, -1}, D: q.Blank.Thickness.MM()}}
	for _, c := range q.Cuts {
		h = append(h, solid.Plane{N: c.Normal, D: c.Offset})
	}
	return h
}

// takes is what a feature takes of a board that has nothing else cut into it, by its sizes alone.
func takes(q *part.Part, f part.Feature) float64 {
	thick := q.Blank.Thickness.MM()
	if f.Depth > 0 {
		thick = f.Depth.MM()
	}
	sin, cos := math.Sincos(f.Angle.Radians())
	out, way := mgl64.Vec3{cos, sin}, mgl64.Vec3{-sin, cos}
	at := f.Centre.Vec3(0)
	plane := func(n, p mgl64.Vec3) solid.Plane { return solid.Plane{N: n, D: n.Dot(p)} }
	strip := func() solid.HalfSpaces { // what lies beside the stretch of edge
		half := f.Length.MM() / 2
		return append(hull(q), plane(way, at.Add(way.Mul(half))), plane(way.Mul(-1), at.Sub(way.Mul(half))))
	}
	switch l, w, r := f.Length.MM(), f.Width.MM(), f.Radius.MM(); f.Kind {
	case part.Hole:
		return math.Pi * r * r * thick
	case part.Slot, part.HandHole:
		return ((l-w)*w + math.Pi*w*w/4) * thick
	case part.Groove:
		return l * w * thick
	case part.Notch:
		return append(strip(), plane(out.Mul(-1), at.Sub(out.Mul(w)))).Volume()
	case part.Chamfer, part.RoundOver:
		face, z := mgl64.Vec3{0, 0, 1}, 0.0
		if f.Inner {
			face, z = face.Mul(-1), -q.Blank.Thickness.MM()
		}
		if f.Kind == part.Chamfer {
			s, c := math.Sincos(f.Bevel.Radians())
			return hull(q).Volume() - append(hull(q), plane(face.Mul(c).Add(out.Mul(s)), f.Hull[2].Vec3(z))).Volume()
		}
		return q.Eased[0].Removed * 1.06 // its ends may lean
	case part.Taper:
		a, b := f.Hull[1], f.Hull[2] // from the edge to the narrow end
		n := mgl64.Vec2{a[1] - b[1], b[0] - a[0]}.Normalize()
		if n.Dot(f.Hull[0]) > n.Dot(a) {
			n = n.Mul(-1)
		}
		return append(hull(q), solid.Plane{N: n.Vec3(0), D: n.Dot(a)}).Volume()
	}
	return boundOf(q, f, strip(), out, at)
}

// boundOf is the wood of the rectangle round an arch, an ogee or a taper.
func boundOf(q *part.Part, f part.Feature, strip solid.HalfSpaces, out, at mgl64.Vec3) float64 {
	n := out.Mul(-1)
	return append(strip, solid.Plane{N: n, D: n.Dot(at.Sub(out.Mul(f.Width.MM() + q.Blank.Thickness.MM())))}).Volume()
}
