package stock

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Verify checks a plan against its task and returns everything that is wrong with it. It shares no geometry with the
// planner: rectangles are tried against outlines and places to avoid edge by edge.
func Verify(t Task, p Plan) error {
	v := &verifier{t: t, p: p, cut: make([]int, len(t.Demands)), strips: make([]int, len(p.Glued))}
	taken := make([]int, len(t.Boards))
	cost := 0.0
	for i, l := range p.Layouts {
		if l.Board < 0 || l.Board >= len(t.Boards) || l.Root == nil {
			v.bad("layout %d: no board %d", i+1, l.Board)
			continue
		}
		taken[l.Board]++
		cost += t.Cost(l.Board)
		v.layout(i, l)
	}
	for k, n := range taken {
		if n > t.Boards[k].Number() {
			v.bad("%s: %d taken, %d on hand", t.Boards[k].Name, n, t.Boards[k].Number())
		}
	}
	v.counts()
	v.promises()
	if math.Abs(cost-p.Cost) > 1e-9*cost+1e-9 {
		v.bad("cost stated as %g, is %g", p.Cost, cost)
	}
	if p.Proven && (p.Cost > p.Bound*(1+1e-9) || len(p.Left)+len(p.Misfits) > 0) {
		v.bad("called proven at cost %g with bound %g, %d left, %d misfits", p.Cost, p.Bound, len(p.Left), len(p.Misfits))
	}
	return errors.Join(v.wrong...)
}

type verifier struct {
	t      Task
	p      Plan
	cut    []int // of each demand
	strips []int // of each glue-up
	wrong  []error
	runs   map[int][]*Piece
	board  int
}

func (v *verifier) bad(form string, args ...any) {
	v.wrong = append(v.wrong, fmt.Errorf(form, args...))
}

func (v *verifier) counts() {
	for i, g := range v.p.Glued {
		if v.strips[i] != g.Strips {
			v.bad("glue-up %d: %d strips cut, %d wanted", i+1, v.strips[i], g.Strips)
		}
		d := v.t.Demands[g.Demand]
		if !d.Glue || float64(g.Strips)*(g.Width-v.t.Saw.Glue.Joint) < d.Width-Slack {
			v.bad("glue-up %d: %d strips of %g mm do not make %s of %g mm", i+1, g.Strips, g.Width, d.Name, d.Width)
		}
		v.cut[g.Demand]++
	}
	for _, l := range v.p.Left {
		v.cut[l.Demand] += l.Count
	}
	for _, m := range v.p.Misfits {
		if m.Run > 0 {
			for _, k := range v.t.Runs[m.Run-1].Parts {
				v.cut[k]++
			}
			continue
		}
		v.cut[m.Demand]++
	}
	for k, n := range v.cut {
		if d := v.t.Demands[k]; n != d.Count {
			v.bad("%s: %d cut or accounted for, %d wanted", d.Name, n, d.Count)
		}
	}
}

// promises: of each timber, grade and thickness the parts take no more of the boards than is promised clear.
func (v *verifier) promises() {
	type kind struct{ timber, grade, words string }
	left := map[kind]float64{}
	for _, l := range v.p.Layouts {
		if l.Board < 0 || l.Board >= len(v.t.Boards) || v.t.Boards[l.Board].Sold.Grade == "" {
			continue
		}
		b := v.t.Boards[l.Board]
		k := kind{b.Timber, b.Sold.Grade, b.Sold.Words}
		left[k] += b.Sold.Clear
		var take func(p *Piece, share float64)
		take = func(p *Piece, share float64) {
			if p == nil {
				return
			}
			if p.Kind == Part {
				left[k] -= share * (p.X2 - p.X1) * (p.Y2 - p.Y1)
			}
			if p.Kind == Resaw {
				share /= float64(len(p.Pieces))
			}
			for _, q := range p.Pieces {
				take(q, share)
			}
		}
		take(l.Root, 1)
	}
	for k, clear := range left {
		if clear < -ClearSlack {
			v.bad("%s %s %s: the parts take %.0f mm² more than is promised clear", k.timber, k.words, k.grade, -clear)
		}
	}
}

