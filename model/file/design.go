package file

import (
	"fmt"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
)

// Design reads the whole document. Values that are left out are zero or nil; form.Design.Defaults
// gives them what follows. The error is Errors: everything that was not understood, not the first
// alone.
func (d *Document) Design() (form.Design, error) {
	r := &reading{d, newValues(d)}
	var out form.Design
	r.group("")
	r.version()
	r.piece(&out)
	r.boards(&out.Boards)
	r.corners(&out.Corners)
	for i := range r.list("stretchers") {
		out.Stretchers = append(out.Stretchers, r.stretcher(fmt.Sprintf("stretchers.%d", i)))
	}
	for i := range r.list("features") {
		out.Features = append(out.Features, r.feature(fmt.Sprintf("features.%d", i)))
	}
	r.names()
	r.shop(&out)
	if err := r.sorted(); err != nil {
		return form.Design{}, err
	}
	return out, nil
}

func (r *reading) version() {
	const path = "splaywright"
	if !r.need(path, fmt.Sprintf("the version of the format is missing; a design begins with splaywright: %d", Version)) {
		return
	}
	n := r.scalar(path)
	if n == nil || n.Value == fmt.Sprint(Version) {
		return
	}
	if strings.Trim(n.Value, "0123456789") == "" && !strings.HasPrefix(n.Value, "0") {
		r.refuse(n, path, fmt.Sprintf("written by a newer version; this one reads up to %d", Version))
		return
	}
	r.refuse(n, path, fmt.Sprintf("the version of the format is expected: %d", Version))
}

func (r *reading) piece(out *form.Design) {
	r.text(&out.Title, "title")
	r.text(&out.Timber, "timber")
	var unit string
	word(r, &unit, "units", words("mm in"))
	out.Units = r.v.bare
	if r.need("form", "the form of the piece is missing; write form: stool") {
		word(r, &out.Form, "form", words("stool"), "tray", "chest")
	}
	r.group("size")
	for _, s := range []struct {
		key string
		at  *measure.Length
	}{{"height", &out.Size.Height}, {"width", &out.Size.Width}, {"depth", &out.Size.Depth}} {
		path := "size." + s.key
		if r.need(path, "the "+s.key+" of the piece is missing; write size: {"+s.key+": …}") {
			r.length(s.at, path, above0)
		}
	}
	word(r, &out.Size.TakenAt, "size.taken-at", words("top floor"))
	r.group("splay")
	r.angle(&out.Splay.Ends, "splay.ends", between(-90, 90))
	r.angle(&out.Splay.Edges, "splay.edges", between(-90, 90))
	word(r, &out.Splay.EdgeCut, "splay.edge-cut", words("square flush"))
}

func (r *reading) boards(out *form.Boards) {
	r.group("boards")
	for path, b := range map[string]*form.Board{"boards.top": &out.Top, "boards.side": &out.Side} {
		r.group(path)
		r.length(&b.Thickness, path+".thickness", above0)
		r.text(&b.Timber, path+".timber")
	}
}

func (r *reading) corners(c *form.Corners) {
	r.group("corners")
	word(r, &c.Joint, "corners.joint", []string{form.ThroughDovetail, form.Butt, form.Housing}, "half-blind dovetail", "finger joint", "mitre")
	word(r, &c.TailsOn, "corners.tails-on", words("top side"))
	r.angle(&c.Slope, "corners.slope", between(0, 45))
	var tails int
	if r.count(&tails, "corners.tails", 1, maxItems) {
		c.Tails = &tails
	}
	r.maybe(&c.Tail, "corners.tail", above0)
	r.maybe(&c.Pin, "corners.pin", above0)
	r.maybe(&c.HalfPin, "corners.half-pin", above0)
	for i := range r.list("corners.tail-widths") {
		var w measure.Length
		r.length(&w, fmt.Sprintf("corners.tail-widths.%d", i), above0)
		c.TailWidths = append(c.TailWidths, w)
	}
	r.flag(&c.Mirrored, "corners.mirrored")
	r.length(&c.Overhang, "corners.overhang", from0)
	r.length(&c.OverhangEdges, "corners.overhang-edges", from0)
	r.maybe(&c.Depth, "corners.depth", above0)
	c.Screws = r.screws("corners.screws")
}

// screws reads a set of screws; nil when there is none. Wood screws are made in gauges 2 to 24; the
// table of bits goes from 4 to 14.
func (r *reading) screws(path string) *form.Screws {
	if !r.group(path) {
		return nil
	}
	var s form.Screws
	if r.need(path+".gauge", "the gauge of the screws is missing, such as gauge: 8") {
		r.count(&s.Gauge, path+".gauge", 4, 14)
	}
	if r.need(path+".length", "the length of the screws is missing") {
		r.length(&s.Length, path+".length", above0)
	}
	if r.need(path+".count", "how many screws there are in a row is missing, such as count: 2") {
		r.count(&s.Count, path+".count", 1, maxItems)
	}
	r.length(&s.FromEnd, path+".from-end", from0)
	r.length(&s.Counterbore, path+".counterbore", from0)
	r.flag(&s.Plug, path+".plug")
	return &s
}

