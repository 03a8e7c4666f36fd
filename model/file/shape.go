package file

import (
	"strings"
)

// shape is which keys stand where, in the order in which they are written. An item of a list is "#".
var shape = map[string][]string{
	"": words(`splaywright title units form size splay timber boards corners stretchers features
		names allowance saw round papers use boards-on-hand`),
	"size":                words("height width depth taken-at"),
	"splay":               words("ends edges edge-cut"),
	"boards":              words("top side"),
	"boards.top":          words("thickness timber"),
	"boards.side":         words("thickness timber"),
	"corners":             words("joint tails-on slope tails tail pin half-pin tail-widths mirrored overhang overhang-edges depth screws"),
	"corners.screws":      words("gauge length count from-end counterbore plug"),
	"corners.tail-widths": {"#"},
	"stretchers":          {"#"},
	"stretchers.#":        words("width thickness set below-top across joint depth timber screws"),
	"stretchers.#.screws": words("gauge length count from-end counterbore plug"),
	"features":            {"#"},
	"features.#":          words("on kind width rise length diameter radius x y angle"),
	"allowance":           words("length width thickness"),
	"saw":                 words("kerf step flat-table max-swing max-tilt"),
	"round":               words("to both"),
	"papers":              words("sheet projection"),
	"use":                 words("load dry damp"),
	"boards-on-hand":      {"#"},
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

// place tells whether a design has something at the path, and otherwise what is near.
func place(path string) (why string) {
	parent, key := cut(pattern(path))
	if parent == "names" {
		if !goodName(key) {
			return badName
		}
		return ""
	}
	if path == "names" {
		return ""
	}
	known, ok := shape[parent]
	if !ok {
		if why := place(parent); why != "" {
			return why
		}
		return parent + " holds one value, not a group"
	}
	for _, k := range known {
		if k == key {
			return ""
		}
	}
	return unknown(key, known)
}

// unknown says that there is no such key and which one was perhaps meant.
func unknown(key string, known []string) string {
	if len(known) == 1 && known[0] == "#" {
		return "items of a list go by their number, from 0"
	}
	return "there is no such key here; " + suggest(key, known)
}
