package hold_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/hold"
	"splaywright/model/measure"
	"splaywright/model/part"
)

func figure(t *testing.T, d form.Design, id string) hold.Figure {
	t.Helper()
	for _, f := range hold.Figures(form.Build(d)) {
		if f.ID == id {
			return f
		}
	}
	t.Fatalf("no figure %q", id)
	return hold.Figure{}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: %.5f, want %.5f ± %g", what, got, want, within)
	}
}

// bench is the worked example drawn out to a bench of a length, mm.
func bench(length measure.Length) form.Design {
	d := formtest.WorkedExample()
	d.Size.Width, d.Size.Height = length, 450
	return d
}

// By hand, another way round: the sides are 20/cos 6° thick measured level, and at the top's lower
// face they stand 20·tan 6° farther out, so the clear width is 420 + 2·2.1021 − 2·20.1102 = 383.984.
// White oak: 1.78 million lbf/in² = 12,272.7 MPa. I = 250·20³/12, A′ = 5·250·20/6.
func TestSagOfTheWorkedExample(t *testing.T) {
	w, l, e := 150*9.80665, 420+2*20*math.Tan(6*math.Pi/180)-2*20/math.Cos(6*math.Pi/180), 1.78e6*0.00689475729316836
	want := w*l*l*l/48/e/(250*8000/12.) + w*l/4/(e/16)/(5*250*20/6.)
	near(t, "sag", figure(t, formtest.WorkedExample(), "top-sags").Value, want, 1e-9)
	near(t, "stress", figure(t, formtest.WorkedExample(), "bends-too-far").Value, w*l/4*10/(250*8000/12.), 1e-9)
}

// Open case, thread "Lumber thickness for bench": 200 lb on two legs that lean 10° push
// 100·tan 10° = 17.6 lb outward at each.
func TestOutwardPush(t *testing.T) {
	d := formtest.WorkedExample()
	d.Splay.Ends, d.Use.Load = 10*measure.Degree, 91
	near(t, "push", figure(t, d, "outward-push").Value/(91*9.80665), 17.633/200, 1e-5)
}

// A long bench is springy; a stretcher on edge right under its top is what the finding proposes, and
// it does help. Open case, thread "Trying to build a bench": no apron 46 mm, one 3.3.
func TestAStretcherUnderTheTopStopsTheSag(t *testing.T) {
	d := bench(1300)
	over := figure(t, d, "top-sags")
	if !over.Over() {
		t.Fatalf("a bench of 1300 sags only %.1f mm of %.1f", over.Value, over.Limit)
	}
	d.Stretchers = []form.Stretcher{{Width: 100, Thickness: 20, Set: form.OnEdge}}
	if held := figure(t, d, "top-sags"); held.Over() || held.Value > over.Value/5 {
		t.Errorf("with a stretcher it sags %.1f mm, without %.1f", held.Value, over.Value)
	}
	d.Stretchers[0].BelowTop = 40
	if free := figure(t, d, "top-sags"); !free.Over() {
		t.Error("a stretcher that does not touch the top was counted")
	}
}

// What an apron buys, of the same thread: an organ bench of 130 cm with a seat of 30 cm × 16 mm sags 46 mm under 80 kg,
// 3.3 with an apron 10 cm high and 1.7 with two. Its stiffness is assumed, so the figures are compared with each other;
// boards of 18 mm and a span clear of them give 46 itself.
func TestWhatAnApronBuys(t *testing.T) {
	bend := hold.Support{Bending: 1. / 48}
	seat, apron := hold.Beam{Width: 300, Height: 16, MOE: 7000}, hold.Beam{Width: 16, Height: 100, MOE: 7000}
	for aprons, want := range []float64{46, 3.3, 1.7} {
		beams := []hold.Beam{seat}
		for range aprons {
			beams = append(beams, apron)
		}
		load := hold.Together(beams, 80*9.80665)[0]
		near(t, "sag", seat.Sag(bend, load, 1300-2*18), want, 0.1)
	}
}

