package panel

import (
	"cmp"
	"fmt"

	"splaywright/app/field"
	"splaywright/model/cut"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/yield"
)

func pieceGroup(d *form.Design, timbers []string) Group {
	g := Group{Title: "Piece", Fields: []field.Spec{
		words("title", "Title", func(d *form.Design) string { return d.Title }),
		choice("form", "Form", func(d *form.Design) string { return d.Form }, form.Forms()...),
		choice("units", "Numbers are in", unitsOf, "mm", "in"),
		words("timber", "Timber", func(d *form.Design) string { return d.Timber }, timbers...),
		length("size.height", "Height", func(d *form.Design) measure.Length { return d.Size.Height }),
		length("size.width", "Width", func(d *form.Design) measure.Length { return d.Size.Width }),
	}}
	if d.Form == ring {
		g.Fields = append(g.Fields, count("size.staves", "Staves", func(d *form.Design) int { return d.Size.Staves }))
	} else {
		g.Fields = append(g.Fields, length("size.depth", "Depth", func(d *form.Design) measure.Length { return d.Size.Depth }))
	}
	if d.Form == form.Steps {
		g.Fields = append(g.Fields,
			length("size.lower-height", "Lower tread, high", func(d *form.Design) measure.Length { return d.Size.LowerHeight }),
			length("size.lower-width", "Lower tread, wide", func(d *form.Design) measure.Length { return d.Size.LowerWidth }))
	}
	taken := choice("size.taken-at", "Taken at the", func(d *form.Design) string { return string(d.Size.TakenAt) }, "top", "floor")
	taken.Senses = map[string]string{"top": "top|way"} // no board, and a tray has none
	g.Fields = append(g.Fields, taken)
	return g
}

func unitsOf(d *form.Design) string {
	if d.Units == measure.Imperial {
		return "in"
	}
	return "mm"
}

func splayGroup(d *form.Design) Group {
	g := Group{Title: "Splay", Fields: []field.Spec{
		angle("splay.ends", "Sides lean", func(d *form.Design) measure.Angle { return d.Splay.Ends }),
		angle("splay.edges", "Edges lean", func(d *form.Design) measure.Angle { return d.Splay.Edges }),
	}}
	if d.Form == form.Steps {
		g.Fields[0].Label = "Outer sides lean"
		g.Fields = append(g.Fields, angle("splay.middle", "Middle side leans", func(d *form.Design) measure.Angle { return d.Splay.Middle }))
	}
	if d.Splay.Edges != 0 {
		g.Fields = append(g.Fields, measuredField())
		g.Fields = append(g.Fields, choice("splay.edge-cut", "Edges cut", func(d *form.Design) string { return string(d.Splay.EdgeCut) }, "square", "flush"))
	}
	return g
}

// measuredField chooses how leans are typed.
func measuredField() field.Spec {
	return choice("splay.measured", "Measured", func(d *form.Design) string { return cmp.Or(d.Splay.Measured, form.SquareOn) }, form.SquareOn, form.InTheBoard)
}

func boardsGroup(timbers []string) Group {
	return Group{Title: "Boards", Fields: []field.Spec{
		length("boards.top.thickness", "Top, thick", func(d *form.Design) measure.Length { return d.Boards.Top.Thickness }),
		length("boards.side.thickness", "Sides, thick", func(d *form.Design) measure.Length { return d.Boards.Side.Thickness }),
		words("boards.top.timber", "Top, timber", func(d *form.Design) string { return d.Boards.Top.Timber }, timbers...),
		words("boards.side.timber", "Sides, timber", func(d *form.Design) string { return d.Boards.Side.Timber }, timbers...),
	}}
}

func cornerGroups(d *form.Design, timbers []string) []Group {
	return append(topJointGroups(d, timbers), leftOver(d)...)
}

// topJointGroups are the fields of the joint that a top has with its sides.
func topJointGroups(d *form.Design, timbers []string) []Group {
	g := Group{Title: "Corners", Fields: []field.Spec{
		choice("corners.joint", "Joint", func(d *form.Design) string { return d.Corners.Joint }, form.CornerJoints()...),
	}}
	add := func(specs ...field.Spec) { g.Fields = append(g.Fields, specs...) }
	deep := maybe("corners.depth", "Housing, deep", func(d *form.Design) *measure.Length { return d.Corners.Depth })
	switch k := d.Corners.Joint; {
	case form.LetIn(k):
		add(append([]field.Spec{deep}, shoulderFields("front")...)...)
	case form.Tailed(k):
		add(tailedFields(d, form.OnTop, form.OnSide)...)
	}
	if d.Form == form.Steps && (form.Tailed(d.Corners.Joint) || form.Mitred(d.Corners.Joint)) { // of the lower tread
		add(deep)
	}
	switch d.Corners.Joint {
	case form.ThroughDovetail, form.HalfBlindDovetail, form.FingerJoint, form.Mitre:
		return []Group{g}
	case form.SplinedMitre:
		return []Group{g, splineGroup(timbers)}
	case form.KeyedMitre:
		return []Group{g, keysGroup(timbers)}
	}
	add(length("corners.overhang", "Overhang, ends", func(d *form.Design) measure.Length { return d.Corners.Overhang }),
		length("corners.overhang-edges", "Overhang, edges", func(d *form.Design) measure.Length { return d.Corners.OverhangEdges }))
	screws := func(d *form.Design) *form.Screws { return d.Corners.Screws }
	return append([]Group{g}, screwGroup("Corner screws", "corners.screws", screws, screws(d) != nil, "40")...)
}

