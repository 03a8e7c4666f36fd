package app

import (
	"strings"
	"testing"

	"splaywright/model/stock"
)

// Switched on where side, top and side are in a row, the pair is refused in words; when the row is off it is planned,
// its board is thick enough, and undo brings the file back.
func TestAPairIsSwitchedOn(t *testing.T) {
	w := atTheBoards(t, "barn-door-stool")
	before := string(w.s.Document().Bytes())
	w.set("plan.resawn", "true")
	if err := w.s.ErrorAt("plan.resawn"); err == nil || !strings.Contains(err.Error(), "in a row with the top") {
		t.Errorf("both at once: %v", err)
	}
	w.set("plan.run", "false")
	w.set("boards-on-hand.0.thickness", "64")
	if errs := w.s.Errors(); len(errs) > 0 {
		t.Fatal(errs)
	}
	p := &w.plans.onHand
	if !p.has || p.err != nil || p.result.Short() {
		t.Fatalf("%v %+v", p.err, p.result.Plan.Misfits)
	}
	opened := 0
	for i := range p.result.Plan.Layouts {
		opened += len(p.result.Opened(i))
	}
	if runs := p.task.Runs; opened != 1 || len(runs) != 1 || runs[0].Kind != stock.Resawn {
		t.Errorf("%d pieces lie open, runs %+v", opened, runs)
	}
	for range len(w.s.History()) {
		w.undo()
	}
	if got := string(w.s.Document().Bytes()); got != before {
		t.Errorf("undo leaves\n%s", got)
	}
}
