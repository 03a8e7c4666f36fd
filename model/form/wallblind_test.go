package form_test

import (
	"fmt"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// The sockets of a lapped front lie in one line at both of its ends: their cheeks are the same planes,
// which must not lead the hollows astray at any lean.
func TestLappedWallsOfEveryLean(t *testing.T) {
	for _, kind := range []string{"tray", "chest"} {
		for _, on := range []string{form.OnFront, form.OnEnd} {
			for ends := 0; ends <= 12; ends += 3 {
				for front := 0; front <= 12; front += 3 {
					d := form.Design{Form: kind, Timber: "black cherry",
						Size:    form.Size{Height: 430, Width: 900, Depth: 420},
						Splay:   form.Splay{Ends: measure.Angle(ends) * measure.Degree, Front: measure.Angle(front) * measure.Degree},
						Boards:  form.Boards{Side: form.Board{Thickness: 20}},
						Corners: form.Corners{Joint: form.HalfBlindDovetail, TailsOn: on, Slope: 8 * measure.Degree}}
					name := fmt.Sprintf("%s, tails on the %s, ends %d°, front %d°", kind, on, ends, front)
					p := form.Build(d)
					if p.Stopped() {
						t.Errorf("%s: %s", name, p.Findings[0].Text)
						continue
					}
					for _, q := range p.Parts {
						if err := q.Solid.Check(); err != nil {
							t.Errorf("%s: %s: %v", name, q.ID, err)
						}
					}
				}
			}
		}
	}
}
