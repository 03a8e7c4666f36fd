package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"splaywright/model/form"
	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/tongue"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// panel is what a part's sheet says in words: a heading, short lines, and a table of the cuts.
type panel struct {
	head  string // the marks, and the name
	mark  string // the head's beginning that is underlined
	text  []string
	heads [4]string   // of the cuts
	cuts  [][4]string // cut, swing, tilt, which face ends longer
}

// The panel's letters, rows and widths, mm.
const (
	noteSize   = 2.5
	noteStep   = 4.4
	noteColumn = 62.0
	headSize   = 3.2
	cutStep    = 4.6
	cutGap     = 3.2 // between the columns of the table, and above it
)

var cutHeads = [4]string{"Cut", "Swing|short", "Tilt|short", "Longer face"}

// lines are the notes broken to a width; what goes on from a line above is set in.
func (n panel) lines(width float64) []string {
	var all []string
	for _, t := range n.text {
		for i, l := range wrap(t, noteSize, width-3) {
			if i > 0 {
				l = "   " + l
			}
			all = append(all, l)
		}
	}
	return all
}

// textHeight and cutsHeight are the room that the two halves of the panel take.
func (n panel) textHeight(width float64) float64 {
	return headSize + 1.6 + noteStep*float64(len(n.lines(width)))
}

func (n panel) cutsHeight() float64 {
	if len(n.cuts) == 0 {
		return 0
	}
	return cutStep*float64(len(n.cuts)+1) + 1
}

// column sets the whole panel as one column; at is its upper left corner.
func (n panel) column(b *blank, at draw.Point) {
	n.drawText(b, at, noteColumn)
	n.drawCuts(b, draw.Point{X: at.X, Y: at.Y - n.textHeight(noteColumn) - cutGap})
}

func (n panel) columnHeight() float64 { return n.textHeight(noteColumn) + cutGap + n.cutsHeight() }

func (n panel) drawText(b *blank, at draw.Point, width float64) {
	size := headSize
	for size > noteSize && draw.TextWidth(n.head, size, true) > width {
		size -= 0.1
	}
	y := at.Y - headSize
	b.text(at.X, y, size, shorten(n.head, size, width), true, b.ink.line)
	b.underline(at.X, y, min(draw.TextWidth(n.mark, size, true), width), size)
	y -= 1.6
	for _, t := range n.lines(width) {
		y -= noteStep
		b.text(at.X, y, noteSize, t, false, b.ink.line)
	}
}

// drawCuts sets the table of cuts; at is its upper left corner.
func (n panel) drawCuts(b *blank, at draw.Point) {
	if len(n.cuts) == 0 {
		return
	}
	widths, size := n.cutWidths()
	total := widths[0] + widths[1] + widths[2] + widths[3] + 3*cutGap
	rule := func(y, width float64) {
		b.line(draw.Point{X: at.X, Y: y}, draw.Point{X: at.X + total, Y: y}, width)
	}
	y := at.Y
	for i, row := range append([][4]string{n.heads}, n.cuts...) {
		x := at.X
		y -= cutStep
		for c, t := range row {
			align, shift := draw.Left, 0.0
			if c == 1 || c == 2 {
				align, shift = draw.Right, widths[c]
			}
			b.Items = append(b.Items, draw.Text{At: draw.Point{X: x + shift, Y: y + 1}, Size: size, Align: align, Bold: i == 0, Ink: b.ink.line, Text: t, Layer: "frame"})
			x += widths[c] + cutGap
		}
		if i == 0 {
			rule(y-0.5, narrowLine)
			y -= 0.5
		}
	}
	rule(y-0.5, narrowLine)
}

