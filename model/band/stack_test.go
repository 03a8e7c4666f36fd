package band

import (
	"math"
	"math/rand/v2"
	"testing"

	splay "splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// chain is a stack of pieces one after the other.
func chain(causes []Cause, nominal float64, by ...float64) Bands {
	m := model{causes: causes}
	m.figure("width-top", "all of it", "")
	m.built = func(off []float64) []float64 {
		sum := nominal
		for k, x := range off {
			sum += by[k] * x
		}
		return []float64{sum}
	}
	return m.bands()
}

// Fourteen pieces each 1/64 in off come to 0.219 in when all are off the same way, and to some 0.06 in by chance:
// https://woodworkersjournal.com/adding-to-my-errors/
func TestFourteenPiecesInARow(t *testing.T) {
	var causes []Cause
	var by []float64
	for range 14 {
		causes, by = append(causes, Cause{What: OfLength, Off: 25.4 / 64}), append(by, 1)
	}
	f := chain(causes, 500, by...).Figures[0]
	if in := f.Worst / 25.4; math.Abs(in-0.219) > 0.0005 {
		t.Errorf("worst %.4f in", in)
	}
	if in := f.Likely / 25.4; math.Abs(in-0.06) > 0.005 {
		t.Errorf("by chance %.4f in", in)
	}
}

// An octagon whose last joint gapes by 1/64 in over 2 in: 0.448° in all, 0.028° a cut:
// http://www.ts-aligner.com/accuratemiters.htm
func TestWhatACutOfAnOctagonMayBeOff(t *testing.T) {
	if got := PerCut(1./64, 2, 16); math.Abs(got-0.028) > 0.0005 || math.Abs(16*got-0.448) > 0.0005 {
		t.Errorf("%.4f° a cut", got)
	}
	d := form.Design{Title: "octagon", Form: "ring", Timber: "white oak"}
	d.Size.Height, d.Size.Width, d.Size.Staves = 100, 400, 8
	d.Boards.Side.Thickness = measure.Length(2 * 25.4 * math.Sin(67.5*math.Pi/180)) // its mitre is 2 in
	d.Corners.Joint = form.Mitre
	d.Tolerance.Angle = measure.Angle(0.028) * measure.Degree
	b := Of(splay.Derive(d))
	last := b.Figures[len(b.Figures)-1]
	if in := last.Worst / 25.4; math.Abs(in-1./64) > 0.0002 {
		t.Errorf("%s: %.5f in, want 1/64", last.What, in)
	}
}

// Two shelves of 23-1/2 in between three uprights of 21/32 in, let in 1/4 in each: 47.969 in. The case came out 48-1/4 in,
// so that each of the four dadoes is some 0.070 in shallow, if the uprights and the shelves are right; what was measured of a case:
// https://www.ridgidforum.com/forum/power-tools/woodworking-discussion-forum/3447-ok-how-d-i-mess-up
func TestShallowDadoesExplainALongCase(t *testing.T) {
	const in = 25.4
	causes := []Cause{{OfLength, "shelf-1", Length, in / 64}, {OfLength, "shelf-2", Length, in / 64},
		{OfThickness, "upright-1", Length, in / 128}, {OfThickness, "upright-2", Length, in / 128}, {OfThickness, "upright-3", Length, in / 128}}
	by := []float64{1, 1, 1, 1, 1}
	for range 4 {
		causes, by = append(causes, Cause{OfDepth, "upright", Length, in / 64}), append(by, -1)
	}
	nominal := (2*23.5 + 3*21./32 - 4*0.25) * in
	if math.Abs(nominal/in-47.969) > 0.0005 {
		t.Errorf("it should be %.4f in", nominal/in)
	}
	b := chain(causes, nominal, by...)
	reasons := b.Reasons([]Measured{{0, 48.25 * in}})
	found := false
	for i, r := range reasons {
		if len(r.Causes) == 4 && b.Causes[r.Causes[0]].What == OfDepth {
			found = true
			if i > 0 || math.Abs(r.Off/in+0.070) > 0.0005 || !r.Explains() {
				t.Errorf("%d: the dadoes are %.4f in off", i, r.Off/in)
			}
		}
	}
	if !found {
		t.Errorf("%+v", reasons)
	}
}

// Thousands of pieces whose cuts are off by chance: as many times as a normal cut is within what it holds to, so is the
// figure within what is likely; none comes out beyond the worst, and the worst is met where every cut is off the worse way; to a fiftieth, since
// bands are of the first order.
func TestBandsAgainstPiecesThrown(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 11))
	tried := 0
	for seed := range uint64(60) {
		p := splay.Derive(formtest.Random(seed))
		if p.Stopped() {
			continue
		}
		tried++
		b := Of(p)
		const pieces = 5000
		square := make([]float64, len(b.Figures))
		off := make([]float64, len(b.Causes))
		for range pieces {
			for k, c := range b.Causes {
				off[k] = r.NormFloat64() * c.Off / 2
			}
			for j, v := range b.built(off) {
				square[j] += (v - b.Figures[j].Nominal) * (v - b.Figures[j].Nominal)
			}
			for k, c := range b.Causes {
				off[k] = c.Off * float64(1-2*r.IntN(2))
			}
			for j, v := range b.built(off) {
				if f := b.Figures[j]; math.Abs(v-f.Nominal) > f.Worst*1.02+1e-9 {
					t.Fatalf("%d, %s: %s comes out %g off, the worst is %g", seed, p.Form, f.What, v-f.Nominal, f.Worst)
				}
			}
		}
		for j, f := range b.Figures {
			if likely := 2 * math.Sqrt(square[j]/pieces); math.Abs(likely-f.Likely) > 0.06*f.Likely {
				t.Errorf("%d, %s: %s is thrown to ±%g, told ±%g", seed, p.Form, f.What, likely, f.Likely)
			}
			for k, by := range f.By {
				off[k] = math.Copysign(b.Causes[k].Off, by)
			}
			if got := b.built(off)[j] - f.Nominal; math.Abs(got-f.Worst) > 0.02*f.Worst {
				t.Errorf("%d, %s: the worst of %s is %g, told %g", seed, p.Form, f.What, got, f.Worst)
			}
		}
	}
	if tried < 40 {
		t.Errorf("only %d pieces", tried)
	}
}