func (v *verifier) layout(i int, l Layout) {
	b := v.t.Boards[l.Board]
	v.board = l.Board
	r := l.Root.Rect
	if r.X1 < -Slack || r.Y1 < -Slack || r.X2 > b.Length+Slack || r.Y2 > b.Width+Slack {
		v.bad("layout %d: cut from outside %s", i+1, b.Name)
	}
	v.runs = map[int][]*Piece{}
	l.Each(func(p *Piece, depth int) {
		if s := v.t.Saw.Stages; s > 0 && depth > s && p.Run == 0 {
			v.bad("layout %d: the direction of cut changes %d times, %d allowed", i+1, depth, s)
		}
		switch p.Kind {
		case Crosscut, Rip, Resaw:
			v.split(i, p)
		case Part:
			v.part(i, b, p)
		}
	})
	if f := v.t.Saw.First; f == CrosscutFirst && l.Root.Kind == Rip || f == RipFirst && l.Root.Kind == Crosscut {
		v.bad("layout %d: the first cut goes the wrong way", i+1)
	}
	for k, ps := range v.runs {
		slices.SortStableFunc(ps, func(a, b *Piece) int { return a.Nth - b.Nth })
		v.run(i, k, ps)
	}
}

// split: the pieces fill the extent across the cut, follow each other, and leave a kerf between (less only where one
// of the two is waste shaved away).
func (v *verifier) split(i int, p *Piece) {
	at := math.Inf(-1)
	for n, q := range p.Pieces {
		lo, hi, a, b := q.X1, q.X2, q.Y1, q.Y2
		plo, phi, pa, pb := p.X1, p.X2, p.Y1, p.Y2
		if p.Kind == Rip {
			lo, hi, a, b = q.Y1, q.Y2, q.X1, q.X2
			plo, phi, pa, pb = p.Y1, p.Y2, p.X1, p.X2
		}
		if p.Kind == Resaw {
			continue
		}
		if math.Abs(a-pa) > Slack || math.Abs(b-pb) > Slack {
			v.bad("layout %d: a cut does not go right through", i+1)
		}
		if lo < plo-Slack || hi > phi+Slack || hi < lo-Slack {
			v.bad("layout %d: a piece lies outside the piece it is cut from", i+1)
		}
		if n > 0 && lo < at+v.t.Saw.Kerf-Slack {
			v.bad("layout %d: %.4f mm for the saw between two pieces, %.4f needed", i+1, lo-at, v.t.Saw.Kerf)
		}
		at = hi
	}
}

func (v *verifier) part(i int, b Board, p *Piece) {
	if p.Demand < 0 || p.Demand >= len(v.t.Demands) {
		v.bad("layout %d: no part %d", i+1, p.Demand)
		return
	}
	d := v.t.Demands[p.Demand]
	l, w := d.Length, d.Width
	switch {
	case p.Strip > len(v.p.Glued) || p.Strip > 0 && v.p.Glued[p.Strip-1].Demand != p.Demand:
		v.bad("layout %d: %s is a strip of nothing", i+1, d.Name)
		return
	case p.Strip > 0:
		v.strips[p.Strip-1]++
		w = v.p.Glued[p.Strip-1].Width
	default:
		v.cut[p.Demand]++
	}
	if p.Turned {
		if !d.Turn {
			v.bad("layout %d: the grain of %s runs across", i+1, d.Name)
		}
		l, w = w, l
	}
	if math.Abs(p.Length()-l) > Slack || math.Abs(p.Width()-w) > Slack {
		v.bad("layout %d: %s comes out %.4f by %.4f, wanted %.4f by %.4f", i+1, d.Name, p.Length(), p.Width(), l, w)
	}
	s := v.t.Saw
	if p.X1 < s.TrimEnds-Slack || p.X2 > b.Length-s.TrimEnds+Slack || p.Y1 < s.TrimEdges-Slack || p.Y2 > b.Width-s.TrimEdges+Slack {
		v.bad("layout %d: %s lies in the trim", i+1, d.Name)
	}
	if !v.thick(d.Timber, d.Thickness, p.Length(), p.Width()) && (p.Run == 0 || v.t.Runs[p.Run-1].Kind == Along) {
		v.bad("layout %d: %s of %g mm does not come from %s of %g mm", i+1, d.Name, d.Thickness, b.Name, b.Thickness)
	}
	if why := onWood(b, p.Rect); why != "" {
		v.bad("layout %d: %s: %s", i+1, d.Name, why)
	}
	if p.Run > 0 {
		v.runs[p.Run] = append(v.runs[p.Run], p)
	}
}

