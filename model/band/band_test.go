package band_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/band"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// value is a figure by its id.
func value(t *testing.T, b band.Bands, values []float64, id string) float64 {
	t.Helper()
	for i, f := range b.Figures {
		if f.ID == id {
			return values[i]
		}
	}
	t.Fatalf("there is no figure %q", id)
	return 0
}

// With nothing off the figures are those of the piece, which the forms work out the other way: from its sizes to its boards.
func TestFiguresAreThoseOfThePiece(t *testing.T) {
	forms := map[string]int{}
	for seed := range uint64(400) {
		p := model.Derive(formtest.Random(seed))
		if p.Stopped() {
			continue
		}
		b := band.Of(p)
		forms[p.Form]++
		o, d := p.Overall, p.Design
		over, edges := 2*d.Corners.Overhang, measure.Length(0)
		if d.Lid != nil {
			over, edges = 2*d.Lid.Overhang, 2*d.Lid.Overhang
		}
		flats := d.Size.Width
		if d.Size.TakenAt == form.AtFloor {
			flats = 0
		}
		if !form.OnSides(p.Form) && d.Lid == nil {
			over = 0
		}
		want := map[string]measure.Length{"width-top": o.WidthTop - over, "width-floor": o.WidthFloor, "depth-top": o.DepthTop - edges, "depth-floor": o.DepthFloor,
			"height-whole": o.Height, "height-left": o.Height, "height-right": o.Height}
		if d.Bottom != nil && d.Bottom.Joint == form.ScrewedOn { // the walls end over it
			delete(want, "width-floor")
			delete(want, "depth-floor")
		}
		switch p.Form {
		case "stool":
			want["width-top"] = widthOver(p)
		case form.Steps:
			want["height-left"] = d.Size.LowerHeight
		case "ring":
			want["width-top"], want["width-floor"] = flats, 0
		}
		for _, f := range b.Figures {
			if w := want[f.Key].MM(); f.Key != "" && w != 0 && math.Abs(f.Nominal-w) > 1e-6 {
				t.Errorf("%d, %s %s: %s is %.6f, of the piece it is %.6f", seed, p.Form, d.Corners.Joint, f.What, f.Nominal, w)
			}
			if f.Key == "" && math.Abs(f.Nominal) > 1e-6 {
				t.Errorf("%d, %s: %s is %g with nothing off", seed, p.Form, f.What, f.Nominal)
			}
			if !(f.Worst >= f.Likely && f.Likely > 0 && f.Worst < 60) || f.Most < 0 {
				t.Errorf("%d, %s: %s may be off by %g, %g likely", seed, p.Form, f.What, f.Worst, f.Likely)
			}
		}
	}
	for _, name := range form.Forms() {
		if forms[name] < 30 {
			t.Errorf("only %d of the form %s", forms[name], name)
		}
	}
}

// widthOver is the width of a stool over its sides, where they leave the top.
func widthOver(p *form.Piece) measure.Length {
	d := p.Design
	w := p.Overall.WidthTop - 2*d.Corners.Overhang
	if !form.Tailed(d.Corners.Joint) && !form.Mitred(d.Corners.Joint) {
		w += 2 * d.Boards.Top.Thickness * measure.Length(math.Tan(d.Splay.Ends.Radians()))
	}
	return w
}

// off are causes of a piece by what and part.
func off(t *testing.T, b band.Bands, by map[string]float64) []float64 {
	t.Helper()
	out := make([]float64, len(b.Causes))
	for key, x := range by {
		what, part, _ := strings.Cut(key, "|")
		found := false
		for k, c := range b.Causes {
			if c.What == what && (part == "" || c.Part == part) {
				out[k], found = x, true
			}
		}
		if !found {
			t.Fatalf("there is no cause %q", key)
		}
	}
	return out
}

