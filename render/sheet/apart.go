package sheet

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// Apart is the piece while it is taken apart: after steps of the assembly undone, the last first; a
// part of a step moves its parts part of the way. 0 = whole, as many as there are moves = all apart.
// The parts stand aside along the ways in which they come home. What goes on a board that stands aside itself, another
// way, goes with that board, so that each part has the place that it goes to before it.
func Apart(p *form.Piece, steps float64) *form.Piece {
	off := map[string]mgl64.Vec3{}
	n := len(p.Assembly.Moves)
	for _, a := range asides(p) {
		share := math.Max(0, math.Min(1, steps-float64(n-1-a.move)))
		off[a.id] = off[a.id].Add(off[a.with]).Sub(a.way.Mul(share))
	}
	shown := *p
	shown.Parts = nil
	for _, q := range p.Parts {
		d := off[q.ID]
		moved := *q
		moved.Place = mgl64.Translate3D(d[0], d[1], d[2]).Mul4(q.Place)
		shown.Parts = append(shown.Parts, &moved)
	}
	return &shown
}

// aside is how a part stands off: with another board, "" for none, and from there against its way home, world frame,
// mm; onto is the board that it then meets along that way, "" where it meets none that stood before.
type aside struct {
	move           int
	id, with, onto string
	way            mgl64.Vec3
}

// asides are those of all parts that move, in the order of the assembly.
func asides(p *form.Piece) []aside {
	size := max(p.Overall.Height, p.Overall.WidthTop, p.Overall.WidthFloor, p.Overall.DepthTop).MM()
	off, before := map[string]mgl64.Vec3{}, slices.Clone(p.Assembly.First)
	var out []aside
	far, byThemselves := aways(p), p.Assembly.Aside()
	for k, m := range p.Assembly.Moves {
		standing := slices.DeleteFunc(slices.Clone(before), func(id string) bool { return slices.Contains(m.Parts, id) })
		if byThemselves[k] {
			standing = m.Onto
		}
		for i, id := range m.Parts {
			a := aside{move: k, id: id, way: m.Ways[i].Mul(far[k] * size)}
			mates := joined(p, id, standing)
			for _, mate := range mates {
				if between := off[mate].Add(a.way); a.onto == "" && m.Ways[i].Len() > 0 && between.Normalize().Dot(m.Ways[i].Normalize()) > alongWay {
					a.onto = mate
				}
			}
			if a.onto == "" && len(mates) > 0 {
				a.with, a.onto, a.way = mates[0], mates[0], m.Ways[i].Mul(apart*size)
			}
			off[id] = off[id].Add(off[a.with]).Sub(a.way)
			out = append(out, a)
		}
		before = append(before, m.Parts...)
	}
	return out
}

// aways are how far the parts of each move stand off, as shares of the piece's largest size. What is put together
// aside is counted by itself: it is carried along by the move that takes it home.
func aways(p *form.Piece) []float64 {
	out := make([]float64, len(p.Assembly.Moves))
	placed, onIt := 0, 0
	for k, by := range p.Assembly.Aside() {
		if k > 0 && slipsAlike(p, k) {
			out[k] = out[k-1]
			continue
		}
		if by {
			onIt++
			out[k] = asideBy * float64(onIt) // small parts on a board
			continue
		}
		out[k] = apart + further*float64(placed)
		placed, onIt = placed+1, 0
	}
	return out
}

// slipsAlike tells whether a move of the assembly puts in one slip as the move before it does another: splines, or keys, that do not
// mind which goes in first.
func slipsAlike(p *form.Piece, k int) bool {
	kind := func(k int) part.Slip {
		if m := p.Assembly.Moves[k]; len(m.Parts) == 1 {
			return p.Part(m.Parts[0]).Slip
		}
		return ""
	}
	return k > 0 && kind(k) != "" && kind(k) == kind(k-1) && !p.Assembly.Aside()[k]
}

// alongWay is the cosine of an angle that nobody sees on paper.
const alongWay = 0.9999

// joined are those of the boards, in their order, that a part has a joint with.
func joined(p *form.Piece, id string, boards []string) []string {
	var out []string
	for _, b := range boards {
		if slices.ContainsFunc(p.Joints, func(j joint.Joint) bool {
			return j.TailBoard == id && j.PinBoard == b || j.TailBoard == b && j.PinBoard == id
		}) {
			out = append(out, b)
		}
	}
	return out
}

// Slid is the piece with single parts taken off along the ways in which they come home: off is how far, mm, by
// part. A part that stands first has no way and stays.
func Slid(p *form.Piece, off map[string]float64) *form.Piece {
	shown := *p
	shown.Parts = nil
	for _, q := range p.Parts {
		moved := *q
		if way, ok := WayOff(p, q.ID); ok {
			d := way.Mul(off[q.ID])
			moved.Place = mgl64.Translate3D(d[0], d[1], d[2]).Mul4(q.Place)
		}
		shown.Parts = append(shown.Parts, &moved)
	}
	return &shown
}

// WayOff is the direction in which a part leaves its place, world frame, one long; false for what stands first.
func WayOff(p *form.Piece, id string) (mgl64.Vec3, bool) {
	for _, m := range p.Assembly.Moves {
		for i, moved := range m.Parts {
			if moved == id && m.Ways[i].Len() > 0 {
				return m.Ways[i].Normalize().Mul(-1), true
			}
		}
	}
	return mgl64.Vec3{}, false
}
