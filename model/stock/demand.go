package stock

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Demand is a part to be cut, in its rough size, allowances included.
type Demand struct {
	ID        string
	Name      string
	Length    float64 // along the grain
	Width     float64
	Thickness float64
	Count     int
	Timber    string // empty: any
	Turn      bool   // the grain may run either way
	Glue      bool   // may be glued up of strips when no board is wide enough
}

// RunKind says how the parts of a run lie in the board.
type RunKind int

// How the parts of a run lie.
const (
	Along  RunKind = iota // one after the other along the grain, so that it runs on over the corners
	Resawn                // over one another, sawn apart through the thickness
)

// Run is parts that come out of one board next to each other, in order.
type Run struct {
	Name  string
	Kind  RunKind
	Parts []int    // indices of demands, one entry a piece; a demand may come more than once
	IDs   []string // of the parts, where it matters which of equal ones goes where; nothing: it does not
	// Row is how many parts follow each other along the grain in each board that a resawn run is sawn into; 0: one.
	// The first of these boards has them from its left end on, the next from its right end back, and so by turns: opened
	// like a book, where one board ends the next begins.
	Row int
}

// Leaves are the boards that a run is sawn into, the upper one first, each with its parts from left to right as places in
// Parts. A run along the grain is one board.
func (r Run) Leaves() [][]int {
	row := len(r.Parts)
	if r.Kind == Resawn {
		row = max(1, r.Row)
	}
	var out [][]int
	for n := range r.Parts {
		if n%row == 0 {
			out = append(out, nil)
		}
		out[n/row] = append(out[n/row], n)
	}
	for i := 1; i < len(out); i += 2 {
		slices.Reverse(out[i])
	}
	return out
}

// First says which way the first cuts of a board go.
type First int

// The first cuts of a board.
const (
	Either First = iota
	CrosscutFirst
	RipFirst
)

// Saw is how the shop cuts.
type Saw struct {
	Kerf      float64 // width of a cut
	TrimEnds  float64 // taken off both ends of every board, its cut included
	TrimEdges float64 // taken off both edges of every board, its cut included
	First     First
	Stages    int     // how often the direction of cut may change, the first counted; 0: as often as useful
	Resaw     float64 // width of a cut through the thickness
	Planing   float64 // most that may be planed off a board thicker than a part's rough thickness; 0: any
	Glue      Glue
	Keep      float64 // the least length along the grain of an offcut that is kept; 0: none is
	KeepWidth float64 // the least width of one; 0: as Keep
}

// Glue is how boards are glued up to a wider one.
type Glue struct {
	Most      int     // strips; 0: mostStrips
	Narrowest float64 // width of a strip before jointing
	Joint     float64 // planed off a strip's two edges together, for the joints
}

// mostStrips is how many strips a part is glued up of where nothing else is said.
const mostStrips = 6

// Strip is how wide each of n strips is that a part of so much width is glued up of, and whether a part may be of so many.
func (g Glue) Strip(width float64, n int) (float64, bool) {
	w := width/float64(n) + g.Joint
	return w, n <= cmp.Or(g.Most, mostStrips) && w >= g.Narrowest
}

// Task is everything a board plan is made from.
type Task struct {
	Boards  []Board
	Demands []Demand
	Runs    []Run
	Saw     Saw
}

// Check refuses a task that cannot be.
func (t Task) Check() error {
	for _, b := range t.Boards {
		if err := b.Check(); err != nil {
			return err
		}
	}
	if err := t.checkPrices(); err != nil {
		return err
	}
	for _, d := range t.Demands {
		if !(d.Length > 0 && d.Width > 0 && d.Thickness > 0) || d.Length+d.Width+d.Thickness > widest || d.Count < 0 {
			return fmt.Errorf("part %q: %g by %g by %g mm, %d of it", d.Name, d.Length, d.Width, d.Thickness, d.Count)
		}
	}
	used := make([]int, len(t.Demands))
	for _, r := range t.Runs {
		if len(r.Parts) < 2 {
			return fmt.Errorf("run %q needs two parts, it has %d", r.Name, len(r.Parts))
		}
		if r.Kind == Resawn && (r.Row < 0 || len(r.Parts)%max(1, r.Row) != 0 || len(r.Parts) < 2*r.Row) || len(r.IDs) != 0 && len(r.IDs) != len(r.Parts) {
			return fmt.Errorf("run %q: %d parts with %d names cannot be sawn apart in rows of %d", r.Name, len(r.Parts), len(r.IDs), r.Row)
		}
		for _, k := range r.Parts {
			if k < 0 || k >= len(t.Demands) {
				return fmt.Errorf("run %q: there is no part %d", r.Name, k)
			}
			if used[k]++; used[k] > t.Demands[k].Count {
				return fmt.Errorf("run %q: more of %q than are wanted (%d)", r.Name, t.Demands[k].Name, t.Demands[k].Count)
			}
		}
	}
	s := t.Saw
	for _, v := range []float64{s.Kerf, s.TrimEnds, s.TrimEdges, s.Resaw, s.Planing, s.Glue.Narrowest, s.Glue.Joint, s.Keep, s.KeepWidth} {
		if !(v >= 0 && v < widest) {
			return fmt.Errorf("a saw or glue setting is %g mm", v)
		}
	}
	if s.Stages < 0 || s.Glue.Most < 0 {
		return fmt.Errorf("stages %d and strips %d cannot be negative", s.Stages, s.Glue.Most)
	}
	return nil
}

