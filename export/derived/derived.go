// Package derived writes a derived piece as JSON, for scripts. Lengths are millimetres,
// angles degrees, volumes mm³ and masses kg, never rounded. Schema is its JSON Schema.
package derived

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"reflect"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/part"
)

// Version is the version of the result's form; it is the design file's version.
const Version = 1

// Write writes the piece, indented, one object. It fails only when w does, or when a figure is
// not a number, which would be a fault in the derivation.
func Write(w io.Writer, p *form.Piece) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	r := resultOf(p)
	unsigned(reflect.ValueOf(&r))
	if err := enc.Encode(r); err != nil {
		return fmt.Errorf("derived result of %q: %w", p.Title, err)
	}
	return nil
}

type result struct {
	Splaywright int           `json:"splaywright"`
	Title       string        `json:"title"`
	Form        string        `json:"form"`
	LengthUnit  string        `json:"length_unit"`
	AngleUnit   string        `json:"angle_unit"`
	Overall     overallJSON   `json:"overall"`
	Parts       []partJSON    `json:"parts"`
	Joints      []jointJSON   `json:"joints"`
	Findings    []findingJSON `json:"findings"`

	Tolerances []toleranceJSON `json:"tolerances"`
	Reasons    []reasonJSON    `json:"reasons,omitempty"`
}

type overallJSON struct {
	Height     float64 `json:"height"`
	WidthTop   float64 `json:"width_top"`
	WidthFloor float64 `json:"width_floor"`
	DepthTop   float64 `json:"depth_top"`
	DepthFloor float64 `json:"depth_floor"`
	Mass       float64 `json:"mass_kg"`
}

type boxJSON struct {
	Length    float64 `json:"length"`
	Width     float64 `json:"width"`
	Thickness float64 `json:"thickness"`
}

type facesJSON struct {
	Outer float64 `json:"outer"`
	Inner float64 `json:"inner"`
}

type partJSON struct {
	ID         string      `json:"id"`
	Name       string      `json:"name"`
	Mark       string      `json:"mark,omitempty"`
	Timber     string      `json:"timber"`
	Blank      boxJSON     `json:"blank"`
	Rough      boxJSON     `json:"rough"`
	FaceLength facesJSON   `json:"face_length"`
	Volume     float64     `json:"volume"`
	Mass       float64     `json:"mass_kg"`
	Place      [16]float64 `json:"place"`
	Cuts       []cutJSON   `json:"cuts"`
	Bores      []boreJSON  `json:"bores"`
	Features   []featJSON  `json:"features"`
	Eased      []easedJSON `json:"eased_edges"`
	Slip       string      `json:"slip,omitempty"`
}

type cutJSON struct {
	ID     string     `json:"id"`
	Kind   string     `json:"kind"`
	Swing  float64    `json:"swing"`
	Tilt   float64    `json:"tilt"`
	Normal [3]float64 `json:"normal"`
	Offset float64    `json:"offset"`
	Length float64    `json:"length"`
	Outer  bool       `json:"outer_longer"`
	Pair   string     `json:"pair,omitempty"`
}

type boreJSON struct {
	ID       string     `json:"id"`
	Purpose  string     `json:"purpose"`
	Diameter float64    `json:"diameter"`
	Depth    float64    `json:"depth"`
	Through  bool       `json:"through"`
	X        float64    `json:"x"`
	Y        float64    `json:"y"`
	Z        float64    `json:"z"`
	Axis     [3]float64 `json:"axis"`
	Lean     float64    `json:"lean"`
	Face     string     `json:"face"`
	Plug     float64    `json:"plug,omitempty"`
	Slot     float64    `json:"slot,omitempty"`
}

