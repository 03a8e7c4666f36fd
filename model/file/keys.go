package file

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// top reads the keys of a design; what each means is in form.Design.
func (r *reader) top(d *form.Design) {
	var units string
	r.group(fields{
		"splaywright": r.version,
		"title":       r.text(&d.Title),
		"units":       r.choice(&units, "mm", "in"),
		"form":        r.choice(&d.Form, form.Forms()...),
		"size":        r.size(&d.Size),
		"splay":       r.splay(&d.Splay),
		"timber":      r.text(&d.Timber),
		"timbers":     r.timbers(&d.Timbers),
		"boards": r.group(fields{
			"top":   r.board(&d.Boards.Top),
			"side":  r.board(&d.Boards.Side),
			"front": r.board(&d.Boards.Front),
			"back":  r.board(&d.Boards.Back),
			"end":   r.board(&d.Boards.End),
		}),
		"bottom":         r.bottom(&d.Bottom),
		"lid":            r.lid(&d.Lid),
		"corners":        r.corners(&d.Corners),
		"stretchers":     r.stretchers(d),
		"aprons":         r.aprons(&d.Aprons),
		"features":       r.features(d),
		"names":          r.names,
		"allowance":      r.allowance(&d.Allowance),
		"saw":            r.saw(&d.Saw),
		"round":          r.round(&d.Round),
		"papers":         r.papers(&d.Papers),
		"use":            r.group(fields{"load": r.count(&d.Use.Load, 1, 2000), "dry": r.count(&d.Use.Dry, 5, 95), "damp": r.count(&d.Use.Damp, 5, 95)}),
		"tolerance":      r.tolerance(&d.Tolerance),
		"came-out":       r.cameOut(&d.CameOut),
		"cost":           r.cost(&d.Cost),
		"boards-on-hand": r.stock(&d.OnHand, form.NameOnHand),
		"boards-to-buy":  r.stock(&d.ToBuy, form.NameToBuy, "price"),
		"yard":           r.yard(&d.Yard),
		"plan":           r.plan(&d.Plan),
	}, "splaywright", "form", "size")(r.doc.root, "")
	r.onlyWhere(d)
	r.resawn(d)
	r.graded(d)
}

// tolerance reads what the shop's cuts hold to.
func (r *reader) tolerance(t *form.Tolerance) taker {
	return r.group(fields{
		"length":    r.length(&t.Length, aboveZero),
		"angle":     r.angle(&t.Angle, 0.001, 5, "an angle from 0.001 to 5 degrees is expected, such as 0.1 deg"),
		"thickness": r.length(&t.Thickness, aboveZero),
	})
}

// cameOut reads what was measured on the finished piece.
func (r *reader) cameOut(c *form.CameOut) taker {
	return r.group(fields{
		"width-top":    r.length(&c.WidthTop, aboveZero),
		"width-floor":  r.length(&c.WidthFloor, aboveZero),
		"depth-top":    r.length(&c.DepthTop, aboveZero),
		"depth-floor":  r.length(&c.DepthFloor, aboveZero),
		"height-whole": r.length(&c.Height, aboveZero),
		"height-left":  r.length(&c.HeightLeft, aboveZero),
		"height-right": r.length(&c.HeightRight, aboveZero),
	})
}

func (r *reader) version(n *yaml.Node, path string) {
	if n.Kind == yaml.ScalarNode && n.Value == fmt.Sprint(Version) {
		return
	}
	r.refuse(n, path, 0, n.Value, fmt.Sprintf("this program reads version %d of the design file; splaywright: %d is expected", Version, Version))
}

func (r *reader) size(s *form.Size) taker {
	at := string(form.AtTop)
	return func(n *yaml.Node, path string) {
		needed := []string{"height", "width"}
		if r.doc.Text("form") != "ring" { // the same all round
			needed = append(needed, "depth")
		}
		r.group(fields{
			"height":   r.length(&s.Height, aboveZero),
			"width":    r.length(&s.Width, aboveZero),
			"depth":    r.length(&s.Depth, aboveZero),
			"taken-at": r.choice(&at, string(form.AtTop), string(form.AtFloor)),
			"staves":   r.count(&s.Staves, 3, 16),

			"lower-height": r.length(&s.LowerHeight, aboveZero),
			"lower-width":  r.length(&s.LowerWidth, aboveZero),
		}, needed...)(n, path)
		s.TakenAt = form.TakenAt(at)
	}
}

func (r *reader) splay(s *form.Splay) taker {
	edge := ""
	return func(n *yaml.Node, path string) {
		r.group(fields{
			"ends":      r.lean(&s.Ends),
			"edges":     r.lean(&s.Edges),
			"middle":    r.lean(&s.Middle),
			"front":     r.lean(&s.Front),
			"back":      r.maybeLean(&s.Back),
			"end-left":  r.maybeLean(&s.EndLeft),
			"end-right": r.maybeLean(&s.EndRight),
			"measured":  r.choice(&s.Measured, form.SquareOn, form.InTheBoard),
			"edge-cut":  r.choice(&edge, string(form.EdgeSquare), string(form.EdgeFlush), string(form.EdgeLevel)),
		})(n, path)
		s.EdgeCut = form.EdgeCut(edge)
	}
}

