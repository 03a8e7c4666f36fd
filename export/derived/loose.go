package derived

import (
	"splaywright/model/joint"
	"splaywright/model/measure"
)

type splineJSON struct {
	Part      string       `json:"part"`
	Thickness float64      `json:"thickness"`
	Width     float64      `json:"width"`
	Inset     float64      `json:"inset"`
	Mitre     float64      `json:"mitre"`
	Low       float64      `json:"low"`
	High      float64      `json:"high"`
	Left      [2]facesJSON `json:"left"`
	Tilt      [2]float64   `json:"tilt"`
	Turn      [2]float64   `json:"turn"`
}

type keysJSON struct {
	Thickness float64    `json:"thickness"`
	Depth     float64    `json:"depth"`
	Length    float64    `json:"length"`
	Left      float64    `json:"left"`
	Pitch     float64    `json:"pitch"`
	At        []float64  `json:"at"`
	Cradle    float64    `json:"cradle"`
	Turn      [2]float64 `json:"turn"`
}

type tenonJSON struct {
	Width             float64     `json:"width"`
	Thickness         float64     `json:"thickness"`
	Length            float64     `json:"length"`
	ShoulderWidth     float64     `json:"shoulder_width"`
	ShoulderThickness float64     `json:"shoulder_thickness"`
	Lean              float64     `json:"lean"`
	Wedges            *wedgesJSON `json:"wedges,omitempty"`
}

type wedgesJSON struct {
	Parts     []string `json:"parts"`
	Slot      float64  `json:"slot"`
	Deep      float64  `json:"deep"`
	Thick     float64  `json:"thick"`
	Angle     float64  `json:"angle"`
	Flare     float64  `json:"flare"`
	FlareLean float64  `json:"flare_lean"`
}

// looseOf fills in what a joint with splines, keys or tenons has besides.
func looseOf(to *jointJSON, j joint.Joint) {
	to.Shoulder, to.Stop = j.Shoulder.MM(), j.Stop.MM()
	if k := j.Spline; k != nil {
		to.Spline = &splineJSON{
			Part: k.Part, Thickness: k.Thickness.MM(), Width: k.Width.MM(), Inset: k.Inset.MM(), Mitre: k.Mitre.MM(), Low: k.Low.MM(), High: k.High.MM(),
			Left: [2]facesJSON{bothOf(k.Left[0]), bothOf(k.Left[1])}, Tilt: degreesOf(k.Tilt), Turn: degreesOf(k.Turn),
		}
	}
	if k := j.Keys; k != nil {
		to.Keys = &keysJSON{
			Thickness: k.Thickness.MM(), Depth: k.Depth.MM(), Length: k.Length.MM(), Left: k.Left.MM(), Pitch: k.Pitch.MM(),
			At: each(k.At, measure.Length.MM), Cradle: k.Cradle.Degrees(), Turn: degreesOf(k.Turn),
		}
	}
	if t := j.Tenon; t != nil {
		to.Tenon = &tenonJSON{Width: t.Width.MM(), Thickness: t.Thickness.MM(), Length: t.Length.MM(),
			ShoulderWidth: t.Shoulder.Width.MM(), ShoulderThickness: t.Shoulder.Thickness.MM(), Lean: t.Lean.Degrees()}
		if w := t.Wedges; w != nil {
			to.Tenon.Wedges = &wedgesJSON{Parts: each(w.Parts, same), Slot: w.Slot.MM(), Deep: w.Deep.MM(), Thick: w.Thick.MM(), Angle: w.Angle.Degrees(), Flare: w.Flare.MM(), FlareLean: w.FlareLean.Degrees()}
		}
	}
}

func degreesOf(a [2]measure.Angle) [2]float64 { return [2]float64{a[0].Degrees(), a[1].Degrees()} }