// A stool whose boards are cut otherwise is the stool of other sizes that has these boards: longer sides, another splay on
// sides as long, a thicker top, deeper housings.
func TestBuiltStoolsAreDesignedOnes(t *testing.T) {
	for name, make := range map[string]func() form.Design{"dovetailed": formtest.WorkedExample, "housed": formtest.Housing, "butted": formtest.Butt} {
		d := make()
		p := model.Derive(d)
		b := band.Of(p)
		d = p.Design
		a, high := d.Splay.Ends.Radians(), d.Size.Height.MM()
		under, thick := 0.0, 0.0
		if name != "dovetailed" {
			thick = d.Boards.Top.Thickness.MM()
			under = thick
			if d.Corners.Depth != nil && name == "housed" {
				under -= d.Corners.Depth.MM()
			}
		}
		long := (high - under) / math.Cos(a)
		check := func(what string, values []float64, change func(d *form.Design)) {
			t.Helper()
			e := make()
			change(&e)
			q := model.Derive(e)
			for key, want := range map[string]measure.Length{"width-floor": q.Overall.WidthFloor, "height-left": q.Overall.Height, "height-right": q.Overall.Height,
				"width-top": widthOver(q)} {
				if got := value(t, b, values, key); math.Abs(got-want.MM()) > 1e-6 {
					t.Errorf("%s, %s: %s is %.6f, of such a stool %.6f", name, what, key, got, want.MM())
				}
			}
		}
		check("sides 3 mm longer", b.Built(off(t, b, map[string]float64{band.OfLength + "|side-left": 3, band.OfLength + "|side-right": 3})),
			func(d *form.Design) { d.Size.Height += measure.Length(3 * math.Cos(a)) })
		const more = 1.5
		check("angles 1.5° more", b.Built(off(t, b, map[string]float64{band.OfTopAngle: more})), func(d *form.Design) {
			// The sides are placed on the underside: over it their outer faces meet the upper face elsewhere.
			d.Splay.Ends += more * measure.Degree
			d.Size.Height = measure.Length(long*math.Cos(a+more*math.Pi/180) + under)
			d.Size.Width += measure.Length(2 * thick * (math.Tan(a) - math.Tan(a+more*math.Pi/180)))
		})
		if under == 0 {
			check("top 2 mm longer", b.Built(off(t, b, map[string]float64{band.OfLength + "|top": 2})), func(d *form.Design) { d.Size.Width += 2 })
			continue
		}
		check("top 2 mm thicker", b.Built(off(t, b, map[string]float64{band.OfThickness + "|top": 2})), func(d *form.Design) {
			d.Size.Height += 2
			d.Boards.Top.Thickness = p.Design.Boards.Top.Thickness + 2
			d.Size.Width -= measure.Length(4 * math.Tan(a))
		})
		if name == "housed" {
			check("housings 1 mm deeper", b.Built(off(t, b, map[string]float64{band.OfDepth + "|side-left": 1, band.OfDepth + "|side-right": 1})), func(d *form.Design) {
				d.Size.Height -= 1
				deep := *p.Design.Corners.Depth + 1
				d.Corners.Depth = &deep
			})
		}
	}
}

// Steps with all sides longer, or with one tread longer, are steps of another size; all three feet stay on the floor.
func TestBuiltStepsAreDesignedOnes(t *testing.T) {
	d := form.Design{Title: "steps", Form: form.Steps, Timber: "white oak"}
	d.Size.Height, d.Size.Width, d.Size.Depth, d.Size.LowerHeight, d.Size.LowerWidth = 480, 520, 300, 230, 250
	d.Splay.Ends, d.Splay.Middle, d.Splay.Edges = 7*measure.Degree, 2*measure.Degree, 3*measure.Degree
	d.Corners.Joint = form.ThroughDovetail
	p := model.Derive(d)
	if p.Stopped() {
		t.Fatal(p.Findings)
	}
	b := band.Of(p)
	ends, middle := math.Cos(d.Splay.Ends.Radians()), math.Cos(d.Splay.Middle.Radians())
	for _, c := range []struct {
		name   string
		off    map[string]float64
		change func(d *form.Design)
	}{
		{"all sides 3 mm higher", map[string]float64{band.OfLength + "|side-left": 3 / ends, band.OfLength + "|side-right": 3 / ends, band.OfLength + "|side-middle": 3 / middle},
			func(d *form.Design) { d.Size.Height, d.Size.LowerHeight = d.Size.Height+3, d.Size.LowerHeight+3 }},
		{"the lower tread 3 mm higher", map[string]float64{band.OfLength + "|side-left": 3 / ends, band.OfApart + "|side-middle": -3 / middle},
			func(d *form.Design) { // the middle side's outer face is elsewhere there
				d.Size.LowerHeight += 3
				d.Size.LowerWidth, d.Size.Width = 250, 520-measure.Length(3*math.Tan(d.Splay.Middle.Radians()))
			}},
		{"the lower tread 4 mm longer", map[string]float64{band.OfLength + "|top-lower": 4}, func(d *form.Design) { d.Size.LowerWidth += 4; d.Size.Width += 4 }},
		{"the upper tread 4 mm longer", map[string]float64{band.OfLength + "|top-upper": 4}, func(d *form.Design) { d.Size.Width += 4 }},
		{"the middle side let in 1 mm less for the tread", map[string]float64{band.OfDepth + "|top-lower": -1}, func(d *form.Design) { d.Size.LowerWidth++; d.Size.Width++ }},
	} {
		e := d
		c.change(&e)
		q := model.Derive(e)
		values := b.Built(off(t, b, c.off))
		for key, want := range map[string]measure.Length{"width-floor": q.Overall.WidthFloor, "height-left": q.Design.Size.LowerHeight, "height-right": q.Overall.Height} {
			if got := value(t, b, values, key); math.Abs(got-want.MM()) > 1e-6 {
				t.Errorf("%s: %s is %.6f, of such steps %.6f", c.name, key, got, want.MM())
			}
		}
		for i, f := range b.Figures {
			if f.Key == "" && math.Abs(values[i]) > 1e-6 {
				t.Errorf("%s: %s: %g", c.name, f.What, values[i])
			}
		}
	}
	// By hand, as good as small changes are: a middle side 1 mm longer stands 1 mm · cos 2° through the floor.
	values := b.Built(off(t, b, map[string]float64{band.OfLength + "|side-middle": 1}))
	for i, f := range b.Figures {
		if f.What == "the middle foot off the floor" && math.Abs(values[i]+middle) > 1e-6 {
			t.Errorf("%s: %g", f.What, values[i])
		}
	}
}

