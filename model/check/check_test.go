package check

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// sound is a stool that nothing is wrong with: a seat at table height.
func sound() form.Design {
	tails, pin, half := 6, measure.Length(10), measure.Length(12)
	return form.Design{
		Title: "Hall stool", Form: "stool", Units: measure.Metric, Timber: "white oak",
		Size:   form.Size{Height: 440, Width: 420, Depth: 280, TakenAt: form.AtTop},
		Splay:  form.Splay{Ends: 6 * measure.Degree, Edges: 4 * measure.Degree, EdgeCut: form.EdgeSquare},
		Boards: form.Boards{Top: form.Board{Thickness: 20}, Side: form.Board{Thickness: 20}},
		Corners: form.Corners{Joint: "through dovetail", TailsOn: "top", Slope: 8 * measure.Degree,
			Tails: &tails, Pin: &pin, HalfPin: &half},
		Stretchers: []form.Stretcher{{Width: 60, Thickness: 20, Set: "on edge", BelowTop: 120, Joint: "butt",
			Screws: &form.Screws{Gauge: 8, Length: 50, Count: 2, FromEnd: 15, Counterbore: 8, Plug: true}}},
		Features: []form.Feature{
			{On: "side", Kind: "arch", Width: 150, Rise: 45},
			{On: "top", Kind: "hand hole", Length: 95, Width: 28},
			{On: "all", Kind: "round-over", Radius: 3},
		},
		Saw:   form.Saw{Kerf: 3.2, Step: measure.Degree / 10},
		Round: form.Round{To: 0.5},
	}
}

// soundHoused is a step that nothing is wrong with: the top housed and screwed.
func soundHoused() form.Design {
	d := sound()
	depth := measure.Length(7)
	d.Corners = form.Corners{Joint: "housing", Depth: &depth, Overhang: 15,
		Screws: &form.Screws{Gauge: 8, Length: 50, Count: 2, FromEnd: 40, Counterbore: 7, Plug: true}}
	return d
}

// edit is a change to a design.
type edit func(*form.Design)

func edited(d form.Design, changes ...edit) form.Design {
	d.Features = slices.Clone(d.Features)
	d.Stretchers = slices.Clone(d.Stretchers)
	for i := range d.Stretchers {
		if s := d.Stretchers[i].Screws; s != nil {
			copied := *s
			d.Stretchers[i].Screws = &copied
		}
	}
	if s := d.Corners.Screws; s != nil {
		copied := *s
		d.Corners.Screws = &copied
	}
	for _, c := range changes {
		c(&d)
	}
	return d
}

func look(d form.Design) []part.Finding { return Run(form.Build(d)) }

func withID(found []part.Finding, id string) []part.Finding {
	var out []part.Finding
	for _, f := range found {
		if f.ID == id {
			out = append(out, f)
		}
	}
	return out
}

func describe(found []part.Finding) string {
	var b strings.Builder
	for _, f := range found {
		b.WriteString("\n\t" + string(f.Level) + " " + f.ID + ": " + f.Text)
	}
	return b.String()
}

func TestSoundPiecesFindNothing(t *testing.T) {
	for name, d := range map[string]form.Design{"dovetailed": sound(), "housed": soundHoused()} {
		p := form.Build(d)
		if p.Stopped() {
			t.Errorf("%s: the form stops it:%s", name, describe(p.Findings))
		}
		for _, q := range p.Parts {
			if q.Solid == nil {
				t.Errorf("%s: %s has no solid", name, q.ID)
			}
		}
		if found := Run(p); len(found) > 0 {
			t.Errorf("%s: findings on a sound piece:%s", name, describe(found))
		}
	}
}

// trial is a change that brings a finding about and one, next to it, that just does not.
type trial struct {
	from          form.Design
	spoil, mend   edit
	id            string
	level         part.Level
	figure, limit float64 // NaN: not looked at
	says          string  // in the finding's text
}

// runTrials gives the number of proposals in the findings that were tried and found good.
func runTrials(t *testing.T, trials map[string]trial) (tried int) {
	t.Helper()
	for name, c := range trials {
		t.Run(name, func(t *testing.T) {
			found := withID(look(edited(c.from, c.spoil)), c.id)
			if len(found) == 0 {
				t.Fatalf("%s is not found:%s", c.id, describe(look(edited(c.from, c.spoil))))
			}
			f := found[0]
			if f.Level != c.level {
				t.Errorf("level %s, want %s", f.Level, c.level)
			}
			wellFormed(t, f)
			if !math.IsNaN(c.figure) && math.Abs(f.Figure-c.figure) > 0.01 {
				t.Errorf("figure %.4f, want %.4f: %s", f.Figure, c.figure, f.Text)
			}
			if !math.IsNaN(c.limit) && math.Abs(f.Limit-c.limit) > 0.01 {
				t.Errorf("limit %.4f, want %.4f: %s", f.Limit, c.limit, f.Text)
			}
			if !strings.Contains(strings.ToLower(f.Text), strings.ToLower(c.says)) {
				t.Errorf("the finding does not say %q: %s", c.says, f.Text)
			}
			tried += tryWaysOut(t, edited(c.from, c.spoil), f)
			if left := withID(look(edited(c.from, c.mend)), c.id); len(left) > 0 {
				t.Errorf("still found beside the limit:%s", describe(left))
			}
		})
	}
	return tried
}