// A finding names the figure, the limit, what would do and where it comes from, and warns.
func TestFindingsOfALongBench(t *testing.T) {
	p := form.Build(bench(1600))
	found := hold.Run(p)
	ids := map[string]part.Finding{}
	for _, f := range found {
		ids[f.ID] = f
	}
	f, ok := ids["top-sags"]
	if !ok {
		t.Fatalf("findings: %+v", found)
	}
	for _, want := range []string{"what would do", "local codes", "mm"} {
		if !strings.Contains(f.Text, want) {
			t.Errorf("%q is missing in: %s", want, f.Text)
		}
	}
	if f.Source == "" || !(f.Figure > f.Limit) || len(f.Sizes) == 0 {
		t.Errorf("%+v", f)
	}
}

// Screws into a stretcher's end grain should not be what holds leaning sides together.
func TestEndGrainScrewsAsATie(t *testing.T) {
	d := bench(900)
	d.Splay.Ends, d.Timber = 25*measure.Degree, "eastern white pine"
	d.Boards = form.Boards{Top: form.Board{Thickness: 25}, Side: form.Board{Thickness: 25}}
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, Set: form.OnEdge, Joint: form.Butt,
		Screws: &form.Screws{Gauge: 6, Length: 40, Count: 1}}}
	f := figure(t, d, "end-grain-screws-pull")
	if !f.Over() || f.Level != part.Warning {
		t.Errorf("a single small screw in pine holds %.0f N of %.0f", f.Limit, f.Value)
	}
	d.Stretchers[0].Joint = form.Housing
	if g := figure(t, d, "stretcher-pull"); g.Limit != 0 {
		t.Error("a housed stretcher was judged by its screws")
	}
}

// Cherry on oak: over 500 mm of depth from 30 to 65 % humidity the boards part.
func TestUnlikeTimbersMoveApart(t *testing.T) {
	d := formtest.WorkedExample()
	d.Size.Depth = 500
	d.Boards.Top.Timber, d.Boards.Side.Timber = "white oak", "black cherry"
	f := figure(t, d, "boards-move-apart")
	if !f.Over() {
		t.Errorf("oak and cherry move %.2f mm apart, limit %.2f", f.Value, f.Limit)
	}
	d.Boards.Side.Timber = "white oak"
	for _, g := range hold.Figures(form.Build(d)) {
		if g.ID == "boards-move-apart" {
			t.Error("one timber cannot move apart from itself")
		}
	}
}

// A piece in the air of one humidity only does not move; a timber without figures says nothing.
func TestNothingIsReckonedFromNothing(t *testing.T) {
	d := formtest.WorkedExample()
	d.Use.Dry, d.Use.Damp = 50, 50
	near(t, "no change of air", figure(t, d, "top-moves").Value, 0, 1e-12)
	d.Timber = "driftwood"
	for _, f := range hold.Figures(form.Build(d)) {
		if f.ID == "top-moves" || f.ID == "top-sags" {
			t.Errorf("%s was reckoned for an unknown timber", f.ID)
		}
	}
}

func BenchmarkFigures(b *testing.B) {
	p := form.Build(formtest.Full())
	for b.Loop() {
		if len(hold.Figures(p)) == 0 {
			b.Fatal("nothing reckoned")
		}
	}
}

// A pull that two stretchers share is half of what one has, and its formula says so.
func TestFormulasSayWhoSharesAPull(t *testing.T) {
	d := formtest.WorkedExample()
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 80, Joint: form.Housing, Depth: 6}}
	alone := map[string]hold.Figure{"stretcher-pull": figure(t, d, "stretcher-pull"), "racking-pull": figure(t, d, "racking-pull")}
	second := d.Stretchers[0]
	d.Stretchers[0].Across, second.Across = -60, 60
	d.Stretchers = append(d.Stretchers, second)
	for id, one := range alone {
		two := figure(t, d, id)
		if math.Abs(two.Value-one.Value/2) > 1e-9 || two.Formula != one.Formula+" / 2 stretchers" {
			t.Errorf("%s: alone %g by %q, of two %g by %q", id, one.Value, one.Formula, two.Value, two.Formula)
		}
	}
}