// Walls cut to other leans or lengths make the tray or chest of other splay or size; so do staves.
func TestBuiltWallsAreDesignedOnes(t *testing.T) {
	for _, name := range []string{"tray", "chest", "ring"} {
		d := form.Design{Title: name, Form: name, Timber: "white oak"}
		d.Size.Height, d.Size.Width, d.Size.Depth = 120, 400, 300
		d.Splay.Ends, d.Splay.Front = 9*measure.Degree, 5*measure.Degree
		d.Corners.Joint = form.Mitre
		if name == "ring" {
			d.Size.Depth, d.Size.Staves, d.Splay.Front = 0, 8, 0
		}
		p := model.Derive(d)
		if p.Stopped() {
			t.Fatal(name, p.Findings)
		}
		b := band.Of(p)
		a := d.Splay.Ends.Radians()
		if name == "chest" {
			a = -a
		}
		const more = 0.8 // degrees
		turn := more * math.Pi / 180
		if name == "chest" {
			turn = -turn
		}
		wider := 120/math.Cos(a+turn) - 120/math.Cos(a) // as wide as the leaning wall has to be to end at the same height
		change := map[string]float64{band.OfLean + "|end-left": more, band.OfLean + "|end-right": more, band.OfWidth + "|end-left": wider, band.OfWidth + "|end-right": wider}
		if name == "ring" {
			change = map[string]float64{band.OfLean: more}
		}
		e := d
		e.Splay.Ends += more * measure.Degree
		q, values := model.Derive(e), b.Built(off(t, b, change))
		floor := func(p *form.Piece) float64 {
			if name == "ring" {
				return p.Design.Size.Width.MM() - 2*120*math.Tan(p.Design.Splay.Ends.Radians())
			}
			return p.Overall.WidthFloor.MM()
		}
		if got := value(t, b, values, "width-floor"); math.Abs(got-floor(q)) > 1e-6 {
			t.Errorf("%s leaning more: %.6f wide at the floor, designed so %.6f", name, got, floor(q))
		}
		if name == "ring" {
			// Eight staves each 1 mm wider: across the flats 1/tan(π/8) more.
			if got := value(t, b, b.Built(off(t, b, map[string]float64{band.OfLength: 1})), "width-top") - 400; math.Abs(got-1/math.Tan(math.Pi/8)) > 1e-9 {
				t.Errorf("ring of wider staves: %g mm more", got)
			}
			continue
		}
		values = b.Built(off(t, b, map[string]float64{band.OfLength + "|front": 2, band.OfLength + "|back": 2}))
		if got := value(t, b, values, "width-top"); math.Abs(got-402) > 1e-9 {
			t.Errorf("%s with longer front and back: %g", name, got)
		}
	}
}
