package app

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"splaywright/app/panel"
	"splaywright/model/measure"
	"splaywright/model/stock"
)

func TestAListOfBoardsIsRead(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	before := string(w.s.Document().Bytes())
	w.takeList(write("shed.csv", "length,width,thickness\n1200,180,27\n900,wide,27\n"))
	if got := overlayText(w); !strings.Contains(got, "shed.csv:3:") || !strings.Contains(got, "wide") {
		t.Errorf("it says %s", got)
	}
	if string(w.s.Document().Bytes()) != before {
		t.Error("something of a bad list was taken")
	}
	w.escape()
	w.takeList(write("shed.csv", "name,length,width,thickness\nsill,1200,240,32\n"))
	if got := w.s.Design().OnHand; len(got) != 3 || got[2].Name != "sill" {
		t.Errorf("boards %+v", got)
	}
	w.takeList(write("other.yaml", string(w.s.Document().Bytes())))
	if got := w.s.Design().OnHand; len(got) != 6 || len(got[3].Avoid) != 3 {
		t.Errorf("of another design: %+v", got)
	}
}

func TestOwnTimbersAreRead(t *testing.T) {
	w := open(t, Options{})
	path := filepath.Join(t.TempDir(), "own.csv")
	head := "name,aliases,kind,specific_gravity,volume_at,side_hardness,modulus_of_elasticity,modulus_of_rupture,read,source,price_per_m3\n"
	write := func(rows string) {
		if err := os.WriteFile(path, []byte(head+rows), 0o644); err != nil {
			t.Fatal(err)
		}
		w.takeTimbers(path)
	}
	before := string(w.s.Document().Bytes())
	write("white oak,,,,,,,,,,2500\nplum,,hardwood,0.65,12 %,,1.4,11000,SG,,\n")
	if got := overlayText(w); !strings.Contains(got, "own.csv:3:") || !strings.Contains(got, "source") || string(w.s.Document().Bytes()) != before {
		t.Errorf("it says %s", got)
	}
	w.escape()
	write("white oak,,,,,,,,,,2500\nplum,,hardwood,0.65,12 %,,1.4,11000,SG,weighed,1800\n")
	typeInto(t, w, "timber", "plum")
	p := w.s.Piece()
	if top := p.Part("top"); top.Timber != "plum" || math.Abs(top.Mass/top.Volume-0.65*1.12*1e-6) > 1e-12 {
		t.Errorf("the top weighs %g kg of %g mm³", top.Mass, top.Volume)
	}
	if tb, _ := w.tab("Cost").Shown(); len(tb.Rows) < 2 {
		t.Error("the price of plum makes no cost")
	}
}

func TestAFileOfBoardsAloneIsRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shed.yaml")
	read := func(text string, bare measure.Unit) ([]stock.Board, error) {
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return boardsOf(path, panel.OnHand, bare)
	}
	for unit, want := range map[measure.Unit]float64{measure.Metric: 48, measure.Imperial: 1219.2} {
		all, err := read("boards-on-hand:\n  - {name: sill, length: 48, width: 8, thickness: 1}\n", unit)
		if err != nil || len(all) != 1 || math.Abs(all[0].Length-want) > 1e-9 {
			t.Errorf("read are %v (%v), want one of %v mm", all, err, want)
		}
	}
	_, err := read("boards-on-hand:\n  - {name: sill, length: 48, width: 8}\n", measure.Metric)
	if err == nil || !strings.Contains(err.Error(), "shed.yaml:2:") || !strings.Contains(err.Error(), "thickness") || strings.Contains(err.Error(), "form") {
		t.Errorf("a board without a thickness is refused by %v", err)
	}
}
