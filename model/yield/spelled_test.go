package yield

import (
	"context"
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/stock"
)

// A timber is the same however it is written: by the name of the table, in capitals, with its noun first.
func TestTimbersAreTheSameHoweverWritten(t *testing.T) {
	for _, name := range []string{"white oak", "White Oak", " WHITE  OAK ", "oak, white"} {
		d := formtest.WorkedExample()
		d.Boards.Side.Timber = "White oak"
		d.OnHand = []stock.Board{{Name: "plank", Timber: name, Length: 1500, Width: 300, Thickness: 30}}
		d.Plan.Run = true
		if r, err := Solve(context.Background(), form.Build(d)); err != nil || r.Short() {
			t.Errorf("%q: %v, misfits %v", name, err, r.Plan.Misfits)
		}
		d.Yard = []form.Yard{{Timber: name, PerBoardFoot: 9}}
		if r, err := Buy(context.Background(), form.Build(d)); err != nil || r.Short() {
			t.Errorf("bought as %q: %v, misfits %v", name, err, r.Plan.Misfits)
		}
	}
	d := formtest.WorkedExample()
	d.OnHand = []stock.Board{{Name: "plank", Timber: "red oak", Length: 1500, Width: 300, Thickness: 30}}
	if r, err := Solve(context.Background(), form.Build(d)); err != nil || !r.Short() {
		t.Errorf("red oak serves as white: %v", err)
	}
}
