package table

import (
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
)

// pairedCut is a cut with, where there is one, its mirror image on the same or another part.
type pairedCut struct {
	part *part.Part
	cut  part.Cut

	otherPart *part.Part // nil when the cut has no pair
	other     part.Cut

	many group // the equal parts that all have these cuts
}

// pairedCuts lists every cut of the piece once, a pair as one entry at its first cut's place. Of
// equal parts, as the staves of a ring, the first stands for all; not so of two that are each other's
// mirror image.
func pairedCuts(p *form.Piece) []pairedCut {
	var all []pairedCut
	done := map[string]bool{}
	many := map[*part.Part]group{}
	for _, g := range groups(p) {
		for _, q := range g {
			if len(g) > 2 || len(g) == 2 && pairsWithin(g[0]) && pairsWithin(g[1]) {
				many[q] = g
			}
		}
	}
	for _, q := range p.Parts {
		if g := many[q]; g != nil && g[0] != q {
			continue
		}
		for _, c := range q.Cuts {
			entry := pairedCut{part: q, cut: c, many: many[q]}
			if done[entry.ref()] {
				continue
			}
			if op, oc, ok := findCut(p, c.Pair); ok && !done[c.Pair] && c.Pair != entry.ref() {
				entry.otherPart, entry.other = op, oc
				done[c.Pair] = true
			}
			done[entry.ref()] = true
			all = append(all, entry)
		}
	}
	return all
}

// pairsWithin tells whether the mirror images of a part's cuts, if any, are on the part itself.
func pairsWithin(q *part.Part) bool {
	for _, c := range q.Cuts {
		if c.Pair != "" && !strings.HasPrefix(c.Pair, q.ID+"/") {
			return false
		}
	}
	return true
}

func findCut(p *form.Piece, ref string) (*part.Part, part.Cut, bool) {
	id, cutID, _ := strings.Cut(ref, "/")
	q := p.Part(id)
	if q == nil {
		return nil, part.Cut{}, false
	}
	for _, c := range q.Cuts {
		if c.ID == cutID {
			return q, c, true
		}
	}
	return nil, part.Cut{}, false
}

func (c pairedCut) ref() string { return c.part.ID + "/" + c.cut.ID }

// name is short, for a narrow column: "2, 3 Side: top end", "1 Top: left and right end".
func (c pairedCut) name() string {
	switch {
	case c.many != nil && c.otherPart == nil:
		return c.many.short() + ": " + cutName(c.cut.ID)
	case c.many != nil:
		return c.many.short() + ": " + bothCuts(c.cut.ID, c.other.ID) + c.mirrored()
	case c.otherPart == nil:
		return partMark(c.part) + ": " + cutName(c.cut.ID)
	case c.otherPart == c.part:
		return partMark(c.part) + ": " + bothCuts(c.cut.ID, c.other.ID) + c.mirrored()
	}
	return group{c.part, c.otherPart}.short() + ": " + bothCuts(c.cut.ID, c.other.ID) + c.mirrored()
}

// bothCuts writes "left-end" and "right-end" as "left and right end".
func bothCuts(a, b string) string {
	if a == b {
		return cutName(a)
	}
	first, kind, _ := strings.Cut(a, "-")
	second, other, _ := strings.Cut(b, "-")
	if kind == other {
		return first + " and " + second + " " + kind
	}
	return cutName(a) + " and " + cutName(b)
}

// mirrored is said of a pair that is swung, one to each hand; otherwise the two are alike.
func (c pairedCut) mirrored() string {
	if straight(c.cut.Swing) {
		return ""
	}
	return ", mirrored"
}

// partMark is the part as the drawings call it.
func partMark(q *part.Part) string { return strings.TrimSpace(q.Mark + " " + q.Name) }
