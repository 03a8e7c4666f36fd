package pattern

import (
	"math"
	"slices"
	"strconv"

	"splaywright/render/draw"
)

// tiling lays one pattern out on sheets that overlap. Row A is the uppermost, column 1 the leftmost.
type tiling struct {
	o          Options
	p          Pattern // corrected, and turned where that saves sheets
	window     draw.Box
	rows, cols int
	corner     draw.Point // of the pattern, at the upper left of the first window
	stepX      float64
	stepY      float64
	full       [][]bool // by row and column: whether a line runs there
}

// tile is one sheet's place in a tiling.
type tile struct{ row, col int }

// name of a sheet: "A1", "B3"; after row Z comes AA.
func (t tile) name() string {
	row, letters := t.row, ""
	for {
		letters = string(rune('A'+row%26)) + letters
		if row = row/26 - 1; row < 0 {
			break
		}
	}
	return letters + strconv.Itoa(t.col+1)
}

// newTiling takes the way round that needs fewer sheets.
func newTiling(p Pattern, o Options) *tiling {
	a, b := tilingOf(p, o), tilingOf(p.upright(), o)
	if b.count() < a.count() {
		return b
	}
	return a
}

func tilingOf(p Pattern, o Options) *tiling {
	const ease = 1.0 // lines keep this far off the windows' outer edges
	t := &tiling{o: o, p: p.stretched(o.fx(), o.fy()), window: o.layout(sizes[o.Sheet])}
	b := t.p.Bounds().Grow(ease)
	lap := o.Overlap.MM()
	t.stepX, t.stepY = t.window.Width()-lap, t.window.Height()-lap
	t.cols = max(1, int(math.Ceil((b.Width()-lap)/t.stepX)))
	t.rows = max(1, int(math.Ceil((b.Height()-lap)/t.stepY)))
	// one sheet holds its pattern in the middle; of several the first are filled as far as may be
	// without a join through a hole
	slackX, slackY := float64(t.cols)*t.stepX+lap-b.Width(), float64(t.rows)*t.stepY+lap-b.Height()
	t.corner = draw.Point{X: b.Min.X - slackX/2, Y: b.Max.Y + slackY/2}
	if t.cols > 1 {
		t.corner.X = b.Min.X - t.shiftOf(slackX, func(s float64) draw.Point { return draw.Point{X: b.Min.X - s, Y: b.Max.Y} }, true)
	}
	if t.rows > 1 {
		t.corner.Y = b.Max.Y + t.shiftOf(slackY, func(s float64) draw.Point { return draw.Point{X: b.Min.X, Y: b.Max.Y + s} }, false)
	}
	t.fill()
	return t
}

// shiftOf is how far of the slack the first sheet stands off the pattern: the least of some steps at
// which the fewest holes and centres lie on joins.
func (t *tiling) shiftOf(slack float64, corner func(float64) draw.Point, across bool) float64 {
	const steps = 12
	best, least := 0.0, math.MaxInt
	for i := range steps + 1 {
		s := slack * float64(i) / steps
		if n := t.parted(corner(s), across); n < least {
			best, least = s, n
		}
	}
	return best
}

// parted counts the small figures, such as holes and centres, that lie on joins.
func (t *tiling) parted(corner draw.Point, across bool) int {
	const small = 60.0 // mm
	lap, n := t.o.Overlap.MM(), 0
	for _, l := range t.p.Lines {
		b := draw.Bounds([]draw.Item{draw.Path{Segs: l.Segs}})
		round := slices.ContainsFunc(l.Segs, func(s draw.Seg) bool { return s.Kind == draw.Curve })
		if l.Kind != Mark && !round || max(b.Width(), b.Height()) > small {
			continue
		}
		lo, hi, step, from := b.Min.X, b.Max.X, t.stepX, corner.X
		if !across {
			lo, hi, step, from = -b.Max.Y, -b.Min.Y, t.stepY, -corner.Y
		}
		// joins begin at from + step, from + 2 step, … and are as wide as the overlap
		k := math.Floor((hi - from) / step)
		if k >= 1 && lo < from+k*step+lap {
			n++
		}
	}
	return n
}

