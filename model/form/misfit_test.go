package form_test

import (
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// What a finding about tails proposes clears it when it is done. The corner is 250 mm wide.
func TestWaysOutOfMisfits(t *testing.T) {
	mm := func(l measure.Length) *measure.Length { return &l }
	noTail := func(k *form.Corners) { k.Tail = nil }
	noPin := func(k *form.Corners) { k.Pin = nil }
	noHalf := func(k *form.Corners) { k.HalfPin = nil }
	tails := func(n int) func(k *form.Corners) {
		return func(k *form.Corners) { k.Tails, k.TailWidths = &n, nil }
	}
	for _, c := range []struct {
		name  string
		typed form.Corners
		id    string
		says  map[string]func(*form.Corners) // what the text proposes
	}{
		// 5 × 60 + 4 × 10 + 2 × 8 = 356
		{"too much", form.Corners{Tails: new(5), Tail: mm(60), Pin: mm(10), HalfPin: mm(8)}, "tails-do-not-add-up",
			map[string]func(*form.Corners){"106.0 mm too much": nil, "leave the tail out (38.8 mm follows)": noTail}},
		// 2 × 80 + 10 + 2 × 8 = 186
		{"too little", form.Corners{Tails: new(2), Tail: mm(80), Pin: mm(10), HalfPin: mm(8)}, "tails-do-not-add-up",
			map[string]func(*form.Corners){"64.0 mm too little": nil, "leave the tail out (112.0 mm follows)": noTail,
				"leave the pin out (74.0 mm follows)": noPin, "leave the half pin out (40.0 mm follows)": noHalf}},
		{"one tail", form.Corners{Tails: new(1), Tail: mm(60), HalfPin: mm(20)}, "tails-do-not-add-up",
			map[string]func(*form.Corners){"1 tail of 60.0 mm and two": nil, "leave the half pin out (95.0 mm follows)": noHalf}},
		{"uneven", form.Corners{TailWidths: []measure.Length{60, 80, 60}, Pin: mm(10), HalfPin: mm(8)}, "tails-do-not-add-up",
			map[string]func(*form.Corners){"3 tails, 2 pins of 10.0 mm": nil, "leave the pin out (17.0 mm follows)": noPin, "leave the half pin out (15.0 mm follows)": noHalf}},
		{"half pins gone", form.Corners{Tails: new(5), Tail: mm(50), Pin: mm(10)}, "half-pin-has-no-room",
			map[string]func(*form.Corners){"40.0 mm too wide": nil, "ask for 4 even tails": tails(4)}},
		{"pins gone", form.Corners{Tails: new(5), Tail: mm(50), HalfPin: mm(8)}, "pin-has-no-room",
			map[string]func(*form.Corners){"16.0 mm too wide": nil, "ask for 4 even tails": tails(4)}},
		{"sixty", form.Corners{Tails: new(60), Pin: mm(10), HalfPin: mm(8)}, "tails-cannot-fit",
			map[string]func(*form.Corners){"ask for 13 even tails": tails(13)}},
	} {
		d := formtest.WorkedExample()
		k := c.typed
		k.Joint, k.TailsOn, k.Slope = d.Corners.Joint, d.Corners.TailsOn, d.Corners.Slope
		d.Corners = k
		p := form.Build(d)
		if len(p.Findings) != 1 || p.Findings[0].ID != c.id {
			t.Errorf("%s: %+v", c.name, p.Findings)
			continue
		}
		for words, do := range c.says {
			if !strings.Contains(p.Findings[0].Text, words) {
				t.Errorf("%s: no %q in %s", c.name, words, p.Findings[0].Text)
			}
			if do == nil {
				continue
			}
			d.Corners = k
			do(&d.Corners)
			if q := form.Build(d); q.Stopped() {
				t.Errorf("%s: %s, and then: %s", c.name, words, q.Findings[0].Text)
			}
		}
	}
}
