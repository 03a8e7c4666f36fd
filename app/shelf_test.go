package app

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const ownHeads = "name,aliases,kind,specific_gravity,volume_at,side_hardness,modulus_of_elasticity,modulus_of_rupture,read,source,price_per_m3\n"

// The timbers of a file of one's own are known to every design, and stand in no design's file; where a figure comes from
// stands under the timber's name.
func TestTimbersForAllDesigns(t *testing.T) {
	w := open(t, Options{})
	before := string(w.s.Document().Bytes())
	path := filepath.Join(t.TempDir(), "orchard.csv")
	write := func(rows string) {
		if err := os.WriteFile(path, []byte(ownHeads+rows), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("plum,,hardwood,0.65,12 %,,1.4,11000,SG,weighed in the shed,1800\n")
	w.keepShelf(path)
	if got := string(w.s.Document().Bytes()); got != before || w.s.Dirty() {
		t.Error("the design's file has changed")
	}
	typeInto(t, w, "timber", "plum")
	if top := w.s.Piece().Part("top"); math.Abs(top.Mass/top.Volume-0.65*1.12*1e-6) > 1e-12 {
		t.Errorf("the top weighs %g kg of %g mm³", top.Mass, top.Volume)
	}
	if got := w.sizes.Field("timber").SaidText(); got != "your own, orchard.csv: weighed in the shed" {
		t.Errorf("under plum stands %q", got)
	}
	if tb, _ := w.tab("Cost").Shown(); len(tb.Rows) < 2 {
		t.Error("the price of plum makes no cost")
	}

	// A file that is not understood is refused with its line and reason, and what there was goes on being used.
	write("plum,,hardwood,0.70,12 %,,1.4,11000,SG,weighed again,1800\nquince,,hardwood,heavy,12 %,,1.4,11000,SG,guess,\n")
	w.keepShelf(path)
	if got := overlayText(w); !strings.Contains(got, "orchard.csv:3:") || !strings.Contains(got, "heavy") {
		t.Errorf("it says %s", got)
	}
	w.escape()
	if top := w.s.Piece().Part("top"); math.Abs(top.Mass/top.Volume-0.65*1.12*1e-6) > 1e-12 {
		t.Error("a bad file has changed the timber")
	}
	// At the next start too: the other window of a later run reads the broken file.
	var later shelf
	later.open(w.app.Preferences())
	if later.trouble == nil || len(later.own) != 1 || later.own[0].SG != 0.65 {
		t.Errorf("%v: %+v", later.trouble, later.own)
	}
	later.tell(w)
	if got := overlayText(w); !strings.Contains(got, "orchard.csv:3:") || !strings.Contains(got, "last understood") {
		t.Errorf("it says %s", got)
	}
	w.escape()

	w.setShelf("", "", nil)
	if _, ok := w.s.Piece().Design.Timbers.Find("plum"); ok {
		t.Error("plum is still known")
	}
	later = shelf{}
	if later.open(w.app.Preferences()); later.trouble != nil || len(later.own) > 0 {
		t.Errorf("done without: %+v", later)
	}
}

// The dialog says which file it is and how many timbers it holds.
func TestTheShelfIsShown(t *testing.T) {
	w := open(t, Options{})
	w.chooseShelf()
	if got := overlayText(w); !strings.Contains(got, "No file is chosen") || !strings.Contains(got, "price_per_board_foot") {
		t.Errorf("it says %s", got)
	}
	w.escape()
	path := filepath.Join(t.TempDir(), "own.csv")
	if err := os.WriteFile(path, []byte(ownHeads+"white oak,,,,,,,,,,2500\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	w.keepShelf(path)
	w.chooseShelf()
	if got := overlayText(w); !strings.Contains(got, path) || !strings.Contains(got, "timbers: 1") {
		t.Errorf("it says %s", got)
	}
	w.escape()
}
