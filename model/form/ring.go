package form

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

const (
	ringForm    = "ring"
	fewest      = 3
	most        = 16
	usualStaves = 6
)

// ringFamily: three to sixteen equal staves that lean outward to the rim.
var ringFamily = family{
	form:     ringForm,
	walls:    true,
	defaults: ringDefaults,
	refuse:   refuseRing,
	build:    func(a *assembly) { newEnclosure(a, staves(a.d), 1).build() },
}

func ringDefaults(d *Design) {
	fill(&d.Size.Staves, usualStaves)
	wallDefaults(d)
}

// staves stand counter-clockwise from above, the first at the front.
func staves(d Design) []*wall {
	n := d.Size.Staves
	out := make([]*wall, n)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out[i] = &wall{
			id: fmt.Sprintf("stave-%d", i+1), name: fmt.Sprintf("Stave %d", i+1),
			out: mgl64.Vec3{quiet(sin), -quiet(cos), 0}, half: d.Size.Width.MM() / 2, lean: upright(d.Splay.Ends.Radians()),
			thickness: d.Boards.Side.Thickness.MM(), timber: d.Boards.Side.Timber,
			sizes: []string{"size.height", "size.width", "size.staves", "boards.side.thickness", "splay.ends"},
		}
	}
	return out
}

// quiet takes the rounding noise of a sine for the nothing that it is.
func quiet(v float64) float64 {
	if math.Abs(v) < 1e-15 {
		return 0
	}
	return v
}

func refuseRing(a *assembly) {
	if n := a.d.Size.Staves; n < fewest || n > most {
		a.find(stop("staves-out-of-reach", fmt.Sprintf("A ring has %d to %d staves, not %d.", fewest, most, n), float64(n), fewest, "", "size.staves"))
	}
	refuseWalls(a)
}