func (r *reader) board(b *form.Board) taker {
	return r.group(fields{"thickness": r.length(&b.Thickness, aboveZero), "timber": r.text(&b.Timber)})
}

const (
	mostTails  = 400
	mostScrews = 50
	mostHoles  = 100 // of a row
	mostItems  = 50  // stretchers, features
)

func (r *reader) corners(c *form.Corners) taker {
	return r.group(fields{
		"joint":    r.choice(&c.Joint, joints()...),
		"tails-on": r.choice(&c.TailsOn, form.OnTop, form.OnSide, form.OnFront, form.OnEnd),
		"over":     r.choice(&c.Over, form.OnFront, form.OnEnd),
		"lap":      r.maybeLength(&c.Lap, aboveZero),
		"slope":    r.angle(&c.Slope, 0.1, 89.9, "a slope above 0 and below 90 degrees is expected, such as 8 or 1:7"),
		"tails":    r.maybeCount(&c.Tails, 1, mostTails),
		"tail":     r.maybeLength(&c.Tail, aboveZero),
		"pin":      r.maybeLength(&c.Pin, notNegative),
		"half-pin": r.maybeLength(&c.HalfPin, notNegative),
		"tail-widths": r.list(func(n *yaml.Node, path string, i int) {
			if i == mostTails {
				r.refuse(n, path, 0, n.Value, fmt.Sprintf("a corner has at most %d tails; fewer are expected", mostTails))
			}
			if i >= mostTails {
				return
			}
			c.TailWidths = append(c.TailWidths, 0)
			r.length(&c.TailWidths[i], aboveZero)(n, path)
		}),
		"mirrored":       r.yes(&c.Mirrored),
		"overhang":       r.length(&c.Overhang, anyLength),
		"overhang-edges": r.length(&c.OverhangEdges, anyLength),
		"depth":          r.maybeLength(&c.Depth, aboveZero),
		"shoulder":       r.maybeLength(&c.Shoulder, notNegative),
		"stop":           r.length(&c.Stop, notNegative),
		"screws":         r.screws(&c.Screws),
		"spline":         r.spline(&c.Spline),
		"keys":           r.keys(&c.Keys),
	})
}

func (r *reader) screws(to **form.Screws) taker {
	return func(n *yaml.Node, path string) {
		s := &form.Screws{}
		r.group(fields{
			"gauge":       r.count(&s.Gauge, 4, 14),
			"length":      r.length(&s.Length, aboveZero),
			"count":       r.count(&s.Count, 1, mostScrews),
			"from-end":    r.length(&s.FromEnd, aboveZero),
			"counterbore": r.length(&s.Counterbore, notNegative),
			"plug":        r.yes(&s.Plug),
		}, "gauge", "length", "count")(n, path)
		if !isNull(n) {
			*to = s
		}
	}
}

func (r *reader) stretchers(d *form.Design) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if r.tooMany(n, path, i) {
			return
		}
		var s form.Stretcher
		r.group(fields{
			"width":     r.length(&s.Width, aboveZero),
			"thickness": r.length(&s.Thickness, aboveZero),
			"under":     r.choice(&s.Under, form.UnderUpper, form.UnderLower),
			"set":       r.choice(&s.Set, form.OnEdge, form.Flat),
			"below-top": r.length(&s.BelowTop, notNegative),
			"across":    r.length(&s.Across, anyLength),
			"joint":     r.choice(&s.Joint, form.StretcherJoints()...),
			"depth":     r.length(&s.Depth, aboveZero),
			"tenon":     r.tenon(&s.Tenon),
			"timber":    r.text(&s.Timber),
			"screws":    r.screws(&s.Screws),
		}, "width")(n, path)
		d.Stretchers = append(d.Stretchers, s)
	})
}

func (r *reader) aprons(to **form.Aprons) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		a := &form.Aprons{}
		r.group(fields{
			"at":        r.choice(&a.At, form.AtBoth, form.AtFront, form.AtBack),
			"width":     r.length(&a.Width, aboveZero),
			"thickness": r.length(&a.Thickness, aboveZero),
			"set-in":    r.maybeLength(&a.SetIn, notNegative),
			"below-top": r.length(&a.BelowTop, notNegative),
			"stand":     r.choice(&a.Stand, form.Leaning, form.Plumb),
			"joint":     r.choice(&a.Joint, form.Butt, form.Housing),
			"depth":     r.length(&a.Depth, aboveZero),
			"timber":    r.text(&a.Timber),
			"screws":    r.screws(&a.Screws),
		}, "width")(n, path)
		*to = a
	}
}

func (r *reader) tooMany(n *yaml.Node, path string, i int) bool {
	if i == mostItems {
		r.refuse(n, path, 0, "", fmt.Sprintf("more than %d items are not one piece; fewer are expected", mostItems))
	}
	return i >= mostItems
}

