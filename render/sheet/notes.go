package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// lines is a block of notes under a heading.
type lines struct {
	head string
	text []string
}

const (
	noteSize   = 2.2
	noteStep   = 4.0
	noteColumn = 66.0 // width of one column
)

// inColumns breaks the notes into so many columns of equal height, each a list of lines.
func (n lines) inColumns(count int) [][]string {
	var all []string
	for _, t := range n.text {
		for i, l := range wrap(t, noteSize, noteColumn) {
			if i > 0 {
				l = "   " + l
			}
			all = append(all, l)
		}
	}
	per := (len(all) + count - 1) / count
	var out [][]string
	for len(all) > 0 {
		k := min(per, len(all))
		out, all = append(out, all[:k]), all[k:]
	}
	return out
}

func height(cols [][]string) float64 {
	if len(cols) == 0 {
		return 8
	}
	return 8 + noteStep*float64(len(cols[0]))
}

// draw sets the columns side by side; at is the upper left corner.
func (n lines) draw(b *blank, at draw.Point, cols [][]string) {
	y := at.Y - 4
	width := noteColumn + (noteColumn+8)*float64(max(0, len(cols)-1))
	size := 3.0
	for size > 2.2 && draw.TextWidth(n.head, size, true) > width {
		size -= 0.1
	}
	b.text(at.X, y, size, shorten(n.head, size, width), true, b.ink.line)
	for c, col := range cols {
		for i, t := range col {
			b.text(at.X+float64(c)*(noteColumn+8), y-1.8-noteStep*float64(i+1), noteSize, t, false, b.ink.line)
		}
	}
}

// partNotes says what the alike parts are made of, how they are cut and how they join.
func partNotes(p *form.Piece, group []*part.Part, o Options) lines {
	q := group[0]
	marks := make([]string, len(group))
	for i, g := range group {
		marks[i] = g.Mark
	}
	n := lines{head: fmt.Sprintf("%s   %s", strings.Join(marks, ", "), names(group))}
	n.text = []string{
		fmt.Sprintf("%d off, %s", len(group), q.Timber),
		"Blank " + boxText(q.Blank, o),
		"Rough " + boxText(q.Rough, o),
		"Outer face up. Rows of sizes run from the ring.",
	}
	for _, e := range q.Eased {
		n.text = appendOnce(n.text, fmt.Sprintf("Round over R %s along free edges", o.label(e.Radius)))
	}
	for _, c := range q.Cuts {
		if c.Swing == 0 && math.Abs(c.Tilt.Degrees()) < 0.005 {
			continue
		}
		n.text = append(n.text, cutText(c))
	}
	for _, j := range p.Joints {
		if j.Kind == form.ThroughDovetail && j.TailBoard == q.ID {
			n.text = appendOnce(n.text, fmt.Sprintf("Tails: slope %s (%s), cheeks lean %s", degrees(j.Slope), measure.Ratio(j.Slope), measure.FormatAngle(j.CheekTilt, 0)))
		}
		if j.Kind == form.ThroughDovetail && j.PinBoard == q.ID {
			n.text = appendOnce(n.text, "Pins: "+measure.FormatAngle(j.PinAngle, 0)+" on the end, from square")
		}
	}
	return n
}

func appendOnce(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

func boxText(b part.Box, o Options) string {
	return fmt.Sprintf("%s × %s × %s", o.label(b.Length), o.label(b.Width), o.label(b.Thickness))
}

func cutText(c part.Cut) string {
	name := strings.ReplaceAll(c.ID, "-", " ")
	text := strings.ToUpper(name[:1]) + name[1:] + ": swing " + degrees(c.Swing) + ", tilt " + degrees(c.Tilt)
	if c.Tilt > 0 {
		if c.OuterLonger {
			text += ", outer face longer"
		} else {
			text += ", inner face longer"
		}
	}
	return text
}
