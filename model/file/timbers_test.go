package file

import (
	"strings"
	"testing"
)

const ownTimbers = `splaywright: 1
form: stool
size: {height: 260, width: 420, depth: 250}
timber: garden plum
timbers:
  - {name: garden plum, kind: hardwood, specific-gravity: 0.65, modulus-of-elasticity: 1.4, modulus-of-rupture: 11000,
     change-radial: 0.0016, change-tangential: 0.0028, source: my own boards weighed, price-per-m3: 1800}
  - {name: white oak, price-per-board-foot: 9}
`

func TestOwnTimbersInADesign(t *testing.T) {
	doc, err := Read(strings.NewReader(ownTimbers), "own.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := doc.Design()
	if err != nil {
		t.Fatal(err)
	}
	if s, ok := d.Timbers.Find("garden plum"); !ok || s.SG != 0.65 {
		t.Errorf("%+v", d.Timbers)
	}
	if _, foot := d.Timbers.Price("white oak"); foot != 9 {
		t.Errorf("white oak at %g a board foot", foot)
	}
}

func TestOwnTimbersAreRefusedInTheirPlace(t *testing.T) {
	for what, c := range map[string]struct{ from, to, place, say string }{
		"no source":   {"source: my own boards weighed, ", "", "own.yaml:6:", "source"},
		"not known":   {"white oak, price", "oakk, price", "own.yaml:8:", "built-in"},
		"half moving": {"change-radial: 0.0016, ", "", "own.yaml:6:", "together"},
		"another key": {"kind:", "sort:", "own.yaml:6:", "sort"},
		"a length":    {"specific-gravity: 0.65", "specific-gravity: 3 in", "own.yaml:6:", "3 in"},
	} {
		doc, err := Read(strings.NewReader(strings.Replace(ownTimbers, c.from, c.to, 1)), "own.yaml")
		if err == nil {
			_, err = doc.Design()
		}
		if err == nil || !strings.Contains(err.Error(), c.place) || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: %v", what, err)
		}
	}
}