// cutWidths gives the columns' widths at the largest letters, up to those of the notes, at which the
// table is no wider than the column.
func (n panel) cutWidths() ([4]float64, float64) {
	for size := noteSize; ; size -= 0.1 {
		var w [4]float64
		sum := 3 * cutGap
		for c := range w {
			w[c] = draw.TextWidth(n.heads[c], size, true)
			for _, r := range n.cuts {
				w[c] = max(w[c], draw.TextWidth(r[c], size, false))
			}
			sum += w[c]
		}
		if sum <= noteColumn || size < 1.5 {
			return w, size
		}
	}
}

// largestRound is the radius of a part's free edges: of several round-overs the largest holds.
func largestRound(q *part.Part) measure.Length {
	r := measure.Length(0)
	for _, s := range q.Features {
		if s.Kind == part.RoundOver && s.Edge == "" {
			r = max(r, s.Radius)
		}
	}
	return r
}

// partNotes says what the alike parts are made of, how they are cut and how they join.
func partNotes(p *form.Piece, group []*part.Part, o Options) panel {
	q := group[0]
	marks := table.JoinMarks(group)
	n := panel{head: marks + "   " + o.say(names(group)), mark: marks}
	n.text = []string{
		made(len(group), q.Timber),
	}
	blank, rough := q.Lying()
	n.text = append(append(n.text, boxText("Blank", blank, o)...), boxText("Rough", rough, o)...)
	n.text = append(n.text, "Outer face up")
	if manySided(q) {
		n.text = append(n.text, sidesNote(q, o))
	}
	if hasRows(p, q) {
		n.text = append(n.text, "Sizes in a row start at its ring")
	}
	for _, s := range q.Features {
		if s.Kind == part.RoundOver && s.Edge == "" {
			n.text = appendOnce(n.text, fmt.Sprintf("Round over R %s along free edges", o.label(largestRound(q))))
		}
	}
	n.cuts = cutRows(q)
	for _, j := range p.Joints {
		if j.TailBoard != q.ID && j.PinBoard != q.ID {
			continue
		}
		if len(j.Tails) > 0 {
			n.text = appendOnce(n.text, "Every position: table Marking")
			if rising(j) {
				n.text = appendOnce(n.text, "Tails and pins by their height up the face")
			}
			for _, text := range baselineNotes(j, q, o.joints()) {
				n.text = appendOnce(n.text, text)
			}
		}
		for _, text := range jointNotes(j, q, o) {
			n.text = appendOnce(n.text, text)
		}
		if (j.Kind == form.InGroove || j.Kind == form.InRabbet) && j.TailBoard == q.ID {
			n.text = appendOnce(n.text, "Groove for the bottom: table Grooves")
		}
	}
	for _, j := range p.Joints {
		if j.Slope != 0 && j.TailBoard == q.ID {
			n.text = appendOnce(n.text, fmt.Sprintf("Tails slope %s (%s)", degrees(j.Slope), measure.Ratio(j.Slope)))
			n.text = appendOnce(n.text, cheekNote(p, q, j))
		}
		if j.Slope != 0 && j.PinBoard == q.ID {
			n.text = appendOnce(n.text, pinNote(j))
		}
	}
	return n.said(o)
}

// said puts the panel into the language of the sheet.
func (n panel) said(o Options) panel {
	for i, t := range n.text {
		n.text[i] = o.say(t)
	}
	for c, h := range cutHeads {
		n.heads[c] = o.Tongue.Sense(h)
	}
	for i := range n.cuts {
		r := &n.cuts[i]
		r[0], r[3] = o.listed(r[0]), o.say(r[3])
	}
	return n
}

// baselineNotes are where the baseline of tails or pins runs, as far as the sheet's dimensions do not say so; of pins behind a lap,
// that the outer face has none, and where the lap begins on the end.
func baselineNotes(j joint.Joint, q *part.Part, o Options) []string {
	switch {
	case lapped(j, q):
		return []string{fmt.Sprintf("Pins on the inner face: baseline %s from its own end, none outside", o.label(j.PinBaseline.Inner)),
			fmt.Sprintf("Lap line on the end, %s from the inner face", o.label(j.Baseline.Outer))}
	case !rising(j):
		return nil
	case j.PinBoard == q.ID:
		return []string{fmt.Sprintf("Baseline %s from each face's own end", o.label(j.PinBaseline.Outer))}
	}
	return []string{fmt.Sprintf("Baseline %s from each face's own end", o.label(j.Baseline.Outer))}
}