func (r *reader) features(d *form.Design) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if r.tooMany(n, path, i) {
			return
		}
		var f form.Feature
		var on, kind string
		r.group(fields{
			"on":       r.choice(&on, "top", "top-lower", "top-upper", "side", "side-left", "side-middle", "side-right", "stretcher", "apron", "front", "back", "end", "end-left", "end-right", "stave", "bottom", "lid", "all"),
			"kind":     r.choice(&kind, form.FeatureKinds()...),
			"width":    r.length(&f.Width, aboveZero),
			"rise":     r.length(&f.Rise, aboveZero),
			"length":   r.length(&f.Length, aboveZero),
			"diameter": r.length(&f.Diameter, aboveZero),
			"radius":   r.length(&f.Radius, aboveZero),
			"hollow":   r.length(&f.Hollow, aboveZero),
			"edge":     r.choice(&f.Edge, append(slices.Clone(edgeNames), form.LongEdges, form.BothEnds, form.AllEdges)...),
			"from":     r.choice(&f.From, edgeNames...),
			"count":    r.count(&f.Count, 1, mostHoles),
			"pitch":    r.length(&f.Pitch, aboveZero),
			"depth":    r.length(&f.Depth, aboveZero),
			"face":     r.choice(&f.Face, "outer", form.InnerFace),
			"x":        r.length(&f.X, anyLength),
			"y":        r.length(&f.Y, anyLength),
			"angle":    r.angle(&f.Angle, -180, 180, "an angle of at most half a turn is expected, such as 30"),
		}, append([]string{"on", "kind"}, neededBy(child(n, "kind"))...)...)(n, path)
		f.On, f.Kind = on, kind
		d.Features = append(d.Features, f)
	})
}

// edgeNames are the edges and ends that boards have.
var edgeNames = []string{"front-edge", "back-edge", "lower-edge", "upper-edge", "left-end", "right-end", "top-end", "floor-end",
	"left-edge", "right-edge", "front-end", "back-end"}

// neededBy lists the sizes without which a feature has no shape.
func neededBy(kind *yaml.Node) []string {
	if kind == nil {
		return nil
	}
	switch kind.Value {
	case "arch", "ogee":
		return []string{"width", "rise"}
	case "notch":
		return []string{"width", "depth"}
	case "taper":
		return []string{"edge", "from", "length", "depth"}
	case "chamfer":
		return []string{"edge", "width"}
	case form.RowOfHoles:
		return []string{"diameter", "count", "pitch"}
	case "groove":
		return []string{"width", "depth"}
	case "hand hole", "slot":
		return []string{"length", "width"}
	case "hole":
		return []string{"diameter"}
	case "round-over":
		return []string{"radius"}
	}
	return nil
}

// names works every named value out, used or not, so that a fault in one is told.
func (r *reader) names(n *yaml.Node, path string) {
	if isNull(n) {
		return
	}
	if n.Kind != yaml.MappingNode {
		r.refuse(n, path, 0, n.Value, "names and their values are expected here, such as foot: size.height / 5")
		return
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k := n.Content[i]
		if !goodName(k.Value) {
			r.refuse(k, join(path, k.Value), 0, k.Value, badName)
			continue
		}
		r.at(join(path, k.Value))
	}
}

const badName = "a name is made of letters, digits and hyphens before letters, begins with a letter, and is no function"

// goodName tells whether an expression could use the name. A unit's word may be
// one: foot stands for a value unless a number stands before it.
func goodName(s string) bool {
	e := expression{text: s}
	if s == "" || !letter(s[0]) || strings.Contains(s, ".") {
		return false
	}
	for e.pos < len(s) && e.inName() {
		e.pos++
	}
	_, function := functions[s]
	return e.pos == len(s) && !function
}

func (r *reader) allowance(a *form.Allowance) taker {
	return r.group(fields{
		"length":    r.length(&a.Length, notNegative),
		"width":     r.length(&a.Width, notNegative),
		"thickness": r.length(&a.Thickness, notNegative),
	})
}

func (r *reader) saw(s *form.Saw) taker {
	const say = "an angle above 0 and up to 90 degrees is expected here, such as 45"
	return r.group(fields{
		"kerf":       r.length(&s.Kerf, aboveZero),
		"resaw":      r.length(&s.Resaw, aboveZero),
		"step":       r.angle(&s.Step, 1e-3, 10, "a step from a thousandth of a degree to 10 degrees is expected here, such as 0.1 deg"),
		"flat-table": r.no(&s.NoFlatTable),
		"max-swing":  r.angle(&s.MaxSwing, 1e-3, 90, say),
		"max-tilt":   r.angle(&s.MaxTilt, 1e-3, 90, say),
		"depth":      r.length(&s.Depth, aboveZero),
		"cradle":     r.angle(&s.Cradle, 1e-3, 89, "an angle above 0 and below 90 degrees is expected here, such as 30"),
	})
}

// maybeTurn takes how far one goes round the piece.
func (r *reader) maybeTurn(to **measure.Angle) taker {
	return func(n *yaml.Node, path string) {
		var a measure.Angle
		before := len(r.errs)
		r.angle(&a, -180, 180, "an angle from -180 to 180 degrees is expected here, such as 35")(n, path)
		if _, ok := r.at(path); ok && len(r.errs) == before {
			*to = &a
		}
	}
}
