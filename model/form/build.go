package form

import (
	"math"
	"slices"
	"strconv"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/twos"
)

// family is a form: how the pieces of one kind come from their sizes.
type family struct {
	form     string
	walls    bool            // walls all round; else tops on sides
	defaults func(*Design)   // fills in what was left out
	refuse   func(*assembly) // finds words and sizes that no such piece can have
	build    func(*assembly) // makes the boards and joints
}

// families are the forms there are. A new one is a file of its own and a line here.
var families = []family{stoolFamily, trayFamily, chestFamily, ringFamily, stepsFamily}

// Forms are the names of the forms.
func Forms() []string {
	var out []string
	for _, f := range families {
		out = append(out, f.form)
	}
	return out
}

// WallForms are the names of the forms that have walls all round.
func WallForms() []string {
	var out []string
	for _, f := range families {
		if f.walls {
			out = append(out, f.form)
		}
	}
	return out
}

// OnSides tells whether a form is one whose tops stand on sides: a stool or steps.
func OnSides(name string) bool {
	f, ok := familyOf(name)
	return ok && !f.walls
}

func familyOf(form string) (family, bool) {
	i := slices.IndexFunc(families, func(f family) bool { return f.form == form })
	if i < 0 {
		return family{}, false
	}
	return families[i], true
}

// assembly is a piece while it is put together, whatever its form.
type assembly struct {
	d      Design // with its defaults; what the joints settle is written into it
	piece  *Piece
	boards []*board
	runs   []*freeRun // the free edges that are rounded
	cut    func(*part.Part)
	twins  func([]*board) ([]int, []twin)
}

// Build turns a design into its parts and joints. It is pure, and refuses nothing: what cannot
// be made is reported by stop findings, and parts that could not be cut have no solid.
func Build(d Design) *Piece { return BuildEach(d, func(*part.Part) {}) }

// BuildEach is Build that hands on each part that has a solid as soon as it is cut, from two goroutines at once, so that what
// follows from the part alone can be made while others are still being cut.
func BuildEach(d Design, cut func(*part.Part)) *Piece {
	p := buildEach(d, cut, findTwins)
	for i, f := range p.Findings {
		p.Findings[i].Sizes = p.Design.Used(f.Sizes...)
	}
	return p
}

func buildEach(d Design, cut func(*part.Part), twins func([]*board) ([]int, []twin)) *Piece {
	d = d.Defaults()
	b := &assembly{d: d, piece: &Piece{Title: d.Title, Form: d.Form, Design: d}, cut: cut, twins: twins}
	b.refuseReach(d)
	b.oneOf("form", d.Form, Forms()...)
	f, ok := familyOf(d.Form)
	if !ok {
		return b.piece
	}
	turned, fits := d.squareOn()
	if !fits {
		b.find(stop("splay-not-in-the-board", "No boards lean so far that the leans measured in the board come to what is typed; as seen square-on they would lie flat. Type smaller ones, or measure square-on in the elevation.",
			d.Splay.Ends.Degrees(), steepest.Degrees(), "deg", "splay.ends", "splay.front", "splay.measured"))
		return b.piece
	}
	b.d, b.piece.Design = turned, turned
	if f.refuse(b); b.refused() {
		return b.piece
	}
	if f.build(b); len(b.boards) == 0 {
		return b.piece
	}
	b.finish()
	b.piece.Design = b.d
	return b.piece
}

// refused tells whether anything was found so far.
func (b *assembly) refused() bool { return len(b.piece.Findings) > 0 }

// find notes findings; what two equal parts give rise to alike is said once, with both parts.
func (b *assembly) find(found ...part.Finding) {
	for _, f := range found {
		same := slices.IndexFunc(b.piece.Findings, func(g part.Finding) bool { return g.ID == f.ID && g.Text == f.Text })
		if same < 0 {
			b.piece.Findings = append(b.piece.Findings, f)
			continue
		}
		g := &b.piece.Findings[same]
		g.Parts = unique(append(g.Parts, f.Parts...))
	}
}

// show prints a length in a finding.
func (b *assembly) show(l measure.Length) string { return b.d.fine().FormatUnit(l) }

// atMost shows the most that something may be: typed as it reads, it is no more.
func (b *assembly) atMost(l measure.Length) string {
	step := b.d.fine().Step
	return b.show(measure.Length(math.Floor(float64(l/step)+1e-9)) * step)
}

// atLeast shows the least that something may be, or be more than: typed as it reads, it is no less.
func (b *assembly) atLeast(l measure.Length) string {
	step := b.d.fine().Step
	return b.show(measure.Length(math.Ceil(float64(l/step)-1e-9)) * step)
}

// past shows by how much something reaches past where it may: never nothing.
func (b *assembly) past(by measure.Length) string {
	text, _ := b.d.fine().Apart(by, 0)
	return text
}

// finish builds the solids and numbers the parts.
func (b *assembly) finish() {
	found := make([][]part.Finding, len(b.boards))
	finish := func(i int, like *twin) {
		b.boards[i].part.Mark = strconv.Itoa(i + 1)
		for _, r := range b.runs {
			if r.own == b.boards[i] {
				r.lessTaken()
			}
		}
		found[i] = b.boards[i].finish(b.d.Allowance, b.d.Timbers, b.show, like)
		if p := b.boards[i].part; p.Solid != nil {
			b.cut(p)
		}
	}
	first, others := b.twins(b.boards)
	there := make([]chan struct{}, len(b.boards)) // closed when the first of a kind is
	for _, i := range first {
		there[i] = make(chan struct{})
	}
	twos.Each(len(first)+len(others), func(i int) {
		if i < len(first) {
			defer close(there[first[i]])
			finish(first[i], nil)
			return
		}
		like := &others[i-len(first)]
		at := like.at
		<-there[like.of] // taken before, so it comes
		if b.boards[like.of].part.Solid == nil || len(found[like.of]) > 0 {
			like = nil // what is found is told of each
		}
		finish(at, like)
	})
	for i, board := range b.boards {
		b.find(found[i]...)
		b.piece.Parts = append(b.piece.Parts, board.part)
		b.piece.Overall.Mass += board.part.Mass
	}
	for _, r := range b.runs {
		r.own.part.Eased[r.eased].Cut = r.cut && !r.failed.Load()
	}
}