// jointNotes say where the figures of a joint without tails stand.
func jointNotes(j joint.Joint, q *part.Part, o Options) []string {
	var out []string
	o = o.joints()
	switch {
	case j.Kind == form.Housing, j.Kind == form.GrooveTongue:
		out = append(out, "Housings: table Seats")
		if j.Shoulder > 0 && j.PinBoard == q.ID {
			out = append(out, fmt.Sprintf("Tongue: %s off the outer face at the ends that are let in", o.label(j.Shoulder)))
		}
	case j.Spline != nil:
		out = append(out, fmt.Sprintf("Spline grooves %s wide, %s deep, %s from the inner arris: table Splines",
			o.label(j.Spline.Thickness), o.label(j.Spline.Width/2), o.label(j.Spline.Inset)))
	case j.Keys != nil:
		out = append(out, fmt.Sprintf("Key slots %s wide, %s deep, sawn when glued up: table Keys", o.label(j.Keys.Thickness), o.label(j.Keys.Depth)))
	case j.Tenon != nil && j.TailBoard == q.ID:
		out = append(out, "Mortises on both faces: table Mortises")
	case j.Tenon != nil:
		out = append(out, fmt.Sprintf("Tenons %s × %s, shoulders %s from square: table Tenons",
			o.label(j.Tenon.Width), o.label(j.Tenon.Thickness), degrees(j.Tenon.Lean)))
	}
	return out
}

// pinNote is how the lines of pins stand on the end of their board.
func pinNote(j joint.Joint) string {
	if a, b := measure.FormatAngle(j.PinEnd, 0), measure.FormatAngle(j.BackPinEnd, 0); a == b {
		return fmt.Sprintf("Pins %s from square, on the end", a)
	}
	lower, upper := table.PinSides(j)
	return fmt.Sprintf("Lines on the end, from square: below a tail %s %s, above it %s %s",
		measure.FormatAngle(lower.Angle, 0), lower.Way, measure.FormatAngle(upper.Angle, 0), upper.Way)
}

// cheekNote is how far the cheeks of a board's tails lean, and where, when they do not lean alike at all of its joints.
func cheekNote(p *form.Piece, q *part.Part, j joint.Joint) string {
	lean := bothSides(j.CheekTilt, j.BackCheekTilt)
	unlike := slices.ContainsFunc(p.Joints, func(o joint.Joint) bool {
		return o.Slope != 0 && o.TailBoard == q.ID && bothSides(o.CheekTilt, o.BackCheekTilt) != lean
	})
	if to := p.Part(j.PinBoard); unlike && to != nil {
		return fmt.Sprintf("Cheeks lean %s from square where %s comes", lean, to.Mark)
	}
	return fmt.Sprintf("Cheeks lean %s from square", lean)
}

// bothSides is an angle of the lower and the upper side of a tail, said once where they are alike.
func bothSides(lower, upper measure.Angle) string {
	a, b := measure.FormatAngle(lower, 0), measure.FormatAngle(upper, 0)
	if a == b {
		return a
	}
	return fmt.Sprintf("%s below and %s above", a, b)
}

