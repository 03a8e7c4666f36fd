package app

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/keyed"
)

// Without prices the table of costs says what would fill it, and its button brings the keyboard to the first price, also
// where the group of prices was folded.
func TestCostsWithoutPricesOfferThem(t *testing.T) {
	w := onScreen(t)
	w.openTabOf(costTab)
	laidOut(w.win)
	offer := buttonIn(t, w.tab(costTab).Object(), "Type prices")
	if !seen(w, offer) {
		t.Fatal("an empty table offers nothing")
	}
	price := w.sizes.Field("cost.wood-per-m3")
	w.sizes.Unfold("cost.wood-per-m3") // is unfolded
	test.Tap(offer)
	if w.win.Canvas().Focused() != price.Input() {
		t.Error("the button does not bring the keyboard to the price of wood")
	}
	typeInto(t, w, "cost.wood-per-m3", "2400")
	if tb, _ := w.tab(costTab).Shown(); len(tb.Rows) < 2 || seen(w, offer) {
		t.Errorf("with a price the table has %d rows; is the offer still seen: %v", len(tb.Rows), seen(w, offer))
	}
}

// A piece that has no table of a kind says so, wherever that is, and an empty grid stands nowhere.
func TestATabWithoutTablesSaysSo(t *testing.T) {
	w := open(t, Options{Example: "washstand-step"}) // butted and screwed: nothing is marked
	w.win.Resize(fyne.NewSize(1280, 820))
	w.openTabOf("Marking")
	laidOut(w.win)
	show := w.tab("Marking")
	if tb, _ := show.Shown(); len(tb.Columns) > 0 {
		t.Fatalf("it has a table %q", tb.Title)
	}
	said := shownTexts(show.Object())
	if !slices.Contains(said, "This piece has nothing that stands in this table.") || show.Keyed() != nil {
		t.Errorf("it says %q, and the keyboard would go to %T", said, show.Keyed())
	}
	w.set("corners.joint", "through dovetail")
	if tb, _ := show.Shown(); len(tb.Rows) == 0 || show.Keyed() == nil {
		t.Error("tails are marked nowhere")
	}
}

// buttonIn finds a button by its words.
func buttonIn(t *testing.T, in fyne.CanvasObject, text string) *keyed.Button {
	t.Helper()
	for _, o := range test.LaidOutObjects(in) {
		if b, is := o.(*keyed.Button); is && b.Text == text {
			return b
		}
	}
	t.Fatalf("there is no button %q", text)
	return nil
}
