package table

import (
	"slices"
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

	more []part.Cut // cuts of the same boards with the same figures
}

// pairedCuts lists every cut of the piece once, a pair as one entry at its first cut's place. Of
// equal parts, as the staves of a ring, the first stands for all; not so of two that are each other's
// mirror image, nor of two that are equal only when one is turned end for end.
func pairedCuts(p *form.Piece) []pairedCut {
	var all []pairedCut
	done := map[string]bool{}
	many := map[*part.Part]group{}
	for _, g := range sameWayRound(groups(p)) {
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
			if k := slices.IndexFunc(all, func(c pairedCut) bool { return c.takes(entry) }); k >= 0 {
				all[k].more = append(all[k].more, c)
				continue
			}
			all = append(all, entry)
		}
	}
	return all
}

// sameWayRound splits groups of equal parts by where their cuts are: in each the cuts of one name are alike.
func sameWayRound(all []group) []group {
	var out []group
	for _, g := range all {
		from := len(out)
	parts:
		for _, q := range g {
			for k := from; k < len(out); k++ {
				if alikeByName(out[k][0], q) {
					out[k] = append(out[k], q)
					continue parts
				}
			}
			out = append(out, group{q})
		}
	}
	return out
}

func alikeByName(a, b *part.Part) bool {
	return !slices.ContainsFunc(a.Cuts, func(c part.Cut) bool {
		d, ok := cutNamed(b, c.ID)
		return !ok || !alikeCut(c, d)
	})
}

// takes tells whether another entry's cuts are made as this one's on the same boards: they share its rows, as the
// two long edges of a board that are both sawn square.
func (c pairedCut) takes(o pairedCut) bool {
	if c.part != o.part || c.otherPart != o.otherPart || c.otherPart == c.part {
		return false
	}
	square := func(k part.Cut) bool { return straight(k.Swing) && straight(k.Tilt) }
	return alikeCut(c.cut, o.cut) || c.cut.Kind == o.cut.Kind && square(c.cut) && square(o.cut)
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
	return c.boards() + ": " + c.cuts()
}

// boards are the marks and the name of those that have the cuts.
func (c pairedCut) boards() string {
	switch {
	case c.many != nil:
		return c.many.short()
	case c.otherPart == nil, c.otherPart == c.part:
		return partMark(c.part)
	}
	return group{c.part, c.otherPart}.short()
}

// cuts are the names of the cuts: "left and right end, mirrored".
func (c pairedCut) cuts() string {
	ids := []string{c.cut.ID}
	if c.otherPart != nil && c.other.ID != c.cut.ID {
		ids = append(ids, c.other.ID)
	}
	for _, m := range c.more {
		ids = append(ids, m.ID)
	}
	name := cutName(ids[0])
	if len(ids) > 1 {
		name = allCuts(ids)
	}
	if c.otherPart == nil {
		return name
	}
	return name + c.mirrored()
}

// pairNames are the usual pairs, as one text each: other languages bend the words together.
var pairNames = map[string]string{
	"left-end+right-end": "left and right end", "right-end+left-end": "right and left end",
	"front-edge+back-edge": "front and back edge", "back-edge+front-edge": "back and front edge",
	"lower-edge+upper-edge": "lower and upper edge", "upper-edge+lower-edge": "upper and lower edge",
	"front-end+back-end": "front and back end", "back-end+front-end": "back and front end",
	"left-edge+right-edge": "left and right edge", "top-end+floor-end": "top end and floor end",
}

// allCuts writes "left-end" and "right-end" as "left and right end".
func allCuts(ids []string) string {
	if name, ok := pairNames[strings.Join(ids, "+")]; ok {
		return name
	}
	var firsts, names []string
	kind := ""
	for i, id := range ids {
		first, k, _ := strings.Cut(id, "-")
		if i == 0 {
			kind = k
		}
		if k != kind {
			firsts = nil
			kind = "\n" // no other is of this kind
		}
		firsts, names = append(firsts, first), append(names, cutName(id))
	}
	if len(firsts) == len(ids) {
		return and(firsts) + " " + kind
	}
	return and(names)
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