func appendOnce(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

// boxText is a board's three sizes; with both units a line for each.
func boxText(name string, b part.Box, o Options) []string {
	line := func(name string, s measure.Style) string {
		s.Both = false
		return fmt.Sprintf("%s %s × %s × %s", name, s.Format(b.Length), s.Format(b.Width), s.Format(b.Thickness))
	}
	if !o.Style.Both {
		return []string{line(name, o.Style)}
	}
	if o.Style.Unit == measure.Imperial {
		return []string{line(name, o.Style) + " in", line("=", measure.Style{}) + " mm"}
	}
	return []string{line(name, o.Style) + " mm", line("=", measure.Style{Unit: measure.Imperial}) + " in"}
}

// hasRows tells whether the part's sheet has running sizes.
func hasRows(p *form.Piece, q *part.Part) bool {
	xs, ys := holeMarks(p, q)
	return len(xs)+len(ys) > 0 || slices.ContainsFunc(p.Joints, func(j joint.Joint) bool {
		return len(j.Tails) > 0 && (j.TailBoard == q.ID || j.PinBoard == q.ID)
	})
}

// cutRows lists the cuts that are not square, those with the same settings in one row.
func cutRows(q *part.Part) [][4]string {
	if manySided(q) {
		return sideRows(q)
	}
	var rows [][4]string
	for _, c := range q.Cuts {
		if c.Swing == 0 && c.Tilt < 0.005*measure.Degree {
			continue
		}
		row := cutRow(strings.ReplaceAll(c.ID, "-", " "), c)
		i := slices.IndexFunc(rows, func(r [4]string) bool { return joinsCut(r, row) })
		if i < 0 {
			rows = append(rows, row)
			continue
		}
		first, _, _ := strings.Cut(rows[i][0], " ")
		rows[i][0] = first + ", " + row[0]
	}
	for i := range rows {
		rows[i][0] = strings.ToUpper(rows[i][0][:1]) + rows[i][0][1:]
	}
	return rows
}

// cutRow are the settings of a cut.
func cutRow(name string, c part.Cut) [4]string {
	face := "equal"
	if c.Tilt > 0 {
		face = "inner"
	}
	if c.OuterLonger {
		face = "outer"
	}
	return [4]string{name, degrees(c.Swing), degrees(c.Tilt), face}
}

// manySided tells whether a board is neither square nor tapered but has more sides, or three: the bottom of a ring.
func manySided(q *part.Part) bool { return len(q.Cuts) != 4 && q.Slip == "" }

// sideRows lists how many sides of a board of many have the same settings; which they are can be seen.
func sideRows(q *part.Part) [][4]string {
	var rows [][4]string
	var many []int
	for _, c := range slices.SortedStableFunc(slices.Values(q.Cuts), func(a, b part.Cut) int { return cmp.Compare(a.Swing, b.Swing) }) {
		row := cutRow("", c)
		i := slices.Index(rows, row)
		if i < 0 {
			i, rows, many = len(rows), append(rows, row), append(many, 0)
		}
		many[i]++
	}
	for i := range rows {
		rows[i][0] = fmt.Sprintf("%d edges", many[i])
	}
	return rows
}

// sidesNote tells how long the equal sides of a board of many are.
func sidesNote(q *part.Part, o Options) string {
	return fmt.Sprintf("%d equal edges, each %s on the outer face", len(q.Cuts), o.label(q.Cuts[0].Length))
}

// listed writes "Left, right end" as the other languages know it: they bend the words.
func (o Options) listed(cuts string) string {
	if o.Tongue.Code() == tongue.English {
		return cuts
	}
	said := o.say(strings.ToLower(cuts[:1]) + strings.Replace(cuts[1:], ", ", " and ", 1))
	first, n := utf8.DecodeRuneInString(said)
	return string(unicode.ToUpper(first)) + said[n:]
}

// joinsCut: "left end" and "right end" with the same figures are one row, "left, right end".
func joinsCut(r, row [4]string) bool {
	last := func(s string) string { return s[strings.LastIndex(s, " ")+1:] }
	return last(r[0]) == last(row[0]) && r[1] == row[1] && r[2] == row[2] && r[3] == row[3]
}

// made is how many of a part are made and of what, where that is known.
func made(n int, timber string) string {
	if timber == "" {
		return fmt.Sprintf("%d off", n)
	}
	return fmt.Sprintf("%d off, %s", n, timber)
}
