package file

import (
	"strings"
)

// shape is which keys stand where, in the order in which they are written. An item of a list is "#".
var shape = map[string][]string{
	"": words(`splaywright title units form size splay timber timbers boards corners bottom lid stretchers aprons features
		names allowance saw round papers use tolerance came-out cost plan boards-on-hand boards-to-buy yard`),
	"timbers": {"#"},
	"timbers.#": words(`name kind specific-gravity volume-at side-hardness modulus-of-elasticity modulus-of-rupture
		change-radial change-tangential source price-per-m3 price-per-board-foot`),
	"size":                       words("height width depth taken-at staves lower-height lower-width"),
	"splay":                      words("measured ends edges middle front back end-left end-right edge-cut"),
	"boards":                     words("top side front back end"),
	"boards.top":                 words("thickness timber"),
	"boards.side":                words("thickness timber"),
	"boards.front":               words("thickness timber"),
	"boards.back":                words("thickness timber"),
	"boards.end":                 words("thickness timber"),
	"bottom":                     words("thickness timber joint up depth clearance screws"),
	"bottom.screws":              words("gauge length count from-end counterbore plug"),
	"lid":                        words("thickness timber overhang battens"),
	"lid.battens":                words("width thickness inset count timber screws"),
	"lid.battens.screws":         words("gauge length count from-end counterbore plug"),
	"corners":                    words("joint over tails-on lap slope tails tail pin half-pin tail-widths mirrored overhang overhang-edges depth shoulder stop spline keys screws"),
	"corners.spline":             words("thickness width inset stop timber"),
	"corners.keys":               words("count thickness depth pitch timber"),
	"corners.screws":             words("gauge length count from-end counterbore plug"),
	"corners.tail-widths":        {"#"},
	"stretchers":                 {"#"},
	"stretchers.#":               words("width thickness under set below-top across joint depth tenon timber screws"),
	"stretchers.#.tenon":         words("width thickness depth proud wedges slot flare"),
	"stretchers.#.screws":        words("gauge length count from-end counterbore plug"),
	"aprons":                     words("at width thickness set-in below-top stand joint depth timber screws"),
	"aprons.screws":              words("gauge length count from-end counterbore plug"),
	"features":                   {"#"},
	"features.#":                 words("on kind edge from width rise length diameter radius hollow count pitch depth face x y angle"),
	"allowance":                  words("length width thickness"),
	"saw":                        words("kerf resaw step flat-table max-swing max-tilt depth cradle"),
	"round":                      words("to both decimal"),
	"papers":                     words("sheet projection eye-height eye-distance turn bottom only as patterns owner drawn-by approved-by date number"),
	"papers.only":                {"#"},
	"papers.as":                  {"#"},
	"papers.patterns":            words("on bar-x bar-y margin overlap"),
	"use":                        words("load dry damp"),
	"tolerance":                  words("length angle thickness"),
	"came-out":                   words("width-top width-floor depth-top depth-floor height-whole height-left height-right"),
	"cost":                       words("wood-per-m3 wood-per-board-foot waste each-screw each-plug finish-per-m2"),
	"boards-on-hand":             {"#"},
	"boards-on-hand.#":           words("name timber length width thickness bow cup twist count price grain sawn face note outline avoid"),
	"boards-on-hand.#.outline":   {"#"},
	"boards-on-hand.#.outline.#": words("x y"),
	"boards-on-hand.#.avoid":     {"#"},
	"boards-on-hand.#.avoid.#":   words("what from x y length width diameter"),
	"boards-to-buy":              {"#"},
	"boards-to-buy.#":            words("name timber length width thickness bow cup twist count price grain sawn face note outline avoid"),
	"boards-to-buy.#.outline":    {"#"},
	"boards-to-buy.#.outline.#":  words("x y"),
	"boards-to-buy.#.avoid":      {"#"},
	"boards-to-buy.#.avoid.#":    words("what from x y length width diameter"),
	"yard":                       {"#"},
	"yard.#":                     words("timber grade sold lengths widths price-per-board-foot price-per-foot"),
	"yard.#.lengths":             {"#"},
	"yard.#.widths":              {"#"},
	"plan":                       words("trim-ends trim-edges keep keep-width first run resawn glue-up narrowest planing missing pieces"),
}

func words(s string) []string { return strings.Fields(s) }

// pattern is a path with its list numbers as "#".
func pattern(path string) string {
	keys := strings.Split(path, ".")
	for i, k := range keys {
		if k != "" && strings.Trim(k, "0123456789") == "" {
			keys[i] = "#"
		}
	}
	return strings.Join(keys, ".")
}