func (r *reading) stretcher(path string) (s form.Stretcher) {
	if !r.group(path) {
		r.empty(path, "a stretcher is expected, such as {width: 60, thickness: 20}")
		return s
	}
	if r.need(path+".width", "the width of the stretcher is missing") {
		r.length(&s.Width, path+".width", above0)
	}
	r.length(&s.Thickness, path+".thickness", above0)
	word(r, &s.Set, path+".set", []string{form.OnEdge, form.Flat})
	r.length(&s.BelowTop, path+".below-top", from0)
	r.length(&s.Across, path+".across", anySize)
	word(r, &s.Joint, path+".joint", []string{form.Butt, form.Housing})
	r.length(&s.Depth, path+".depth", above0)
	r.text(&s.Timber, path+".timber")
	s.Screws = r.screws(path + ".screws")
	return s
}

// empty refuses an item of a list with nothing in it.
func (r *reading) empty(path, want string) {
	if n := r.doc.find(path); isNull(n) {
		r.refuse(n, path, want)
	}
}

// featureSizes is what each kind of feature needs.
var featureSizes = map[string][]string{
	"arch": {"width", "rise"}, "hand hole": {"length", "width"}, "slot": {"length", "width"},
	"hole": {"diameter"}, "round-over": {"radius"},
}

func (r *reading) feature(path string) (f form.Feature) {
	if !r.group(path) {
		r.empty(path, "a feature is expected, such as {on: side, kind: arch, width: 150, rise: 45}")
		return f
	}
	if r.need(path+".on", "which part the feature is on is missing, such as on: side") {
		word(r, &f.On, path+".on", words("top side side-left side-right stretcher all"))
	}
	if r.need(path+".kind", "the kind of the feature is missing, such as kind: arch") {
		word(r, &f.Kind, path+".kind", []string{"arch", "hand hole", "hole", "slot", "round-over"})
	}
	for _, key := range featureSizes[f.Kind] {
		r.need(path+"."+key, "the "+key+" of the "+f.Kind+" is missing")
	}
	r.length(&f.Width, path+".width", above0)
	r.length(&f.Rise, path+".rise", above0)
	r.length(&f.Length, path+".length", above0)
	r.length(&f.Diameter, path+".diameter", above0)
	r.length(&f.Radius, path+".radius", above0)
	r.length(&f.X, path+".x", anySize)
	r.length(&f.Y, path+".y", anySize)
	r.angle(&f.Angle, path+".angle", between(-180, 180))
	return f
}

// names works out every named value, so that a wrong one is refused even where it is not used.
func (r *reading) names() {
	if !r.group("names") {
		return
	}
	n := r.doc.find("names")
	for i := 0; i+1 < len(n.Content); i += 2 {
		r.v.at("names." + n.Content[i].Value)
	}
}

func (r *reading) shop(out *form.Design) {
	r.group("allowance")
	r.length(&out.Allowance.Length, "allowance.length", from0)
	r.length(&out.Allowance.Width, "allowance.width", from0)
	r.length(&out.Allowance.Thickness, "allowance.thickness", from0)
	r.group("saw")
	r.length(&out.Saw.Kerf, "saw.kerf", above0)
	r.angle(&out.Saw.Step, "saw.step", between(0, 10))
	r.flag(&out.Saw.FlatTable, "saw.flat-table")
	r.angle(&out.Saw.MaxSwing, "saw.max-swing", between(0, 90))
	r.angle(&out.Saw.MaxTilt, "saw.max-tilt", between(0, 90))
	r.group("round")
	r.length(&out.Round.To, "round.to", above0)
	out.Round.Unit = r.printed()
	r.flag(&out.Round.Both, "round.both")
	r.group("papers")
	word(r, &out.Papers.Sheet, "papers.sheet", words("A4 A3 Letter Tabloid"))
	word(r, &out.Papers.Projection, "papers.projection", words("first third"))
	if r.list("boards-on-hand") > 0 {
		r.refuse(r.doc.find("boards-on-hand"), "boards-on-hand", "boards on hand are not read yet; leave the list empty: []")
	}
}

// printed is the unit in which the step of the papers was typed.
func (r *reading) printed() measure.Unit {
	text := strings.ToLower(measure.Plain(r.doc.Text("round.to")))
	for _, w := range strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(" 0123456789./()*-+", c) }) {
		switch w {
		case "in", "inch", "inches", `"`, "''", "ft", "foot", "feet", "'":
			return measure.Imperial
		case "mm", "cm", "m", "millimetres", "millimeters":
			return measure.Metric
		}
	}
	return r.v.bare
}