func (t Task) checkPrices() error {
	priced, without := 0, ""
	for _, b := range t.Boards {
		switch {
		case b.Price > 0:
			priced++
		case without == "":
			without = b.Name
		}
	}
	if priced > 0 && priced < len(t.Boards) {
		return fmt.Errorf("%d of %d boards have a price, %q has none; give all or none", priced, len(t.Boards), without)
	}
	return nil
}

// Cost is what taking one board counts: its price, or, where there are no prices, its wood, so that parts come out of thin
// boards before thick ones: as mm² of face of a board as thick as the thinnest.
func (t Task) Cost(board int) float64 {
	b := t.Boards[board]
	if b.Price > 0 {
		return b.Price
	}
	return b.Area() * (b.Thickness / t.thinnest())
}

func (t Task) thinnest() float64 {
	least := math.Inf(1)
	for _, b := range t.Boards {
		least = min(least, b.Thickness)
	}
	return least
}

// Serves says whether a part, or a strip of one, may come from the board by its timber and by the thickness that is left of
// the board where the part has been sawn out and planed flat; one that may lie either way has to come from it either way.
func (t Task) Serves(board int, d Demand) bool {
	b := t.Boards[board]
	if d.Timber != "" && b.Timber != "" && d.Timber != b.Timber {
		return false
	}
	least := b.Flat(d.Length, d.Width)
	most := least
	if d.Turn {
		across := b.Flat(d.Width, d.Length)
		least, most = min(least, across), max(most, across)
	}
	return least-d.Thickness >= -Slack && (t.Saw.Planing == 0 || most-d.Thickness <= t.Saw.Planing+Slack)
}

// ServesRun says the same of a run. Its parts are parted before they are planed; what is resawn is planed flat as a whole.
func (t Task) ServesRun(board int, r Run) bool {
	if _, one := r.Timber(t); !one {
		return false
	}
	if r.Kind == Resawn {
		return t.Serves(board, r.Whole(t))
	}
	for _, k := range r.Parts {
		if !t.Serves(board, t.Demands[k]) {
			return false
		}
	}
	return true
}

// Slack is how far sizes may miss for the arithmetic's sake: a hundred-thousandth of a millimetre.
const Slack = 1e-5

// Thickness is what a run needs: the thickest of its parts or, when it is resawn, the boards that it is sawn into and the
// saw cuts between.
func (r Run) Thickness(t Task) float64 {
	leaves := r.Thicknesses(t)
	sum := float64(len(leaves)-1) * t.Saw.Resaw
	for _, thick := range leaves {
		sum += thick
	}
	return sum
}

// Thicknesses are what the boards that a run is sawn into have to be, the upper one first: as thick as the thickest part
// of each.
func (r Run) Thicknesses(t Task) []float64 {
	leaves := r.Leaves()
	out := make([]float64, len(leaves))
	for i, leaf := range leaves {
		for _, n := range leaf {
			out[i] = math.Max(out[i], t.Demands[r.Parts[n]].Thickness)
		}
	}
	return out
}

// Whole is what a run wants of a board as if it were one part.
func (r Run) Whole(t Task) Demand {
	d := Demand{Name: r.Name, Thickness: r.Thickness(t), Count: 1}
	d.Timber, _ = r.Timber(t)
	for _, leaf := range r.Leaves() {
		l := float64(len(leaf)-1) * t.Saw.Kerf
		for _, n := range leaf {
			part := t.Demands[r.Parts[n]]
			l += part.Length
			d.Width = math.Max(d.Width, part.Width)
		}
		d.Length = math.Max(d.Length, l)
	}
	return d
}

// Split gives the thicknesses that a resawn run's boards come out in, the upper one first: what a board, planed flat, is
// thicker than the run needs is shared out among them, so that as much is planed off each.
func (r Run) Split(t Task, board int) []float64 {
	out, whole := r.Thicknesses(t), r.Whole(t)
	spare := (t.Boards[board].Flat(whole.Length, whole.Width) - whole.Thickness) / float64(len(out))
	for i := range out {
		out[i] += spare
	}
	return out
}

// Timber is what all parts of a run are of, "" where any will do; ok is false where they are not of one.
func (r Run) Timber(t Task) (timber string, ok bool) {
	for _, k := range r.Parts {
		switch d := t.Demands[k]; {
		case d.Timber == "" || d.Timber == timber:
		case timber != "":
			return "", false
		default:
			timber = d.Timber
		}
	}
	return timber, true
}
