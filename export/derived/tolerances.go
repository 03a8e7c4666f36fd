package derived

import (
	"splaywright/model/band"
	"splaywright/model/form"
)

// toleranceJSON is a figure of the finished piece with what it may come out by, plus or minus; measured is there where the
// design says what it came out at.
type toleranceJSON struct {
	ID       string   `json:"id"`
	What     string   `json:"what"`
	Part     string   `json:"part,omitempty"`
	Designed float64  `json:"designed"`
	Likely   float64  `json:"likely"`
	Worst    float64  `json:"worst"`
	Measured *float64 `json:"measured,omitempty"`
}

// reasonJSON is a fault that would explain what was measured: each of these cuts off by so much.
type reasonJSON struct {
	What     string   `json:"what"`
	Parts    []string `json:"parts"`
	Off      float64  `json:"off"`
	Unit     string   `json:"unit"`
	Times    float64  `json:"times_tolerance"`
	Left     float64  `json:"left_over"`
	Explains bool     `json:"explains"`
}

func tolerancesOf(p *form.Piece) []toleranceJSON {
	b := band.Of(p)
	out := each(b.Figures, func(f band.Figure) toleranceJSON {
		return toleranceJSON{ID: f.ID, What: f.What, Part: f.Part, Designed: f.Nominal, Likely: f.Likely, Worst: f.Worst}
	})
	for _, m := range b.Measured(p.Design.CameOut) {
		out[m.Figure].Measured = &m.At
	}
	return out
}

func reasonsOf(p *form.Piece) []reasonJSON {
	b := band.Of(p)
	return each(b.Reasons(b.Measured(p.Design.CameOut)), func(r band.Reason) reasonJSON {
		first := b.Causes[r.Causes[0]]
		out := reasonJSON{What: first.What, Off: r.Off, Unit: "mm", Times: r.Times, Left: r.Left, Explains: r.Explains()}
		if first.Unit == band.Degree {
			out.Unit = "deg"
		}
		for _, k := range r.Causes {
			out.Parts = append(out.Parts, b.Causes[k].Part)
		}
		return out
	})
}
