package form

import (
	"fmt"
	"math"

	"splaywright/model/measure"
)

// Every length of a design must be within these; a board outside them is a slip of the pen, and
// the geometry would lose digits over it.
const (
	smallest = measure.Millimetre / 10
	largest  = 100 * 1000 * measure.Millimetre
)

// size is a length of the design with its path in the file.
type size struct {
	path   string
	length measure.Length
}

// everySize lists the lengths that place and shape something.
func (d Design) everySize() []size {
	out := []size{
		{"size.height", d.Size.Height}, {"size.width", d.Size.Width}, {"size.depth", d.Size.Depth},
		{"size.lower-height", d.Size.LowerHeight}, {"size.lower-width", d.Size.LowerWidth},
		{"boards.top.thickness", d.Boards.Top.Thickness}, {"boards.side.thickness", d.Boards.Side.Thickness},
		{"corners.overhang", d.Corners.Overhang}, {"corners.overhang-edges", d.Corners.OverhangEdges},
	}
	for _, b := range []struct {
		path  string
		board Board
	}{{"boards.front", d.Boards.Front}, {"boards.back", d.Boards.Back}, {"boards.end", d.Boards.End}} {
		out = append(out, size{b.path + ".thickness", b.board.Thickness})
	}
	out = append(out, d.closingSizes()...)
	for _, p := range []struct {
		path   string
		length *measure.Length
	}{
		{"corners.tail", d.Corners.Tail}, {"corners.pin", d.Corners.Pin},
		{"corners.half-pin", d.Corners.HalfPin}, {"corners.depth", d.Corners.Depth}, {"corners.lap", d.Corners.Lap},
	} {
		if p.length != nil {
			out = append(out, size{p.path, *p.length})
		}
	}
	for _, t := range d.Corners.TailWidths {
		out = append(out, size{"corners.tail-widths", t})
	}
	out = append(out, d.Corners.Screws.everySize("corners.screws")...)
	if s := d.Corners.Spline; s != nil {
		out = append(out, size{"corners.spline.thickness", s.Thickness}, size{"corners.spline.width", s.Width},
			size{"corners.spline.inset", s.Inset}, size{"corners.spline.stop", s.Stop})
	}
	if k := d.Corners.Keys; k != nil {
		out = append(out, size{"corners.keys.thickness", k.Thickness}, size{"corners.keys.depth", k.Depth}, size{"corners.keys.pitch", k.Pitch})
	}
	for i, s := range d.Stretchers {
		path := fmt.Sprintf("stretchers.%d", i)
		out = append(out, size{path + ".width", s.Width}, size{path + ".thickness", s.Thickness},
			size{path + ".below-top", s.BelowTop}, size{path + ".across", s.Across}, size{path + ".depth", s.Depth})
		out = append(out, s.Screws.everySize(path+".screws")...)
	}
	if a := d.Aprons; a != nil {
		out = append(out, size{"aprons.width", a.Width}, size{"aprons.thickness", a.Thickness}, size{"aprons.below-top", a.BelowTop}, size{"aprons.depth", a.Depth})
		if a.SetIn != nil {
			out = append(out, size{"aprons.set-in", *a.SetIn})
		}
		out = append(out, a.Screws.everySize("aprons.screws")...)
	}
	for i, f := range d.Features {
		path := fmt.Sprintf("features.%d", i)
		out = append(out, size{path + ".width", f.Width}, size{path + ".rise", f.Rise}, size{path + ".length", f.Length},
			size{path + ".diameter", f.Diameter}, size{path + ".radius", f.Radius}, size{path + ".hollow", f.Hollow}, size{path + ".depth", f.Depth},
			size{path + ".x", f.X}, size{path + ".y", f.Y})
	}
	return out
}

// closingSizes are the lengths of a bottom and a lid.
func (d Design) closingSizes() []size {
	var out []size
	if u := d.Bottom; u != nil {
		out = append(out, size{"bottom.thickness", u.Thickness}, size{"bottom.up", u.Up})
		if u.Depth != nil {
			out = append(out, size{"bottom.depth", *u.Depth})
		}
		if u.Clearance != nil {
			out = append(out, size{"bottom.clearance", max(*u.Clearance, smallest)}) // as little as one likes
		}
		out = append(out, u.Screws.everySize("bottom.screws")...)
	}
	if l := d.Lid; l != nil {
		out = append(out, size{"lid.thickness", l.Thickness}, size{"lid.overhang", l.Overhang})
		if n := l.Battens; n != nil {
			out = append(out, size{"lid.battens.width", n.Width}, size{"lid.battens.thickness", n.Thickness}, size{"lid.battens.inset", n.Inset})
			out = append(out, n.Screws.everySize("lid.battens.screws")...)
		}
	}
	return out
}

func (s *Screws) everySize(path string) []size {
	if s == nil {
		return nil
	}
	return []size{{path + ".length", s.Length}, {path + ".from-end", s.FromEnd}, {path + ".counterbore", s.Counterbore}}
}

// refuseReach reports lengths that are no numbers or out of all measure. Nothing at all, which
// means none, and less than nothing, which may be a side to put something, are left to others.
func (b *assembly) refuseReach(d Design) {
	for _, s := range d.everySize() {
		l := s.length
		if math.IsNaN(l.MM()) || l > largest || l < -largest || l > 0 && l < smallest {
			b.find(stop("size-out-of-measure", fmt.Sprintf("%s is %g mm; a size here is between %g mm and %g m.",
				s.path, l.MM(), smallest.MM(), largest.MM()/1000), l.MM(), largest.MM(), "mm", s.path))
		}
	}
}
