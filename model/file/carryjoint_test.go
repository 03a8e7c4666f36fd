package file_test

import (
	"slices"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/part"
)

// refusals are what stops a piece for what the corners are typed as.
func refusals(t *testing.T, d *file.Document) []string {
	t.Helper()
	design, err := d.Design()
	if err != nil {
		return []string{err.Error()}
	}
	var out []string
	for _, f := range form.Build(design).Findings {
		if f.Level == part.Stop && strings.Contains(strings.Join(f.Sizes, " "), "corners.") {
			out = append(out, f.ID)
		}
	}
	return out
}

// Whatever form and joint a sound example is given, and whichever it had before, nothing that was typed for
// the joint it had stops the corners of the joint it gets.
func TestEveryFormAndJointCarriesOver(t *testing.T) {
	for _, e := range assets.Examples() {
		for _, name := range form.Forms() {
			for _, joint := range form.CornerJoints() {
				d := read(t, string(e.YAML))
				before := d.Text("corners.joint")
				if err := d.SetForm(name); err != nil {
					t.Fatalf("%s as a %s: %v", e.Name, name, err)
				}
				if err := d.SetJoint(joint); err != nil {
					t.Fatalf("%s as a %s in %s: %v", e.Name, name, joint, err)
				}
				if got := refusals(t, d); len(got) > 0 {
					t.Errorf("%s in %s as a %s in %s: %q", e.Name, before, name, joint, got)
				}
			}
		}
	}
}

// What a joint alone has goes with it: a shoulder, a stop, splines, keys.
func TestWhatAJointAloneHasGoesWithIt(t *testing.T) {
	for from, has := range map[string]string{
		form.Housing: "stop: 12", form.GrooveTongue: "shoulder: 6, stop: 10", form.SplinedMitre: "spline: {thickness: 4}", form.KeyedMitre: "keys: {thickness: 4}",
	} {
		for _, joint := range form.CornerJoints() {
			d := read(t, "splaywright: 1\nform: tray\nsize: {height: 120, width: 420, depth: 300}\nsplay: {front: 8, ends: 8}\ntimber: white oak\nboards: {side: {thickness: 18}}\ncorners: {joint: "+from+", "+has+"}\n")
			if err := d.SetJoint(joint); err != nil {
				t.Fatal(err)
			}
			if got := refusals(t, d); len(got) > 0 {
				t.Errorf("%s (%s) in %s: %q", from, has, joint, got)
			}
		}
	}
}

// Every joint of walls is one of a top with its sides too.
func TestAJointOfWallsIsATopsJoint(t *testing.T) {
	tray, ok := assets.FindExample("windfall-tray")
	if !ok {
		t.Fatal("there is no tray")
	}
	for _, joint := range form.WallJoints() {
		d := read(t, string(tray.YAML))
		if err := d.SetJoint(joint); err != nil {
			t.Fatal(err)
		}
		if err := d.SetForm("stool"); err != nil {
			t.Fatal(err)
		}
		got := d.Text("corners.joint")
		if got != joint {
			t.Errorf("%s becomes %q", joint, got)
		}
		if bad := refusals(t, d); len(bad) > 0 {
			t.Errorf("a tray in %s as a stool in %s: %q", joint, got, bad)
		}
	}
}

func TestUnevenTailsKeepTheirNumber(t *testing.T) {
	for _, c := range []struct{ corners, want string }{
		{"{joint: through dovetail, tail-widths: [46, 62, 46]}", "3"},
		{"{joint: through dovetail, tail-widths: [40, 50], mirrored: true}", "4"},
		{"{joint: through dovetail, tail-widths: [40, 50], mirrored: true, tails: 3}", "3"},
	} {
		d := read(t, "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\ncorners: "+c.corners+"\n")
		if err := d.SetForm("steps"); err != nil {
			t.Fatal(err)
		}
		if d.Len("corners.tail-widths") == 0 {
			t.Errorf("%s: steps have corners as long as a stool's, and the tails are gone", c.corners)
		}
		if err := d.SetForm("tray"); err != nil {
			t.Fatal(err)
		}
		if got := d.Text("corners.tails"); got != c.want || d.Len("corners.tail-widths") != 0 || d.Text("corners.mirrored") != "" {
			t.Errorf("%s: a tray has %q tails, %s", c.corners, got, d.List("corners.tail-widths"))
		}
	}
}