// wellFormed demands what every finding must have.
func wellFormed(t *testing.T, f part.Finding) {
	t.Helper()
	if problem := malformed(f); problem != "" {
		t.Errorf("%s: %+v", problem, f)
	}
}

// malformed tells what a finding lacks that every finding must have.
func malformed(f part.Finding) string {
	finite := func(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
	switch {
	case f.ID == "" || strings.ToLower(f.ID) != f.ID || strings.ContainsAny(f.ID, " _"):
		return "not an id"
	case f.Source == "":
		return "no source"
	case len(f.Sizes) == 0:
		return "no size that would change it"
	case !strings.HasSuffix(f.Text, ".") || strings.ToUpper(f.Text[:1]) != f.Text[:1] || strings.Contains(f.Text, "%!") || strings.Contains(f.Text, ".."):
		return "not a sentence"
	case !finite(f.Figure) || !finite(f.Limit):
		return "figure or limit without end"
	}
	for _, words := range [][]string{f.Parts, f.Sizes} {
		for i, p := range words {
			if p == "" || slices.Contains(words[:i], p) {
				return "a part or size that is empty or named twice"
			}
		}
	}
	return ""
}

func TestStopsComeFirstAndOrderIsFixed(t *testing.T) {
	d := edited(sound(), func(d *form.Design) {
		pin := measure.Length(2)
		d.Corners.Pin = &pin
		d.Stretchers[0].Across = 200
		d.Timber = "unobtainium"
		d.Size.Height = 400
	})
	found := look(d)
	var levels []part.Level
	for _, f := range found {
		levels = append(levels, f.Level)
	}
	if len(found) < 4 || !slices.IsSortedFunc(levels, func(a, b part.Level) int { return rank(a) - rank(b) }) {
		t.Errorf("levels %v:%s", levels, describe(found))
	}
	for range 5 {
		if again := look(d); !reflect.DeepEqual(found, again) {
			t.Fatalf("another order or text:%s", describe(again))
		}
	}
}

func TestBothSidesAreOneFinding(t *testing.T) {
	found := withID(look(edited(sound(), func(d *form.Design) { pin := measure.Length(2); d.Corners.Pin = &pin })), "pin-narrower-than-chisel")
	if len(found) != 1 || !slices.Contains(found[0].Parts, "side-left") || !slices.Contains(found[0].Parts, "side-right") {
		t.Errorf("want one finding that names both sides:%s", describe(found))
	}
}

// Whatever is typed, looking it over ends, says whole sentences, and says the same again.
func TestAnyDesignIsLookedOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := func(label string, low, high float64) measure.Length {
			if rapid.IntRange(0, 15).Draw(t, label+" odd") == 0 {
				return measure.Length(rapid.SampledFrom([]float64{0, -1, -300, 1e-9, 1e7}).Draw(t, label+" oddly"))
			}
			return measure.Length(rapid.Float64Range(low, high).Draw(t, label))
		}
		a := func(label string) measure.Angle { return measureAngle(rapid.Float64Range(-90, 90).Draw(t, label)) }
		d := rapid.SampledFrom([]form.Design{sound(), soundHoused(), formtest.Full(), formtest.Butt()}).Draw(t, "from")
		d = edited(d, func(d *form.Design) {
			d.Size = form.Size{Height: l("height", 50, 900), Width: l("width", 100, 1200), Depth: l("depth", 60, 500), TakenAt: d.Size.TakenAt}
			d.Splay.Ends, d.Splay.Edges, d.Corners.Slope = a("ends"), a("edges"), a("slope")
			d.Boards.Top.Thickness, d.Boards.Side.Thickness = l("top", 5, 60), l("side", 5, 60)
			d.Corners.Overhang = l("overhang", -10, 60)
			d.Timber = rapid.SampledFrom([]string{"", "oak", "white oak", "ÆØÅ", "\"%d"}).Draw(t, "timber")
			for i := range d.Stretchers {
				s := &d.Stretchers[i]
				s.Width, s.Thickness, s.BelowTop, s.Across = l("rail", 20, 200), l("rail thick", 5, 80), l("below", -20, 400), l("across", -200, 200)
				if s.Screws != nil {
					s.Screws.Length, s.Screws.Count, s.Screws.FromEnd = l("screw", 10, 150), rapid.IntRange(0, 9).Draw(t, "count"), l("from end", 0, 60)
				}
			}
			for i := range d.Features {
				f := &d.Features[i]
				f.Width, f.Rise, f.Length, f.Diameter, f.Radius = l("w", 5, 400), l("rise", 5, 200), l("l", 5, 400), l("dia", 3, 200), l("r", 0, 30)
				f.X, f.Y = l("x", -400, 800), l("y", -300, 300)
			}
		})
		found := look(d)
		for _, f := range found {
			if problem := malformed(f); problem != "" {
				t.Fatalf("%s: %+v", problem, f)
			}
		}
		if again := look(d); !reflect.DeepEqual(found, again) {
			t.Fatalf("another look says otherwise:%s%s", describe(found), describe(again))
		}
	})
}