// thick: of the timber, and as thick as wanted when what is so long and wide is planed flat: a straight piece within a bent
// one, found from how high its middle, its edges' middles and its corners lie.
func (v *verifier) thick(timber string, wanted, length, width float64) bool {
	b := v.t.Boards[v.board]
	if timber != "" && b.Timber != "" && timber != b.Timber {
		return false
	}
	rise := func(x, y float64) float64 { // of the board's middle surface, x and y from the middle of the piece
		return 4*b.Bow*x*x/(b.Length*b.Length) + 4*b.Cup*y*y/(b.Width*b.Width) + b.Twist*x*y/(b.Length*b.Width)
	}
	x, y := length/2, width/2
	bowed, cupped := rise(x, 0), rise(0, y)
	twisted := rise(x, y) - rise(x, -y)
	over := b.Thickness - bowed - cupped - twisted - wanted
	return over >= -Slack && (v.t.Saw.Planing == 0 || over <= v.t.Saw.Planing+Slack)
}

func (v *verifier) run(i, k int, ps []*Piece) {
	r := v.t.Runs[k-1]
	if len(ps) != len(r.Parts) {
		v.bad("layout %d: run %s has %d parts here, %d wanted", i+1, r.Name, len(ps), len(r.Parts))
		return
	}
	for n, p := range ps {
		if p.Nth != n || p.Demand != r.Parts[n] {
			v.bad("layout %d: run %s is out of order", i+1, r.Name)
		}
	}
	if r.Kind == Resawn {
		v.resawn(i, r, ps)
		return
	}
	v.grain(i, r, ps, false)
}

// grain: each part begins where the one before it ends, on the same edge.
func (v *verifier) grain(i int, r Run, ps []*Piece, back bool) {
	for n, p := range ps[1:] {
		left, right := ps[n], p
		if back {
			left, right = p, ps[n]
		}
		if math.Abs(right.X1-left.X2-v.t.Saw.Kerf) > Slack || math.Abs(right.Y1-left.Y1) > Slack {
			v.bad("layout %d: the grain of run %s does not run on", i+1, r.Name)
		}
	}
}

// resawn: the boards lie over one another, the first with its row from the left end on, the next from the right end back;
// the board that they are sawn from is thick enough for all and of every part's timber.
func (v *verifier) resawn(i int, r Run, ps []*Piece) {
	row := max(1, r.Row)
	left, right := math.Inf(1), math.Inf(-1)
	for _, p := range ps {
		left, right = math.Min(left, p.X1), math.Max(right, p.X2)
	}
	thick, wide := -v.t.Saw.Resaw, 0.0
	for n := 0; n < len(ps); n += row {
		leaf, back := ps[n:n+row], row > 1 && n/row%2 == 1
		v.grain(i, r, leaf, back)
		if end := leaf[0]; !back && math.Abs(end.X1-left) > Slack || back && math.Abs(end.X2-right) > Slack || math.Abs(end.Y1-ps[0].Y1) > Slack {
			v.bad("layout %d: run %s does not lie over itself", i+1, r.Name)
		}
		most := 0.0
		for _, p := range leaf {
			wide = math.Max(wide, p.Width())
			most = math.Max(most, v.t.Demands[p.Demand].Thickness)
		}
		thick += most + v.t.Saw.Resaw
	}
	for _, p := range ps {
		if !v.thick(v.t.Demands[p.Demand].Timber, thick, right-left, wide) {
			v.bad("layout %d: run %s needs %g mm to be resawn", i+1, r.Name, thick)
			return
		}
	}
}
