package assets

import "embed"

// Fonts holds the fonts that papers are set in and their licence: fonts/NotoSans-Regular.ttf,
// fonts/NotoSans-Bold.ttf and fonts/OFL.txt (SIL Open Font License 1.1); and the Japanese letters
// that Noto Sans has not, fonts/BIZUDPGothic-Regular.ttf, -Bold.ttf and fonts/OFL-BIZUDPGothic.txt
// (the same licence), which fonts/remake makes.
//
//go:embed fonts/NotoSans-Regular.ttf fonts/NotoSans-Bold.ttf fonts/OFL.txt fonts/BIZUDPGothic-Regular.ttf fonts/BIZUDPGothic-Bold.ttf fonts/OFL-BIZUDPGothic.txt
var Fonts embed.FS

// FontBytes gives a font file's bytes, TrueType outlines.
func FontBytes(bold bool) []byte {
	name := "fonts/NotoSans-Regular.ttf"
	if bold {
		name = "fonts/NotoSans-Bold.ttf"
	}
	return fontFile(name)
}

// JapaneseFont gives the font file of the Japanese letters, TrueType outlines. It has no others.
func JapaneseFont(bold bool) []byte {
	if bold {
		return fontFile("fonts/BIZUDPGothic-Bold.ttf")
	}
	return fontFile("fonts/BIZUDPGothic-Regular.ttf")
}

func fontFile(name string) []byte {
	data, err := Fonts.ReadFile(name)
	if err != nil {
		panic("assets: " + err.Error()) // the file is embedded; only a broken build lacks it
	}
	return data
}
