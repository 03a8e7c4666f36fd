package hold

import (
	"splaywright/model/part"
)

// The smallest rough boards that makers of planing machines allow, mm: 10 in long and 1 in wide on a
// jointer (https://manualsdump.com/en/manuals/grizzly-g0612/279751/24); 3/8 in thick without a holder,
// https://manualshive.com/en/manual/laguna/mjoin12x86-5-1-0130/670024?page=15 , which asks for 12 in of
// length.
const (
	shortestBlank = 254.0
	narrowest     = 25.4
	thinnest      = 9.525

	lengthSource = "10 in: jointer manual (https://manualsdump.com/en/manuals/grizzly-g0612/279751/24); others ask for 12 in: https://www.woodworkingarchive.biz/jointer-techniques/jointer-safety.html"
	widthSource  = "1 in: jointer manual, https://manualsdump.com/en/manuals/grizzly-g0612/279751/24"
	thinSource   = "3/8 in: jointer manual, https://manualshive.com/en/manual/laguna/mjoin12x86-5-1-0130/670024?page=15"
)

// blanks names the rough boards that are too short, narrow or thin to plane safely by machine. What
// the manual of the machine at hand says comes first.
func (r *reckoning) blanks() {
	short := Figure{ID: "blank-short", What: "length of the shortest rough board", Limit: shortestBlank, Source: lengthSource, Formula: "finished length + allowance",
		Sizes: []string{"allowance.length"}, Advice: "plane it as part of a longer board and crosscut it afterwards, or by hand"}
	narrow := Figure{ID: "blank-narrow", What: "width of the narrowest rough board", Limit: narrowest, Source: widthSource, Formula: "finished width + allowance",
		Sizes: []string{"allowance.width"}, Advice: "plane it as part of a wider board and rip it afterwards with a push stick, or by hand"}
	thin := Figure{ID: "blank-thin", What: "thickness of the thinnest rough board", Limit: thinnest, Source: thinSource, Formula: "finished thickness + allowance",
		Sizes: []string{"allowance.thickness"}, Advice: "plane it on a backing board, or by hand"}
	for _, q := range r.p.Parts {
		if q.Slip != "" {
			continue // cut from a strip
		}
		short.least(q.ID, q.Rough.Length.MM())
		narrow.least(q.ID, q.Rough.Width.MM())
		thin.least(q.ID, q.Rough.Thickness.MM())
	}
	for _, f := range []Figure{short, narrow, thin} {
		f.Least, f.Unit, f.Level, f.Caution = true, "mm", part.Note, CautionMachine
		if f.Over() && len(f.Parts) > 0 {
			r.add(f)
		}
	}
}

// least keeps the least value, and the parts below the limit.
func (f *Figure) least(id string, mm float64) {
	if f.Value == 0 || mm < f.Value {
		f.Value = mm
	}
	if mm < f.Limit {
		f.Parts = append(f.Parts, id)
	}
}
