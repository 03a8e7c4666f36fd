package look_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/look"
)

// WCAG 2.1: 7 to 1 for texts (1.4.6), 3 to 1 for what bounds a place to type (1.4.11).
func TestHighContrastIsHigh(t *testing.T) {
	inks := []fyne.ThemeColorName{theme.ColorNameForeground, look.Faint, look.Stop, look.Warn, look.Note, theme.ColorNameDisabled, theme.ColorNamePlaceHolder, theme.ColorNamePrimary}
	grounds := []fyne.ThemeColorName{theme.ColorNameBackground, look.Column, look.Strip, look.Sheet, theme.ColorNameMenuBackground, theme.ColorNameInputBackground}
	for _, dark := range []bool{false, true} {
		th := look.Theme{Dark: dark, High: true}
		for _, ground := range grounds {
			for _, ink := range inks {
				if got := contrast(th.Color(ink, 0), th.Color(ground, 0)); got < 7 {
					t.Errorf("dark %v: %s on %s has a contrast of %.2f, want 7", dark, ink, ground, got)
				}
			}
			if got := contrast(th.Color(theme.ColorNameInputBorder, 0), th.Color(ground, 0)); got < 4.5 {
				t.Errorf("dark %v: a rim on %s has a contrast of %.2f, want 4.5", dark, ground, got)
			}
		}
	}
}
