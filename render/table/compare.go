package table

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"splaywright/model/form"
	"splaywright/model/hold"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Compare sets pieces side by side: sizes and their ratios, every part's blank and cuts, the joints,
// and what was reckoned of them in use. The last column says what is the same in all.
func Compare(pieces []*form.Piece, style measure.Style) Table {
	s := &comparison{sheet: newSheet("compare", "Side by side", style), pieces: pieces}
	s.words("What", "Unit")
	for _, p := range pieces {
		s.Columns = append(s.Columns, Column{Head: p.Title, Align: Right, Own: true})
	}
	s.words("Change")
	s.sizes()
	for _, id := range s.ids() {
		s.part(id)
	}
	s.joints()
	s.holding()
	s.cost()
	s.stops()
	s.note("Same: alike to what the papers show. Change: from the first to the last.")
	return s.Said(s.style)
}

type comparison struct {
	*sheet
	pieces []*form.Piece
}

// compared is a value that a piece may not have.
type compared struct {
	x  float64
	ok bool
}

// line adds a row of one value a piece, shown to so many decimals.
func (s *comparison) line(ref, what, unit string, decimals int, of func(p *form.Piece) compared) {
	_, shown := s.style.Unit.In(0, unit)
	in := func(p *form.Piece) compared {
		c := of(p)
		c.x, _ = s.style.Unit.In(c.x, unit)
		return c
	}
	s.values(ref, what, shown, in, func(x float64) Cell { return figure(x, decimals) },
		func(first, last float64) string {
			return fmt.Sprintf("%+.*f", decimals, shownAs(last, decimals)-shownAs(first, decimals))
		})
}

// shownAs is a figure rounded as it is shown: a change is the difference of what stands there.
func shownAs(x float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(x*p) / p
}

// values adds a row of one value a piece; rows without any value are left out.
func (s *comparison) values(ref, what, unit string, of func(p *form.Piece) compared, cell func(x float64) Cell, changed func(first, last float64) string) {
	row, first, last := []Cell{word(what), word(unit)}, compared{}, compared{}
	same, any := true, false
	for i, p := range s.pieces {
		v := of(p)
		any = any || v.ok
		if !v.ok {
			row, same = append(row, Cell{}), false
			continue
		}
		row = append(row, cell(v.x))
		if i == 0 {
			first = v
		}
		last = v
		same = same && first.ok && row[2].Text == row[len(row)-1].Text
	}
	if !any {
		return
	}
	change := "same"
	switch {
	case same:
	case !first.ok || !of(s.pieces[len(s.pieces)-1]).ok:
		change = "not in all"
	case row[2].Text == row[len(row)-1].Text: // it is another between them
		change = "differs"
	default:
		change = changed(first.x, last.x)
	}
	s.row(ref, append(row, word(change))...)
}

// texts adds a row of words.
func (s *comparison) texts(what string, of func(p *form.Piece) string) {
	row, change := []Cell{word(what), word("")}, "same"
	for i, p := range s.pieces {
		t := of(p)
		if i > 0 && t != row[2].Text {
			change = "differs"
		}
		row = append(row, Cell{Text: t})
	}
	if change == "differs" && (row[2].Text == "" || row[len(row)-1].Text == "") {
		change = "not in all"
	}
	s.row("", append(row, word(change))...)
}

// mostWhole is the largest number of a ratio that is still told by the eye.
const mostWhole = 13

// wholeRatio is the ratio of whole numbers up to mostWhole that comes nearest; "=" tells that it is met
// to a thousandth, "≈" that it is not.
func wholeRatio(x float64) string {
	best, off := [2]int{1, 1}, math.Inf(1)
	for p := 1; p <= mostWhole; p++ {
		for q := 1; q <= mostWhole; q++ {
			if d := math.Abs(math.Log(x * float64(q) / float64(p))); d < off-1e-12 {
				best, off = [2]int{p, q}, d
			}
		}
	}
	sign := "≈"
	if off < 1e-3 {
		sign = "="
	}
	return fmt.Sprintf("%s %d : %d", sign, best[0], best[1])
}

// length adds a row of lengths as every paper shows them; what changes is the difference of what is shown.
func (s *comparison) length(ref, what string, of func(p *form.Piece) (measure.Length, bool)) {
	s.lengthIn(s.style, ref, what, of)
}