// tailedFields are the sizes of a joint in tails and pins, or in fingers; on are the boards that may have
// the tails.
func tailedFields(d *form.Design, on ...string) []field.Spec {
	switch d.Corners.Joint {
	case form.FingerJoint:
		fingers := tailCount()
		fingers.Label = "Fingers"
		return append([]field.Spec{fingers, maybe("corners.tail", "Finger, wide", func(d *form.Design) *measure.Length { return d.Corners.Tail })}, unlikeFingers(d)...)
	case form.HalfBlindDovetail:
		return append(dovetailFields(d, on...), maybe("corners.lap", "Lap", func(d *form.Design) *measure.Length { return d.Corners.Lap }))
	}
	return dovetailFields(d, on...)
}

// unlikeFingers are the sizes of pins and uneven tails that a design gives to fingers, so that they can be taken out.
func unlikeFingers(d *form.Design) []field.Spec {
	var out []field.Spec
	if d.Corners.Pin != nil {
		out = append(out, pinWidth())
	}
	if d.Corners.HalfPin != nil {
		out = append(out, halfPinWidth())
	}
	if len(d.Corners.TailWidths) > 0 {
		out = append(out, unevenTails())
	}
	return out
}

func pinWidth() field.Spec {
	return maybe("corners.pin", "Pin, wide", func(d *form.Design) *measure.Length { return d.Corners.Pin })
}

func halfPinWidth() field.Spec {
	return maybe("corners.half-pin", "Half pin, wide", func(d *form.Design) *measure.Length { return d.Corners.HalfPin })
}

func unevenTails() field.Spec {
	return field.Spec{Path: "corners.tail-widths", Label: "Uneven tails", Hint: "such as [38, 52, 38]", Value: func(d *form.Design) any {
		if len(d.Corners.TailWidths) == 0 {
			return nil
		}
		return d.Corners.TailWidths
	}}
}

// dovetailFields are the sizes of tails and pins; on are the boards that may have the tails.
func dovetailFields(d *form.Design, on ...string) []field.Spec {
	out := []field.Spec{
		choice("corners.tails-on", "Tails on the", func(d *form.Design) string { return d.Corners.TailsOn }, on...),
		angle("corners.slope", "Slope of tails", func(d *form.Design) measure.Angle { return d.Corners.Slope }),
	}
	if len(d.Corners.TailWidths) == 0 {
		out = append(out, tailCount(), maybe("corners.tail", "Tail, wide", func(d *form.Design) *measure.Length { return d.Corners.Tail }))
	}
	out = append(out, pinWidth(), halfPinWidth(), unevenTails())
	if len(d.Corners.TailWidths) > 0 {
		out = append(out, flag("corners.mirrored", "Mirrored", func(d *form.Design) bool { return d.Corners.Mirrored }))
	}
	return out
}

func tailCount() field.Spec {
	return field.Spec{Path: "corners.tails", Label: "Tails", Turns: true, Value: func(d *form.Design) any {
		if d.Corners.Tails != nil {
			return *d.Corners.Tails
		}
		return nil
	}}
}

// screwGroup is the group of a set of screws, or what adds one.
func screwGroup(title, path string, get func(*form.Design) *form.Screws, has bool, fromEnd string) []Group {
	if !has {
		add := Add{Label: "Add screws", Fields: [][2]string{
			{path + ".gauge", "8"}, {path + ".length", "50 mm"}, {path + ".count", "2"}, {path + ".from-end", fromEnd + " mm"},
		}}
		return []Group{{Title: title, Adds: []Add{add}}}
	}
	or := func(d *form.Design) form.Screws {
		if s := get(d); s != nil {
			return *s
		}
		return form.Screws{}
	}
	return []Group{{Title: title, Remove: path, Fields: []field.Spec{
		count(path+".gauge", "Gauge", func(d *form.Design) int { return or(d).Gauge }),
		length(path+".length", "Length", func(d *form.Design) measure.Length { return or(d).Length }),
		count(path+".count", "In a row", func(d *form.Design) int { return or(d).Count }),
		length(path+".from-end", "From the end", func(d *form.Design) measure.Length { return or(d).FromEnd }),
		length(path+".counterbore", "Counterbore", func(d *form.Design) measure.Length { return or(d).Counterbore }),
		flag(path+".plug", "Plugged", func(d *form.Design) bool { return or(d).Plug }),
	}}}
}

