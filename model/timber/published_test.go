package timber

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// published reads a table of testdata/published by its columns; a figure that the source has not is left out.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("../../testdata/published", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 30 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, cell := range row {
			if cell != "" {
				m[rows[0][i]] = cell
			}
		}
		out = append(out, m)
	}
	return out
}

func same(t *testing.T, row map[string]string, column string, got, unit float64) {
	t.Helper()
	text, told := row[column]
	if !told {
		return
	}
	want, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	near(t, row["species"]+", "+column+" ("+row["source"]+")", got/unit, want, 1e-9+want*1e-12)
}

// Every row of the Wood Handbook's strength of clear wood at 12 %, as the sources beside each print it: the figures that
// are built in are those.
func TestStrengthRowByRow(t *testing.T) {
	const psi, pound = 0.00689475729316836, 4.4482216152605
	for _, row := range published(t, "strength.csv") {
		s, ok := Find(row["species"])
		if !ok {
			t.Errorf("no %s", row["species"])
			continue
		}
		same(t, row, "sg", s.SG, 1)
		same(t, row, "mor", s.MOR, psi)
		same(t, row, "moe", s.MOE, 1e6*psi)
		same(t, row, "hardness", s.Janka, pound)
	}
}

// The same for shrinkage and for the change of size.
func TestShrinkageRowByRow(t *testing.T) {
	for _, row := range published(t, "shrinkage.csv") {
		m, ok := FindMovement(row["species"])
		if !ok {
			t.Errorf("no %s", row["species"])
			continue
		}
		same(t, row, "radial", m.Radial, 1)
		same(t, row, "tangential", m.Tangential, 1)
		same(t, row, "volumetric", m.Volumetric, 1)
		same(t, row, "change-radial", m.ChangeRadial, 1)
		same(t, row, "change-tangential", m.ChangeTangential, 1)
	}
}
