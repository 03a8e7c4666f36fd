package form_test

import (
	"regexp"
	"strconv"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// What a stop names as the most or the least clears it when it is typed as it reads: 70.26 mm of arch rise to 35.13, which are
// not shown as 35.2; a screw must be longer than 32.32 and is not sent away with 32.3.
func TestWhatAStopNamesClearsIt(t *testing.T) {
	for _, c := range []struct {
		id, says string
		spoil    func(d *form.Design, x measure.Length)
		x        measure.Length
		beyond   measure.Length // what is typed beside the figure that reads "more than" or "less than"
	}{
		{"arch-higher-than-half-width", `can rise ([0-9.]+) mm at most`, func(d *form.Design, x measure.Length) {
			d.Features = []form.Feature{{On: "side", Kind: "arch", Width: 70.26, Rise: x}}
		}, 36, 0},
		{"arch-higher-than-half-width", `can rise ([0-9.]+) mm at most`, func(d *form.Design, x measure.Length) {
			d.Features = []form.Feature{{On: "side", Kind: "arch", Width: 70.38, Rise: x}}
		}, 36, 0},
		{"stretcher-below-floor", `keep it at most ([0-9.]+) mm below the top`, func(d *form.Design, x measure.Length) {
			d.Boards.Top.Thickness = 20.03
			d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, Set: form.OnEdge, Joint: form.Butt, BelowTop: x}}
		}, 240, 0},
		{"screw-too-short", `it needs more than ([0-9.]+) mm`, func(d *form.Design, x measure.Length) {
			d.Corners.Joint, d.Boards.Top.Thickness = form.Butt, 32
			d.Corners.Screws = &form.Screws{Gauge: 8, Length: x, Count: 2, FromEnd: 30}
		}, 20, 0.01},
	} {
		stops := func(x measure.Length) string {
			d := formtest.WorkedExample()
			c.spoil(&d, x)
			for _, f := range form.Build(d).Findings {
				if f.ID == c.id {
					return f.Text
				}
			}
			return ""
		}
		text := stops(c.x)
		m := regexp.MustCompile(c.says).FindStringSubmatch(text)
		if m == nil {
			t.Errorf("%s: %q", c.id, text)
			continue
		}
		named, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		if again := stops(measure.Length(named) + c.beyond); again != "" {
			t.Errorf("%s: %q, and typed so: %q", c.id, text, again)
		}
	}
}
