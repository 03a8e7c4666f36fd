package look_test

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/look"
	"splaywright/model/part"
)

// luminance and contrast as WCAG 2.1 defines them (https://www.w3.org/TR/WCAG21/#dfn-contrast-ratio).
func luminance(c color.Color) float64 {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	lin := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(n.R) + 0.7152*lin(n.G) + 0.0722*lin(n.B)
}

func contrast(a, b color.Color) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Text is readable on every ground it stands on: 4.5 to 1 (WCAG 2.1, 1.4.3).
func TestTextIsReadable(t *testing.T) {
	inks := []fyne.ThemeColorName{theme.ColorNameForeground, look.Faint, look.Stop, look.Warn, look.Note, theme.ColorNameDisabled, theme.ColorNamePlaceHolder}
	grounds := []fyne.ThemeColorName{theme.ColorNameBackground, look.Column, look.Strip, look.Sheet}
	for _, dark := range []bool{false, true} {
		th := look.Theme{Dark: dark}
		for _, ink := range inks {
			for _, ground := range grounds {
				if ink == theme.ColorNamePlaceHolder && ground != theme.ColorNameBackground {
					continue // hints stand in the fields alone
				}
				if got := contrast(th.Color(ink, 0), th.Color(ground, 0)); got < 4.5 {
					t.Errorf("dark %v: %s on %s has a contrast of %.2f, want 4.5", dark, ink, ground, got)
				}
			}
		}
	}
}

func TestLevelsDifferInWordAndShape(t *testing.T) {
	words, shapes := map[string]bool{}, map[string]bool{}
	for _, l := range []part.Level{part.Stop, part.Warning, part.Note} {
		words[look.Word(l)] = true
		shapes[look.Mark(l).Name()] = true
	}
	if len(words) != 3 || len(shapes) != 3 {
		t.Errorf("words %v, shapes %v: want three of each", words, shapes)
	}
}

// Places to type and boxes to tick are told from what they lie on by their rim alone. WCAG 2.1, 1.4.11: 3 to 1
// (https://www.w3.org/TR/WCAG21/#non-text-contrast).
func TestRimsAreSeen(t *testing.T) {
	for _, dark := range []bool{false, true} {
		th := look.Theme{Dark: dark}
		for _, ground := range []fyne.ThemeColorName{theme.ColorNameBackground, look.Column, theme.ColorNameOverlayBackground} {
			if got := contrast(th.Color(theme.ColorNameInputBorder, 0), th.Color(ground, 0)); got < 3 {
				t.Errorf("dark %v: a rim on %s has a contrast of %.2f, want 3", dark, ground, got)
			}
		}
	}
}
