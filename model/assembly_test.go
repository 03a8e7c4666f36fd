package model_test

import (
	"math"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// Of any piece of any form and joint either the order of assembly is proved free, or a stop says why
// there is none: no piece goes without both. Every part goes home once.
func TestEveryPieceGoesTogetherOrSaysWhyNot(t *testing.T) {
	forms := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := model.Derive(formtest.Random(rapid.Uint64().Draw(t, "piece")))
		if p.Stopped() {
			saysWhy(t, p)
			return
		}
		if len(p.Assembly.Stuck) > 0 {
			t.Fatalf("%v are stuck and nothing says so", p.Assembly.Stuck)
		}
		forms[p.Form+" "+p.Design.Corners.Joint]++
		homeOnce(t, p)
		blocks := map[string]*solid.Blocks{}
		for _, q := range p.Parts {
			blocks[q.ID] = q.Solid.Blocks(solid.Flattening)
		}
		for _, m := range p.Assembly.Moves {
			movesFreely(t, p, m, blocks)
		}
	})
	if len(forms) < 12 {
		t.Errorf("only these were seen: %v", forms)
	}
}

func saysWhy(t *rapid.T, p *form.Piece) {
	for _, f := range p.Findings {
		if f.Level == part.Stop && (f.Text == "" || len(f.Sizes) == 0) {
			t.Fatalf("half a reason: %+v", f)
		}
	}
}

func homeOnce(t *rapid.T, p *form.Piece) {
	seen := map[string]int{}
	for _, id := range p.Assembly.First {
		seen[id]++
	}
	for _, m := range p.Assembly.Moves {
		for _, id := range m.Parts {
			seen[id]++
		}
	}
	for _, q := range p.Parts {
		if seen[q.ID] == 0 {
			t.Fatalf("%s never goes home: %+v", q.ID, p.Assembly)
		}
	}
}

// rub, mm³, is what may be shared between the stations that the plan itself looks at: less than one pass
// of a scraper along a groove takes. The square habit, against which the stations are held, shares 70 mm³
// and more within half a millimetre.
const rub = 2.0

// spreads tells of a wedge and the rail whose tenon it drives apart: both are drawn as they are cut.
func spreads(wedge, rail *part.Part) bool {
	return wedge.Slip == part.Wedge && strings.HasPrefix(rail.ID, "stretcher-")
}

// stations of a move, mm from home: close together where joints still hold, and on until all is clear.
var moveStations = []float64{0, 0.2, 1, 3, 7, 15, 30, 60, 150, 400}

// movesFreely moves solids: at no station do a part that moves and another share wood.
func movesFreely(t *rapid.T, p *form.Piece, m form.Move, blocks map[string]*solid.Blocks) {
	way := func(id string) mgl64.Vec3 {
		for i, moving := range m.Parts {
			if moving == id {
				return m.Ways[i]
			}
		}
		return mgl64.Vec3{}
	}
	all := append(append([]string{}, m.Parts...), m.Onto...)
	for i, a := range all {
		for _, b := range all[:i] {
			if spreads(p.Part(a), p.Part(b)) || spreads(p.Part(b), p.Part(a)) {
				continue
			}
			apart := way(a).Sub(way(b))
			for _, back := range moveStations {
				if apart.Len() < 1e-9 && back > 0 {
					break // they keep together
				}
				s := apart.Mul(-back)
				place := part.Back(p.Part(b).Place).Mul4(mgl64.Translate3D(s[0], s[1], s[2])).Mul4(p.Part(a).Place)
				v, err := blocks[b].Overlap(blocks[a], place)
				if err != nil || math.Abs(v) > rub {
					t.Fatalf("%s: %s is %.4g mm from home and shares %.4g mm³ with %s (%v); %+v", p.Form+" "+p.Design.Corners.Joint, a, back, v, b, err, m)
				}
			}
		}
	}
}
