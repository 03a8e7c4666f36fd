package pattern

import (
	"fmt"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// centres marks where round holes enter and leave a plane that is laid out by a chart; on tells
// whether a point lies there. Holes with one centre share one label; narrow labels have a line for
// each thing said.
func (b *blank) centres(p *Pattern, place string, c *chart, narrow bool, on func(mgl64.Vec3) bool) {
	type spot struct {
		at    mgl64.Vec3
		r     float64
		words []string
	}
	var spots []*spot
	add := func(at mgl64.Vec3, r float64, said ...string) {
		if !narrow {
			said = []string{strings.Join(said, ", ")}
		}
		for _, s := range spots {
			if s.at.Sub(at).Len() < sameSpot {
				s.r = math.Max(s.r, r)
				s.words = append(s.words, said...)
				return
			}
		}
		spots = append(spots, &spot{at, r, said})
	}
	for _, h := range b.q.Bores {
		r := h.Diameter.MM() / 2
		if on(h.Entry) {
			add(h.Entry, r, b.holeWords(h)...)
		}
		if out := h.Entry.Add(h.Axis.Mul(h.Depth.MM())); h.Through && on(out) {
			add(out, r, fmt.Sprintf("Ø%s comes out", b.bit(h.Diameter)))
		}
	}
	for _, s := range spots {
		centre := c.point(s.at)
		p.cross(centre, s.r+2, b.q.ID+"/"+place)
		p.Labels = append(p.Labels, Label{At: centre, Lines: s.words, Size: smallText, Leader: true, Rim: s.r + 0.5})
	}
}

// holeWords is a hole in a few words: its bit, how deep it goes and how it leans.
func (b *blank) holeWords(h part.Bore) []string {
	said := []string{"Ø" + b.bit(h.Diameter)}
	if h.Through {
		said[0] = fmt.Sprintf("Ø%s through", b.bit(h.Diameter))
		if h.Slot > 0 {
			said[0] += fmt.Sprintf(", slot %s long", b.style.FormatUnit(h.Slot))
		}
	} else {
		said = append(said, fmt.Sprintf("%s deep", b.style.FormatUnit(h.Depth)))
	}
	if h.Lean >= leastLean/2 {
		said = append(said, fmt.Sprintf("leaning %s", measure.FormatAngle(h.Lean, leastLean)))
	}
	return said
}

// leastLean is what leans are printed to.
const leastLean = measure.Degree / 10

// bit is a drill's size as drills are sold: tenths of a millimetre, or 64ths of an inch.
func (b *blank) bit(d measure.Length) string {
	s := measure.Style{Unit: b.style.Unit, Step: 0.1}
	if s.Unit == measure.Imperial {
		s.Step = measure.Inch / 64
	}
	return s.FormatUnit(d)
}

// cross is a centre mark of two lines.
func (p *Pattern) cross(c draw.Point, r float64, ref string) {
	p.line(Mark, draw.Polyline([]draw.Point{plus(c, paperX, -r), plus(c, paperX, r)}), ref)
	p.line(Mark, draw.Polyline([]draw.Point{plus(c, paperY, -r), plus(c, paperY, r)}), ref)
}

// featureCentres marks the centres of round ends and says what the arcs are. They are square to
// the outer face, so their centres are the same on both faces.
func (b *blank) featureCentres(p *Pattern, f *face) {
	for i := range b.q.Features {
		k := &b.q.Features[i]
		at := func(x mgl64.Vec2) draw.Point { return f.chart.point(x.Vec3(f.z)) }
		sin, cos := math.Sincos(k.Angle.Radians())
		long, r := mgl64.Vec2{cos, sin}, k.Radius.MM()
		ref := fmt.Sprintf("features.%d", k.Index)
		switch k.Kind {
		case part.HandHole, part.Slot:
			half := (k.Length - k.Width).MM() / 2
			p.cross(at(k.Centre.Sub(long.Mul(half))), r/3, ref)
			if half > sameSpot {
				p.cross(at(k.Centre.Add(long.Mul(half))), r/3, ref)
			}
			p.label(at(k.Centre), fmt.Sprintf("%s, ends Ø%s", k.Kind, b.style.FormatUnit(k.Width)))
		case part.Ogee:
			p.label(at(k.Centre.Sub(long.Mul(k.Width.MM()+4))), fmt.Sprintf("ogee, radius %s and %s, rise %s", b.style.FormatUnit(k.Radius), b.style.FormatUnit(k.Hollow), b.style.FormatUnit(k.Width)))
		case part.Notch:
			p.label(at(k.Centre.Sub(long.Mul(k.Width.MM()+4))), fmt.Sprintf("notch, %s deep", b.style.FormatUnit(k.Width)))
		case part.Taper:
			p.label(at(k.Centre.Sub(long.Mul(k.Width.MM()+4))), fmt.Sprintf("taper, %s in %s", b.style.FormatUnit(k.Width), b.style.FormatUnit(k.Length)))
		case part.Chamfer:
			if k.Inner == (f.up < 0) {
				p.label(at(k.Centre.Sub(long.Mul(k.Width.MM()+4))), fmt.Sprintf("chamfer, %s at %s", b.style.FormatUnit(k.Width), measure.FormatAngle(k.Bevel, leastLean)))
			}
		case part.Arch:
			crown := at(k.Centre.Sub(long.Mul(k.Width.MM() + 4)))
			p.label(crown, fmt.Sprintf("arch, radius %s, rise %s", b.style.FormatUnit(k.Radius), b.style.FormatUnit(k.Width)))
		}
	}
}

// housings says how deep the hollows of a face are; those of screws are said where they enter.
func (b *blank) housings(p *Pattern, f *face) {
	const floor = " floor"
	for i := range b.q.Solid.Faces {
		s := &b.q.Solid.Faces[i]
		if s.Round != nil || !strings.HasSuffix(s.Tag, floor) || strings.HasPrefix(s.Tag, "screw-") || math.Abs(s.Plane.N[2]-f.up) > inPlane {
			continue
		}
		deep := f.z*f.up - s.Plane.D
		if deep < inPlane {
			continue
		}
		middle := draw.EmptyBox()
		for _, h := range s.Loops[0] {
			middle = middle.Add(f.chart.start(b.q.Solid, h))
		}
		name, _, _ := strings.Cut(s.Tag, " ") // floors at one depth share a tag, so the rest may be another's
		p.label(between(middle.Min, middle.Max, 0.5), fmt.Sprintf("%s, %s deep", name, b.style.Joints().FormatUnit(measure.Length(deep))))
	}
}
