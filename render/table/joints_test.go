package table_test

import (
	"fmt"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/table"
)

// rings are rings whose corners are 60°, 90°, 120° and 150°, upright and leaning, in every joint.
func rings(t *testing.T, each func(t *testing.T, p *form.Piece)) {
	for _, joint := range form.WallJoints() {
		for _, staves := range []int{3, 4, 6, 12} {
			for _, lean := range []measure.Angle{0, 12 * measure.Degree} {
				d := form.Design{Form: "ring", Timber: "white oak", Size: form.Size{Height: 200, Width: 620, Staves: staves},
					Splay: form.Splay{Ends: lean}, Boards: form.Boards{Side: form.Board{Thickness: 18}}, Corners: form.Corners{Joint: joint}}
				p := form.Build(d)
				if p.Stopped() {
					t.Fatalf("%s, %d staves: %s", joint, staves, p.Findings[0].Text)
				}
				t.Run(fmt.Sprintf("%s, %d staves, %.0f", joint, staves, lean.Degrees()), func(t *testing.T) { each(t, p) })
			}
		}
	}
}

// Every joint has its figures for marking at every corner: tails and gauges, seats, or splines and keys; a plain
// mitre is marked by its saw settings alone.
func TestEveryJointIsMarked(t *testing.T) {
	style := measure.Style{Unit: measure.Metric, Step: 0.5}
	rings(t, func(t *testing.T, p *form.Piece) {
		rows := len(table.Seats(p, style).Rows)
		for _, m := range table.Marking(p, style) {
			rows += len(m.Rows)
		}
		if (rows == 0) != (p.Design.Corners.Joint == form.Mitre) {
			t.Errorf("%d rows for marking", rows)
		}
		if len(table.SawSettings(p, style).Rows) == 0 {
			t.Error("no saw settings")
		}
		if inside := p.Joints[0].Dihedral; inside <= 0 || inside >= 180*measure.Degree {
			t.Errorf("inside angle %g°", inside.Degrees())
		}
	})
}

// The staves of an odd ring have tails at one end and pins at the other, which the steps tell; those of an even one have
// one kind at both.
func TestStepsNameTheEndsOfOddRings(t *testing.T) {
	for _, c := range []struct {
		staves          int
		on, tails, pins string
	}{
		{5, form.OnFront, "from the right end as seen from outside on both", "On the left end of"},
		{5, form.OnEnd, "from the left end as seen from outside on both", "On the right end of"},
		{6, form.OnFront, "from each end on both", "On the end grain of"},
	} {
		d := form.Design{Form: "ring", Timber: "white oak", Size: form.Size{Height: 200, Width: 620, Staves: c.staves},
			Boards: form.Boards{Side: form.Board{Thickness: 18}}, Corners: form.Corners{Joint: form.ThroughDovetail, TailsOn: c.on}}
		all := ""
		for _, row := range table.Steps(form.Build(d), measure.Style{Unit: measure.Metric}).Rows {
			for _, cell := range row {
				all += cell.Text + " "
			}
		}
		for _, want := range []string{c.tails, c.pins} {
			if !strings.Contains(all, want) {
				t.Errorf("%d staves, tails on %s: no %q", c.staves, c.on, want)
			}
		}
	}
}
