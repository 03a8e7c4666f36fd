package check

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// use is a published range of heights for something that people step or sit on.
type use struct {
	what      string
	low, high measure.Length
	source    string
}

// uses from the lowest. In between lie heights that are neither one nor the other.
var uses = []use{
	{"a step", 4 * measure.Inch, 12 * measure.Inch, "steps 4 to 7 in: IBC, http://boulderlibrary.net/author/admin/page/89 and step stools 8 to 12 in: OSHA 1926.1053, https://easyrelocated.com/how-tall-is-a-one-step-stool/"},
	{"a seat at a table", 430, 485, "17 to 19 in (430 to 485 mm): https://engineerfix.com/what-is-a-standard-chair-height and 2010 ADA Standards §903"},
	{"a counter stool", 24 * measure.Inch, 26 * measure.Inch, "https://engineerfix.com/how-to-measure-for-the-right-bar-height-stools"},
	{"a bar stool", 28 * measure.Inch, 32 * measure.Inch, "https://engineerfix.com/how-to-measure-for-the-right-bar-height-stools (bars of 42 in; the range of their seats is common practice)"},
}

// highestStand, mm: step stools are made and tested for standing up to 1 m, EN 14183.
const (
	highestStand       = 1000.0
	highestStandSource = "EN 14183 (scope), https://technickenormy.cz/csn-en-14183-schudky"
)

// heights notes a height that no published range holds, with the ranges on either side.
func heights(r *run) {
	h := r.d.Size.Height
	if h.MM() > highestStand+noise {
		high, most := r.apart(h.MM(), highestStand)
		r.add(part.Finding{ID: "height-beyond-standing", Level: part.Warning, Figure: h.MM(), Limit: highestStand, Unit: "mm", Source: highestStandSource,
			Parts: topIDs(r), Sizes: []string{"size.height"},
			Text: sentence("the top is %s high; standing on a stool is provided for up to %s. Local rules may ask for less.", high, most)})
		return
	}
	if r.d.Form == form.Steps {
		return // see climbing
	}
	hair := fine(r.style).Step / 2 // what sentences do not show; the ranges are not known so well
	var below, above *use
	for i := range uses {
		u := &uses[i]
		switch {
		case h < u.low-hair:
			if above == nil {
				above = u
			}
		case h > u.high+hair:
			below = u
		default:
			return
		}
	}
	var near, sources []string
	limit := measure.Length(0)
	for _, u := range []*use{below, above} {
		if u == nil {
			continue
		}
		near, sources = append(near, fmt.Sprintf("%s is %s to %s", u.what, r.rough(u.low, h), r.rough(u.high, h))), append(sources, u.source)
		if limit == 0 {
			limit = u.high
			if u == above {
				limit = u.low
			}
		}
	}
	r.add(part.Finding{ID: "height-between-uses", Level: part.Note, Figure: h.MM(), Limit: limit.MM(), Unit: "mm", Source: strings.Join(sources, "; "),
		Parts: topIDs(r), Sizes: []string{"size.height"},
		Text: sentence("at %s the top is not at a usual height: %s.", r.long(h), strings.Join(near, ", "))})
}

// The stability test of EN 1022: 600 N down at 60 mm inside the seat's edge and 20 N outward at
// seat level must not lift a foot. https://en.tentangkayu.com/2022/06/chair-stability-tests-based-on-en-1022.html
const (
	testLoad      = 600.0 // N
	testInside    = 60.0  // mm
	testPush      = 20.0  // N
	tippingSource = "EN 1022: 600 N at 60 mm inside the edge and 20 N outward (https://en.tentangkayu.com/2022/06/chair-stability-tests-based-on-en-1022.html); own weight left out"
)

// footLimit is how far inside the seat's edge the feet may stand at a seat height:
// 600·(60 − o) > 20·h.
func footLimit(height float64) float64 { return testInside - testPush*height/testLoad }

// stance tells of feet so far inside the top's edge that a person on the edge tips the piece.
func stance(r *run) {
	for _, s := range form.Seats(r.p) {
		feet(r, s, "end", s.EndInside, r.d.Corners.Overhang, []string{"splay.ends", "corners.overhang", s.Path})
		feet(r, s, "front or back edge", s.EdgeInside, r.d.Corners.OverhangEdges, []string{"splay.edges", "corners.overhang-edges", s.Path})
	}
}

func feet(r *run, s form.Seat, where string, inside, overhang measure.Length, paths []string) {
	limit := footLimit(s.Height.MM())
	if inside.MM() <= limit+noise || inside <= 0 {
		return
	}
	by := inside.MM() - limit
	if overhang <= 0 {
		paths = slices.DeleteFunc(paths, func(p string) bool { return strings.HasPrefix(p, "corners.overhang") })
	}
	r.add(part.Finding{ID: "may-tip", Level: part.Warning, Figure: inside.MM(), Limit: limit, Unit: "mm", Source: tippingSource,
		Parts: append([]string{s.ID}, sideIDs(r)...), Sizes: paths,
		Text: sentence("the feet stand %s inside the %s of %s, and at this height %s is the most before someone sitting or standing near it tips the piece; %s. Local rules may ask for more.",
			r.long(inside), where, theBoard(r.p.Part(s.ID)), r.mm(r.down(max(limit, 0))), r.bring(overhang.MM(), by))})
}

// bring says what comes out or in by so much, mm, where the seat overhangs that far.
func (r *run) bring(overhang, by float64) string {
	switch need := r.mm(r.up(by)); {
	case overhang <= 0:
		return fmt.Sprintf("bring the feet out by %s", need)
	case overhang < by:
		return fmt.Sprintf("bring the feet out, or the feet out and the overhang in, by %s together", need)
	default:
		return fmt.Sprintf("bring the feet out or the overhang in by %s", need)
	}
}

// child reminds of what children add, where the title says that the piece is for one.
func child(r *run) {
	words := strings.FieldsFunc(strings.ToLower(r.d.Title), func(c rune) bool { return c < 'a' || c > 'z' })
	if !slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains([]string{"child", "children", "childs", "kid", "kids", "toddler", "nursery", "baby"}, w)
	}) {
		return
	}
	r.add(part.Finding{ID: "for-a-child", Level: part.Note, Unit: "", Source: "common practice; rules differ from place to place", Parts: topIDs(r), Sizes: []string{"title"},
		Text: "A piece for a child: keep the feet at least as wide as the top, ease every edge, close screw heads with glued plugs, leave no hole a finger can stick in, and follow the local rules for children's furniture."})
}
