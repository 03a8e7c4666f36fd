package file

import (
	"slices"
	"strconv"
	"strings"

	"splaywright/model/form"
)

// standsFor is what a board of one form comes to in a form that has no such board.
var standsFor = []struct{ path, from, to string }{
	{"corners.tails-on", "top", "front"}, {"corners.tails-on", "side", "end"},
	{"corners.tails-on", "front", "top"}, {"corners.tails-on", "end", "side"},
}

// SetForm makes the design one of another form. What carries over stays, what the other form makes no use of goes, so that
// nothing is refused that nobody typed there, and what it normally has comes. The error is an *Error.
func (d *Document) SetForm(name string) error {
	next := d.Clone()
	from := d.Text("form")
	stool, was := form.OnSides(name), form.OnSides(from)
	if err := next.Set("form", name); err != nil {
		return err
	}
	if stool != was {
		if err := next.carryTails(); err != nil {
			return err
		}
	}
	if next.Text("size.depth") == "" && name != "ring" && next.Text("size.width") != "" {
		if err := next.Set("size.depth", next.Text("size.width")); err != nil {
			return err
		}
	}
	next.carryLean(stool)
	for _, k := range only {
		if !slices.Contains(strings.Fields(k.forms), name) {
			next.Remove(k.path)
		}
	}
	for _, s := range standsFor {
		toStool := s.to == "top" || s.to == "side"
		if next.Text(s.path) == s.from && toStool == stool {
			if err := next.Set(s.path, s.to); err != nil {
				return err
			}
			break
		}
	}
	for i := range next.Len("stretchers") {
		if name != form.Steps {
			next.Remove(underPath(i))
		}
	}
	if name != from {
		next.Remove("came-out") // of another piece
	}
	next.dropResawn(name)
	next.dropOverhang()
	next.dropFeatures(name)
	if err := next.closeWalls(from, name); err != nil {
		return err
	}
	if err := next.clearTread(from, name); err != nil {
		return err
	}
	*d = *next
	return nil
}

// carryLean takes the lean of the front over from a stool's edges and back.
func (d *Document) carryLean(stool bool) {
	from, to := "splay.edges", "splay.front"
	if stool {
		from, to = to, from
	}
	if text := d.Text(from); text != "" && d.Text(to) == "" {
		_ = d.Set(to, text) // both are angles: what was typed for one reads for the other
	}
	if cut := d.Text("splay.edge-cut"); stool && cut == "level" || !stool && cut == "flush" {
		d.Remove("splay.edge-cut")
	}
}

// boardsOf are the boards that features of a form can be on.
var boardsOf = map[string][]string{
	"stool": words("top side side-left side-right stretcher apron all"),
	"steps": words("top top-lower top-upper side side-left side-middle side-right stretcher all"),
	"tray":  words("front back end end-left end-right bottom all"),
	"chest": words("front back end end-left end-right bottom lid all"),
	"ring":  words("stave bottom all"),
}

// dropFeatures takes out features on boards that the form has not.
func (d *Document) dropFeatures(name string) {
	for i := d.Len("features") - 1; i >= 0; i-- {
		at := "features." + strconv.Itoa(i)
		if !slices.Contains(boardsOf[name], d.Text(at+".on")) {
			d.Remove(at)
		}
	}
}
