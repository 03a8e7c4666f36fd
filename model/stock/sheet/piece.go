package sheet

import (
	"math"
	"math/bits"
	"runtime"
	"slices"
)

// piecer looks among the remembered cuts for those that together yield all units for less than a limit. It takes the unit that the
// fewest of them yield, tries each of these and goes on so with the units left. What a cut costs more than it yields at the prices
// of the relaxed plan, and units that are yielded too often, are lost; a choice that loses more than the relaxed plan lies below the
// limit is not gone on with. Every choice below the limit is seen unless the work ends sooner.
type piecer struct {
	*pieces
	free   []int   // boards left of each row
	chosen []int32 // cuts
	found  []int32
	slack  float64 // what may be lost
	half   int     // of the cuts tried first: every other one, 0 or 1, or all, -1
	lists  [][]option
	count  []int32 // of each kind: options that yield it
	work   int     // options looked at
	most   int
	nodes  int
}

// option is a cut that may still be taken: what would be lost by it, and what would be if all of its units were wanted.
type option struct {
	n, row    int32
	loss, own float64
	used      tally
}

// piece looks for a better layout among the remembered cuts, with so much work on each of two cores.
func (s *search) piece(best *layout, work int) *layout {
	if s.book == nil || len(s.pool.cuts) == 0 || s.lower == 0 || s.ctx.Err() != nil {
		return best
	}
	limit := best.cost * (1 - 1e-9)
	if best.area > 0 {
		limit = 0
		for _, sh := range s.shapes {
			limit += sh.cost * (1 + 1e-9)
		}
	}
	all := s.newPieces(limit)
	if all == nil {
		return best
	}
	var halves [2]*piecer
	s.twoByTwo(len(halves), func(n int) {
		halves[n] = all.piecer(n, work)
		halves[n].run()
	})
	for _, p := range halves {
		if p.found == nil {
			continue
		}
		if l := s.layoutOf(p.taken()); l.better(best) {
			best = l
		}
	}
	return best
}

func (p *pieces) piecer(half, work int) *piecer {
	q := &piecer{pieces: p, half: half, most: work, count: make([]int32, len(p.fields))}
	_, count := p.s.kindsOfBoards()
	for _, n := range count {
		q.free = append(q.free, int(n))
	}
	return q
}

// taken are the cuts found.
func (p *piecer) taken() (cuts []cut) {
	for _, n := range p.found {
		cuts = append(cuts, p.cuts[n].cut)
	}
	return cuts
}

// lossSteps are shares of what may be lost, looked at one after the other: a little takes little time.
var lossSteps = [...]float64{0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1}

// run takes steps until one of them finds something; it returns true where it has seen all there is.
func (p *piecer) run() bool {
	for _, share := range lossSteps {
		p.slack = share * (p.limit - p.value)
		all := make([]option, 0, len(p.cuts))
		for n := range p.cuts {
			if q := &p.cuts[n]; q.loss <= p.slack {
				all = append(all, option{int32(n), q.row, q.loss, q.loss, q.used})
			}
		}
		p.lists = append(p.lists[:0], all)
		p.walk(0, p.need, 0)
		if p.found != nil || p.work >= p.most {
			break
		}
	}
	return p.work < p.most
}

// walk goes on from a choice that has lost so much.
func (p *piecer) walk(depth int, left tally, lost float64) {
	switch {
	case left == tally{}:
		p.found = slices.Clone(p.chosen)
		p.slack = lost - 1e-9*p.limit
		return
	case p.pause():
		return
	}
	opts := p.lists[depth]
	p.work += len(opts) + perNode
	kind, any := p.rarest(opts, left)
	if !any {
		return
	}
	if len(p.lists) == depth+1 {
		p.lists = append(p.lists, nil)
	}
	f, nth := p.fields[kind], 0
	for i, o := range opts {
		if f.of(&o.used) == 0 {
			continue
		}
		if nth++; depth == 0 && p.half >= 0 && nth%2 != p.half {
			continue
		}
		if lost+o.loss > p.slack || p.work >= p.most {
			return
		}
		p.free[o.row]--
		p.chosen = append(p.chosen, o.n)
		rest := p.minus(left, o.n)
		p.beside(depth, i, f, rest, lost+o.loss)
		p.walk(depth+1, rest, lost+o.loss)
		p.chosen = p.chosen[:len(p.chosen)-1]
		p.free[o.row]++
	}
}

// perNode is the work that a place of the walk takes beside its options, and rest after how many places others have their turn.
const (
	perNode = 5
	rest    = 1000
)

// pause lets others have their turn now and then; true when the time is over.
func (p *piecer) pause() bool {
	if p.nodes++; p.nodes%rest == 0 {
		if runtime.Gosched(); p.s.ctx.Err() != nil {
			p.work = p.most
			return true
		}
	}
	return false
}

// beside lists what may be taken with the i-th option of a depth; those before it that yield the same kind have been tried with all
// others already.
func (p *piecer) beside(depth, i int, f field, left tally, lost float64) {
	next := p.lists[depth+1][:0]
	most := p.slack - lost
	g := p.guard
	room := tally{left[0] | g[0], left[1] | g[1]}
	dear := p.dearerThan(most)
	all := p.lists[depth]
	for j := range all {
		o := &all[j]
		if o.loss > most || p.free[o.row] == 0 || j < i && f.of(&o.used) > 0 {
			continue
		}
		loss := o.own
		if over := (tally{g[0] &^ (room[0] - o.used[0]), g[1] &^ (room[1] - o.used[1])}); over[0]|over[1] != 0 {
			if over[0]&dear[0]|over[1]&dear[1] != 0 {
				continue
			}
			if loss = p.loss(left, o, over, most); loss > most {
				continue
			}
		}
		next = append(next, option{o.n, o.row, loss, o.own, o.used})
	}
	p.lists[depth+1] = next
}

// loss is what is lost by an option some of whose units are not wanted, those whose guard bits are given; it may stop adding up
// beyond most.
func (p *piecer) loss(left tally, o *option, over tally, most float64) float64 {
	loss := o.own
	for w := range over {
		for bit := over[w]; bit != 0 && loss <= most; bit &= bit - 1 {
			k := p.kindAt[w][bits.TrailingZeros64(bit)]
			f := p.fields[k]
			loss += float64(f.of(&o.used)-f.of(&left)) * p.price[k]
		}
	}
	return loss
}

// rarest is the kind still wanted that the fewest options yield; false where one is yielded by none.
func (p *piecer) rarest(opts []option, left tally) (kind int, any bool) {
	clear(p.count)
	for n := range opts {
		for _, k := range p.cuts[opts[n].n].kinds {
			p.count[k]++
		}
	}
	few := int32(math.MaxInt32)
	for k, f := range p.fields {
		if p.count[k] < few && f.of(&left) > 0 {
			kind, few = k, p.count[k]
		}
	}
	return kind, few > 0
}

// minus is what is left after a cut.
func (p *piecer) minus(left tally, n int32) tally {
	q := &p.cuts[n]
	if rest, ok := p.less(left, q.used); ok {
		return rest
	}
	for _, k := range q.kinds {
		f := p.fields[k]
		left[f.word] -= uint64(min(f.of(&left), f.of(&q.used))) << f.at
	}
	return left
}
