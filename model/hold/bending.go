package hold

import (
	"fmt"
	"math"

	"splaywright/model/form"
	"splaywright/model/part"
)

const (
	// sagShare of the span is where a seat begins to feel springy: the 1/360 of floors (common practice).
	sagShare = 1. / 360
	// reserve is what clear wood's strength is divided by for knots, sloping grain, age and shocks
	// (common practice).
	reserve = 3

	beamFormula = "W·L³/(48·E·I) + 4·W·L/(E·A′)"
	beamSource  = "FPL-GTR-190 (2010) Table 9-1 (https://fliphtml5.com/kbpub/hdrb/Wood_Handbook/217); stiffness and strength of clear wood from the species table"
	sagSource   = beamSource + "; limit: span/360, common practice"
	bendSource  = beamSource + "; limit: a third of the clear wood's strength, common practice"
)

// bending is the top, and the stretchers that touch its lower face, under the load in the middle.
func (r *reckoning) bending() {
	top, _, ok := r.beam(r.d.Boards.Top.Timber, r.wide, r.d.Boards.Top.Thickness.MM())
	if !ok {
		return
	}
	beams, names := []Beam{top}, []string{r.top.ID}
	for _, s := range r.seat.Rails {
		if !helps(s.Stretcher) {
			continue
		}
		if b, _, ok := r.beam(s.Timber, s.Thickness.MM(), s.Width.MM()); ok {
			beams, names = append(beams, b), append(names, s.ID)
		}
	}
	shares := Together(beams, r.load)
	alone := top.Sag(MiddleOnTwo, r.load, r.span)
	sag := top.Sag(MiddleOnTwo, shares[0], r.span)
	advice := "a thicker top, or a stretcher on edge right under it"
	if len(beams) > 1 {
		advice = "a thicker top or a higher stretcher"
		without := "sag of " + r.the() + " without its stretcher"
		if len(beams) > 2 {
			without += "s"
		}
		r.add(Figure{ID: "sag-without-stretcher", What: without, Value: alone, Unit: "mm",
			Formula: beamFormula, Source: beamSource, Parts: []string{r.top.ID}, Sizes: []string{"boards.top.thickness", "size.width"}, Level: part.Note})
	}
	r.add(Figure{ID: "top-sags", What: fmt.Sprintf("sag of %s under %s in the middle", r.the(), weight(r.d, float64(r.d.Use.Load))), Value: sag, Limit: r.span * sagShare, Unit: "mm",
		Formula: beamFormula, Source: sagSource, Parts: names,
		Sizes: []string{"boards.top.thickness", "stretchers", "size.width"}, Advice: advice, Level: part.Note})
	r.openings(top, shares[0])
	for i, b := range beams {
		r.add(Figure{ID: "bends-too-far", What: "bending stress of " + r.nameOf(names[i]), Value: b.MiddleStress(shares[i], r.span), Limit: b.MOR / reserve, Unit: "MPa",
			Formula: "W·L/4 · h/2 / I", Source: bendSource, Parts: []string{names[i]},
			Sizes: []string{"boards.top.thickness", "stretchers", "size.width"}, Advice: advice, Level: part.Warning})
	}
}

// openings are the holes right through the top: beside one the wood that is left takes all of the bending there. What bends less
// than the whole top in the middle is passed over.
func (r *reckoning) openings(top Beam, load float64) {
	for _, f := range r.top.Features {
		if f.Depth > 0 || (f.Kind != part.Hole && f.Kind != part.HandHole && f.Kind != part.Slot) {
			continue
		}
		along, across := reaches(f)
		off := max(0, math.Abs(r.top.Place.Mul4x1(f.Centre.Vec4(0, 1))[0]-r.mid)-along)
		left := top
		if left.Width -= across; left.Width <= 0 {
			continue
		}
		at := left.MiddleStress(load, max(0, r.span-2*off))
		if at <= top.MiddleStress(load, r.span) {
			continue
		}
		path := fmt.Sprintf("features.%d.", f.Index)
		r.add(Figure{ID: "bends-at-opening", What: fmt.Sprintf("bending stress of %s beside its %s", r.the(), f.Kind), Value: at, Limit: top.MOR / reserve, Unit: "MPa",
			Formula: "W·(L − 2·way from the middle)/4 · h/2 / I of the width that the opening leaves", Source: bendSource, Parts: []string{r.top.ID},
			Sizes: append(turning(r.d.Features[f.Index], path), "boards.top.thickness"), Advice: "the opening nearer to an end, or its long direction along the grain; or a thicker top", Level: part.Warning})
	}
}

// helps tells whether a stretcher carries the top: it stands on edge and touches the lower face.
func helps(s form.Stretcher) bool { return s.Set == form.OnEdge && s.BelowTop.MM() < 0.5 }

// nameOf is a part in a sentence.
func (r *reckoning) nameOf(id string) string {
	switch q := r.p.Part(id); id {
	case r.top.ID:
		return seatName(q)
	case "apron-front":
		return "the front apron"
	case "apron-back":
		return "the back apron"
	}
	if q := r.p.Part(id); q != nil && len(r.d.Stretchers) > 1 {
		return "s" + q.Name[1:] // "stretcher 2"
	}
	return "the stretcher"
}
