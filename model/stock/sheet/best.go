package sheet

import (
	"container/heap"
	"context"
	"encoding/binary"
	"slices"
)

// Worth is a rectangle that may be cut from a sheet, in whole steps of any unit, kerf included.
type Worth struct {
	Length, Width int
	Count         int // at most so many
	Value         float64
	Turn          bool
}

// Taken is a rectangle of the best cutting: which, and its corner.
type Taken struct {
	Piece  int // index of the Worth
	X, Y   int
	Turned bool
}

// Best finds the rectangles worth most together that one sound sheet yields by cuts that go right through, none more
// often than its count or 255. proven is false when the context ended the search; the answer is then the best found.
//
// Rectangles are built from smaller ones side by side, the most promising first: its value and the most that the rest
// of the sheet could add (Operations Research 41 (1993) 768–776).
func Best(ctx context.Context, length, width int, pieces []Worth) (value float64, taken []Taken, proven bool) {
	b := newBuilder(length, width, pieces)
	proven = b.run(ctx)
	if b.best != nil {
		b.lay(b.best, 0, 0, &taken)
		value = b.best.value
	}
	return value, taken, proven
}

// mostCopies is how often Best takes a piece at most, whatever its count.
const mostCopies = 255

// block is a rectangle already built.
type block struct {
	l, w   int
	count  []uint8
	value  float64
	hope   float64
	a, b   *block // side by side, or over one another
	along  bool   // b lies beyond a along x
	piece  int
	turned bool
}

type builder struct {
	l, w    int
	pieces  []Worth
	most    []uint8
	table   *table
	outside [][]float64 // the most the sheet can add to a block in its corner, at the table's places
	open    blocks
	closed  []*block
	seen    map[string]bool
	best    *block
	top     float64 // nothing is worth more
	joins   int     // pairs of blocks that may be looked at; 0: as many as there are
}

func newBuilder(l, w int, pieces []Worth) *builder {
	b := &builder{l: l, w: w, pieces: pieces, seen: map[string]bool{}}
	var items []item
	for _, p := range pieces {
		b.most = append(b.most, uint8(min(mostCopies, max(0, p.Count))))
		if p.Count <= 0 {
			continue
		}
		items = append(items, item{p.Length, p.Width, p.Value})
		if p.Turn {
			items = append(items, item{p.Width, p.Length, p.Value})
		}
	}
	b.table = newTable(l, w, items, false)
	b.addOutside()
	for i, p := range pieces {
		if p.Count <= 0 {
			continue
		}
		b.push(&block{l: p.Length, w: p.Width, count: b.one(i), value: p.Value, piece: i})
		if p.Turn {
			b.push(&block{l: p.Width, w: p.Length, count: b.one(i), value: p.Value, piece: i, turned: true})
		}
	}
	return b
}

func (b *builder) one(i int) []uint8 {
	c := make([]uint8, len(b.pieces))
	c[i] = 1
	return c
}

func (b *builder) addOutside() {
	t := b.table
	b.outside = make([][]float64, len(t.xs))
	for i := len(t.xs) - 1; i >= 0; i-- {
		b.outside[i] = make([]float64, len(t.ys))
		for j := len(t.ys) - 1; j >= 0; j-- {
			best := 0.0
			if i+1 < len(t.xs) { // a block may be wasted up to the next place
				best = b.outside[i+1][j]
			}
			if j+1 < len(t.ys) {
				best = max(best, b.outside[i][j+1])
			}
			for a := 1; a < len(t.xs) && t.xs[i]+t.xs[a] <= b.l; a++ {
				best = max(best, b.outside[t.ax[t.xs[i]+t.xs[a]]][j]+t.best[a][j])
			}
			for c := 1; c < len(t.ys) && t.ys[j]+t.ys[c] <= b.w; c++ {
				best = max(best, b.outside[i][t.ay[t.ys[j]+t.ys[c]]]+t.best[i][c])
			}
			b.outside[i][j] = best
		}
	}
}

func (b *builder) push(n *block) {
	if n.l > b.l || n.w > b.w {
		return
	}
	n.hope = n.value + b.outside[b.table.ax[n.l]][b.table.ay[n.w]]
	if b.best != nil && n.hope <= b.best.value {
		return
	}
	key := binary.AppendUvarint(binary.AppendUvarint(nil, uint64(n.l)), uint64(n.w))
	if key = append(key, n.count...); b.seen[string(key)] {
		return
	}
	b.seen[string(key)] = true
	if b.best == nil || n.value > b.best.value {
		b.best = n
	}
	heap.Push(&b.open, n)
}

func (b *builder) run(ctx context.Context) bool {
	seen := 0
	for len(b.open) > 0 {
		n := heap.Pop(&b.open).(*block)
		if b.top = n.hope; n.hope <= b.best.value {
			break
		}
		if ctx.Err() != nil {
			return false
		}
		b.closed = append(b.closed, n)
		if seen += len(b.closed); b.joins > 0 && seen > b.joins {
			return false
		}
		for _, o := range b.closed {
			b.join(n, o)
		}
	}
	if b.best != nil {
		b.top = b.best.value
	}
	return true
}

func (b *builder) join(n, o *block) {
	along, over := n.l+o.l <= b.l, n.w+o.w <= b.w
	if !along && !over {
		return
	}
	for i, c := range n.count {
		if int(c)+int(o.count[i]) > int(b.most[i]) {
			return
		}
	}
	count := slices.Clone(n.count)
	for i, c := range o.count {
		count[i] += c
	}
	if along {
		b.push(&block{l: n.l + o.l, w: max(n.w, o.w), count: count, value: n.value + o.value, a: n, b: o, along: true})
	}
	if over {
		b.push(&block{l: max(n.l, o.l), w: n.w + o.w, count: count, value: n.value + o.value, a: n, b: o})
	}
}

func (b *builder) lay(n *block, x, y int, out *[]Taken) {
	if n.a == nil {
		*out = append(*out, Taken{Piece: n.piece, X: x, Y: y, Turned: n.turned})
		return
	}
	b.lay(n.a, x, y, out)
	if n.along {
		b.lay(n.b, x+n.a.l, y, out)
	} else {
		b.lay(n.b, x, y+n.a.w, out)
	}
}

// blocks is a heap, the most promising on top.
type blocks []*block

func (h blocks) Len() int           { return len(h) }
func (h blocks) Less(i, j int) bool { return h[i].hope > h[j].hope }
func (h blocks) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *blocks) Push(x any)        { *h = append(*h, x.(*block)) }
func (h *blocks) Pop() any {
	old := *h
	n := old[len(old)-1]
	*h = old[:len(old)-1]
	return n
}
