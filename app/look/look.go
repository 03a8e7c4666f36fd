// Package look is how the window looks: warm paper in the light, slate in the dark.
package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/assets"
)

// The colours that Fyne has no name for.
const (
	Sheet  fyne.ThemeColorName = "splaywright-sheet"  // the drawing's paper
	Column fyne.ThemeColorName = "splaywright-column" // behind the sizes
	Strip  fyne.ThemeColorName = "splaywright-strip"  // behind headings and the strip on top
	Faint  fyne.ThemeColorName = "splaywright-faint"  // what was understood, hints
	Stop   fyne.ThemeColorName = "splaywright-stop"
	Warn   fyne.ThemeColorName = "splaywright-warn"
	Note   fyne.ThemeColorName = "splaywright-note"
)

// Cell is the size of text in tables.
const Cell fyne.ThemeSizeName = "splaywright-cell"

// Theme is our own theme in one of two shades, each of them plain or with high contrast. Early is for a first picture without
// a Japanese letter: reading those takes longer than all else before it.
type Theme struct{ Dark, High, Early bool }

var _ fyne.Theme = Theme{}

func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 0xff}
}

func clear(hex uint32, alpha uint8) color.NRGBA {
	c := rgb(hex)
	c.A = alpha
	return c
}

var light = map[fyne.ThemeColorName]color.Color{
	Sheet:  rgb(0xfdfbf4),
	Column: rgb(0xeee6d6),
	Strip:  rgb(0xe2d7c1),
	Faint:  rgb(0x655a4b),
	Stop:   rgb(0xa11d1d),
	Warn:   rgb(0x824c00),
	Note:   rgb(0x2f5d62),

	theme.ColorNameBackground:          rgb(0xf5efe3),
	theme.ColorNameForeground:          strong{rgb(0x2a2520)},
	theme.ColorNamePlaceHolder:         rgb(0x736757),
	theme.ColorNameDisabled:            rgb(0x685d4e),
	theme.ColorNameButton:              rgb(0xe2d7c1),
	theme.ColorNameDisabledButton:      rgb(0xe9e1d1),
	theme.ColorNameInputBackground:     rgb(0xfdfbf4),
	theme.ColorNameInputBorder:         rgb(0x8d7f68),
	theme.ColorNameHeaderBackground:    rgb(0xe2d7c1),
	theme.ColorNameMenuBackground:      rgb(0xf9f4ea),
	theme.ColorNameOverlayBackground:   rgb(0xf9f4ea),
	theme.ColorNamePrimary:             rgb(0x7a4a22),
	theme.ColorNameForegroundOnPrimary: rgb(0xfffaf0),
	theme.ColorNameFocus:               clear(0x7a4a22, 0x50),
	theme.ColorNameHover:               clear(0x7a4a22, 0x1c),
	theme.ColorNamePressed:             clear(0x7a4a22, 0x38),
	theme.ColorNameSelection:           clear(0xc98f4e, 0x60),
	theme.ColorNameSeparator:           rgb(0xd3c7b0),
	theme.ColorNameScrollBar:           clear(0x6b5d49, 0x99),
	theme.ColorNameScrollBarBackground: clear(0x6b5d49, 0x18),
	theme.ColorNameShadow:              clear(0x2a2520, 0x33),
	theme.ColorNameError:               rgb(0xa11d1d),
	theme.ColorNameWarning:             rgb(0x824c00),
	theme.ColorNameSuccess:             rgb(0x3c6b2f),
	theme.ColorNameHyperlink:           rgb(0x2f5d62),
}

