package table

import (
	"fmt"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Mortises is where the openings for tenons lie on both faces of the sides: on a leaning board the two do not
// stand behind each other, and are longer than the tenon.
func Mortises(p *form.Piece, style measure.Style) Table {
	s := newSheet("mortises", "Mortises", style.Joints())
	s.words("In", "For", "Face")
	s.lengths("along the named face", "Lower line", "Upper line", "Front line", "Back line", "Long")
	s.lengths("square to the named face", "Deep")
	for _, j := range p.Joints {
		side, rail := p.Part(j.TailBoard), p.Part(j.PinBoard)
		if j.Tenon == nil || side == nil || rail == nil {
			continue
		}
		walls := wallsOf(side)
		faces := []wall{walls[1]}
		if j.Kind == form.ThroughTenon {
			faces = append(faces, walls[0])
		}
		for i, face := range faces {
			what := [2]Cell{}
			if i == 0 {
				what = [2]Cell{word(partMark(side)), word(partMark(rail))}
			}
			if row, ok := mortiseRow(s, j, side, face); ok {
				s.row(side.ID, append(what[:], row...)...)
			}
		}
	}
	if len(s.Rows) > 0 {
		s.note("Lower and upper lines are square to the middle line of the side, up that face from its floor end along the middle line; front and back lines stand so far in front of and behind the middle line, below 0 on its other side. Long: from the lower to the upper line.")
		s.note("Mark both faces from the same end and edge, and chop a through mortise from both of them to the middle: its walls run from line to line, not square to the face.")
	}
	return s.done()
}

// mortiseCorners are the corners of a mortise on one face of the side.
func mortiseCorners(j joint.Joint, face wall) (at [4]mgl64.Vec3, ok bool) {
	for i, m := range j.Tenon.Mortise {
		n := j.Tenon.Mortise[(i+1)%4]
		if at[i], ok = meet(face, wall{normal: m.N, offset: m.D}, wall{normal: n.N, offset: n.D}); !ok {
			return at, false
		}
	}
	return at, true
}

func mortiseRow(s *sheet, j joint.Joint, side *part.Part, face wall) ([]Cell, bool) {
	floor := wall{}
	for _, w := range wallsOf(side) {
		if w.name == "floor end" {
			floor = w
		}
	}
	at, ok := mortiseCorners(j, face)
	if !ok {
		return nil, false
	}
	up := func(p mgl64.Vec3) measure.Length { // along the middle line
		p[1] = 0
		return measure.Length(distanceIn(face, floor, p))
	}
	back := func(p mgl64.Vec3) measure.Length { return measure.Length(side.Place.Mul4x1(p.Vec4(1))[1]) }
	low, high := up(at[1]), up(at[3])
	deep := j.Depth
	if j.Kind == form.ThroughTenon {
		deep = side.Blank.Thickness
	}
	return []Cell{word(face.name), s.length(low), s.length(high), s.length(-back(at[0])), s.length(back(at[2])), s.length(high - low), s.length(deep)}, true
}

// Tenons is how the tenons of stretchers are cut, and their wedges.
func Tenons(p *form.Piece, style measure.Style) []Table {
	var all []Table
	done := map[string]bool{}
	for _, j := range p.Joints {
		if j.Tenon == nil || done[j.PinBoard] {
			continue
		}
		done[j.PinBoard] = true
		both := slices.DeleteFunc(slices.Clone(p.Joints), func(k joint.Joint) bool { return k.PinBoard != j.PinBoard })
		all = append(all, tenonTable(p, both, style))
	}
	return all
}

func tenonTable(p *form.Piece, both []joint.Joint, style measure.Style) Table {
	j := both[0]
	t := j.Tenon
	s := settingsTable("tenons-"+j.PinBoard, "Tenons: "+nameIn(p, j.PinBoard)+", "+j.Kind, style)
	for i, k := range both {
		where := "from square to the length, both ends mirrored"
		if len(both) > 1 && !within(both[0].Tenon.Lean, both[1].Tenon.Lean, sameAngle) {
			where = "from square to the length, at " + nameIn(p, k.TailBoard)
		} else if i > 0 {
			continue
		}
		bevel(s, "shoulders", k.Tenon.Lean, where)
		gauge(s, "tenon, long", k.Tenon.Length, "along the stretcher, from the shoulder to the end, which is parallel to it")
	}
	gauge(s, "tenon, wide", t.Width, "in the middle of the stretcher's width")
	gauge(s, "tenon, thick", t.Thickness, "in the middle of its thickness")
	gauge(s, "shoulders at the edges", t.Shoulder.Width, "each")
	gauge(s, "shoulders at the faces", t.Shoulder.Thickness, "each: gauge both from the outer face")
	if w := t.Wedges; w != nil {
		gauge(s, "slots, wide", w.Slot, fmt.Sprintf("%d, evenly spread, level when the piece stands", len(w.Parts)))
		gauge(s, "slots, deep", w.Deep, "from the tenon's end, along the stretcher; bore a small hole at the end of each, so that the split stops there")
		gauge(s, "mortise flares", w.Flare, "at its lower and its upper end on the outer face, to nothing inside")
		bevel(s, "flare of the mortise", w.FlareLean, "from the tenon's edges")
		gauge(s, "wedge, thick", w.Thick, "at the side's outer face; at the thin end as the slot")
		bevel(s, "wedge", w.Angle, "between its two sides")
		s.note("Wedges spread the tenon along the grain of the side, against end grain. Across it they would split the side.")
	}
	s.note("The tenon goes home along the stretcher; where the side leans it is not square to the side's face.")
	return s.done()
}

func (s *steps) tenons(j joint.Joint) {
	t := j.Tenon
	lines := "In the sides for %s, lines on both faces as in Mortises; a bevel at %s from square guides the chisel."
	if j.Kind == form.HousedTenon {
		lines = "In the sides for %s, lines on the inner face as in Mortises; a bevel at %s from square guides the chisel. It does not go through."
	}
	s.step(j.TailBoard, "Chop the mortises", "Clamp the side to the bench, chisel away from the body.",
		fmt.Sprintf(lines, s.the(j.PinBoard), degrees(t.Lean)))
	how := fmt.Sprintf("On %s: shoulders %s from square, tenon %s × %s, %s long, as in Tenons.", s.the(j.PinBoard), degrees(t.Lean), s.show(t.Width), s.show(t.Thickness), s.show(t.Length))
	slots := ""
	if w := t.Wedges; w != nil {
		slots = fmt.Sprintf("Saw %d slots %s deep for the wedges.", len(w.Parts), s.joint(w.Deep))
	}
	s.step(j.PinBoard, "Cut the tenons", "Cut on the waste side; pare to the line from the mortise as chopped.", how, slots)
}

func (s *steps) wedges() {
	for _, j := range s.p.Joints {
		if j.Tenon != nil && j.Tenon.Wedges != nil {
			s.step(j.TailBoard, "Drive the wedges", "Wear eye protection; tap them in turn, and stop when the sound changes.",
				"While the glue is wet, glue into the slots and on one side of each wedge only.",
				fmt.Sprintf("Wedges, their grain along the stretcher: %s.", s.strips(part.Wedge)),
				"Leave them long, saw them off when dry and pare them with the tenon.")
			return
		}
	}
}
