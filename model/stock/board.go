// Package stock holds the boards on hand, what is to be cut from them, and the plan that says which part comes from
// where; and a verifier that checks any plan against the boards with geometry of its own.
//
// Millimetres. A board lies with its grain along x: x from its left end, y from its near edge.
package stock

import (
	"fmt"
	"math"
)

// Point is a place on a board's face.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle on a board's face, from (X1, Y1) to (X2, Y2).
type Rect struct{ X1, Y1, X2, Y2 float64 }

// Length is the rectangle's size along the grain, Width across it.
func (r Rect) Length() float64 { return r.X2 - r.X1 }

// Width is the rectangle's size across the grain.
func (r Rect) Width() float64 { return r.Y2 - r.Y1 }

// Area in square millimetres; nothing for an empty rectangle.
func (r Rect) Area() float64 { return max(0, r.Length()) * max(0, r.Width()) }

// Board is a board on hand, or one that could be bought.
type Board struct {
	Name      string
	Unnamed   bool // nobody named it: Name is the program's, by its place in its list
	Timber    string
	Length    float64 // along the grain
	Width     float64
	Thickness float64
	Outline   []Point // where the wood is, for taper and waney edges; none: the whole rectangle
	Avoid     []Avoid
	Price     float64 // of one; with no price anywhere a plan takes the least area of wood
	Count     int     // alike; 0 means one
	Grain     string  // one of Grains; "" = not told
	Sawn      string  // one of Saws; "" = not told
	Face      string  // which face is the better one, and its figure
	Note      string  // anything else, such as where it came from
	Sold      AsSold  // nothing: the board goes by its own sizes
	Warp              // how far from flat it is
}

// AsSold is what a yard calls and charges a board by where that is not its own size, and what its grade promises.
type AsSold struct {
	Words            string  // "5/4", "1 x 8"
	Thickness, Width float64 // rough or nominal, mm
	Surfaced         float64 // mm of thickness that are left of it with both faces clean
	Softwood         bool    // charged by its nominal sizes
	PerBoardFoot     float64 // price; 0 where it goes by the length
	Grade            string  // what it bears; "" = none was told
	Clear            float64 // mm² of its face that the grade promises in clear pieces
}

// Corner says from which end and edge a place is measured.
type Corner int

// Ends and edges a place is measured from.
const (
	LeftNear Corner = iota
	RightNear
	LeftFar
	RightFar
)

// Avoid is a place not to be used: a knot, a hole, a split, a strip to rip off. With a Diameter it is a circle whose
// centre lies X from the end and Y from the edge; otherwise a rectangle whose nearest corner does.
type Avoid struct {
	What          string
	From          Corner
	X, Y          float64
	Length, Width float64
	Diameter      float64
}

// Blot is a place to avoid in the board's own frame: a rectangle, or a circle when Radius is not 0.
type Blot struct {
	Rect
	Centre Point
	Radius float64
}

// On puts the place into the board's frame.
func (a Avoid) On(b Board) Blot {
	l, w := a.Length, a.Width
	if a.Diameter > 0 {
		l, w = 0, 0
	}
	x, y := a.X, a.Y
	if a.From == RightNear || a.From == RightFar {
		x = b.Length - a.X - l
	}
	if a.From == LeftFar || a.From == RightFar {
		y = b.Width - a.Y - w
	}
	if r := a.Diameter / 2; r > 0 {
		return Blot{Rect: Rect{x - r, y - r, x + r, y + r}, Centre: Point{x, y}, Radius: r}
	}
	return Blot{Rect: Rect{x, y, x + l, y + w}}
}

// Area is the face area of the board within its outline, places to avoid included.
func (b Board) Area() float64 {
	if len(b.Outline) == 0 {
		return b.Length * b.Width
	}
	return areaOf(b.Outline)
}

func areaOf(outline []Point) float64 {
	sum := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(sum) / 2
}

// Wood is how much of a rectangle lies within the board's outline, mm², places to avoid included.
func (b Board) Wood(r Rect) float64 { return areaOf(b.Within(r)) }

// Within is what of a rectangle lies within the board's outline: its corners in order.
func (b Board) Within(r Rect) []Point {
	if len(b.Outline) == 0 {
		return []Point{{r.X1, r.Y1}, {r.X2, r.Y1}, {r.X2, r.Y2}, {r.X1, r.Y2}}
	}
	left := b.Outline
	for _, beyond := range []func(p Point) float64{
		func(p Point) float64 { return r.X1 - p.X }, func(p Point) float64 { return p.X - r.X2 },
		func(p Point) float64 { return r.Y1 - p.Y }, func(p Point) float64 { return p.Y - r.Y2 },
	} {
		left = cutOff(left, beyond)
	}
	return left
}

