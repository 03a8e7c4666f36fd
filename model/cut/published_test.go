package cut

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"splaywright/model/measure"
)

// published reads a table of testdata/published; every row must name its source.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, head := range lines[0] {
			row[head] = line[i]
		}
		if row["source"] == "" {
			t.Fatalf("%s: row %v names no source", name, line)
		}
		rows = append(rows, row)
	}
	return rows
}

// want compares an angle with a printed figure in degrees; an empty cell was lost in print.
func want(t *testing.T, row map[string]string, column string, got measure.Angle, tolerance float64) {
	t.Helper()
	if row[column] == "" {
		return
	}
	printed := number(t, row, column)
	if math.Abs(got.Degrees()-printed) > tolerance {
		t.Errorf("%s: got %.5f, printed %s, in row %v", column, got.Degrees(), row[column], row)
	}
}

func number(t *testing.T, row map[string]string, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func deg(x float64) measure.Angle { return measure.Angle(x) * measure.Degree }

// printedHundredths: the manuals state figures to the nearest 0.005°.
const printedHundredths = 0.0051

func TestMitreTableOfSawManuals(t *testing.T) {
	rows := published(t, "mitre-table.csv")
	if len(rows) != 80 {
		t.Fatalf("%d rows, want 80", len(rows))
	}
	for _, row := range rows {
		lean := deg(90 - number(t, row, "slope_from_level"))
		s := Ring(int(number(t, row, "sides")), lean).Mitre()
		want(t, row, "swing", s.Swing, printedHundredths)
		want(t, row, "tilt", s.Tilt, printedHundredths)
	}
}

func TestFourEqualSplays(t *testing.T) {
	rows := published(t, "equal-splay.csv")
	if len(rows) != 19 {
		t.Fatalf("%d rows, want 19", len(rows))
	}
	for _, row := range rows {
		splay := deg(number(t, row, "splay"))
		c := Square(splay, splay)
		want(t, row, "swing", c.Butt().Swing, 0.00051)
		want(t, row, "butt_tilt", c.Butt().Tilt, 0.00051)
		want(t, row, "mitre_tilt", c.Mitre().Tilt, 0.00051)
		want(t, row, "dihedral", c.Dihedral(), 0.00051)
		want(t, row, "corner_from_plumb", c.CornerLean(), 0.00051)
		if got := Along(1, splay).MM(); math.Abs(got-number(t, row, "stretch")) > 0.0000051 {
			t.Errorf("face length of 1 plumb: %.6f in row %v", got, row)
		}
	}
}

func TestUnequalSplays(t *testing.T) {
	rows := published(t, "unequal-splay.csv")
	if len(rows) != 4 {
		t.Fatalf("%d rows, want 4", len(rows))
	}
	for _, row := range rows {
		long := Square(deg(number(t, row, "long_splay")), deg(number(t, row, "end_splay")))
		end := long.Turned()
		want(t, row, "long_swing", long.Butt().Swing, 0.00051)
		want(t, row, "end_swing", end.Butt().Swing, 0.00051)
		for _, c := range []Corner{long, end} {
			want(t, row, "dihedral", c.Dihedral(), 0.00051)
			want(t, row, "butt_tilt", c.Butt().Tilt, 0.00051)
			want(t, row, "mitre_tilt", c.Mitre().Tilt, 0.00051)
			want(t, row, "corner_from_plumb", c.CornerLean(), 0.00051)
		}
	}
}

func TestLegs(t *testing.T) {
	for _, row := range published(t, "legs.csv") {
		rake, splay := deg(number(t, row, "rake")), deg(number(t, row, "splay"))
		lean, sight := Resultant(rake, splay)
		want(t, row, "resultant", lean, 0.00051)
		want(t, row, "sightline", sight, 0.00051)
		if c := Square(rake, splay); math.Abs(float64(c.CornerLean()-lean)) > 1e-12 {
			t.Errorf("a leg in the corner of two boards leans by %v, the corner by %v", lean, c.CornerLean())
		}
	}
}

func TestCrownMoulding(t *testing.T) {
	for _, tc := range []struct {
		name        string
		spring      float64
		mitre, tilt float64
		tolerance   float64 // the manuals print 33.85 and 33.86 for the same moulding
		source      string
	}{
		{"52/38 crown in a square room", 38, 31.62, 33.85, 0.02, "mitre-saw manual MS-1065LZ p. 24, http://it.all-manuals.su/lobziki-i-pily/78981-ms-1065lz.html"},
		{"45/45 crown in a square room", 45, 35.26, 30.00, printedHundredths, "Ryobi TSS121 manual p. 32, 45° and four sides"},
	} {
		s := Crown(deg(tc.spring), deg(90))
		if math.Abs(s.Swing.Degrees()-tc.mitre) > tc.tolerance || math.Abs(s.Tilt.Degrees()-tc.tilt) > tc.tolerance {
			t.Errorf("%s: %.4f / %.4f, printed %.2f / %.2f (%s)", tc.name, s.Swing.Degrees(), s.Tilt.Degrees(), tc.mitre, tc.tilt, tc.source)
		}
	}
}

// A box leaning 26° from level on a mitre saw: the manual rounds to whole degrees.
// DeWalt DCS361 manual p. 16, https://manualslib.mx/manual/90411/Dewalt-Dcs361.html?page=16
func TestManualThatRoundsToWholeDegrees(t *testing.T) {
	s := Ring(4, deg(90-26)).Mitre()
	if math.Round(s.Swing.Degrees()) != 42 || math.Round(s.Tilt.Degrees()) != 18 {
		t.Errorf("%.2f / %.2f, printed 42 / 18", s.Swing.Degrees(), s.Tilt.Degrees())
	}
}
