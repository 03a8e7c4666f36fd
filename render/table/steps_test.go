package table

import (
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// stepsOf gives the steps as "do: how", with the place of each by its name.
func stepsOf(t *testing.T, d form.Design) (texts []string, at map[string]int) {
	t.Helper()
	at = map[string]int{}
	for i, row := range Steps(model.Derive(d), metric).Rows {
		if _, twice := at[row[1].Text]; !twice {
			at[row[1].Text] = i
		}
		texts = append(texts, row[1].Text+": "+row[2].Text)
	}
	if len(texts) == 0 {
		t.Fatal("no steps")
	}
	return texts, at
}

// What must come before what, in any shop (common practice).
func TestStepsComeInOrder(t *testing.T) {
	_, at := stepsOf(t, formtest.Full())
	order := []string{"Plane to thickness", "Cut heavy", "Mark the faces", "Cut the angles", "Mark and saw the tails", "Transfer and cut the pins",
		"Cut the shapes", "Bore for the screws", "Dry fit", "Glue up", "Level, ease and finish"}
	for i := 1; i < len(order); i++ {
		a, okA := at[order[i-1]]
		b, okB := at[order[i]]
		if !okA || !okB || a >= b {
			t.Errorf("%q (%d, %t) does not come before %q (%d, %t)", order[i-1], a, okA, order[i], b, okB)
		}
	}
}

// A taper sawn after the marking runs through the outer tails: that is said when there is one, and
// only then.
func TestTapersAreCutBeforeTheMarking(t *testing.T) {
	const word = "before the joints are marked"
	d := formtest.WorkedExample()
	plumb, _ := stepsOf(t, d)
	d.Splay.Edges = 4 * measure.Degree
	tapered, _ := stepsOf(t, d)
	if strings.Contains(strings.Join(plumb, " "), word) {
		t.Error("a taper is spoken of where there is none")
	}
	if !strings.Contains(strings.Join(tapered, " "), word) {
		t.Error("nothing says when the taper is cut")
	}
}

// The figures in the steps are those of the piece: the worked example's baseline is 20.11, its
// cheeks lean 0.84°, its pins stand 8.0° from square.
func TestStepsCarryTheFigures(t *testing.T) {
	texts, _ := stepsOf(t, formtest.WorkedExample())
	all := strings.Join(texts, "\n")
	for _, want := range []string{"baseline 20.11", "lean 0.84°", "stand 8.0°", "4 tails", "96.0° inside", "tilt 6.0°", "449.0 × 256.0"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is missing in\n%s", want, all)
		}
	}
}

// Figures of two boards never stand in one line, where they may be mistaken for each other.
func TestEachBoardHasALineOfItsOwn(t *testing.T) {
	texts, at := stepsOf(t, formtest.WorkedExample())
	for do, want := range map[string]string{
		"Plane to thickness": "Flatten one face, plane the other to it:\n20.0: 1 Top; 2, 3 Side.\nJoints",
		"Cut heavy":          "across it:\n1 Top: 449.0 × 256.0.\n2, 3 Side: 288.5 × 256.0.\nKeep",
		"Cut square":         "size:\n1 Top: front and back edge.\n2, 3 Side: back and front edge.",
		"Cut the angles":     "up.\n1 Top: left and right end: tilt 6.0°, inner face longer.\n2, 3 Side: top end: tilt 6.0°, inner face longer; floor end: tilt 6.0°, outer face longer.\nTry",
	} {
		if got := texts[at[do]]; !strings.Contains(got, want) {
			t.Errorf("%q is missing in %q", want, got)
		}
	}
}

