package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/stock"
	"splaywright/model/timber"
	"splaywright/model/yield"
)

// keptTogether says how parts lie that are kept together for their grain: of every board that is resawn how its thickness
// is shared out, and what to mind.
//
// The faces that the saw made are planed as little as may be, so that they stay alike: Wood magazine, four-corner grain
// match, https://www.woodmagazine.com/4corner . The cautions are the usual ones of resawing (common practice).
func keptTogether(s *sheet, r yield.Result) {
	inARow(s, r)
	high := 0.0
	for i := range r.Plan.Layouts {
		for _, o := range r.Opened(i) {
			high = max(high, o.Piece.Width())
			s.note(fmt.Sprintf("%+s is resawn in its thickness: half A, the upper one, comes out %s and half B %s thick, with a saw cut of %s between; the cut is measured from the upper face.",
				BoardName(r, i), s.exactly(o.Thick[0]), s.exactly(o.Thick[1]), s.exactly(r.Task.Saw.Resaw)))
			if o.Walls {
				s.note("Rims lie along the near edge. Open the halves like a book: the faces that the saw left become the outer ones, and the grain runs over every corner. Cuts in half A and half B are measured on that face, rim up, from its left end and its lower edge, as the drawing shows them.")
			} else {
				s.note("Upper ends lie at the left, front edges along the near edge. Open the halves like a book: the faces that the saw left become the outer ones, and mirror each other. Cuts in half A and half B are measured on that face from its left end and its lower edge, as the drawing shows them.")
			}
		}
	}
	if high == 0 {
		return
	}
	s.note(fmt.Sprintf("Resawing comes when the boards are cut up, with the piece whole and %s high on its edge: joint a face and that edge first, and see that the saw takes the height.",
		s.style.FormatUnit(mm(high))))
	s.note("Resaw on a bandsaw with its guard just above the wood, a fence about half as high or higher and a featherboard before the blade; push the end through with a block, hands never in line with the blade. A piece that is cupped, short or hard to hold is not resawn, and none freehand; a table saw that loses its guard for this cut throws wood back. The saw's manual comes first.")
	s.note("Let the halves lie with sticks between for some days: wood that was inside a board moves when it comes out. Plane their sawn faces only clean, and take the rest off the other face, so that the figures stay alike.")
}

// inARow says how the parts of a run lie in their board.
func inARow(s *sheet, r yield.Result) {
	for _, run := range r.Task.Runs {
		switch {
		case run.Kind != stock.Along || !placed(r, run):
		case strings.HasPrefix(run.IDs[0], "side-"):
			s.note("In the run outer faces lie up and front edges along the near edge; the floor end of the first side lies at the left, that of the last at the right.")
		default:
			s.note("In the run outer faces lie up and lower edges along the near edge; the walls follow each other from left to right as one walks round outside.")
		}
	}
}

// placed tells whether a run has its place in the plan.
func placed(r yield.Result, run stock.Run) bool {
	return len(run.IDs) > 0 && slices.ContainsFunc(r.Plan.Layouts, func(l stock.Layout) (found bool) {
		l.Each(func(q *stock.Piece, _ int) {
			found = found || q.Kind == stock.Part && q.Run > 0 && r.Task.Runs[q.Run-1].Name == run.Name
		})
		return found
	})
}

// resawnNote says in the cut list which parts come out of one board, and how thick that has to be.
func resawnNote(s *sheet, p *form.Piece) {
	one := *p
	one.Design.Plan.Pieces = 1
	task := yield.Task(&one)
	for _, run := range task.Runs {
		if run.Kind != stock.Resawn {
			continue
		}
		var marks []string
		for _, id := range run.IDs {
			marks = append(marks, p.Part(id).Mark)
		}
		s.note(fmt.Sprintf("Resawn: %s come out of one board, %s thick with saw cut and planing, as the board plan shows; the figures here are for a board each.",
			and(marks), s.exactly(run.Thickness(task))))
	}
}

// noBoardFor says of what no board is of its timber and thick enough for what thickness it wants, what there is and what
// would do.
func noBoardFor(s *sheet, r yield.Result, what, own string, wants float64, wanted []stock.Demand, parts []*part.Part) []string {
	text := fmt.Sprintf("%s wants %s of thickness and fits no board.", what, s.exactly(wants))
	if !slices.ContainsFunc(r.Task.Boards, func(b stock.Board) bool { return own == "" || b.Timber == "" || b.Timber == own }) {
		text = fmt.Sprintf("%s fits no board.", what)
	}
	return []string{text, thickestOf(s, r, own, wants, wanted), wouldDo(parts, own, wants)}
}