// box is what a sheet shows of the pattern.
func (t *tiling) box(k tile) draw.Box {
	x, y := t.corner.X+float64(k.col)*t.stepX, t.corner.Y-float64(k.row)*t.stepY
	return draw.Box{Min: draw.Point{X: x, Y: y - t.window.Height()}, Max: draw.Point{X: x + t.window.Width(), Y: y}}
}

// fill notes the sheets on which a line runs. Where leaving out the others would part the rest,
// none is left out.
func (t *tiling) fill() {
	t.full = make([][]bool, t.rows)
	for r := range t.full {
		t.full[r] = make([]bool, t.cols)
		for c := range t.full[r] {
			t.full[r][c] = len(t.lines(tile{r, c}, true)) > 0
		}
	}
	if t.joined() {
		return
	}
	for r := range t.full {
		for c := range t.full[r] {
			t.full[r][c] = true
		}
	}
}

// joined tells whether the sheets hang together edge to edge.
func (t *tiling) joined() bool {
	all := t.sheets()
	if len(all) == 0 {
		return true
	}
	seen := map[tile]bool{all[0]: true}
	for queue := all[:1]; len(queue) > 0; queue = queue[1:] {
		for _, d := range []tile{{0, 1}, {1, 0}, {0, -1}, {-1, 0}} {
			n := tile{queue[0].row + d.row, queue[0].col + d.col}
			if t.has(n) && !seen[n] {
				seen[n] = true
				queue = append(queue[:len(queue):len(queue)], n)
			}
		}
	}
	return len(seen) == len(all)
}

// has tells whether a sheet is printed.
func (t *tiling) has(k tile) bool {
	return k.row >= 0 && k.row < t.rows && k.col >= 0 && k.col < t.cols && t.full[k.row][k.col]
}

// sheets are the printed ones, row by row; left out are the others.
func (t *tiling) sheets() []tile { return t.which(true) }

func (t *tiling) leftOut() []tile { return t.which(false) }

func (t *tiling) which(full bool) []tile {
	var out []tile
	for r := range t.full {
		for c := range t.full[r] {
			if t.full[r][c] == full {
				out = append(out, tile{r, c})
			}
		}
	}
	return out
}

func (t *tiling) count() int { return len(t.sheets()) }

// lines are the parts of the pattern's lines in a sheet's window, in the pattern's own places; weighty
// ones are those that a sheet is printed for.
func (t *tiling) lines(k tile, weighty bool) []Line {
	b := t.box(k)
	in := window(b)
	var out []Line
	for _, l := range t.p.Lines {
		if weighty && l.Kind != Cut && l.Kind != Fold && l.Kind != Mark {
			continue
		}
		if around := draw.Bounds([]draw.Item{draw.Path{Segs: l.Segs}}); !touches(around, b.Grow(onBorder)) {
			continue
		}
		for _, segs := range clip(l.Segs, in) {
			out = append(out, Line{l.Kind, segs, l.Ref, l.Head})
		}
	}
	return out
}

func touches(a, b draw.Box) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y
}

// core is what a sheet keeps of its window when it shares each overlap half and half.
func (t *tiling) core(k tile) draw.Box {
	b, lap := t.box(k), t.o.Overlap.MM()/2
	if k.col > 0 {
		b.Min.X += lap
	}
	if k.col < t.cols-1 {
		b.Max.X -= lap
	}
	if k.row > 0 {
		b.Max.Y -= lap
	}
	if k.row < t.rows-1 {
		b.Min.Y += lap
	}
	return b
}

// shift brings the pattern's places to a sheet's paper.
func (t *tiling) shift(k tile) draw.Point {
	b := t.box(k)
	return draw.Point{X: t.window.Min.X - b.Min.X, Y: t.window.Min.Y - b.Min.Y}
}

// neighbours of a sheet that are printed.
func (t *tiling) left(k tile) bool  { return t.has(tile{k.row, k.col - 1}) }
func (t *tiling) right(k tile) bool { return t.has(tile{k.row, k.col + 1}) }
func (t *tiling) above(k tile) bool { return t.has(tile{k.row - 1, k.col}) }
func (t *tiling) below(k tile) bool { return t.has(tile{k.row + 1, k.col}) }