// A cut of a random piece that is off is found from what is measured of the whole, and by how much it is.
func TestReasonsFindTheCut(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	found := 0
	for seed := range uint64(200) {
		p := splay.Derive(formtest.Random(seed))
		if p.Stopped() {
			continue
		}
		b := Of(p)
		k := r.IntN(len(b.Causes))
		by := b.Causes[k].Off * (8 + 20*r.Float64())
		if r.IntN(2) == 0 {
			by = -by
		}
		var measured []Measured
		for j, v := range b.values([]int{k}, by) {
			if b.Figures[j].Key != "" {
				measured = append(measured, Measured{j, v})
			}
		}
		if worst(measured, b.values(nil)) <= Reading {
			if got := b.Reasons(measured); got != nil {
				t.Errorf("%d: of what no rule sees %+v is the reason", seed, got)
			}
			continue
		}
		reasons := b.Reasons(measured)
		if len(reasons) == 0 || !reasons[0].Explains() {
			t.Errorf("%d, %s: nothing explains %s of %s off by %g", seed, p.Form, b.Causes[k].What, b.Causes[k].Part, by)
			continue
		}
		for i, x := range reasons {
			if len(x.Causes) == 1 && x.Causes[0] == k {
				found++
				if math.Abs(x.Off-by) > 1e-6*math.Abs(by)+1e-6 || x.Left > 1e-6 {
					t.Errorf("%d, %s: %s of %s is off by %g, found %g, %g left (%d)", seed, p.Form, b.Causes[k].What, b.Causes[k].Part, by, x.Off, x.Left, i)
				}
			}
		}
	}
	if found < 60 {
		t.Errorf("only %d cuts were found", found)
	}
}

func BenchmarkBands(b *testing.B) {
	p := splay.Derive(formtest.Full())
	for b.Loop() {
		if len(Of(p).Figures) == 0 {
			b.Fatal("no figures")
		}
	}
}

// Five thousand pieces by chance.
func BenchmarkFiveThousandPieces(b *testing.B) {
	bands := Of(splay.Derive(formtest.Full()))
	off := make([]float64, len(bands.Causes))
	r := rand.New(rand.NewPCG(1, 2))
	for b.Loop() {
		for range 5000 {
			for k, c := range bands.Causes {
				off[k] = c.Off * (2*r.Float64() - 1)
			}
			bands.built(off)
		}
	}
}
