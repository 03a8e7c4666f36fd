package check

import (
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// only is a stool with no features but these, and no stretcher in their way.
func only(f ...form.Feature) edit {
	return func(d *form.Design) { d.Features, d.Stretchers = f, nil }
}

// Shapes on edges, each beside the joints, the edges and the shapes that it must keep clear of: what is said,
// and the neighbour that just clears it.
func TestShapesOnEdgesFound(t *testing.T) {
	taper := func(length measure.Length) form.Feature {
		return form.Feature{On: "side", Kind: "taper", Edge: "front-edge", From: "floor-end", Length: length, Depth: 20}
	}
	narrowTop := func(length measure.Length) form.Feature {
		f := taper(length)
		f.From = "top-end"
		return f
	}
	chamfer := func(length measure.Length) form.Feature {
		return form.Feature{On: "side", Kind: "chamfer", Edge: "front-edge", Width: 4, Length: length}
	}
	notch := func(up, deep measure.Length) form.Feature {
		return form.Feature{On: "side", Kind: "notch", Edge: "back-edge", Width: 40, Depth: deep, X: up}
	}
	arch := func(y, width measure.Length) form.Feature {
		return form.Feature{On: "side", Kind: "arch", Width: width, Rise: 30, Y: y}
	}
	for _, c := range []struct {
		name        string
		spoil, mend []form.Feature
		id          string
		level       part.Level
		says        []string
	}{
		{"a taper through the half pin", []form.Feature{taper(500)}, []form.Feature{taper(500 - 87)}, "opening-in-joint", part.Stop,
			[]string{"taper in the side", "the joint with the top", "end it 87.0 mm sooner."}},
		{"a taper that begins in the pins", []form.Feature{narrowTop(390)}, []form.Feature{taper(390)}, "opening-in-joint", part.Stop,
			[]string{"taper in the side", "the joint with the top; begin it at the other end of its edge."}},
		{"a notch in the pins", []form.Feature{notch(210, 30)}, []form.Feature{notch(120, 30)}, "opening-in-joint", part.Stop,
			[]string{"notch in the side", "the joint with the top"}},
		{"a notch that leaves little of the board", []form.Feature{notch(0, 320)}, []form.Feature{notch(0, 60)}, "shape-through-board", part.Stop,
			[]string{"320.0 mm deep", "across there"}},
		{"a chamfer through the joint", []form.Feature{chamfer(0)}, []form.Feature{chamfer(300)}, "chamfer-in-joint", part.Warning,
			[]string{"end it", "chamfer the piece when it is together"}},
		{"two arches on one edge that overlap", []form.Feature{arch(-40, 100), arch(40, 100)}, []form.Feature{arch(-70, 100), arch(70, 100)}, "openings-meet", part.Stop,
			[]string{"Arch 2 in the side runs 16.5 mm into arch 1", "width of"}},
		{"an arch into a notch", []form.Feature{arch(60, 150), {On: "side", Kind: "notch", Edge: "floor-end", Width: 30, Depth: 20, Y: 120}},
			[]form.Feature{arch(-20, 150), {On: "side", Kind: "notch", Edge: "floor-end", Width: 20, Depth: 20, Y: 100}}, "openings-meet", part.Stop,
			[]string{"notch in the side runs", "into the arch", "move it 40.0 mm along its edge"}},
		{"a chamfer across an arch", []form.Feature{arch(0, 150), {On: "side", Kind: "chamfer", Edge: "floor-end", Width: 4}},
			[]form.Feature{arch(0, 150), {On: "side", Kind: "chamfer", Edge: "floor-end", Width: 4, From: "front-edge", Length: 50}}, "openings-meet", part.Stop,
			[]string{"chamfer in the side", "into the arch"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := form.Build(edited(sound(), only(c.spoil...)))
			found := Explained(append(p.Findings, Run(p)...))
			if len(withID(found, part.CannotBeCut)) > 0 {
				t.Errorf("a bare stop is left:%s", describe(found))
			}
			told := withID(found, c.id)
			if c.id == "" {
				told = withLevel(found, c.level)
			}
			if len(told) == 0 || told[0].Level != c.level {
				t.Fatalf("want %s:%s", c.id, describe(found))
			}
			for _, s := range c.says {
				if !strings.Contains(told[0].Text, s) {
					t.Errorf("%q does not say %q", told[0].Text, s)
				}
			}
			q := form.Build(edited(sound(), only(c.mend...)))
			if found := append(q.Findings, Run(q)...); len(withLevel(found, part.Stop)) > 0 || c.id != "" && len(withID(found, c.id)) > 0 {
				t.Errorf("the neighbour is not clear:%s", describe(found))
			}
		})
	}
}

func withLevel(found []part.Finding, l part.Level) []part.Finding {
	var out []part.Finding
	for _, f := range found {
		if f.Level == l {
			out = append(out, f)
		}
	}
	return out
}

// A hole over a groove is right as it is: it takes its own wood and the groove's, once.
func TestAHoleOverAGroove(t *testing.T) {
	volume := func(f ...form.Feature) float64 {
		p := form.Build(edited(sound(), only(f...)))
		if p.Stopped() {
			t.Fatal(describe(p.Findings))
		}
		if err := p.Part("top").Solid.Check(); err != nil {
			t.Fatal(err)
		}
		return p.Part("top").Volume
	}
	groove := form.Feature{On: "top", Kind: "groove", Width: 30, Depth: 8, Length: 200}
	hole := form.Feature{On: "top", Kind: "hole", Diameter: 20}
	plain, g, h, both := volume(), volume(groove), volume(hole), volume(groove, hole)
	shared := (plain - g) + (plain - h) - (plain - both)
	if want := 100 * 3.141592653589793 * 8; shared < want-1e-6 || shared > want+1e-6 {
		t.Errorf("they share %.6f mm³, want %.6f", shared, want)
	}
	across := volume(groove, form.Feature{On: "top", Kind: "hole", Diameter: 60})
	if across >= g {
		t.Error("a hole wider than the groove takes nothing")
	}
}