type featJSON struct {
	Kind   string  `json:"kind"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Length float64 `json:"length"`
	Width  float64 `json:"width"`
	Angle  float64 `json:"angle"`
	Radius float64 `json:"radius"`
	Depth  float64 `json:"depth,omitempty"`
	Face   string  `json:"face,omitempty"`
	Edge   string  `json:"edge,omitempty"`
	Bevel  float64 `json:"bevel,omitempty"`
	Hollow float64 `json:"hollow_radius,omitempty"`
}

type easedJSON struct {
	Name     string  `json:"name"`
	Radius   float64 `json:"radius"`
	Length   float64 `json:"length"`
	Dihedral float64 `json:"dihedral"`
	Removed  float64 `json:"removed"`
	Cut      bool    `json:"in_solid"`
}

type spanJSON struct {
	Start float64 `json:"start"`
	End   float64 `json:"end"`
}

type jointJSON struct {
	ID          string     `json:"id"`
	Kind        string     `json:"kind"`
	TailBoard   string     `json:"tail_board"`
	PinBoard    string     `json:"pin_board"`
	Dihedral    float64    `json:"dihedral"`
	Slope       float64    `json:"slope"`
	Baseline    facesJSON  `json:"baseline"`
	PinBaseline facesJSON  `json:"pin_baseline"`
	CheekTilt   float64    `json:"cheek_tilt"`
	PinAngle    float64    `json:"pin_angle"`
	BackTilt    float64    `json:"back_cheek_tilt"`
	BackPin     float64    `json:"back_pin_angle"`
	Width       float64    `json:"width"`
	Tails       []spanJSON `json:"tails"`
	TailsInner  []spanJSON `json:"tails_inner"`
	TailRoots   []spanJSON `json:"tail_roots"`
	Pins        []spanJSON `json:"pins"`
	PinsInner   []spanJSON `json:"pins_inner"`
	Depth       float64    `json:"depth,omitempty"`
	Slides      [3]float64 `json:"slides_along"`
	Corner      [3]float64 `json:"corner"`

	Shoulder float64     `json:"shoulder,omitempty"`
	Stop     float64     `json:"stop,omitempty"`
	Spline   *splineJSON `json:"spline,omitempty"`
	Keys     *keysJSON   `json:"keys,omitempty"`
	Tenon    *tenonJSON  `json:"tenon,omitempty"`
}

type findingJSON struct {
	ID     string   `json:"id"`
	Level  string   `json:"level"`
	Text   string   `json:"text"`
	Figure *float64 `json:"figure"`
	Limit  *float64 `json:"limit"`
	Unit   string   `json:"unit"`
	Source string   `json:"source"`
	Parts  []string `json:"parts"`
	Sizes  []string `json:"sizes"`
}

func resultOf(p *form.Piece) result {
	o := p.Overall
	return result{
		Splaywright: Version, Title: p.Title, Form: p.Form, LengthUnit: "mm", AngleUnit: "deg",
		Overall: overallJSON{
			Height: o.Height.MM(), WidthTop: o.WidthTop.MM(), WidthFloor: o.WidthFloor.MM(),
			DepthTop: o.DepthTop.MM(), DepthFloor: o.DepthFloor.MM(), Mass: o.Mass,
		},
		Parts:    each(p.Parts, partOf),
		Joints:   each(p.Joints, jointOf),
		Findings: each(p.Findings, findingOf),

		Tolerances: tolerancesOf(p),
		Reasons:    reasonsOf(p),
	}
}

func partOf(p *part.Part) partJSON {
	return partJSON{
		ID: p.ID, Name: p.Name, Mark: p.Mark, Timber: p.Timber,
		Blank: boxOf(p.Blank), Rough: boxOf(p.Rough),
		FaceLength: facesJSON{p.FaceLength.Outer.MM(), p.FaceLength.Inner.MM()},
		Volume:     p.Volume, Mass: p.Mass, Place: [16]float64(p.Place),
		Cuts:     each(p.Cuts, cutOf),
		Bores:    each(p.Bores, boreOf),
		Features: each(p.Features, featureOf),
		Eased:    each(p.Eased, easedOf),
		Slip:     string(p.Slip),
	}
}

func boxOf(b part.Box) boxJSON {
	return boxJSON{b.Length.MM(), b.Width.MM(), b.Thickness.MM()}
}

func cutOf(c part.Cut) cutJSON {
	return cutJSON{
		ID: c.ID, Kind: string(c.Kind), Swing: c.Swing.Degrees(), Tilt: c.Tilt.Degrees(),
		Normal: vec(c.Normal), Offset: c.Offset, Length: c.Length.MM(), Outer: c.OuterLonger, Pair: c.Pair,
	}
}

func boreOf(b part.Bore) boreJSON {
	return boreJSON{
		ID: b.ID, Purpose: b.Purpose, Diameter: b.Diameter.MM(), Depth: b.Depth.MM(), Through: b.Through,
		X: b.Entry[0], Y: b.Entry[1], Z: b.Entry[2], Axis: vec(b.Axis), Lean: b.Lean.Degrees(),
		Face: b.Face, Plug: b.Plug.MM(), Slot: b.Slot.MM(),
	}
}

func featureOf(f part.Feature) featJSON {
	face := ""
	if f.Inner {
		face = form.InnerFace
	}
	return featJSON{
		Kind: string(f.Kind), X: f.Centre[0], Y: f.Centre[1], Length: f.Length.MM(), Width: f.Width.MM(),
		Angle: f.Angle.Degrees(), Radius: f.Radius.MM(), Depth: f.Depth.MM(), Face: face, Edge: f.Edge,
		Bevel: f.Bevel.Degrees(), Hollow: f.Hollow.MM(),
	}
}

func easedOf(e part.EasedEdge) easedJSON {
	return easedJSON{e.Name, e.Radius.MM(), e.Length.MM(), e.Dihedral.Degrees(), e.Removed, e.Cut}
}

func jointOf(j joint.Joint) jointJSON {
	out := jointJSON{
		ID: j.ID, Kind: j.Kind, TailBoard: j.TailBoard, PinBoard: j.PinBoard,
		Dihedral: j.Dihedral.Degrees(), Slope: j.Slope.Degrees(),
		Baseline: bothOf(j.Baseline), PinBaseline: bothOf(j.PinBaseline),
		CheekTilt: j.CheekTilt.Degrees(), PinAngle: j.PinAngle.Degrees(),
		BackTilt: j.BackCheekTilt.Degrees(), BackPin: j.BackPinAngle.Degrees(), Width: j.Width.MM(),
		Tails: each(j.Tails, spanOf), TailsInner: each(j.TailsInner, spanOf), TailRoots: each(j.TailRoots, spanOf),
		Pins: each(j.Pins, spanOf), PinsInner: each(j.PinsInner, spanOf),
		Depth: j.Depth.MM(), Slides: vec(j.Slides), Corner: vec(j.Corner),
	}
	looseOf(&out, j)
	return out
}

func bothOf(f joint.Faces) facesJSON { return facesJSON{f.Outer.MM(), f.Inner.MM()} }

func spanOf(s joint.Span) spanJSON { return spanJSON{s.Start.MM(), s.End.MM()} }

func findingOf(f part.Finding) findingJSON {
	return findingJSON{
		ID: f.ID, Level: string(f.Level), Text: f.Text, Figure: number(f.Figure), Limit: number(f.Limit),
		Unit: f.Unit, Source: f.Source, Parts: each(f.Parts, same), Sizes: each(f.Sizes, same),
	}
}

// number is nil for what JSON cannot hold; a finding may have no limit.
func number(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

func same(s string) string { return s }

func vec(v mgl64.Vec3) [3]float64 { return [3]float64(v) }

// each never gives nil, so that an empty list is written as [].
func each[A, B any](in []A, f func(A) B) []B {
	out := make([]B, 0, len(in))
	for _, a := range in {
		out = append(out, f(a))
	}
	return out
}