var dark = map[fyne.ThemeColorName]color.Color{
	Sheet:  rgb(0x232a31),
	Column: rgb(0x20262c),
	Strip:  rgb(0x2d353d),
	Faint:  rgb(0xa9aca8),
	Stop:   rgb(0xff9489),
	Warn:   rgb(0xf0b45c),
	Note:   rgb(0x8fc7cb),

	theme.ColorNameBackground:          rgb(0x1b2025),
	theme.ColorNameForeground:          strong{rgb(0xe9e4d9)},
	theme.ColorNamePlaceHolder:         rgb(0x949995),
	theme.ColorNameDisabled:            rgb(0xa2a7a4),
	theme.ColorNameButton:              rgb(0x35404a),
	theme.ColorNameDisabledButton:      rgb(0x2a3138),
	theme.ColorNameInputBackground:     rgb(0x15191d),
	theme.ColorNameInputBorder:         rgb(0x717d88),
	theme.ColorNameHeaderBackground:    rgb(0x2d353d),
	theme.ColorNameMenuBackground:      rgb(0x262d34),
	theme.ColorNameOverlayBackground:   rgb(0x262d34),
	theme.ColorNamePrimary:             rgb(0xdca468),
	theme.ColorNameForegroundOnPrimary: rgb(0x1b2025),
	theme.ColorNameFocus:               clear(0xdca468, 0x55),
	theme.ColorNameHover:               clear(0xdca468, 0x1e),
	theme.ColorNamePressed:             clear(0xdca468, 0x38),
	theme.ColorNameSelection:           clear(0xdca468, 0x48),
	theme.ColorNameSeparator:           rgb(0x39424a),
	theme.ColorNameScrollBar:           clear(0xb9b6ab, 0x88),
	theme.ColorNameScrollBarBackground: clear(0xb9b6ab, 0x14),
	theme.ColorNameShadow:              clear(0x000000, 0x66),
	theme.ColorNameError:               rgb(0xff9489),
	theme.ColorNameWarning:             rgb(0xf0b45c),
	theme.ColorNameSuccess:             rgb(0x9ccf8a),
	theme.ColorNameHyperlink:           rgb(0x8fc7cb),
}

// Color gives a colour in the theme's own shade, whatever the system prefers.
func (t Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	table, variant := light, theme.VariantLight
	if t.Dark {
		table, variant = dark, theme.VariantDark
	}
	if t.High {
		strong := highLight
		if t.Dark {
			strong = highDark
		}
		if c, ok := strong[name]; ok {
			return c
		}
	}
	if c, ok := table[name]; ok {
		return c
	}
	return theme.DefaultTheme().Color(name, variant)
}

// The Japanese letters; Latin ones, figures and fractions are not in these files.
var japanese, japaneseBold = &face{"BIZUDPGothic-Regular.ttf", false}, &face{"BIZUDPGothic-Bold.ttf", true}

// face is a font file that is read when it is wanted.
type face struct {
	name string
	bold bool
}

func (f *face) Name() string    { return f.name }
func (f *face) Content() []byte { return assets.JapaneseFont(f.bold) }

// Font gives Japanese letters. What they lack Fyne takes from its own face, which has the fractions
// and primes that sizes need; so every language and every title reads, whichever is chosen.
func (t Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol || t.Early:
		return theme.DefaultTheme().Font(style)
	case style.Bold:
		return japaneseBold
	}
	return japanese
}

// Icon gives Fyne's own icons.
func (t Theme) Icon(name fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(name) }

var sizes = map[fyne.ThemeSizeName]float32{
	Cell:                          12,
	theme.SizeNameText:            13,
	theme.SizeNameCaptionText:     11,
	theme.SizeNameSubHeadingText:  15,
	theme.SizeNameHeadingText:     19,
	theme.SizeNameInnerPadding:    5,
	theme.SizeNamePadding:         4,
	theme.SizeNameInputRadius:     2,
	theme.SizeNameSelectionRadius: 2,
	theme.SizeNameInlineIcon:      17,
	theme.SizeNameScrollBar:       10,
	theme.SizeNameScrollBarSmall:  4,
}

// Size is a little tighter than usual: a design has some forty sizes.
func (t Theme) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := sizes[name]; ok {
		return s
	}
	return theme.DefaultTheme().Size(name)
}
