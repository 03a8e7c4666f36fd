package timber

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"splaywright/assets"
)

func TestEveryRowHasFiguresAndASource(t *testing.T) {
	all, err := Load(assets.Species)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 40 {
		t.Fatalf("only %d species", len(all))
	}
	for _, s := range all {
		if !strings.Contains(s.Source, "FPL-GTR-190") {
			t.Errorf("%s: source %q does not name the base table", s.Name, s.Source)
		}
		remembered := strings.Contains(s.Source, "from memory")
		if remembered == (len(s.Read) == len(figures)) {
			t.Errorf("%s: read %q but source says %q", s.Name, s.Read, s.Source)
		}
		// No timber of the Wood Handbook's tables is lighter than 300 or heavier than 900 kg/m³.
		if s.Density12 < 300 || s.Density12 > 900 {
			t.Errorf("%s: %.0f kg/m³", s.Name, s.Density12)
		}
		// Janka runs from 350 to 1970 lbf here; stiffness follows density within a factor.
		if s.MOE < 7000 || s.MOE > 16000 || s.MOR < 50 || s.MOR > 145 {
			t.Errorf("%s: MOE %.0f MPa, MOR %.0f MPa", s.Name, s.MOE, s.MOR)
		}
	}
}

func TestPublishedFigures(t *testing.T) {
	for _, c := range []struct {
		timber, figure string
		got            func(Species) float64
		want, within   float64
		source         string
	}{
		{"black cherry", "lb/ft³", func(s Species) float64 { return s.Density12 / 16.018463 }, 34.9, 0.1, "62.4 × 0.50 × 1.12, FPL-GTR-190 ch. 4"},
		{"white oak", "kg/m³", func(s Species) float64 { return s.Density12 }, 761.6, 1e-9, "1000 × 0.68 × 1.12"},
		{"hard maple", "MOR MPa", func(s Species) float64 { return s.MOR }, 109, 0.5, "metric row, FPL-GTR-190 Table 5-3a"},
		{"hard maple", "MOE MPa", func(s Species) float64 { return s.MOE }, 12600, 50, "metric row, FPL-GTR-190 Table 5-3a"},
		{"hard maple", "hardness N", func(s Species) float64 { return s.Janka }, 6400, 50, "metric row, FPL-GTR-190 Table 5-3a"},
		{"shortleaf pine", "MOE MPa", func(s Species) float64 { return s.MOE }, 12100, 50, "metric row, issuu.com/nhla/docs/wood_handbook/107"},
		{"ponderosa pine", "hardness N", func(s Species) float64 { return s.Janka }, 2000, 50, "metric row, issuu.com/nhla/docs/wood_handbook/107"},
		{"slash pine", "MOR MPa", func(s Species) float64 { return s.MOR }, 112, 0.5, "metric row, issuu.com/nhla/docs/wood_handbook/107"},
	} {
		s, ok := Find(c.timber)
		if !ok {
			t.Errorf("%s is not in the table", c.timber)
			continue
		}
		if got := c.got(s); math.Abs(got-c.want) > c.within {
			t.Errorf("%s, %s: %.3f, published %.3f (%s)", c.timber, c.figure, got, c.want, c.source)
		}
	}
}

func TestGreenVolumeWeighsMoreOnceDry(t *testing.T) {
	teak, ok := Find("teak")
	if !ok || !teak.GreenSG {
		t.Fatalf("teak: %+v", teak)
	}
	// The same wood on 12 % volume: shrinkage of about 60 % of the 7.0 % green to oven-dry
	// (facts of the same book, table 4-4), so SG rises by 3 to 10 %.
	rise := teak.Density12 / (teak.SG * 1120)
	if rise < 1.03 || rise > 1.10 {
		t.Errorf("teak gains a factor %.3f by shrinking to 12 %%", rise)
	}
}

func TestFind(t *testing.T) {
	for text, want := range map[string]string{
		"white oak": "white oak", "White Oak": "white oak", "oak, white": "white oak", " Oak ,  WHITE ": "white oak",
		"white-oak": "white oak", "red oak": "northern red oak", "cherry": "black cherry", "walnut": "black walnut",
		"tulip poplar": "yellow-poplar", "Yellow Poplar": "yellow-poplar", "douglas fir": "douglas-fir",
		"sugar maple": "hard maple", "maple, hard": "hard maple", "maple, sugar": "hard maple",
		"redwood, old-growth": "redwood, old-growth", "old-growth redwood": "redwood, old-growth", "paper birch": "paper birch",
	} {
		if s, ok := Find(text); !ok || s.Name != want {
			t.Errorf("Find(%q) = %q %v, want %q", text, s.Name, ok, want)
		}
	}
	for _, text := range []string{"", "oak", "pine", "birch", "unobtainium", ","} {
		if s, ok := Find(text); ok {
			t.Errorf("Find(%q) = %q; it could be several timbers or none", text, s.Name)
		}
	}
}

