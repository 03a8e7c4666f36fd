package file

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
)

const (
	mostBoards = 200
	mostPlaces = 200 // corners of an outline, places to avoid
	mostWaste  = 300 // percent
)

// stock reads boards that a person has or could buy; one without a name gets it by the format.
func (r *reader) stock(to *[]stock.Board, name string, needed ...string) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if r.more(n, path, i, mostBoards, "boards") {
			return
		}
		b := stock.Board{}
		r.group(fields{
			"name":      r.text(&b.Name),
			"timber":    r.text(&b.Timber),
			"length":    r.mm(&b.Length, aboveZero),
			"width":     r.mm(&b.Width, aboveZero),
			"thickness": r.mm(&b.Thickness, aboveZero),
			"bow":       r.mm(&b.Bow, notNegative),
			"cup":       r.mm(&b.Cup, notNegative),
			"twist":     r.mm(&b.Twist, notNegative),
			"count":     r.count(&b.Count, 1, mostBoards),
			"price":     r.price(&b.Price),
			"grain":     r.choice(&b.Grain, stock.Grains()...),
			"sawn":      r.choice(&b.Sawn, stock.Saws()...),
			"face":      r.text(&b.Face),
			"note":      r.text(&b.Note),
			"outline":   r.outline(&b),
			"avoid":     r.avoid(&b),
		}, append([]string{"length", "width", "thickness"}, needed...)...)(n, path)
		if b.Name == "" {
			b.Name, b.Unnamed = fmt.Sprintf(name, i+1), true
		}
		if err := b.Check(); err != nil && len(r.errs) == 0 {
			at, sub := n, path
			if fault, ok := errors.AsType[*stock.Fault](err); ok {
				at, sub = below(n, path, fault.At)
			}
			r.refuse(at, sub, 0, "", err.Error())
		}
		*to = append(*to, b)
	})
}

// below is the value at a path below another, or the nearest that is there.
func below(n *yaml.Node, path, at string) (*yaml.Node, string) {
	for _, key := range strings.Split(at, ".") {
		next := child(n, key)
		if next == nil {
			break
		}
		n, path = next, join(path, key)
	}
	return n, path
}

// more refuses a list that is longer than any shop needs.
func (r *reader) more(n *yaml.Node, path string, i, most int, of string) bool {
	if i == most {
		r.refuse(n, path, 0, "", fmt.Sprintf("more than %d %s are not taken", most, of))
	}
	return i >= most
}

// mm reads a length into plain millimetres.
func (r *reader) mm(to *float64, b bounds) taker {
	return func(n *yaml.Node, path string) {
		var l measure.Length
		r.length(&l, b)(n, path)
		*to = l.MM()
	}
}

// price reads an amount of money, in whatever currency the person counts.
func (r *reader) price(to *float64) taker {
	return func(n *yaml.Node, path string) {
		if q, ok := r.at(path); ok && r.inside(n, path, q.Value, bounds{0, math.Inf(1), false, "a price cannot be negative"}) {
			*to = q.Value
		}
	}
}

// cost reads what wood, screws, plugs and finish cost. Wood has one price.
func (r *reader) cost(c *form.Cost) taker {
	return func(n *yaml.Node, path string) {
		r.group(fields{
			"wood-per-m3":         r.price(&c.WoodPerM3),
			"wood-per-board-foot": r.price(&c.WoodPerBoardFoot),
			"waste":               r.count(&c.Waste, 0, mostWaste),
			"each-screw":          r.price(&c.EachScrew),
			"each-plug":           r.price(&c.EachPlug),
			"finish-per-m2":       r.price(&c.FinishPerM2),
		})(n, path)
		if second := child(n, "wood-per-board-foot"); second != nil && child(n, "wood-per-m3") != nil {
			r.refuse(second, join(path, "wood-per-board-foot"), 0, second.Value, "wood has one price here: by the cubic metre or by the board foot")
		}
	}
}

// outline reads the corners of a board that is no rectangle: a taper, a waney edge.
func (r *reader) outline(b *stock.Board) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if r.more(n, path, i, mostPlaces, "corners") {
			return
		}
		var p stock.Point
		r.group(fields{"x": r.mm(&p.X, notNegative), "y": r.mm(&p.Y, notNegative)}, "x", "y")(n, path)
		b.Outline = append(b.Outline, p)
	})
}

// avoid reads the places of a board that are not to be used.
func (r *reader) avoid(b *stock.Board) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if r.more(n, path, i, mostPlaces, "places to avoid") {
			return
		}
		a, from := stock.Avoid{}, stock.LeftNear.String()
		r.group(fields{
			"what":     r.text(&a.What),
			"from":     r.choice(&from, stock.CornerNames()...),
			"x":        r.mm(&a.X, notNegative),
			"y":        r.mm(&a.Y, notNegative),
			"length":   r.mm(&a.Length, aboveZero),
			"width":    r.mm(&a.Width, aboveZero),
			"diameter": r.mm(&a.Diameter, aboveZero),
		}, "x", "y")(n, path)
		a.From = stock.Corner(max(0, slices.Index(stock.CornerNames(), from))) // another word has been refused
		b.Avoid = append(b.Avoid, a)
	})
}

// plan reads how boards are cut up.
func (r *reader) plan(p *form.Plan) taker {
	return r.group(fields{
		"trim-ends":  r.length(&p.TrimEnds, notNegative),
		"trim-edges": r.length(&p.TrimEdges, notNegative),
		"keep":       r.length(&p.Keep, notNegative),
		"keep-width": r.length(&p.KeepWidth, notNegative),
		"first":      r.choice(&p.First, form.CrosscutFirst, form.RipFirst, form.EitherFirst),
		"run":        r.yes(&p.Run),
		"resawn":     r.yes(&p.Resawn),
		"glue-up":    r.yes(&p.GlueUp),
		"narrowest":  r.length(&p.Narrowest, aboveZero),
		"planing":    r.length(&p.Planing, notNegative),
		"missing":    r.yes(&p.Missing),
		"pieces":     r.count(&p.Pieces, 1, form.MostPieces),
	})
}
