package view

import (
	"math"
	"slices"
)

// manner is what is known of an edge before looking for what hides it.
type manner uint8

const (
	undrawn  manner = iota
	buried          // its own wood lies in front of it
	open            // its own faces leave it free
	openLine        // the same, without a crease
)

// standing is how an edge stands in a direction. It ends when a front face ends at it against nothing,
// so that what passes behind it comes out there.
type standing struct {
	how  manner
	ends bool
}

func (w *work) stand(e *edge) standing {
	fa := w.planes[e.a].facing
	if e.b < 0 {
		return standing{open, fa > 0}
	}
	fb := w.planes[e.b].facing
	turning := (fa > 0) != (fb > 0)
	switch {
	case e.smooth && !turning && (e.curve < 0 || fa <= 0):
		return standing{undrawn, false}
	case fa < 0 && fb < 0, e.hollow && (fa < 0 || fb < 0):
		return standing{buried, false}
	case e.smooth && !turning:
		return standing{openLine, false}
	}
	return standing{open, turning && !e.hollow}
}

// twin is a place of the table of edges by where they lie in the picture: of those that lie in one
// place, the nearest drawn one and the nearest that ends, each plus 1.
type twin struct{ drawn, ends int32 }

// place finds how the edges stand, and leaves out all but the nearest of those that coincide. What
// covers the nearest on both sides covers the others too, and cuts by the nearest are the others' cuts.
func (w *work) place() {
	n := 64
	for n < 2*len(w.s.edges) {
		n *= 2
	}
	w.twins = slices.Grow(w.twins[:0], n)[:n]
	clear(w.twins)
	w.stands = w.stands[:0]
	for i := range w.s.edges {
		st := w.stand(&w.s.edges[i])
		if w.s.edges[i].left {
			st.how = undrawn
		}
		if st == (standing{}) {
			w.stands = append(w.stands, standing{})
			continue
		}
		e := w.ends(int32(i))
		if e.short() {
			w.stands = append(w.stands, standing{})
			continue
		}
		w.stands = append(w.stands, st)
		w.pair(int32(i), &e)
	}
}

// ends is where an edge starts and stops in the picture, the lower left end first.
type ends struct{ x0, y0, z0, x1, y1, z1 float64 }

func (e ends) short() bool {
	dx, dy := e.x1-e.x0, e.y1-e.y0
	return dx*dx+dy*dy < sliver*sliver
}

func (w *work) ends(i int32) ends {
	a, b := &w.pts[w.s.edges[i].from], &w.pts[w.s.edges[i].to]
	if d := b[0] - a[0]; d < -sliver || d < sliver && b[1] < a[1] {
		a, b = b, a
	}
	return ends{a[0], a[1], a[2], b[0], b[1], b[2]}
}

// behind tells whether e lies nowhere nearer than f, which lies in the same place.
func (e *ends) behind(f *ends) bool { return e.z0 <= f.z0+Touching && e.z1 <= f.z1+Touching }

// same tells whether e and f lie in the same place, but for rounding.
func (e *ends) same(f *ends) bool {
	return abs(e.x0-f.x0) < rounding && abs(e.y0-f.y0) < rounding && abs(e.x1-f.x1) < rounding && abs(e.y1-f.y1) < rounding
}

// hash is equal for ends that are the same, save where rounding parts them; that costs time, no more.
func (e *ends) hash() uint64 {
	const shift, per = 0.37, 1 / (16 * rounding)
	h := uint64(0)
	for _, v := range [4]float64{e.x0, e.y0, e.x1, e.y1} {
		h = (h ^ uint64(int64(math.Floor(v*per+shift)))) * 0x9e3779b97f4a7c15
		h ^= h >> 29
	}
	return h
}

// pair looks for an edge in the same place as edge i and drops the one behind.
func (w *work) pair(i int32, e *ends) {
	mask := uint64(len(w.twins) - 1)
	at := e.hash() & mask
	for ; w.twins[at] != (twin{}); at = (at + 1) & mask {
		t := &w.twins[at]
		if f := w.ends(max(t.drawn, t.ends) - 1); e.same(&f) {
			break
		}
	}
	t := &w.twins[at]
	if st := w.stands[i]; st.how != undrawn {
		t.drawn = w.nearer(t.drawn, i+1, e, func(far, near *standing) bool {
			drop := near.how != openLine || far.how == openLine
			if drop {
				far.how = undrawn
			}
			return drop
		})
	}
	if w.stands[i].ends {
		t.ends = w.nearer(t.ends, i+1, e, func(far, _ *standing) bool {
			far.ends = false
			return true
		})
	}
}

// nearer gives the nearer of an edge and its twin, numbers plus 1, after dropping the other.
func (w *work) nearer(old, i int32, e *ends, drop func(far, near *standing) bool) int32 {
	if old == 0 {
		return i
	}
	f, a, b := w.ends(old-1), &w.stands[i-1], &w.stands[old-1]
	if e.behind(&f) && drop(a, b) {
		return old
	}
	if f.behind(e) && drop(b, a) {
		return i
	}
	return old
}
