package file

import (
	"fmt"
	"strings"

	"splaywright/model/measure"
)

// New begins a design: a plain stool in the units given, with a title.
func New(title string, units measure.Unit) *Document {
	unit, size, thick := "mm", "{height: 260, width: 420, depth: 250, taken-at: top}", "20"
	if units == measure.Imperial {
		unit, size, thick = "in", "{height: 10 1/4, width: 16 1/2, depth: 9 7/8, taken-at: top}", "3/4"
	}
	src := fmt.Sprintf(`splaywright: %d
title: Untitled
units: %s
form: stool
size: %s
splay: {ends: 6, edges: 0}
timber: white oak
boards:
  top: {thickness: %s}
  side: {thickness: %s}
corners:
  joint: through dovetail
  tails-on: top
`, Version, unit, size, thick, thick)
	d := &Document{name: "new design", src: []byte(src)}
	if err := d.parse(); err != nil {
		panic(fmt.Sprintf("file: the new design is not read: %v", err))
	}
	if title = strings.TrimSpace(title); title != "" {
		if err := d.Set("title", title); err != nil {
			panic(fmt.Sprintf("file: a title cannot be set: %v", err))
		}
	}
	return d
}