// cutOff is an outline without what lies beyond a straight line.
func cutOff(outline []Point, beyond func(p Point) float64) (out []Point) {
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		u, v := beyond(p), beyond(q)
		if u <= 0 {
			out = append(out, p)
		}
		if u < 0 && v > 0 || u > 0 && v < 0 {
			s := u / (u - v)
			out = append(out, Point{p.X + s*(q.X-p.X), p.Y + s*(q.Y-p.Y)})
		}
	}
	return out
}

// Number is how many boards there are of this kind.
func (b Board) Number() int { return max(1, b.Count) }

const widest = 1e5 // mm; anything larger is a slip of the pen

// Check refuses a board that cannot be.
func (b Board) Check() error {
	for _, v := range []struct {
		what  string
		value float64
	}{{"length", b.Length}, {"width", b.Width}, {"thickness", b.Thickness}} {
		if !(v.value > 0 && v.value < widest) {
			return b.fault(v.what, fmt.Sprintf("board %q: %s is %g mm; more than 0 and less than 100 m is expected", b.Name, v.what, v.value))
		}
	}
	for _, v := range []struct {
		what          string
		value, across float64
	}{{"bow", b.Bow, b.Length}, {"cup", b.Cup, b.Width}, {"twist", b.Twist, b.Width}} {
		if !(v.value >= 0 && v.value < v.across) {
			return b.fault(v.what, fmt.Sprintf("board %q: %s is %g mm; from 0 to less than %g is expected", b.Name, v.what, v.value, v.across))
		}
	}
	switch text := fmt.Sprintf("board %q: price %g, count %d; neither can be negative", b.Name, b.Price, b.Count); {
	case b.Price < 0 || math.IsNaN(b.Price) || math.IsInf(b.Price, 0):
		return b.fault("price", text)
	case b.Count < 0:
		return b.fault("count", text)
	}
	if err := b.checkOutline(); err != nil {
		return err
	}
	for i, a := range b.Avoid {
		if err := b.checkPlace(a, fmt.Sprintf("avoid.%d", i)); err != nil {
			return err
		}
	}
	return nil
}

// Fault is what is wrong with a board.
type Fault struct {
	At   string // which value it is, as a design file has it below the board: "length", "outline.2.x"
	Text string
}

// Error says what is wrong.
func (f *Fault) Error() string { return f.Text }

func (b Board) fault(at, text string) error { return &Fault{At: at, Text: text} }

// checkPlace looks at a place to avoid that stands at a path below the board.
func (b Board) checkPlace(a Avoid, path string) error {
	for _, v := range []struct {
		key string
		mm  float64
	}{{"x", a.X}, {"y", a.Y}, {"length", a.Length}, {"width", a.Width}, {"diameter", a.Diameter}} {
		if !(v.mm >= 0 && v.mm < widest) {
			return b.fault(path+"."+v.key, fmt.Sprintf("board %q: %s: %g mm is not a place or size on it; nothing below 0 is, and nothing of 100 m", b.Name, a.named(), v.mm))
		}
	}
	switch what := a.named(); {
	case a.Diameter == 0 && (a.Length == 0 || a.Width == 0):
		return b.fault(path, fmt.Sprintf("board %q: %s has no size; give a diameter, or a length and a width", b.Name, what))
	case a.Diameter > 0 && a.Length+a.Width > 0:
		return b.fault(path+".diameter", fmt.Sprintf("board %q: %s is both a circle and a rectangle; keep either the diameter or the length and the width", b.Name, what))
	}
	return nil
}

func (a Avoid) named() string {
	if a.What == "" {
		return "what is to be cut around"
	}
	return a.What
}

func (b Board) checkOutline() error {
	n := len(b.Outline)
	if n == 0 {
		return nil
	}
	if n < 3 {
		return b.fault("outline", fmt.Sprintf("board %q: an outline needs three corners, it has %d", b.Name, n))
	}
	for i, p := range b.Outline {
		key := "x"
		if p.X >= 0 && p.X <= b.Length+Slack {
			key = "y"
		}
		if key == "x" || !(p.Y >= 0 && p.Y <= b.Width+Slack) {
			return b.fault(fmt.Sprintf("outline.%d.%s", i, key), fmt.Sprintf("board %q: outline corner %g, %g lies off the board of %g by %g; corners lie from 0, 0 at its left near corner to its length and width", b.Name, p.X, p.Y, b.Length, b.Width))
		}
	}
	for i := range b.Outline {
		for j := i + 2; j < n; j++ {
			if i == 0 && j == n-1 {
				continue
			}
			if crosses(b.Outline[i], b.Outline[i+1], b.Outline[j], b.Outline[(j+1)%n]) {
				return b.fault(fmt.Sprintf("outline.%d.x", j), fmt.Sprintf("board %q: its outline crosses itself between corners %d and %d; list them in order round the board", b.Name, i+1, j+1))
			}
		}
	}
	if b.Area() == 0 {
		return b.fault("outline", fmt.Sprintf("board %q: its outline holds no area", b.Name))
	}
	return nil
}

func side(a, b, p Point) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }

func crosses(a, b, c, d Point) bool {
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
