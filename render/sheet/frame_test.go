package sheet

import (
	"math"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
)

// The drawing space and the count of fields of ISO 5457 (from memory of the standard; the sizes follow from
// the trimmed sheet less 20 and 10 mm across, 10 and 10 mm down). A4 lies here.
func TestFramesAreThoseOfTheStandard(t *testing.T) {
	for _, c := range []struct {
		sheet        string
		wide, high   float64
		across, down int
	}{{"A4", 267, 190, 6, 4}, {"A3", 390, 277, 8, 6}, {"A2", 564, 400, 12, 8}} {
		b := set{o: Options{Sheet: c.sheet, Projection: "first"}}.sheet(entry{}, true)
		f := b.frame()
		if math.Abs(f.Width()-c.wide) > 1e-9 || math.Abs(f.Height()-c.high) > 1e-9 {
			t.Errorf("%s: the frame is %.1f × %.1f mm, want %.0f × %.0f", c.sheet, f.Width(), f.Height(), c.wide, c.high)
		}
		names := map[string]int{}
		for _, it := range b.Items {
			if s, is := it.(draw.Text); is {
				names[s.Text]++
			}
		}
		sides := 2
		if c.sheet == "A4" {
			sides = 1 // above and at the right alone
		}
		count := func(list string) (n int) {
			for _, r := range list {
				if names[string(r)] == sides {
					n++
				}
			}
			return n
		}
		down, across := count("ABCDEFGHJKLMNPQR"), count("123456789")
		if names["10"] == sides {
			across += names["10"]/sides + names["11"]/sides + names["12"]/sides
		}
		if across != c.across || down != c.down || names["I"]+names["O"] > 0 {
			t.Errorf("%s: %d × %d fields, want %d × %d", c.sheet, across, down, c.across, c.down)
		}
	}
}

// In first angle the large end of the symbol's frustum is next to the circles, in third angle the small end
// (derived from how the views are placed).
func TestTheSymbolOfTheProjection(t *testing.T) {
	for projection, large := range map[string]bool{"first": true, "third": false} {
		b := &blank{ink: onPaper}
		b.symbol(draw.Point{X: 50, Y: 10}, projection)
		cone, ring := b.Items[0].(draw.Path), draw.Bounds(b.Items[1:2])
		middle := (ring.Min.X + ring.Max.X) / 2
		near, far := draw.EmptyBox(), draw.EmptyBox()
		box := draw.Bounds(b.Items[:1])
		for _, s := range cone.Segs {
			if s.Kind == draw.Close {
				continue
			}
			left := s.P[2].X < (box.Min.X+box.Max.X)/2
			if left == (middle < box.Min.X) {
				near = near.Add(s.P[2])
			} else {
				far = far.Add(s.P[2])
			}
		}
		if got := near.Height() > far.Height(); got != large {
			t.Errorf("%s angle: next to the circles the frustum is %.1f mm high, away from them %.1f", projection, near.Height(), far.Height())
		}
	}
}

// What the design says of the title block stands in it, and the first sheet lists all sheets in order.
func TestTheTitleBlockAndTheList(t *testing.T) {
	d := formtest.WorkedExample()
	d.Papers.Block = form.TitleBlock{Owner: "Shed 3", DrawnBy: "J. Q.", ApprovedBy: "R. S.", Date: "2026-11-25", Number: "RN-7"}
	pages := Papers(model.Derive(d), Options{})
	seen := map[string]bool{}
	for _, it := range pages[0].Items {
		if s, is := it.(draw.Text); is {
			seen[s.Text] = true
		}
	}
	for _, want := range []string{"Shed 3", "J. Q.", "R. S.", "2026-11-25", "RN-7", "Owner", "Drawn by", "Approved by", "Date", "Number"} {
		if !seen[want] {
			t.Errorf("%q is not in the title block", want)
		}
	}
	for _, page := range pages {
		short := page.Title
		if r := []rune(short); len(r) > 12 {
			short = string(r[:12])
		}
		found := false
		for text := range seen {
			found = found || len(text) >= len(short) && text[:len(short)] == short
		}
		if !found {
			t.Errorf("%q is not in the list of sheets", page.Title)
		}
	}
}
