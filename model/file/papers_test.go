package file_test

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/measure"
)

const plainStool = `splaywright: 1
title: Step
units: mm
form: stool
size: {height: 260, width: 420, depth: 250}
splay: {ends: 6}
timber: white oak
`

// The eye of the pictorial is read in any unit, and refused where nobody could stand.
func TestTheEyeOfThePapers(t *testing.T) {
	d, err := design(t, plainStool+"papers: {eye-height: 5 ft, eye-distance: 2500, turn: -30, bottom: false}\n")
	if err != nil {
		t.Fatal(err)
	}
	p := d.Papers
	if p.EyeHeight != 5*12*25.4 || p.EyeDistance != 2500 || p.Turn == nil || math.Abs(p.Turn.Degrees()+30) > 1e-9 || !p.NoBottom {
		t.Errorf("read as %+v", p)
	}
	if d, err := design(t, plainStool); err != nil || d.Papers.Turn != nil || d.Papers.NoBottom || d.Papers.EyeHeight != measure.Length(0) {
		t.Errorf("without keys: %+v, %v", d.Papers, err)
	}
	for _, c := range []struct{ text, want string }{
		{"papers: {eye-height: 0}", "above zero"},
		{"papers: {eye-distance: -3 m}", ""},
		{"papers: {turn: 200}", "180 degrees"},
		{"papers: {bottom: perhaps}", "true or false"},
	} {
		if _, err := design(t, plainStool+c.text+"\n"); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.text, err)
		}
	}
}
