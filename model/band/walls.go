package band

import (
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// wall is a wall of a tray or chest as it was cut: how long its upper edge is, how wide it is and how it leans.
type wall struct {
	lean                 float64 // radians, above 0 where it leads out to the rim
	sense                float64 // 1 where its design counts leans so, -1 where it counts them the other way
	length, width, angle int     // causes; of angle as its design counts
}

// walls: the rim is as long as its boards; the floor follows from how they lean, and the height from how wide they are. Four
// mitred corners close with what all bevels together leave.
func (m *model) walls() {
	front, back, left, right := m.wall("front"), m.wall("back"), m.wall("end-left"), m.wall("end-right")
	o, over := m.p.Overall, 0.0
	if m.d.Lid != nil {
		over = 2 * m.d.Lid.Overhang.MM()
	}
	width, depth := o.WidthTop.MM()-over, o.DepthTop.MM()-over
	high := m.plumb("front", "back", "end-left", "end-right")
	bevels, through := m.bevels([]string{"front", "end-right", "back", "end-left"}), m.mitre("front")
	m.wallFigures(len(bevels) > 0)
	m.built = func(off []float64) []float64 {
		across, along := width+off[front.length]/2+off[back.length]/2, depth+off[left.length]/2+off[right.length]/2
		up := (front.rise(high, off) + back.rise(high, off) + left.rise(high, off) + right.rise(high, off)) / 4
		out := []float64{across, along, across - left.in(high, off) - right.in(high, off), along - front.in(high, off) - back.in(high, off), o.Height.MM() + up - high,
			off[front.length] - off[back.length], off[right.length] - off[left.length]}
		if len(bevels) > 0 {
			out = append(out, open(off, bevels, through))
		}
		return out
	}
}

func (m *model) wallFigures(mitred bool) {
	m.figure("width-top", "width at the top", "")
	m.figure("depth-top", "depth at the top", "")
	width, depth := "width at the floor", "depth at the floor"
	if b := m.d.Bottom; b != nil && b.Joint == form.ScrewedOn {
		width, depth = "width at the lower edges of the walls", "depth at the lower edges of the walls"
	}
	m.figure("width-floor", width, "")
	m.figure("depth-floor", depth, "")
	m.figure("height-whole", "height", "")
	m.gap("front-longer", "front longer than the back", "")
	m.gap("right-longer", "right end longer than the left", "")
	if mitred {
		m.gap("last-joint-open", "last corner open", "")
	}
}

// wall adds the causes of a wall.
func (m *model) wall(id string) wall {
	s := m.d.Splay
	lean := map[string]measure.Angle{"front": s.Front, "back": s.Front, "end-left": s.Ends, "end-right": s.Ends}[id]
	if own := map[string]*measure.Angle{"back": s.Back, "end-left": s.EndLeft, "end-right": s.EndRight}[id]; own != nil {
		lean = *own
	}
	w := wall{sense: 1, length: m.may(OfLength, id, Length, m.length), width: m.may(OfWidth, id, Length, m.length), angle: m.may(OfLean, id, Degree, m.angle)}
	if m.p.Form == "chest" { // leans positive when wider at the floor
		w.sense = -1
	}
	w.lean = w.sense * lean.Radians()
	return w
}

// leans is how a wall leans, radians, out to the rim.
func (w wall) leans(off []float64) float64 { return w.lean + w.sense*radians(off[w.angle]) }

// rise is how high a wall stands, mm, that is to stand so high.
func (w wall) rise(high float64, off []float64) float64 {
	return (high/math.Cos(w.lean) + off[w.width]) * math.Cos(w.leans(off))
}

// in is by how much its foot stands farther in than its rim.
func (w wall) in(high float64, off []float64) float64 {
	return w.rise(high, off) * math.Tan(w.leans(off))
}

// plumb is how high walls stand together, mm.
func (m *model) plumb(ids ...string) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, id := range ids {
		q := m.p.Part(id)
		for _, v := range q.Solid.Vertices {
			z := mgl64.TransformCoordinate(v, q.Place).Z()
			lo, hi = math.Min(lo, z), math.Max(hi, z)
		}
	}
	return hi - lo
}

// ring: staves close with what all their bevels together leave, and are as far across as all are wide.
func (m *model) ring() {
	var ids []string
	for _, q := range m.p.Parts {
		if strings.HasPrefix(q.ID, "stave-") {
			ids = append(ids, q.ID)
		}
	}
	n := float64(len(ids))
	var widths, leans []int
	for _, id := range ids {
		widths, leans = append(widths, m.may(OfLength, id, Length, m.length)), append(leans, m.may(OfLean, id, Degree, m.angle))
	}
	lean := m.d.Splay.Ends.Radians()
	bevels, through := m.bevels(ids), m.mitre(ids[0])
	m.figure("width-top", "across the flats at the top", "")
	m.figure("width-floor", "across the flats at the floor", "")
	if len(bevels) > 0 {
		m.gap("last-joint-open", "last joint open", "")
	}
	flats, high := m.d.Size.Width.MM(), m.plumb(ids...)
	if m.d.Size.TakenAt == form.AtFloor {
		flats += 2 * high * math.Tan(lean)
	}
	m.built = func(off []float64) []float64 {
		round, tilt := 0.0, 0.0
		for i := range ids {
			round += off[widths[i]]
			tilt += radians(off[leans[i]])
		}
		top := flats + round/n/math.Tan(math.Pi/n)
		out := []float64{top, top - 2*high*math.Tan(lean+tilt/n)}
		if len(bevels) > 0 {
			out = append(out, open(off, bevels, through))
		}
		return out
	}
}

// bevels are the causes of the two ends of each board round the piece, where its corners are mitred.
func (m *model) bevels(ids []string) []int {
	if !form.Mitred(m.d.Corners.Joint) {
		return nil
	}
	var out []int
	for _, id := range ids {
		for range 2 {
			out = append(out, m.may(OfBevel, id, Degree, m.angle))
		}
	}
	return out
}

// mitre is how long the mitre of a board is through its thickness, mm.
func (m *model) mitre(id string) float64 {
	for _, j := range m.p.Joints {
		if j.TailBoard == id || j.PinBoard == id {
			half := j.Dihedral.Radians() / 2
			return m.p.Part(id).Blank.Thickness.MM() / math.Sin(half)
		}
	}
	return 0
}

// open is how far a last joint gapes at one face when all others are shut: what the bevels are off by adds up there.
func open(off []float64, bevels []int, through float64) float64 {
	sum := 0.0
	for _, k := range bevels {
		sum += off[k]
	}
	return through * math.Tan(radians(sum))
}

// PerCut is what each of so many bevels may be off by, degrees, for a last joint of such a length, mm, that gapes no more
// than gap.
func PerCut(gap, through float64, cuts int) float64 {
	return math.Atan(gap/through) * 180 / math.Pi / float64(cuts)
}

// Closing is how many bevels a last corner closes by, and how long its mitre is, mm; none where no corner is mitred.
func (b Bands) Closing() (cuts int, through float64) {
	for _, f := range b.Figures {
		n, by := 0, 0.0
		for k, c := range b.Causes {
			if c.What == OfBevel && f.By[k] != 0 {
				n, by = n+1, f.By[k]
			}
		}
		if n > 0 {
			return n, math.Abs(by) * 180 / math.Pi
		}
	}
	return 0, 0
}