func TestNearest(t *testing.T) {
	for text, want := range map[string]string{
		"oak": "white oak", "wite oak": "white oak", "chery": "black cherry", "birch": "paper birch", "saple": "sapele",
	} {
		if got := Nearest(text, 3); !slices.Contains(got, want) || len(got) > 3 {
			t.Errorf("Nearest(%q) = %q, want %q among them", text, got, want)
		}
	}
	if got := Nearest("unobtainium", 3); len(got) != 0 {
		t.Errorf("nothing is near unobtainium, got %q", got)
	}
}

func TestFindTakesEveryListedName(t *testing.T) {
	names := Names()
	if !slices.IsSorted(names) {
		t.Error("names are not in order")
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.SampledFrom(names).Draw(t, "name")
		shouted := strings.ToUpper(" " + strings.ReplaceAll(n, "-", " ") + " ")
		if s, ok := Find(shouted); !ok || s.Name != n {
			t.Fatalf("Find(%q) = %q %v", shouted, s.Name, ok)
		}
	})
}

const head = "name,aliases,kind,specific_gravity,volume_at,side_hardness,modulus_of_elasticity,modulus_of_rupture,read,source\n"

func TestLoadRefuses(t *testing.T) {
	for name, c := range map[string]struct{ row, want string }{
		"no source":          {"box elm,,hardwood,0.5,12 %,800,1.3,9000,none,\n", "no source"},
		"blank source":       {"box elm,,hardwood,0.5,12 %,800,1.3,9000,none,  \n", "no source"},
		"nothing in read":    {"box elm,,hardwood,0.5,12 %,800,1.3,9000,,a book\n", "read is empty"},
		"unknown in read":    {"box elm,,hardwood,0.5,12 %,800,1.3,9000,colour,a book\n", `"colour"`},
		"neither kind":       {"box elm,,grass,0.5,12 %,800,1.3,9000,none,a book\n", `"grass"`},
		"volume at nothing":  {"box elm,,hardwood,0.5,,800,1.3,9000,none,a book\n", "volume_at"},
		"gravity of zero":    {"box elm,,hardwood,0,12 %,800,1.3,9000,none,a book\n", "specific_gravity"},
		"gravity not finite": {"box elm,,hardwood,NaN,12 %,800,1.3,9000,none,a book\n", "specific_gravity"},
		"heavier than wood":  {"box elm,,hardwood,2,12 %,800,1.3,9000,none,a book\n", "heavier"},
		"rupture missing":    {"box elm,,hardwood,0.5,12 %,800,1.3,,none,a book\n", "modulus_of_rupture"},
		"a column short":     {"box elm,,hardwood,0.5,12 %,800,1.3,9000,none\n", "wrong number of fields"},
		"no name":            {",,hardwood,0.5,12 %,800,1.3,9000,none,a book\n", "no name"},
		"a name twice": {"box elm,rock elm,hardwood,0.5,12 %,800,1.3,9000,none,a book\n" +
			"\"Elm, Rock\",,hardwood,0.5,12 %,800,1.3,9000,none,a book\n", "already stands for box elm"},
	} {
		_, err := Load([]byte(head + c.row))
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "line") {
			t.Errorf("%s: error %v, want a line and %q", name, err, c.want)
		}
	}
	if _, err := Load([]byte(strings.Replace(head, "source", "origin", 1))); err == nil || !strings.Contains(err.Error(), "columns") {
		t.Errorf("other columns: %v", err)
	}
	one, err := Load([]byte(head + "box elm,,hardwood,0.5,12 %,,1.3,9000,none,a book\n"))
	if err != nil || one[0].Janka != 0 || one[0].Sure("SG") {
		t.Errorf("a hardness that is not known is allowed: %+v %v", one, err)
	}
}

func FuzzLoad(f *testing.F) {
	f.Add([]byte(head))
	f.Add(assets.Species)
	f.Add([]byte(head + "box elm,rock elm,hardwood,0.5,12 %,800,1.3,9000,SG,a book\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		all, err := Load(text)
		if err != nil {
			return
		}
		for _, s := range all {
			if s.Source == "" || s.Name == "" || !(s.Density12 > 0) || math.IsInf(s.Density12, 0) {
				t.Errorf("accepted %+v", s)
			}
		}
	})
}
