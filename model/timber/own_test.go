package timber

import (
	"math"
	"strings"
	"testing"

	"splaywright/model/measure"
)

const ownHead = "name,aliases,kind,specific_gravity,volume_at,side_hardness,modulus_of_elasticity,modulus_of_rupture,read,source,change_radial,change_tangential,price_per_m3\n"

func TestOwnTimbers(t *testing.T) {
	text := ownHead +
		"garden plum,plum;zwetschge,hardwood,0.65,12 %,,1.4,11000,SG,my own boards weighed,0.0016,0.0028,1800\n" +
		"black cherry,,,,,,,,,,,,3200\n"
	b, err := LoadOwn([]byte(text), "own.csv")
	if err != nil {
		t.Fatal(err)
	}
	plum, ok := b.Find("Plum")
	if !ok || math.Abs(plum.Density12-728) > 1e-9 || math.Abs(plum.MOR-11000*measure.MegapascalsPerPSI) > 1e-9 || plum.Wood != Hardwood {
		t.Errorf("%v %+v", ok, plum)
	}
	if m, ok := b.FindMovement("garden plum"); !ok || math.Abs(m.Change(100, AcrossFlatsawn, 7, 12)-1.4) > 1e-9 {
		t.Errorf("100 mm of plum move by %g from 7 to 12 %%, want 100 · 0.0028 · 5", m.Change(100, AcrossFlatsawn, 7, 12))
	}
	if p, _ := b.Price("cherry"); p != 3200 { // an alias of the built-in species
		t.Errorf("cherry costs %g", p)
	}
	if s, ok := b.Find("black cherry"); !ok || s.SG != 0.5 {
		t.Errorf("a price alone takes the figures away: %+v", s)
	}
	if s, ok := (Book)(nil).Find("white oak"); !ok || s.SG == 0 {
		t.Error("an empty book does not know white oak")
	}
}

// Figures as the tables print them come to those of the other system, and back: white oak in pounds is 1,360 lbf, 1.78 · 10⁶ and
// 15,200 lbf/in²; the metric table of the same book has 6,000 N, 12,300 and 105 MPa, rounded (FPL-GTR-190, Tables 5-3a and 5-3b;
// from memory).
func TestFiguresAsTheTablesPrintThem(t *testing.T) {
	o := Own{Species: Species{Name: "oak", SG: 0.68}}.Figured(1360, 1.78, 15200, 0, 0)
	for _, c := range []struct {
		what           string
		got, want, off float64
	}{{"hardness, N", o.Janka, 6000, 50}, {"elasticity, MPa", o.MOE, 12300, 50}, {"rupture, MPa", o.MOR, 105, 0.5}} {
		if math.Abs(c.got-c.want) > c.off {
			t.Errorf("%s: %.1f, printed %g", c.what, c.got, c.want)
		}
	}
	hardness, elasticity, rupture := o.Printed()
	if math.Abs(hardness-1360) > 1e-9 || math.Abs(elasticity-1.78) > 1e-12 || math.Abs(rupture-15200) > 1e-8 {
		t.Errorf("back come %g, %g and %g", hardness, elasticity, rupture)
	}
	built, _ := Find("white oak")
	if h, e, r := (Own{Species: built}).Printed(); math.Abs(h-1360) > 1 || math.Abs(e-1.78) > 0.005 || math.Abs(r-15200) > 50 {
		t.Errorf("of the built-in table: %g, %g and %g", h, e, r)
	}
}

// Shrinkage and coefficient of the built-in species that obey the handbook's rule lead to one another.
func TestShrinkageFromTheCoefficient(t *testing.T) {
	m, _ := FindMovement("white ash") // read: 7.8 % and 0.00274 (FPL-GTR-190, Tables 4-3 and 13-5)
	if got := shrinkage(m.ChangeTangential); math.Abs(got-m.Tangential) > 0.02 {
		t.Errorf("%g %% from %g, the table has %g", got, m.ChangeTangential, m.Tangential)
	}
}

func TestOwnTimbersAreRefusedWithTheirLine(t *testing.T) {
	for what, c := range map[string]struct{ row, line, say string }{
		"no source":     {"plum,,hardwood,0.65,12 %,,1.4,11000,SG,,,,\n", ":2:", "source"},
		"no figures":    {"plum,,,,,,,,,,,,1800\n", ":2:", "built-in"},
		"no price":      {"white oak,,,,,,,,,,,,\n", ":2:", "price"},
		"lead":          {"plum,,hardwood,6.5,12 %,,1.4,11000,SG,weighed,,,\n", ":2:", "1.5"},
		"half movement": {"plum,,hardwood,0.65,12 %,,1.4,11000,SG,weighed,0.001,,\n", ":2:", "together"},
		"twice":         {"white oak,,,,,,,,,,,,5\nwhite oak,,,,,,,,,,,,6\n", ":3:", "twice"},
		"a word":        {"white oak,,,,,,,,,,,,dear\n", ":2:", "dear"},
		"below nothing": {"white oak,,,,,,,,,,,,-5\n", ":2:", "positive number"},
		"a fortune":     {"white oak,,,,,,,,,,,,1e12\n", ":2:", "positive number"},
		"its encoding":  {"L\xe4rche,,,,,,,,,,,,5\n", ":2", "UTF-8"},
		"a bell":        {"white oak\a,,,,,,,,,,,,5\n", ":2", "does not print"},
		"nothing":       {"", "own.csv", "no timber"},
	} {
		b, err := LoadOwn([]byte(ownHead+c.row), "own.csv")
		if err == nil || len(b) > 0 || !strings.Contains(err.Error(), c.line) || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: %v", what, err)
		}
	}
	if _, err := LoadOwn([]byte("name,price\n"), "own.csv"); err == nil || !strings.Contains(err.Error(), "own.csv:1:") {
		t.Errorf("other columns: %v", err)
	}
}

func FuzzOwnTimbers(f *testing.F) {
	f.Add([]byte(ownHead + "white oak,,,,,,,,,,,,5\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		b, err := LoadOwn(text, "x")
		if err != nil && len(b) > 0 {
			t.Error("taken and refused")
		}
		for _, o := range b {
			if e := o.Check(); e != nil {
				t.Errorf("a timber that cannot be was taken: %v", e)
			}
		}
	})
}
