package file

import (
	"fmt"
	"math"
	"strconv"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// usualBottom is how thick the bottom is that comes with a form, unless the walls are no thicker. Common practice.
const usualBottom = 10 * measure.Millimetre

// rounding of floats, in steps of a length.
const rounding = 1e-9

// closeWalls gives a tray or a chest the bottom that a form without one had no use for, and a chest its lid. A tray or a
// chest that has no bottom has none because somebody took it out. The error is an *Error.
func (d *Document) closeWalls(from, to string) error {
	thick, overhang := "10 mm", "10 mm"
	if d.Text("units") == "in" {
		thick, overhang = "3/8 in", "3/8 in"
	}
	holds := func(name string) bool { return name == "tray" || name == "chest" }
	var set [][2]string
	if holds(to) && !holds(from) && len(d.Keys("bottom")) == 0 {
		if got, err := d.Design(); err == nil && got.Defaults().Boards.Side.Thickness > usualBottom {
			set = append(set, [2]string{"bottom.thickness", thick}) // else it is as thick as they are
		}
		set = append(set, [2]string{"bottom.joint", form.InGroove})
	}
	if to == "chest" && from != to && len(d.Keys("lid")) == 0 {
		set = append(set, [2]string{"lid.overhang", overhang}, [2]string{"lid.battens.count", "2"})
		set = append(set, d.battenScrews()...) // glued all along, the battens would hold the lid
	}
	return d.setAll(set)
}

// battenScrews go through battens into a lid, both as thick as the walls: once and a half as long as these in a length that
// screws are sold in, their heads so far down that half of it is in the lid. There are none where the boards are too thin or
// are not known.
func (d *Document) battenScrews() [][2]string {
	got, err := d.Design()
	if err != nil {
		return nil
	}
	thick := got.Defaults().Boards.Side.Thickness
	step, fine := 5*measure.Millimetre, measure.Millimetre
	if d.Text("units") == "in" {
		step, fine = measure.Inch/4, measure.Inch/16
	}
	long := measure.Length(math.Floor(float64(thick*1.6/step)+rounding)) * step
	if long < thick {
		return nil
	}
	down := measure.Length(math.Ceil(float64((thick-long/2)/fine)-rounding)) * fine
	text := func(l measure.Length) string {
		if step == measure.Inch/4 {
			return fmt.Sprintf("%g in", l.Inches())
		}
		return fmt.Sprintf("%g mm", l.MM())
	}
	const at = "lid.battens.screws."
	return [][2]string{{at + "gauge", "8"}, {at + "length", text(long)}, {at + "count", "3"}, {at + "counterbore", text(down)}}
}

// clearTread brings screwed stretchers of a stool that becomes steps up under its top where their screws would run into the
// tread that comes between the sides. The error is an *Error.
func (d *Document) clearTread(from, to string) error {
	got, err := d.Design()
	if to != form.Steps || from == to || err != nil {
		return nil
	}
	got = got.Defaults()
	room := got.Size.Height - got.Boards.Top.Thickness - got.Size.LowerHeight
	var set [][2]string
	for i, s := range got.Stretchers {
		if s.Screws != nil && s.BelowTop+s.Width > room && s.Width <= room {
			set = append(set, [2]string{"stretchers." + strconv.Itoa(i) + ".below-top", "0"})
		}
	}
	return d.setAll(set)
}

func (d *Document) setAll(texts [][2]string) error {
	for _, s := range texts {
		if err := d.Set(s[0], s[1]); err != nil {
			return err
		}
	}
	return nil
}
