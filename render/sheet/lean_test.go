package sheet

import (
	"math"
	"slices"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
	"splaywright/render/view"
)

// walled is a tray or a ring of 12 mm boards, 90 mm high.
func walled(name string, staves int) form.Design {
	d := form.Design{Title: "Walled " + name, Form: name, Timber: "white oak"}
	d.Size.Height, d.Size.Width = 90, 420
	d.Splay.Ends = 12 * measure.Degree
	d.Boards.Side.Thickness = 12
	d.Corners.Joint = form.Mitre
	if name == "tray" {
		d.Size.Depth, d.Splay.Front = 280, 8*measure.Degree
	} else {
		d.Size.Staves = staves
	}
	return d
}

// Walls that lean out to the rim carry their splay without a sign and at the board that is seen edge on,
// in both projections, and nothing lies on anything.
func TestWallsSayHowTheyLean(t *testing.T) {
	for _, c := range []struct {
		d    form.Design
		want map[string]string // ref: label
	}{
		{walled("tray", 0), map[string]string{"splay.ends": "12.0°", "splay.front": "8.0°", "boards.end.thickness": "12.0 thick"}},
		{walled("ring", 6), map[string]string{"splay.ends": "12.0°"}},
		{walled("ring", 8), map[string]string{"splay.ends": "12.0°"}},
	} {
		p := model.Derive(c.d)
		if p.Stopped() {
			t.Fatalf("%s is stopped: %v", c.d.Title, p.Findings)
		}
		for _, projection := range []string{"first", "third"} {
			pages := Papers(p, Options{Projection: projection})
			for ref, label := range c.want {
				if got := values(pages[0], ref); !slices.Contains(got, label) {
					t.Errorf("%s of %d staves, %s angle: %s is %q, want %q", c.d.Form, c.d.Size.Staves, projection, ref, got, label)
				}
			}
			for _, page := range pages {
				for _, v := range drawtest.Overlaps(page, allowed...) {
					t.Errorf("%s, %s angle: %s", c.d.Form, projection, v)
				}
			}
		}
	}
}

// Five staves 420 mm across flats at the rim reach r = 210 mm to the flat in front and r / cos 36° to the
// corner behind (the radii of a regular pentagon).
func TestOddRingsAreNotEvenAboutTheMiddle(t *testing.T) {
	d := walled("ring", 5)
	p := model.Derive(d)
	got := levelSpan(p, view.End, 90)
	r := math.Abs(got[0])
	if want := r / math.Cos(math.Pi/5); math.Abs(got[1]-want) > 1e-6 {
		t.Errorf("the rim reaches from %.4f to %.4f; a pentagon with that flat reaches to %.4f", got[0], got[1], want)
	}
	all := draw.Box{Min: draw.Point{X: got[0]}, Max: draw.Point{X: got[1]}}
	if math.Abs(all.Width()-p.Overall.DepthTop.MM()) > 1e-6 {
		t.Errorf("the rim is %.4f mm deep, the piece says %.4f", all.Width(), p.Overall.DepthTop.MM())
	}
}
