package app

import (
	"strings"
	"testing"

	"splaywright/app/panel"
)

// Decimals are written as people write them where the settings say they are; what was typed stays.
func TestDecimalsOfTheLocale(t *testing.T) {
	for locale, want := range map[string]bool{
		"de_DE.UTF-8": true, "fr_FR": true, "pt_BR": true, "sv_SE.UTF-8": true,
		"de_CH.UTF-8": false, "en_US.UTF-8": false, "ja_JP.UTF-8": false, "es_MX": false, "C": false, "": false,
	} {
		get := func(k string) string { return map[string]string{"LANG": locale}[k] }
		if got := CommaFor(get); got != want {
			t.Errorf("%q: %v", locale, got)
		}
	}
	w := open(t, Options{Example: "reading-nook-step", Comma: true})
	cells := column(t, w, "Cut list", "Length")
	if len(cells) == 0 || !strings.Contains(cells[0], ",") || strings.Contains(cells[0], ".") {
		t.Errorf("lengths are %q", cells)
	}
	if said := panel.OverallText(w.s.Piece()); !strings.Contains(said, "474,5") || strings.Contains(said, "474.5") {
		t.Errorf("over all it says %q", said)
	}
	if w.s.Text("size.height") != "260" || w.s.Dirty() {
		t.Error("a design that was only begun counts as changed")
	}
}