func roughGroup() Group {
	return Group{Title: "Rough allowance", Fields: []field.Spec{
		length("allowance.length", "Length", func(d *form.Design) measure.Length { return d.Allowance.Length }),
		length("allowance.width", "Width", func(d *form.Design) measure.Length { return d.Allowance.Width }),
		length("allowance.thickness", "Thickness", func(d *form.Design) measure.Length { return d.Allowance.Thickness }),
	}}
}

func sawGroup() Group {
	return Group{Title: "Saw", Fields: []field.Spec{
		length("saw.kerf", "Kerf", func(d *form.Design) measure.Length { return d.Saw.Kerf }),
		length("saw.resaw", "Resaw cut", func(d *form.Design) measure.Length { return d.Saw.Resaw }),
		angleIfAny("saw.step", "Scale step", "not rounded", func(d *form.Design) measure.Angle { return d.Saw.Step }),
		angle("saw.max-swing", "Most swing", func(d *form.Design) measure.Angle { return cmp.Or(d.Saw.MaxSwing, cut.DefaultMaxSwing) }),
		angle("saw.max-tilt", "Most tilt", func(d *form.Design) measure.Angle { return cmp.Or(d.Saw.MaxTilt, cut.DefaultMaxTilt) }),
		length("saw.depth", "Blade reaches", func(d *form.Design) measure.Length { return cmp.Or(d.Saw.Depth, cut.DefaultDepth) }),
		angleIfAny("saw.cradle", "Wedge cradle", "none", func(d *form.Design) measure.Angle { return d.Saw.Cradle }),
		flag("saw.flat-table", "Flat table", func(d *form.Design) bool { return !d.Saw.NoFlatTable }),
	}}
}

func planGroup() Group {
	return Group{Title: "Board plan", Fields: []field.Spec{
		length("plan.trim-ends", "Trim, ends", func(d *form.Design) measure.Length { return d.Plan.TrimEnds }),
		length("plan.trim-edges", "Trim, edges", func(d *form.Design) measure.Length { return d.Plan.TrimEdges }),
		lengthIfAny("plan.keep", "Keep offcuts from", "none are kept", func(d *form.Design) measure.Length { return d.Plan.Keep }),
		lengthIfAny("plan.keep-width", "Offcuts as wide as", "as long", func(d *form.Design) measure.Length { return d.Plan.KeepWidth }),
		choice("plan.first", "First cuts", func(d *form.Design) string { return d.Plan.First }, form.EitherFirst, form.CrosscutFirst, form.RipFirst),
		flag("plan.run", "Grain runs on", func(d *form.Design) bool { return d.Plan.Run }),
		flag("plan.resawn", "Resawn pair", func(d *form.Design) bool { return d.Plan.Resawn }),
		flag("plan.glue-up", "May be glued up", func(d *form.Design) bool { return d.Plan.GlueUp }),
		length("plan.narrowest", "Narrowest strip", func(d *form.Design) measure.Length { return cmp.Or(d.Plan.Narrowest, yield.NarrowestStrip) }),
		lengthIfAny("plan.planing", "Most planed off", "as much as it takes", func(d *form.Design) measure.Length { return d.Plan.Planing }),
		count("plan.pieces", "Pieces together", func(d *form.Design) int { return max(d.Plan.Pieces, 1) }),
		flag("plan.missing", "Buy the rest only", func(d *form.Design) bool { return d.Plan.Missing }),
	}}
}

func costGroup() Group {
	price := func(key, label string, get func(form.Cost) float64) field.Spec {
		return field.Spec{Path: "cost." + key, Label: label, Number: true, Value: func(d *form.Design) any { return money(get(d.Cost)) }}
	}
	return Group{Title: "Prices", Fields: []field.Spec{
		price("wood-per-m3", "Wood, m³", func(c form.Cost) float64 { return c.WoodPerM3 }),
		price("wood-per-board-foot", "Wood, board foot", func(c form.Cost) float64 { return c.WoodPerBoardFoot }),
		count("cost.waste", "Wasted, %", func(d *form.Design) int { return d.Cost.Waste }),
		price("each-screw", "A screw", func(c form.Cost) float64 { return c.EachScrew }),
		price("each-plug", "A plug", func(c form.Cost) float64 { return c.EachPlug }),
		price("finish-per-m2", "Finish, m²", func(c form.Cost) float64 { return c.FinishPerM2 }),
	}}
}

