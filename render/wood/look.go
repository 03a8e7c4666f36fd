// Package wood paints pictures of a piece as wood: shaded faces, grain along the boards that runs on over the corners
// of a run, and growth rings on end grain. All of it is a drawing as data.
package wood

import (
	"hash/fnv"

	"splaywright/model/timber"
	"splaywright/render/draw"
)

// look is how a timber is shown: its colour freshly finished, how far its growth rings lie apart, mm, and how much
// darker late wood is than early wood, 0 to 1. The figures are our own, mixed by eye to stay light on paper.
type look struct {
	ink   draw.Ink
	rings float64
	late  float64
}

var looks = map[string]look{
	"red alder":             {draw.Ink{R: 226, G: 190, B: 152}, 5.0, 0.14},
	"white ash":             {draw.Ink{R: 238, G: 221, B: 190}, 4.0, 0.26},
	"basswood":              {draw.Ink{R: 241, G: 226, B: 198}, 5.0, 0.10},
	"american beech":        {draw.Ink{R: 231, G: 197, B: 160}, 4.0, 0.14},
	"yellow birch":          {draw.Ink{R: 235, G: 209, B: 170}, 4.5, 0.14},
	"sweet birch":           {draw.Ink{R: 226, G: 192, B: 150}, 4.5, 0.15},
	"paper birch":           {draw.Ink{R: 240, G: 220, B: 186}, 5.0, 0.12},
	"butternut":             {draw.Ink{R: 208, G: 170, B: 128}, 5.5, 0.22},
	"black cherry":          {draw.Ink{R: 217, G: 160, B: 116}, 5.0, 0.17},
	"american chestnut":     {draw.Ink{R: 217, G: 184, B: 138}, 5.0, 0.26},
	"american elm":          {draw.Ink{R: 217, G: 185, B: 146}, 5.0, 0.24},
	"shagbark hickory":      {draw.Ink{R: 224, G: 191, B: 150}, 4.0, 0.22},
	"mockernut hickory":     {draw.Ink{R: 224, G: 191, B: 150}, 4.0, 0.22},
	"hard maple":            {draw.Ink{R: 242, G: 224, B: 194}, 4.5, 0.11},
	"red maple":             {draw.Ink{R: 237, G: 212, B: 178}, 4.5, 0.12},
	"silver maple":          {draw.Ink{R: 238, G: 216, B: 184}, 5.0, 0.12},
	"northern red oak":      {draw.Ink{R: 226, G: 187, B: 150}, 4.5, 0.26},
	"white oak":             {draw.Ink{R: 222, G: 194, B: 152}, 4.0, 0.26},
	"sweetgum":              {draw.Ink{R: 220, G: 176, B: 138}, 5.0, 0.14},
	"sycamore":              {draw.Ink{R: 230, G: 196, B: 160}, 5.0, 0.13},
	"black walnut":          {draw.Ink{R: 171, G: 129, B: 99}, 5.0, 0.24},
	"yellow-poplar":         {draw.Ink{R: 227, G: 216, B: 172}, 6.0, 0.12},
	"baldcypress":           {draw.Ink{R: 231, G: 199, B: 144}, 4.0, 0.24},
	"western redcedar":      {draw.Ink{R: 216, G: 160, B: 118}, 3.5, 0.22},
	"douglas-fir":           {draw.Ink{R: 232, G: 188, B: 138}, 4.0, 0.30},
	"western hemlock":       {draw.Ink{R: 237, G: 214, B: 178}, 4.0, 0.20},
	"eastern white pine":    {draw.Ink{R: 245, G: 224, B: 180}, 5.0, 0.16},
	"loblolly pine":         {draw.Ink{R: 240, G: 208, B: 150}, 5.5, 0.30},
	"longleaf pine":         {draw.Ink{R: 237, G: 200, B: 140}, 4.0, 0.30},
	"shortleaf pine":        {draw.Ink{R: 240, G: 208, B: 150}, 5.0, 0.30},
	"slash pine":            {draw.Ink{R: 239, G: 204, B: 146}, 5.0, 0.30},
	"ponderosa pine":        {draw.Ink{R: 244, G: 220, B: 174}, 5.0, 0.18},
	"sugar pine":            {draw.Ink{R: 245, G: 226, B: 188}, 5.5, 0.14},
	"western white pine":    {draw.Ink{R: 245, G: 224, B: 184}, 5.0, 0.15},
	"redwood, old-growth":   {draw.Ink{R: 204, G: 138, B: 104}, 2.5, 0.24},
	"redwood, young-growth": {draw.Ink{R: 210, G: 148, B: 114}, 5, 0.24},
	"engelmann spruce":      {draw.Ink{R: 245, G: 229, B: 196}, 4.0, 0.15},
	"sitka spruce":          {draw.Ink{R: 243, G: 220, B: 184}, 3.5, 0.18},
	"mahogany":              {draw.Ink{R: 206, G: 144, B: 108}, 5.5, 0.15},
	"african mahogany":      {draw.Ink{R: 210, G: 150, B: 116}, 5.5, 0.15},
	"sapele":                {draw.Ink{R: 192, G: 128, B: 98}, 4.5, 0.18},
	"teak":                  {draw.Ink{R: 206, G: 165, B: 110}, 5.0, 0.22},
}

var (
	plainHard = look{draw.Ink{R: 228, G: 194, B: 154}, 4.5, 0.18}
	plainSoft = look{draw.Ink{R: 241, G: 214, B: 166}, 4.5, 0.22}
)

// lookOf is how a timber is shown; one without figures of its own looks like a plain board of its kind.
func lookOf(name string) look {
	s, found := timber.Find(name)
	if l, ok := looks[s.Name]; found && ok {
		return l
	}
	if found && s.Wood == timber.Softwood {
		return plainSoft
	}
	return plainHard
}

// chance is a number from 0 up to 1 that is always the same for the same words and numbers.
func chance(word string, k ...int) float64 {
	h := fnv.New64a()
	h.Write([]byte(word))
	for _, n := range k {
		h.Write([]byte{byte(n), byte(n >> 8), byte(n >> 16), byte(n >> 24)})
	}
	x := h.Sum64()
	x ^= x >> 33
	x *= 0xff51afd7ed558ccd
	x ^= x >> 33
	return float64(x>>11) / (1 << 53)
}
