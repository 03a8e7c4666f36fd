package table

import (
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
)

// A tray's walls lean out, so with the outer face up it is the lower edge that a cradle raises. The edge is told by its name, the wedge by its angle, and how to hold the board below.
func TestTheEdgeThatACradleRaisesIsNamed(t *testing.T) {
	d := form.Design{Form: "tray", Size: form.Size{Height: 120, Width: 460, Depth: 320}, Splay: form.Splay{Ends: 20 * measure.Degree, Front: 20 * measure.Degree},
		Boards: form.Boards{Side: form.Board{Thickness: 15}}, Corners: form.Corners{Joint: form.Mitre}, Saw: form.Saw{Cradle: 70 * measure.Degree}}
	tb := SawSettings(model.Derive(d), metric)
	cradles := 0
	for i := range tb.Rows {
		lies := cell(t, tb, i, "Board lies").Text
		if !strings.HasPrefix(lies, "in a cradle") {
			continue
		}
		cradles++
		if lies != "in a cradle of 70.0°, lower edge up" {
			t.Errorf("%q", lies)
		}
		near(t, "as it leans in the piece: swing", *cell(t, tb, i, "Swing").Number, 45, 1e-9)
		near(t, "tilt", *cell(t, tb, i, "Tilt").Number, 0, 1e-9)
	}
	if cradles == 0 || !strings.Contains(notes(tb), "In a cradle: leaned about its grain on wedges") {
		t.Errorf("%d cuts in the cradle; notes %s", cradles, notes(tb))
	}
}