func papersGroup() Group {
	return Group{Title: "Papers", Fields: []field.Spec{
		length("round.to", "Round to", func(d *form.Design) measure.Length { return d.Round.To }),
		flag("round.both", "mm and inches", func(d *form.Design) bool { return d.Round.Both }),
		choice("round.decimal", "Decimals behind a", decimal, "point", "comma"),
		choice("papers.sheet", "Sheet", func(d *form.Design) string { return d.Papers.Sheet }, form.Sheets...),
		choice("papers.projection", "Projection", func(d *form.Design) string { return d.Papers.Projection }, "first", "third"),
		lengthIfAny("papers.eye-height", "Eye height", "as suits the piece", func(d *form.Design) measure.Length { return d.Papers.EyeHeight }),
		lengthIfAny("papers.eye-distance", "Eye distance", "as suits the piece", func(d *form.Design) measure.Length { return d.Papers.EyeDistance }),
		flag("papers.bottom", "View from below", func(d *form.Design) bool { return !d.Papers.NoBottom }),
	}}
}

func decimal(d *form.Design) string {
	if d.Round.Comma {
		return "comma"
	}
	return "point"
}

// toleranceGroup is what the shop's cuts hold to.
func toleranceGroup(d *form.Design) Group {
	if d.Tolerance == (form.Tolerance{}) {
		return Group{Title: "What cuts hold to", Adds: []Add{{Label: "Add tolerances", Fields: [][2]string{{"tolerance.length", "0.5 mm"}, {"tolerance.angle", "0.1 deg"}, {"tolerance.thickness", "0.1 mm"}}}}}
	}
	return Group{Title: "What cuts hold to", Remove: "tolerance", Fields: []field.Spec{
		lengthIfAny("tolerance.length", "Lengths, ±", "as usual", func(d *form.Design) measure.Length { return d.Tolerance.Length }),
		{Path: "tolerance.angle", Label: "Angles, ±", Turns: true, Hint: "as usual", Value: func(d *form.Design) any { return ifAny(d.Tolerance.Angle) }},
		lengthIfAny("tolerance.thickness", "Thicknesses, ±", "as usual", func(d *form.Design) measure.Length { return d.Tolerance.Thickness }),
	}}
}

// cameOutGroup is what was measured on the finished piece, as far as its form is measured so.
func cameOutGroup(d *form.Design) Group {
	stands := form.OnSides(d.Form)
	if d.CameOut == (form.CameOut{}) { // begun with a size that is as designed, to be typed over
		key, as := "height-whole", d.Size.Height
		switch {
		case stands:
			key = "height-left"
			if d.Form == form.Steps {
				key = "height-right"
			}
		case d.Form == ring:
			key, as = "width-"+string(cmp.Or(d.Size.TakenAt, form.AtTop)), d.Size.Width
		}
		return Group{Title: "As it came out", Adds: []Add{{Label: "Add what was measured", Fields: [][2]string{{"came-out." + key, fmt.Sprintf("%.9g mm", as.MM())}}}}}
	}
	g := Group{Title: "As it came out", Remove: "came-out"}
	add := func(key, label string, get func(form.CameOut) measure.Length) {
		g.Fields = append(g.Fields, lengthIfAny("came-out."+key, label, "not measured", func(d *form.Design) measure.Length { return get(d.CameOut) }))
	}
	if d.Form != form.Steps {
		add("width-top", "Width at the top", func(c form.CameOut) measure.Length { return c.WidthTop })
	}
	add("width-floor", "Width at the floor", func(c form.CameOut) measure.Length { return c.WidthFloor })
	if stands {
		add("height-left", "Height, left end", func(c form.CameOut) measure.Length { return c.HeightLeft })
		add("height-right", "Height, right end", func(c form.CameOut) measure.Length { return c.HeightRight })
	} else if d.Form != ring {
		add("depth-top", "Depth at the top", func(c form.CameOut) measure.Length { return c.DepthTop })
		add("depth-floor", "Depth at the floor", func(c form.CameOut) measure.Length { return c.DepthFloor })
		add("height-whole", "Height of it", func(c form.CameOut) measure.Length { return c.Height })
	}
	return g
}

func useGroup() Group {
	return Group{Title: "What it has to bear", Fields: []field.Spec{
		count("use.load", "Load, kg", func(d *form.Design) int { return d.Use.Load }),
		count("use.dry", "Driest air, %", func(d *form.Design) int { return d.Use.Dry }),
		count("use.damp", "Dampest air, %", func(d *form.Design) int { return d.Use.Damp }),
	}}
}
