package assets

import "embed"

// Fonts holds the fonts that papers are set in and their licence: fonts/NotoSans-Regular.ttf,
// fonts/NotoSans-Bold.ttf and fonts/OFL.txt (SIL Open Font License 1.1).
//
//go:embed fonts/NotoSans-Regular.ttf fonts/NotoSans-Bold.ttf fonts/OFL.txt
var Fonts embed.FS

// FontBytes gives a font file's bytes, TrueType outlines.
func FontBytes(bold bool) []byte {
	name := "fonts/NotoSans-Regular.ttf"
	if bold {
		name = "fonts/NotoSans-Bold.ttf"
	}
	data, err := Fonts.ReadFile(name)
	if err != nil {
		panic("assets: " + err.Error()) // the file is embedded; only a broken build lacks it
	}
	return data
}
