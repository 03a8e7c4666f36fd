package sheet

import (
	"math/bits"
	"slices"
)

// swatch is a few units cut side by side from a rectangle that they all but fill: sizes kerf included.
type swatch struct {
	l, w   float64
	cover  float64 // area of its units, kerf included
	used   tally
	boards uint64 // the shapes that may yield all its units
	kinds  [swatchUnits]uint8
	units  int
	a, b   int32 // swatches; a == 0: a unit, b its kind; the first swatch of all is none
	along  bool  // b lies beyond a along x
	turned bool
}

// Limits of swatches: how many units one holds, how much of it may be waste, how many there are at most, and how many
// pairs are looked at for them.
const (
	swatchUnits = 6
	swatchWaste = 0.03
	swatchMost  = 12_000
	swatchPairs = 6_000_000
)

// field is where a tally counts a kind.
type field struct{ word, at, bits int }

// one is a tally of one.
func (f field) one() (t tally) {
	t[f.word] = 1 << f.at
	return t
}

// fields gives every kind its place in tallies; false when they have no room for all.
func fields(counts []int) ([]field, bool) {
	var out []field
	at, word := 0, 0
	for _, n := range counts {
		b := fieldBits(n)
		if at+b > 64 {
			if at, word = 0, word+1; word == len(tally{}) {
				return nil, false
			}
		}
		out = append(out, field{word, at, b})
		at += b
	}
	return out, true
}

// book is all swatches that have been found, for quilts to be made of.
type book struct {
	fields   []field // of each of the bounds' kinds
	swatches []swatch
}

// newBook makes swatches of swatches, small ones first; nil when there are too many kinds or boards.
func newBook(s *search) *book {
	fs, ok := fields(s.bounds.count)
	if !ok || len(s.shapes) > 64 {
		return nil
	}
	b := &book{fields: fs, swatches: []swatch{{}}}
	m := &binder{book: b, seen: map[swatchKey]bool{}}
	m.limit.set(fs, s.bounds.count)
	for _, sh := range s.shapes {
		m.l, m.w = max(m.l, sh.root.Length()+s.t.Saw.Kerf), max(m.w, sh.root.Width()+s.t.Saw.Kerf)
	}
	for k, u := range s.bounds.kinds {
		l, w := u.l+s.t.Saw.Kerf, u.w+s.t.Saw.Kerf
		one := swatch{l: l, w: w, cover: l * w, used: fs[k].one(), units: 1, b: int32(k)}
		one.kinds[0] = uint8(k)
		for _, i := range u.boards {
			one.boards |= 1 << i
		}
		m.add(one)
		if u.turn && l != w {
			one.l, one.w, one.turned = w, l, true
			m.add(one)
		}
	}
	m.bind()
	return b
}

// limit says how often each kind may be taken.
type limit struct{ bias, guard tally }

func (m *limit) set(fs []field, counts []int) {
	m.bias, m.guard = tally{}, tally{}
	for k, f := range fs {
		m.bias[f.word] += uint64(1<<(f.bits-1)-1-counts[k]) << f.at
		m.guard[f.word] |= 1 << (f.at + f.bits - 1)
	}
}

// keeps says that a tally stays within the limit.
func (m *limit) keeps(t tally) bool {
	return (t[0]+m.bias[0])&m.guard[0]|(t[1]+m.bias[1])&m.guard[1] == 0
}

// binder fills a book.
type binder struct {
	*book
	limit limit
	l, w  float64 // of the largest board
	seen  map[swatchKey]bool
	byL   [][]int32 // swatches by whole millimetres of length
	byW   [][]int32
	pairs int
}

type swatchKey struct {
	l, w int
	used tally
}

func (m *binder) add(s swatch) {
	if s.l > m.l+eps || s.w > m.w+eps || s.boards == 0 {
		return
	}
	key := swatchKey{int(s.l*10 + 0.5), int(s.w*10 + 0.5), s.used}
	if m.seen[key] {
		return
	}
	m.seen[key] = true
	m.swatches = append(m.swatches, s)
}

// bind joins every swatch with those before it that are nearly as wide or as long, in the order they were found.
func (m *binder) bind() {
	m.byL, m.byW = make([][]int32, int(m.l)+2), make([][]int32, int(m.w)+2)
	for n := 1; n < len(m.swatches); n++ {
		s := m.swatches[n]
		m.byL[int(s.l)] = append(m.byL[int(s.l)], int32(n))
		m.byW[int(s.w)] = append(m.byW[int(s.w)], int32(n))
		m.near(m.byW, s.w, func(o int32) { m.join(int32(n), o, true) })
		m.near(m.byL, s.l, func(o int32) { m.join(int32(n), o, false) })
		if m.pairs > swatchPairs || len(m.swatches) > swatchMost {
			return
		}
	}
}

// near visits the swatches whose size differs little from the given one.
func (m *binder) near(by [][]int32, size float64, visit func(int32)) {
	slack := 2 * swatchWaste * size
	for i := max(0, int(size-slack)); i <= min(len(by)-1, int(size+slack)); i++ {
		for _, o := range by[i] {
			visit(o)
		}
	}
}

// join adds two swatches side by side, unless they waste too much or take too many of a kind.
func (m *binder) join(a, b int32, along bool) {
	m.pairs++
	p, o := &m.swatches[a], &m.swatches[b]
	if p.units+o.units > swatchUnits {
		return
	}
	c := swatch{l: p.l + o.l, w: max(p.w, o.w), cover: p.cover + o.cover, a: a, b: b, along: along,
		boards: p.boards & o.boards, units: p.units + o.units}
	if !along {
		c.l, c.w = max(p.l, o.l), p.w+o.w
	}
	if c.cover < (1-swatchWaste)*c.l*c.w {
		return
	}
	c.used = tally{p.used[0] + o.used[0], p.used[1] + o.used[1]}
	if !m.limit.keeps(c.used) {
		return
	}
	copy(c.kinds[:], p.kinds[:p.units])
	copy(c.kinds[p.units:], o.kinds[:o.units])
	slices.Sort(c.kinds[:c.units])
	m.add(c)
}

// fieldBits is how many bits of a tally a kind takes: those of its count and one more.
func fieldBits(count int) int { return bits.Len(uint(count)) + 1 }