// noBoardForRun says the same of a run.
func noBoardForRun(s *sheet, r yield.Result, run stock.Run) []string {
	what := runName(run)
	own, one := run.Timber(r.Task)
	if !one {
		return []string{fmt.Sprintf("%s is of several timbers, %s, and comes out of one board: give its parts one timber.", what, and(timbersIn(r, run)))}
	}
	wants := run.Thickness(r.Task)
	if run.Kind == stock.Along {
		var wanted []stock.Demand
		for _, k := range run.Parts {
			wanted = append(wanted, r.Task.Demands[k])
		}
		return noBoardFor(s, r, what, own, wants, wanted, r.Parts[run.Parts[0]])
	}
	split := run.Thicknesses(r.Task)
	text := fmt.Sprintf("What is resawn from one board wants %s of thickness, %s and %s with what is planed off and a saw cut of %s between, and fits no board.",
		s.exactly(wants), s.exactly(split[0]), s.exactly(split[1]), s.exactly(r.Task.Saw.Resaw))
	return []string{text, thickestOf(s, r, own, wants, []stock.Demand{run.Whole(r.Task)}), wouldDo(r.Parts[run.Parts[0]], own, wants)}
}

// runName is what a run is called where a sentence is about it.
func runName(run stock.Run) string {
	if run.Kind == stock.Resawn {
		return "What is resawn from one board"
	}
	return "The run " + run.Name
}

// thickestOf says how near the boards of a timber come to a thickness, planed flat when what is wanted of them is sawn out.
func thickestOf(s *sheet, r yield.Result, own string, wants float64, wanted []stock.Demand) string {
	thickest, enough, left := -1, -1, make([]float64, len(r.Task.Boards)) // the thickest, and the thinnest of those that are thick enough
	for i, b := range r.Task.Boards {
		if own != "" && b.Timber != "" && b.Timber != own {
			continue
		}
		left[i] = flatOf(b, wanted)
		if thickest < 0 || left[i] > left[thickest] {
			thickest = i
		}
		if left[i] >= wants && (enough < 0 || left[i] < left[enough]) {
			enough = i
		}
	}
	if thickest < 0 {
		return fmt.Sprintf("No board is of %s.", own)
	}
	if enough >= 0 {
		b := r.Task.Boards[enough]
		return fmt.Sprintf("%+s is %s thick, of which no more than %s may be planed off.", b.Name, s.exactly(b.Thickness), s.exactly(r.Task.Saw.Planing))
	}
	b := r.Task.Boards[thickest]
	switch {
	case left[thickest] <= 0:
		return fmt.Sprintf("%+s is the thickest of its timber, %s, and so far from flat that nothing would be left of it at that size.", b.Name, s.exactly(b.Thickness))
	case left[thickest] < b.Thickness-stock.Slack:
		return fmt.Sprintf("%+s keeps most of its timber: %s thick and not flat, it comes out %s at that size.", b.Name, s.exactly(b.Thickness), s.exactly(left[thickest]))
	}
	return fmt.Sprintf("%+s is the thickest of its timber, %s.", b.Name, s.exactly(b.Thickness))
}

// wouldDo says what to ask for that is thick enough: half of what is planed off the parts comes off faces that are clean
// in what a yard sells.
func wouldDo(parts []*part.Part, own string, wants float64) string {
	ladder, text := timber.HardwoodThickness, "Of what is sold, %s rough would do."
	if s, ok := timber.Find(own); ok && s.Wood == timber.Softwood {
		ladder, text = timber.SoftwoodThickness, "Of what is sold, a nominal thickness of %s in would do."
	}
	planed := measure.Length(0)
	if len(parts) > 0 {
		planed = parts[0].Rough.Thickness - parts[0].Blank.Thickness
	}
	if sold, ok := timber.Bought(ladder, mm(wants)-planed, mm(wants)); ok {
		return fmt.Sprintf(text, sold.Nominal)
	}
	return "Nothing that is commonly sold is as thick: make the parts thinner, or leave them out of one board."
}

func timbersIn(r yield.Result, run stock.Run) (out []string) {
	for _, k := range run.Parts {
		if name := r.Task.Demands[k].Timber; name != "" {
			out = appendNew(out, name)
		}
	}
	return out
}

// exactly says a length that no rounding of the papers may touch: half a millimetre less and a board does not do.
func (s *sheet) exactly(length float64) string {
	return s.exactLength(mm(length)).Text + " " + lengthUnit(s.style)
}
