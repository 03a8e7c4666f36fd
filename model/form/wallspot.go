package form

import (
	"fmt"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// spot places a feature on a board: x along the grain and y across from the middle of the outer
// face; on a wall y counts up the slope, and an arch stands on the lower edge.
func (e *enclosure) spot(i int, f Feature, k int) (*spot, bool) {
	p := &spot{board: e.boards[k], index: i, f: f, angle: f.Angle, chord: -1}
	wall, arch := k < len(e.walls), f.Kind == string(part.Arch)
	if arch && !wall {
		e.find(stop("arch-without-edge", fmt.Sprintf("An arch is cut into the lower edge of a wall, not into %s.",
			strings.ToLower(p.board.part.Name)), 0, 0, "", p.path("on")))
		return nil, false
	}
	var middle mgl64.Vec2
	corners := p.board.corners(0)
	for _, c := range corners {
		middle = middle.Add(c.Vec2().Mul(1 / float64(len(corners))))
	}
	p.centre = middle.Add(mgl64.Vec2{f.X.MM(), f.Y.MM()})
	if arch { // its crown towards +y
		p.chord, p.centre, p.angle = 0, mgl64.Vec2{f.X.MM(), corners[0][1]}, -90*measure.Degree
	}
	return p, true
}
