package joint

import (
	"strconv"

	"splaywright/model/solid"
)

// TailWalls are the walls at the tail board's end, from front to back, world frame: baseline,
// cheek, tail end, cheek, baseline, …, baseline.
func (c Corner) TailWalls(cheeks []Cheeks) []solid.Wall {
	baseline := flip(c.Pin.Inner)
	out := make([]solid.Wall, 0, 4*len(cheeks)+1)
	out = append(out, solid.Wall{Tag: "baseline", Plane: baseline})
	for i, k := range cheeks {
		tail := "tail " + strconv.Itoa(i+1)
		out = append(out,
			solid.Wall{Tag: tail + " front cheek", Plane: k.Front},
			solid.Wall{Tag: tail + " end", Plane: c.Pin.Outer},
			solid.Wall{Tag: tail + " back cheek", Plane: k.Back},
			solid.Wall{Tag: "baseline", Plane: baseline},
		)
	}
	return out
}

// PinWalls are the walls at the pin board's end, from front to back, world frame: half pin end,
// cheek, baseline, cheek, pin end, …, half pin end.
func (c Corner) PinWalls(cheeks []Cheeks) []solid.Wall {
	out := make([]solid.Wall, 0, 4*len(cheeks)+1)
	out = append(out, solid.Wall{Tag: "half pin end", Plane: c.Tail.Outer})
	for i, k := range cheeks {
		end := "pin " + strconv.Itoa(i+1) + " end"
		if i == len(cheeks)-1 {
			end = "half pin end"
		}
		out = append(out,
			solid.Wall{Tag: "tail " + strconv.Itoa(i+1) + " front cheek", Plane: flip(k.Front)},
			solid.Wall{Tag: "baseline", Plane: flip(c.Tail.Inner)},
			solid.Wall{Tag: "tail " + strconv.Itoa(i+1) + " back cheek", Plane: flip(k.Back)},
			solid.Wall{Tag: end, Plane: c.Tail.Outer},
		)
	}
	return out
}

// flip turns a plane's normal over: the wood is on its other side.
func flip(p solid.Plane) solid.Plane { return solid.Plane{N: p.N.Mul(-1), D: -p.D} }
