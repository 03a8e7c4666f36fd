package stock

// Placed is the place at another spot of the board or in another size, measured from the same end and edge as before.
// It is the other way round of On.
func (a Avoid) Placed(b Board, to Blot) Avoid {
	l, w := to.Length(), to.Width()
	x, y := to.X1, to.Y1
	if a.Diameter > 0 {
		a.Diameter = 2 * to.Radius
		x, y, l, w = to.Centre.X, to.Centre.Y, 0, 0
	} else {
		a.Length, a.Width = l, w
	}
	if a.From == RightNear || a.From == RightFar {
		x = b.Length - x - l
	}
	if a.From == LeftFar || a.From == RightFar {
		y = b.Width - y - w
	}
	a.X, a.Y = x, y
	return a
}

var cornerNames = [...]string{LeftNear: "left near", RightNear: "right near", LeftFar: "left far", RightFar: "right far"}

// CornerNames are the words for the corners a place is measured from, in their order.
func CornerNames() []string { return cornerNames[:] }

func (c Corner) String() string { return cornerNames[c] }
