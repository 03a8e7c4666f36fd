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

// lines is a block of notes in two columns.
type lines struct {
	head        string
	left, right []string
	height      float64
}

const (
	noteSize = 2.2
	noteStep = 4.4
)

func (n lines) draw(b *blank, at draw.Point) {
	y := at.Y - 4
	b.text(at.X, y, 3.0, n.head, true, b.ink.line)
	for c, col := range [][]string{n.left, n.right} {
		for i, t := range col {
			b.text(at.X+float64(c)*n.split(), y-1.5-noteStep*float64(i+1), noteSize, t, false, b.ink.line)
		}
	}
}

// split is where the right column begins.
func (n lines) split() float64 {
	w := 0.0
	for _, t := range n.left {
		w = max(w, draw.TextWidth(t, noteSize, false))
	}
	return w + 12
}

// partNotes says what the alike parts are made of, how they are cut and how they join.
func partNotes(p *form.Piece, group []*part.Part, o Options) lines {
	q := group[0]
	marks := make([]string, len(group))
	for i, g := range group {
		marks[i] = g.Mark
	}
	n := lines{head: fmt.Sprintf("%s   %s", strings.Join(marks, ", "), names(group))}
	n.left = []string{
		fmt.Sprintf("%d off, %s", len(group), q.Timber),
		"Blank " + boxText(q.Blank, o),
		"Rough " + boxText(q.Rough, o),
		"Rows of sizes run from the ringed edge; the outer face is up.",
	}
	for _, e := range q.Eased {
		n.left = appendOnce(n.left, fmt.Sprintf("Round over R %s along free edges", o.label(e.Radius)))
	}
	for _, c := range q.Cuts {
		if c.Swing == 0 && math.Abs(c.Tilt.Degrees()) < 0.005 {
			continue
		}
		n.right = append(n.right, cutText(c))
	}
	for _, j := range p.Joints {
		if j.Kind == form.ThroughDovetail && j.TailBoard == q.ID {
			n.right = appendOnce(n.right, fmt.Sprintf("Tails: slope %s (%s), cheeks lean %s", degrees(j.Slope), measure.Ratio(j.Slope), measure.FormatAngle(j.CheekTilt, 0)))
		}
		if j.Kind == form.ThroughDovetail && j.PinBoard == q.ID {
			n.right = appendOnce(n.right, "Pins: "+measure.FormatAngle(j.PinAngle, 0)+" on the end, from square")
		}
	}
	n.height = 7 + noteStep*float64(max(len(n.left), len(n.right)))
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