func (s *comparison) lengthIn(style measure.Style, ref, what string, of func(p *form.Piece) (measure.Length, bool)) {
	in := &sheet{style: style}
	plain := style
	plain.Both = false
	s.values(ref, what, lengthUnit(style), func(p *form.Piece) compared {
		l, ok := of(p)
		return compared{l.MM(), ok}
	}, func(mm float64) Cell { return in.length(measure.Length(mm)) }, func(first, last float64) string {
		from, _ := style.Round(measure.Length(first))
		to, _ := style.Round(measure.Length(last))
		if to < from {
			return "-" + plain.Format(from-to)
		}
		return "+" + plain.Format(to-from)
	})
}

func (s *comparison) sizes() {
	whole := func(what string, of func(form.Overall) measure.Length) {
		s.length("", what, func(p *form.Piece) (measure.Length, bool) { return of(p.Overall), isBuilt(p) })
	}
	whole("height", func(o form.Overall) measure.Length { return o.Height })
	whole("width at the top", func(o form.Overall) measure.Length { return o.WidthTop })
	whole("width at the floor", func(o form.Overall) measure.Length { return o.WidthFloor })
	whole("depth at the top", func(o form.Overall) measure.Length { return o.DepthTop })
	whole("depth at the floor", func(o form.Overall) measure.Length { return o.DepthFloor })
	ratioOf := func(what string, a, b func(form.Overall) measure.Length) {
		s.line("", what, "", 2, func(p *form.Piece) compared {
			below := b(p.Overall)
			return compared{float64(a(p.Overall) / below), below > 0}
		})
		s.texts(fmt.Sprintf("%s, nearest whole numbers", what), func(p *form.Piece) string {
			if below := b(p.Overall); below > 0 && a(p.Overall) > 0 {
				return wholeRatio(float64(a(p.Overall) / below))
			}
			return ""
		})
	}
	height := func(o form.Overall) measure.Length { return o.Height }
	width := func(o form.Overall) measure.Length { return o.WidthTop }
	depth := func(o form.Overall) measure.Length { return o.DepthTop }
	ratioOf("width : height", width, height)
	ratioOf("width : depth", width, depth)
	ratioOf("height : depth", height, depth)
	s.line("", "splay of the ends", "deg", 2, func(p *form.Piece) compared { return compared{p.Design.Splay.Ends.Degrees(), true} })
	s.line("", "splay of the edges", "deg", 2, func(p *form.Piece) compared { return compared{p.Design.Splay.Edges.Degrees(), true} })
	s.line("", "weight", "kg", 2, func(p *form.Piece) compared { return compared{p.Overall.Mass, isBuilt(p) && p.Weighed()} })
	s.line("", "wood at rough size", "bd ft", 2, func(p *form.Piece) compared {
		feet := 0.
		for _, q := range p.Parts {
			_, rough := q.Lying()
			feet += boardFeet(rough)
		}
		return compared{feet, isBuilt(p)}
	})
}

// isBuilt tells whether a piece has parts; one that was stopped before them has no sizes either.
func isBuilt(p *form.Piece) bool { return len(p.Parts) > 0 }

// stops say of every piece that something stops what that is.
func (s *comparison) stops() {
	for _, p := range s.pieces {
		for _, f := range p.Findings {
			if f.Level == part.Stop {
				s.note(fmt.Sprintf("%+s: something stops it, and what does not stand here is not known. %s", p.Title, f.Text))
				break
			}
		}
	}
}

// ids are the parts of all pieces in the order in which they first appear.
func (s *comparison) ids() []string {
	var out []string
	seen := map[string]bool{}
	for _, p := range s.pieces {
		for _, q := range p.Parts {
			if !seen[q.ID] {
				seen[q.ID] = true
				out = append(out, q.ID)
			}
		}
	}
	return out
}

