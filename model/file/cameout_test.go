package file

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
)

const measuredStool = `splaywright: 1
form: stool
units: in
size: {height: 12, width: 18, depth: 9}
tolerance: {length: 1/64, angle: 0.2 deg, thickness: 0.004}
came-out: {width-floor: 20-1/2, height-left: 11-31/32, height-right: 305 mm}
boards-on-hand:
  - {name: gate rail, length: 60, width: 9-1/2, thickness: 1-1/8, bow: 3/8, cup: 1/16, twist: 4 mm}
`

func TestWhatCutsHoldToAndWhatCameOut(t *testing.T) {
	got, err := read(t, measuredStool).Design()
	if err != nil {
		t.Fatal(err)
	}
	const in = 25.4
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"lengths", got.Tolerance.Length.MM(), in / 64}, {"angles", got.Tolerance.Angle.Degrees(), 0.2}, {"thicknesses", got.Tolerance.Thickness.MM(), 0.004 * in},
		{"width at the floor", got.CameOut.WidthFloor.MM(), 20.5 * in}, {"left", got.CameOut.HeightLeft.MM(), (11 + 31./32) * in}, {"right", got.CameOut.HeightRight.MM(), 305},
		{"bow", got.OnHand[0].Bow, 3. / 8 * in}, {"cup", got.OnHand[0].Cup, in / 16}, {"twist", got.OnHand[0].Twist, 4},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.what, c.got, c.want)
		}
	}
}

func TestWhatCannotHaveComeOut(t *testing.T) {
	for _, c := range []struct{ name, old, new, says string }{
		{"a depth of a stool", "width-floor: 20-1/2", "depth-floor: 9", "a stool makes no use of this: of a board that is cut to its depth"},
		{"a height below nothing", "height-left: 11-31/32", "height-left: -1", "it must be above zero"},
		{"an angle held to 12°", "0.2 deg", "12 deg", "from 0.001 to 5 degrees"},
		{"a twist wider than the board", "4 mm", "12", "from 0 to less than 241.3 is expected"},
		{"an unknown figure", "height-right: 305 mm", "height-middle: 305 mm", "did you mean"},
	} {
		if !strings.Contains(measuredStool, c.old) {
			t.Fatal(c.name)
		}
		if _, err := read(t, strings.Replace(measuredStool, c.old, c.new, 1)).Design(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// Another form is another piece: what was measured of the old one goes with it; what the shop holds to stays.
func TestAnotherFormWasNotMeasured(t *testing.T) {
	doc := read(t, measuredStool)
	if err := doc.SetForm("tray"); err != nil {
		t.Fatal(err)
	}
	got, err := doc.Design()
	if err != nil {
		t.Fatal(err)
	}
	if got.CameOut != (form.CameOut{}) || got.Tolerance.Angle != 0.2*measure.Degree {
		t.Errorf("%+v, %+v", got.CameOut, got.Tolerance)
	}
}

func TestBoardsOfAListThatAreNotFlat(t *testing.T) {
	got, err := ReadBoards(strings.NewReader("name,length,width,thickness,bow,cup,twist\nsill,2200,300,29,14,3,8\nshelf,1200,290,26,,2,\n"), "b.csv", measure.Metric)
	if err != nil {
		t.Fatal(err)
	}
	if got[0].Warp != (stock.Warp{Bow: 14, Cup: 3, Twist: 8}) || got[1].Warp != (stock.Warp{Cup: 2}) {
		t.Errorf("%+v", got)
	}
	if _, err := ReadBoards(strings.NewReader("length,width,thickness,cup\n900,200,25,240\n"), "b.csv", measure.Metric); err == nil || !strings.Contains(err.Error(), "b.csv:2:12") {
		t.Errorf("a cup wider than its board: %v", err)
	}
}
