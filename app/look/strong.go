package look

import "image/color"

// strong is a colour of texts that stays strong where the library thins it. Its menus give shortcuts the low byte of 95 % of
// an alpha of sixteen bits, which of a full alpha leaves a fifth; of this one it leaves all, and this one is full to the eye.
type strong struct{ color.NRGBA }

// almost is the alpha of sixteen bits: 0.95 of it is 0xf2ff.
const almost = 0xffca

// RGBA gives the colour as color.Color asks.
func (s strong) RGBA() (r, g, b, a uint32) {
	r, g, b, _ = s.NRGBA.RGBA()
	return min(r, almost), min(g, almost), min(b, almost), almost
}