func (s *comparison) part(id string) {
	name := id
	var cuts []string
	for _, p := range s.pieces {
		if q := p.Part(id); q != nil {
			name = q.Name
			if len(q.Cuts) > len(cuts) {
				cuts = cuts[:0]
				for _, c := range q.Cuts {
					cuts = append(cuts, c.ID)
				}
			}
		}
	}
	box := func(what string, of func(part.Box) measure.Length) {
		s.length(id, name+": "+what, func(p *form.Piece) (measure.Length, bool) {
			q := p.Part(id)
			if q == nil {
				return 0, false
			}
			return of(q.Blank), true
		})
	}
	box("length", func(b part.Box) measure.Length { return b.Length })
	box("width", func(b part.Box) measure.Length { return b.Width })
	box("thickness", func(b part.Box) measure.Length { return b.Thickness })
	for _, c := range cuts {
		s.cut(id, name, c)
	}
}

func (s *comparison) cut(id, name, cutID string) {
	angleOf := func(what string, of func(part.Cut) measure.Angle) {
		found := false
		get := func(p *form.Piece) compared {
			_, c, ok := findCut(p, id+"/"+cutID)
			found = found || ok && !straight(of(c))
			return compared{of(c).Degrees(), ok}
		}
		for _, p := range s.pieces {
			get(p)
		}
		if found {
			s.line(id+"/"+cutID, name+": "+cutName(cutID)+", "+what, "deg", 2, get)
		}
	}
	angleOf("swing", func(c part.Cut) measure.Angle { return c.Swing })
	angleOf("tilt", func(c part.Cut) measure.Angle { return c.Tilt })
}

// joints compares the first dovetailed corner of each piece.
func (s *comparison) joints() {
	first := func(of func(p *form.Piece, i int) float64) func(p *form.Piece) compared {
		return func(p *form.Piece) compared {
			for i, j := range p.Joints {
				if len(j.Tails) > 0 {
					return compared{of(p, i), true}
				}
			}
			return compared{}
		}
	}
	s.line("", "tails in a corner", "", 0, first(func(p *form.Piece, i int) float64 { return float64(len(p.Joints[i].Tails)) }))
	tail := func(what string, of func(j joint.Joint) measure.Length) {
		s.lengthIn(s.style.Joints(), "", what, func(p *form.Piece) (measure.Length, bool) {
			for _, j := range p.Joints {
				if len(j.Tails) > 0 {
					return of(j), true
				}
			}
			return 0, false
		})
	}
	tail("first tail, wide", func(j joint.Joint) measure.Length { return j.Tails[0].Width() })
	tail("half pin", func(j joint.Joint) measure.Length { return j.Tails[0].Start })
	s.line("", "angle of the corner", "deg", 2, first(func(p *form.Piece, i int) float64 { return p.Joints[i].Dihedral.Degrees() }))
	tail("baseline on the tail board", func(j joint.Joint) measure.Length { return j.Baseline.Outer })
}

// cost compares what the pieces come to, where prices were told: each thing that all of it goes for, then the sum.
func (s *comparison) cost() {
	var order []string
	for _, p := range s.pieces {
		for _, l := range costsOf(p) {
			if l.ok && !slices.Contains(order, l.what) {
				order = append(order, l.what)
			}
		}
	}
	for _, what := range order {
		s.line("", fmt.Sprintf("cost of %s", what), "", 2, func(p *form.Piece) compared {
			for _, l := range costsOf(p) {
				if l.what == what {
					return compared{l.cost(), l.ok}
				}
			}
			return compared{0, true}
		})
	}
	s.line("", "cost", "", 2, func(p *form.Piece) compared {
		sum, ok := total(costsOf(p))
		return compared{sum, ok}
	})
}

// holding compares what was reckoned of each piece in use.
func (s *comparison) holding() {
	figures := make([]map[string]hold.Figure, len(s.pieces))
	var order []hold.Figure
	at := map[*form.Piece]int{}
	seen := map[string]bool{}
	for i, p := range s.pieces {
		figures[i], at[p] = map[string]hold.Figure{}, i
		for n, f := range hold.Figures(p) {
			key := f.ID + strconv.Itoa(len(f.Parts)) + first(f.Parts)
			if _, twice := figures[i][key]; twice {
				key += strconv.Itoa(n)
			}
			f.ID = key
			figures[i][key] = f
			if !seen[key] {
				seen[key] = true
				order = append(order, f)
			}
		}
	}
	for _, f := range order {
		s.line(first(f.Parts), f.What, f.Unit, 1, func(p *form.Piece) compared {
			g, ok := figures[at[p]][f.ID]
			return compared{g.Value, ok && !math.IsNaN(g.Value)}
		})
	}
}
