package form

import (
	"splaywright/model/measure"
	"splaywright/model/timber"
)

// What a design that leaves a size out gets.
const (
	// usualThickness of a board of 4/4 stock dressed to about 13/16 in (common practice).
	usualThickness measure.Length = 20
	// hardSlope and softSlope are the tangents 1:8 and 1:6.
	// https://www.workbenchink.com/dovetail-layout, https://woodiesdiy.tv/category/ratio/
	hardSlope = 1.0 / 8
	softSlope = 1.0 / 6
	// usualKerf of a full-width blade, 1/8 in (common practice).
	usualKerf = measure.Inch / 8
	// usualResaw of a bandsaw, 1/16 in: an inch resawn once leaves two of (1 - 1/16)/2.
	// https://www.woodcraft.com/blog_entries/tips-tricks-issue-82-how-to-grain-wrap-a-box
	usualResaw = measure.Inch / 16
	// usualLoad, kg: EN 14183 step stools carry one person and 150 kg in all.
	// https://technickenormy.cz/csn-en-14183-schudky
	usualLoad = 150
	// usualDry and usualDamp, percent: a heated room in winter and an airy one in summer (common practice).
	usualDry, usualDamp = 30, 65
	// housingShare of the receiving board's thickness that a housing is deep: a third, common practice.
	housingShare = 1.0 / 3
)

// Defaults gives the design with everything filled in that does not depend on how the boards
// meet. What a person typed is never changed.
func (d Design) Defaults() Design {
	fill(&d.Form, stoolFamily.form)
	fill(&d.Size.TakenAt, AtTop)
	fill(&d.Use.Load, usualLoad)
	fill(&d.Use.Dry, usualDry)
	fill(&d.Use.Damp, usualDamp)
	if f, ok := familyOf(d.Form); ok {
		f.defaults(&d)
	}
	fill(&d.Saw.Kerf, usualKerf)
	fill(&d.Saw.Resaw, usualResaw)
	d.fillPapers()
	return d
}

// stoolDefaults fills in a stool's splay, boards, corners and stretchers.
func stoolDefaults(d *Design) {
	fill(&d.Splay.EdgeCut, EdgeSquare)
	fill(&d.Boards.Top.Thickness, usualThickness)
	fill(&d.Boards.Side.Thickness, d.Boards.Top.Thickness)
	fill(&d.Boards.Top.Timber, d.Timber)
	fill(&d.Boards.Side.Timber, d.Timber)
	cornerDefaults(d)
	d.fillStretchers()
	d.fillAprons()
}

// fill gives a size that was left out its usual value.
func fill[T comparable](at *T, usual T) {
	var none T
	if *at == none {
		*at = usual
	}
}

// usualSlope is steeper in softwood, whose fibres give more.
func (d Design) usualSlope() measure.Angle {
	name := d.Boards.Top.Timber
	if d.Corners.TailsOn == OnSide {
		name = d.Boards.Side.Timber
	}
	if s, ok := d.Timbers.Find(name); ok && s.Wood == timber.Softwood {
		return slopeOf(softSlope)
	}
	return slopeOf(hardSlope)
}

// fillPapers follows the custom of the unit: A4 and first angle, or Letter and third angle.
func (d *Design) fillPapers() {
	if d.Round.To == 0 {
		d.Round.Unit = d.Units
		d.Round.To = measure.Millimetre / 2
		if d.Units == measure.Imperial {
			d.Round.To = measure.Inch / 32
		}
	}
	sheet, projection := "A4", "first"
	if d.Units == measure.Imperial {
		sheet, projection = "Letter", "third"
	}
	fill(&d.Papers.Sheet, sheet)
	fill(&d.Papers.Projection, projection)
}

func (d *Design) fillStretchers() {
	if len(d.Stretchers) == 0 {
		return
	}
	d.Stretchers = append([]Stretcher(nil), d.Stretchers...)
	for i := range d.Stretchers {
		s := &d.Stretchers[i]
		fill(&s.Set, OnEdge)
		fill(&s.Joint, Butt)
		fill(&s.Thickness, d.Boards.Side.Thickness)
		fill(&s.Timber, d.Timber)
		if s.Joint == Housing {
			fill(&s.Depth, d.Boards.Side.Thickness*housingShare)
		}
		s.fillTenon(d.Boards.Side.Thickness)
	}
}
