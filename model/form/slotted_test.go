package form_test

import (
	"math"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// battened is a chest whose lid has one batten with screws.
func battened(count int, counterbore measure.Length) form.Design {
	return form.Design{
		Form: "chest", Timber: "white oak", Size: form.Size{Height: 400, Width: 800, Depth: 500},
		Boards: form.Boards{Side: form.Board{Thickness: 20}},
		Lid: &form.Lid{Thickness: 20, Battens: &form.Battens{Width: 60, Thickness: 25, Count: 1,
			Screws: &form.Screws{Gauge: 8, Length: 35, Count: count, FromEnd: 40, Counterbore: counterbore}}},
	}
}

// The holes of battens are slots as much longer as the lid moves there, round in the middle: 0.00365 of the
// width for each percent of moisture in flatsawn white oak (Wood Handbook, table 13-5), between 6.2 % at 30 %
// and 12.0 % at 65 % relative humidity (its table 4-2) comes to 2.1 % of the way from the middle.
func TestBattensAreSlotted(t *testing.T) {
	p := form.Build(battened(3, 8))
	if p.Stopped() {
		t.Fatal(p.Findings[0].Text)
	}
	q := p.Part("batten-1")
	slots := 0
	for _, b := range q.Bores {
		far := math.Abs(b.Entry[0])
		if far < 1e-9 {
			if b.Slot != 0 {
				t.Errorf("%s in the middle is a slot", b.ID)
			}
			continue
		}
		slots++
		within(t, b.ID+" longer by", (b.Slot - b.Diameter).MM(), far*0.00365*5.8, 0.06)
	}
	if slots != 4 { // counterbore and clearance of two screws
		t.Errorf("%d slots", slots)
	}
	if err := q.Solid.Check(); err != nil {
		t.Fatal(err)
	}
	// The wood taken: two oblongs of each of the outer screws, two circles of the middle one.
	want := q.Blank.Length.MM() * 60 * 25
	for _, b := range q.Bores {
		deep := 8.0
		if b.Purpose == "clearance" {
			deep = 25 - 8
		}
		r := b.Diameter.MM() / 2
		want -= deep * math.Pi * r * r
		if b.Slot > 0 {
			want -= deep * 2 * r * (b.Slot - b.Diameter).MM()
		}
	}
	within(t, "volume", q.Volume, want, 1e-9*want)
	if q.Solid.Genus() != 3 {
		t.Errorf("%d holes through", q.Solid.Genus())
	}
}

// A timber whose movement is not known has round holes.
func TestUnknownTimberIsNotSlotted(t *testing.T) {
	d := battened(3, 0)
	d.Timber = "driftwood"
	for _, b := range form.Build(d).Part("batten-1").Bores {
		if b.Slot != 0 {
			t.Errorf("%s is a slot %g mm long", b.ID, b.Slot.MM())
		}
	}
}
