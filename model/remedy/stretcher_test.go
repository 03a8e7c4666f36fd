package remedy_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/remedy"
)

// lopsided are the stretchers that have no other across from them.
func lopsided(d form.Design) (out []string) {
	for _, s := range d.Stretchers {
		if !slices.ContainsFunc(d.Stretchers, func(o form.Stretcher) bool {
			return math.Abs((o.Across+s.Across).MM()) < 1e-3 && o.BelowTop == s.BelowTop && o.Width == s.Width && o.Joint == s.Joint && (o.Screws == nil) == (s.Screws == nil)
		}) {
			out = append(out, fmt.Sprintf("%g mm across, %g below", s.Across.MM(), s.BelowTop.MM()))
		}
	}
	return out
}

// A stretcher that is offered does not hold one side of the piece alone: across from one that is off the middle its like, one
// in the middle, or two. Tried are three examples without stretchers, with one in the middle and with one aside, long and thin
// enough to sag and to rack.
func TestStretchersThatAreOfferedStandEvenly(t *testing.T) {
	texts := map[string]string{}
	for _, e := range assets.Examples() {
		text := string(e.YAML)
		if !slices.Contains([]string{"hallway-bench", "lamp-table-stool", "washstand-step"}, e.Name) { // one is in inches
			continue
		}
		for name, one := range map[string]string{
			"none": "", "middle": "{width: 60 mm, thickness: 18 mm, set: on edge, below-top: 0, joint: housing}",
			"low":    "{width: 60 mm, thickness: 18 mm, set: on edge, below-top: 120 mm, joint: housing}",
			"aside":  "{width: 60 mm, thickness: 18 mm, set: on edge, below-top: 0, across: -50 mm, joint: housing}",
			"screws": "{width: 60 mm, thickness: 18 mm, set: on edge, below-top: 0, across: 50 mm, joint: butt, screws: {gauge: 8, length: 50 mm, count: 2, from-end: 15 mm}}",
		} {
			texts[e.Name+", "+name] = text + "\n# " + one
		}
	}
	offered := 0
	for name, text := range texts {
		doc := document(t, text)
		doc.Remove("stretchers")
		_, one, _ := strings.Cut(text[strings.LastIndex(text, "\n# "):], "# ")
		if one != "" {
			doc = document(t, string(doc.Bytes())+"\nstretchers: ["+one+"]\n")
		}
		for _, s := range [][2]string{{"boards.top.thickness", "14 mm"}, {"size.width", "900 mm"}} {
			if err := doc.Set(s[0], s[1]); err != nil {
				t.Fatal(err)
			}
		}
		p := derive(t, doc)
		eachOffer(t, doc, p, func(f part.Finding, o remedy.Offer, after *form.Piece) {
			if o.Path != "stretchers" {
				return
			}
			offered++
			if was, now := lopsided(p.Design), lopsided(after.Design); len(now) > len(was) {
				t.Errorf("%s: %s: %v stands alone: %s", name, f.ID, now, o)
			}
			for _, g := range after.Findings {
				if g.Level == part.Stop && !p.Stopped() {
					t.Errorf("%s: %s brings %s", name, o, g.Text)
				}
			}
		})
	}
	if offered < 5 {
		t.Errorf("only %d were offered", offered)
	}
	t.Logf("%d stretchers were offered", offered)
}