// A side goes home along its own slope; a rail let into leaning sides makes all of them go at once.
func TestTheDryFitSaysTheOrder(t *testing.T) {
	texts, at := stepsOf(t, formtest.WorkedExample())
	for _, want := range []string{"First the top (1).", "Then the left side (2), up and to the right, along its own grain, 6.0° from plumb: driven straight it jams."} {
		if !strings.Contains(texts[at["Dry fit"]], want) {
			t.Errorf("%q is missing in %s", want, texts[at["Dry fit"]])
		}
	}
	d := formtest.WorkedExample()
	d.Stretchers = []form.Stretcher{{Width: 60, Thickness: 20, BelowTop: 40, Joint: form.Housing, Depth: 6}}
	texts, at = stepsOf(t, d)
	// The two sides close 2·sin 6° on each other for each 1 that they travel: 1 for 4.8.
	if want := "close 1 on each other while they travel 4.8"; !strings.Contains(texts[at["Dry fit"]], want) {
		t.Errorf("%q is missing in %s", want, texts[at["Dry fit"]])
	}
}

// Only what the piece has gets a step.
func TestStepsLeaveOutWhatThePieceHasNot(t *testing.T) {
	_, at := stepsOf(t, formtest.Butt())
	if _, ok := at["Mark and saw the tails"]; ok {
		t.Error("a butted piece has tails to saw")
	}
	_, at = stepsOf(t, formtest.WorkedExample())
	for _, no := range []string{"Cut the housing", "Bore for the screws", "Cut the shapes"} {
		if _, ok := at[no]; ok {
			t.Errorf("the worked example has the step %q", no)
		}
	}
	d := formtest.WorkedExample()
	many := 300
	d.Corners.Tails = &many
	if p := form.Build(d); p.Stopped() && len(Steps(p, metric).Rows) > 0 {
		t.Error("a piece that is stopped has steps")
	}
}

// Every joint that walls can have, on every form of walls, has the steps that make it; a bottom in a groove is
// not glued, and plugs come after the glue and before the finish.
func TestEveryJointOfWallsHasItsSteps(t *testing.T) {
	makes := map[string][]string{
		form.Mitre: {"Fit the mitres"}, form.SplinedMitre: {"Fit the mitres", "Groove the mitres"}, form.KeyedMitre: {"Fit the mitres", "Saw the key slots"},
		form.Butt: {"Fit the corners"}, form.Housing: {"Cut the housing"},
		form.ThroughDovetail: {"Mark and saw the tails", "Transfer and cut the pins"}, form.HalfBlindDovetail: {"Mark and saw the tails", "Transfer and cut the pins"},
		form.GrooveTongue: {"Cut the"},
		form.FingerJoint:  {"Mark and saw the fingers", "Transfer and cut their mates"},
	}
	for _, joint := range form.WallJoints() {
		for _, name := range []string{"tray", "chest"} {
			d := form.Design{Form: name, Timber: "black cherry", Size: form.Size{Height: 120, Width: 400, Depth: 280}}
			d.Splay.Ends, d.Splay.Front = 8*measure.Degree, 12*measure.Degree
			d.Boards.Front.Thickness, d.Boards.Back.Thickness, d.Boards.End.Thickness = 14, 14, 14
			d.Boards.Side.Thickness = 14
			d.Corners.Joint = joint
			d.Bottom = &form.Bottom{Thickness: 8, Joint: form.InGroove}
			p := model.Derive(d)
			if p.Stopped() {
				t.Errorf("%s, %s: stopped: %v", name, joint, p.Findings)
				continue
			}
			texts, at := stepsOf(t, d)
			for _, want := range makes[joint] {
				found := false
				for do := range at {
					found = found || strings.HasPrefix(do, want)
				}
				if !found {
					t.Errorf("%s, %s: no step %q", name, joint, want)
				}
			}
			if len(makes[joint]) == 0 {
				t.Errorf("%s: this test knows no steps for it", joint)
			}
			if !strings.Contains(texts[at["Glue up"]], "The bottom goes in with the walls and dry") {
				t.Errorf("%s, %s: %s", name, joint, texts[at["Glue up"]])
			}
		}
	}
	_, at := stepsOf(t, formtest.Full())
	if g, p, f := at["Glue up"], at["Plug the screw holes"], at["Level, ease and finish"]; p <= g || f <= p {
		t.Errorf("glue at %d, plugs at %d, finish at %d", g, p, f)
	}
}