// What the next joint or form has a use for stays as it was typed.
func TestWhatAJointUsesStays(t *testing.T) {
	const typed = "{joint: housing, depth: 6, overhang: 12, overhang-edges: 9, slope: 1:7, pin: 8}"
	for _, c := range []struct{ form, joint, path, want string }{
		{"stool", "butt", "corners.overhang", "12"},
		{"stool", "through dovetail", "corners.overhang", ""},
		{"stool", "through dovetail", "corners.overhang-edges", ""},
		{"stool", "through dovetail", "corners.slope", "1:7"},
		{"stool", "through dovetail", "corners.pin", "8"},
		{"steps", "housing", "corners.overhang-edges", "9"},
		{"tray", "housing", "corners.overhang", "12"},
		{"tray", "housing", "corners.overhang-edges", ""},
		{"tray", "butt", "corners.overhang", ""},
		{"ring", "housing", "corners.overhang", ""},
		{"ring", "housing", "corners.depth", "6"},
	} {
		d := read(t, "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\ncorners: "+typed+"\n")
		if err := d.SetForm(c.form); err != nil {
			t.Fatal(err)
		}
		if err := d.SetJoint(c.joint); err != nil {
			t.Fatal(err)
		}
		if got := d.Text(c.path); got != c.want {
			t.Errorf("a %s in %s: %s is %q, want %q", c.form, c.joint, c.path, got, c.want)
		}
	}
}

// Fingers are as wide as the gaps between them and about as wide as the boards are thick, so what was typed for tails does not
// shape them: 250 mm of corner in boards of 20 have 6 fingers of 19.2 between 7 gaps (common practice).
func TestFingersLeaveTailsAndPinsBehind(t *testing.T) {
	for _, corners := range []string{
		"{joint: through dovetail, tails: 4, pin: 10, half-pin: 8}",
		"{joint: half-blind dovetail, tail: 50}",
		"{joint: through dovetail, tail-widths: [46, 62, 46]}",
		"{joint: through dovetail, tail-widths: [46, 62], mirrored: true}",
	} {
		d := read(t, "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\ncorners: "+corners+"\n")
		if err := d.SetJoint(form.FingerJoint); err != nil {
			t.Fatal(err)
		}
		if got := d.Keys("corners"); !slices.Equal(got, []string{"joint"}) {
			t.Errorf("%s leaves %q", corners, got)
		}
		design, err := d.Design()
		if err != nil {
			t.Fatal(err)
		}
		for _, j := range form.Build(design).Joints {
			if len(j.Tails) != 6 {
				t.Errorf("%s becomes %d fingers, want 6", corners, len(j.Tails))
			}
			for i := 1; i < len(j.Tails); i++ {
				tail, gap := j.Tails[i].Width(), j.Tails[i].Start-j.Tails[i-1].End
				if d := (tail - gap).MM(); d > 1e-9 || d < -1e-9 {
					t.Errorf("%s: a finger of %.3f beside a gap of %.3f", corners, tail.MM(), gap.MM())
				}
			}
		}
	}
}

// A number or width that was typed for fingers does not shape tails; what both joints mean alike stays.
func TestTailsLeaveFingersBehind(t *testing.T) {
	for _, joint := range form.CornerJoints() {
		if joint == form.FingerJoint {
			continue
		}
		d := read(t, "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\ncorners: {joint: finger joint, tails: 11, tail: 9, tails-on: side, slope: 7}\n")
		if err := d.SetJoint(joint); err != nil {
			t.Fatal(err)
		}
		if got := d.Keys("corners"); !slices.Equal(got, []string{"joint", "tails-on", "slope"}) {
			t.Errorf("in %s it has %q", joint, got)
		}
	}
}

// Tails of one kind are tails of another.
func TestTailsStayTails(t *testing.T) {
	d := read(t, "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\ncorners: {tails: 4, pin: 10}\n")
	for _, joint := range []string{form.HalfBlindDovetail, form.Housing, form.ThroughDovetail} {
		if err := d.SetJoint(joint); err != nil {
			t.Fatal(err)
		}
		if got := d.Text("corners.tails") + " " + d.Text("corners.pin"); got != "4 10" {
			t.Errorf("in %s it has tails and pins of %q", joint, got)
		}
	}
}
