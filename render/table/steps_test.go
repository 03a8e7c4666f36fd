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

// A side goes home along its own slope; a rail let into leaning sides makes all of them go at once.
func TestTheDryFitSaysTheOrder(t *testing.T) {
	texts, at := stepsOf(t, formtest.WorkedExample())
	for _, want := range []string{"First 1 Top.", "Then 2 Side, left, along the grain of 2 Side, left, 6.0° from plumb: driven straight it jams."} {
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
