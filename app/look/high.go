package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// With high contrast every text stands 7 to 1 against its ground, and rims 4.5 to 1 (WCAG 2.1, 1.4.6
// and 1.4.11, which asks for 3 to 1).
var highLight = map[fyne.ThemeColorName]color.Color{
	Sheet:  rgb(0xffffff),
	Column: rgb(0xffffff),
	Strip:  rgb(0xe8e8e8),
	Faint:  rgb(0x2b2b2b),
	Stop:   rgb(0x8a0000),
	Warn:   rgb(0x5a3000),
	Note:   rgb(0x00344a),

	theme.ColorNameBackground:          rgb(0xffffff),
	theme.ColorNameForeground:          strong{rgb(0x000000)},
	theme.ColorNamePlaceHolder:         rgb(0x3a3a3a),
	theme.ColorNameDisabled:            rgb(0x3a3a3a),
	theme.ColorNameButton:              rgb(0xe8e8e8),
	theme.ColorNameDisabledButton:      rgb(0xf2f2f2),
	theme.ColorNameInputBackground:     rgb(0xffffff),
	theme.ColorNameInputBorder:         rgb(0x000000),
	theme.ColorNameHeaderBackground:    rgb(0xe8e8e8),
	theme.ColorNameMenuBackground:      rgb(0xffffff),
	theme.ColorNameOverlayBackground:   rgb(0xffffff),
	theme.ColorNamePrimary:             rgb(0x5c2400),
	theme.ColorNameForegroundOnPrimary: rgb(0xffffff),
	theme.ColorNameFocus:               clear(0x5c2400, 0xb0),
	theme.ColorNameSeparator:           rgb(0x5a5a5a),
	theme.ColorNameScrollBar:           rgb(0x3a3a3a),
	theme.ColorNameError:               rgb(0x8a0000),
	theme.ColorNameWarning:             rgb(0x5a3000),
	theme.ColorNameSuccess:             rgb(0x0c4000),
	theme.ColorNameHyperlink:           rgb(0x00344a),
}

var highDark = map[fyne.ThemeColorName]color.Color{
	Sheet:  rgb(0x000000),
	Column: rgb(0x000000),
	Strip:  rgb(0x1c1c1c),
	Faint:  rgb(0xdcdcdc),
	Stop:   rgb(0xffa49a),
	Warn:   rgb(0xffc862),
	Note:   rgb(0x9fe4ea),

	theme.ColorNameBackground:          rgb(0x000000),
	theme.ColorNameForeground:          strong{rgb(0xffffff)},
	theme.ColorNamePlaceHolder:         rgb(0xcfcfcf),
	theme.ColorNameDisabled:            rgb(0xcfcfcf),
	theme.ColorNameButton:              rgb(0x2a2a2a),
	theme.ColorNameDisabledButton:      rgb(0x1c1c1c),
	theme.ColorNameInputBackground:     rgb(0x000000),
	theme.ColorNameInputBorder:         rgb(0xffffff),
	theme.ColorNameHeaderBackground:    rgb(0x1c1c1c),
	theme.ColorNameMenuBackground:      rgb(0x000000),
	theme.ColorNameOverlayBackground:   rgb(0x000000),
	theme.ColorNamePrimary:             rgb(0xffd24a),
	theme.ColorNameForegroundOnPrimary: rgb(0x000000),
	theme.ColorNameFocus:               clear(0xffd24a, 0xb0),
	theme.ColorNameSeparator:           rgb(0xb0b0b0),
	theme.ColorNameScrollBar:           rgb(0xdcdcdc),
	theme.ColorNameError:               rgb(0xffa49a),
	theme.ColorNameWarning:             rgb(0xffc862),
	theme.ColorNameSuccess:             rgb(0xa8e890),
	theme.ColorNameHyperlink:           rgb(0x9fe4ea),
}
