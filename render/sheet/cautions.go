package sheet

import (
	"slices"

	"splaywright/model/form"
	"splaywright/model/hold"
	"splaywright/model/part"
	"splaywright/model/tongue"
	"splaywright/render/draw"
)

// Caution is a heading with what to mind.
type Caution struct{ Head, Text string }

// Cautions are the usual ones of the trade, as far as they are about such a piece; they take the place of no law, manual
// or training.
func Cautions(p *form.Piece, speak *tongue.Tongue) []Caution {
	var out []Caution
	for _, c := range cautions {
		if text := c.text(p); text != "" {
			out = append(out, Caution{speak.Say(c.Head), speak.Say(text)})
		}
	}
	return out
}

// text is what a caution says of a piece.
func (c Caution) text(p *form.Piece) string {
	switch {
	case c.Head == "Tipping and load" && !form.OnSides(p.Form):
		return "The program does not prove that a piece will not tip or break: try it loaded, where it will stand, before it is used."
	case c.Head == "Small and narrow parts" && !slips(p):
		return "Parts shorter than the saw's maker allows are cut by hand or from a longer board."
	}
	return c.Text
}

// slips tells whether wedges, splines, keys or plugs are cut for a piece.
func slips(p *form.Piece) bool {
	return slices.ContainsFunc(p.Parts, func(q *part.Part) bool {
		return q.Slip != "" || slices.ContainsFunc(q.Bores, func(b part.Bore) bool { return b.Plug > 0 })
	})
}

var cautions = []Caution{
	{"At the saw", "Unplug the saw, or isolate it, before the blade is touched or changed. Use guard, riving knife and push sticks; where the guard must come off for a tilted or nested cut, clamp the work to a sled and keep both hands behind the blade. Wear eye and hearing protection. Never trap an offcut between blade and fence, least of all with the blade tilted toward the fence."},
	{"First in scrap", "Make every tilted and swung cut in an offcut of the same thickness first, and hold it against these figures. Scales on saws are rarely true to half a degree; a sliding bevel set from the ratio given is better."},
	{"Small and narrow parts", "Parts shorter than the saw's maker allows are cut by hand or from a longer board. Wedges and plugs are cut on a carrier, never held in the fingers."},
	{"Tipping and load", "The program does not prove that a piece will not tip or break. A step or stool is stood on near its edge sooner or later: try it loaded on the floor where it will stand, with feet levelled, before anyone uses it. Feet that stand inside the top's ends tip sooner."},
	{"Children", "A piece for a child needs rounded edges, no gap that can trap a finger or a head, and a finish that is safe to chew. Tall furniture that a child could pull over is fixed to the wall."},
	{"Dust, glue and finish", "Collect dust at the machine and wear a mask; some timbers are sensitising. Rags with oil heat up by themselves: dry them flat outdoors or drown them in water."},
	{"Rules where you are", "Local building codes, workplace rules and product-safety law come before anything on these sheets. The makers' manuals of saw, bits, glue and finish come before our figures."},
}

// cautionSheets stand at the end of every set: the cautions, and plainly what the program has not looked into, in columns
// on one sheet where they fit it.
func cautionSheets(p *form.Piece, s set) []*blank {
	c := columns{set: s}
	c.open(s.o.say("Cautions"))
	c.head(s.o.say("Before you cut"), titleHead)
	for _, q := range Cautions(p, s.o.Tongue) {
		c.head(q.Head, smallHead)
		c.paragraph(q.Text)
	}
	title := s.o.say("What was not checked")
	c.y -= columnAir
	c.about = title
	c.head(title, titleHead)
	c.paragraph(s.o.say("The tables say what was reckoned, with limits and sources. These things were not looked into; judge them yourself, or ask somebody who can:"))
	for _, text := range hold.NotChecked(p) {
		c.paragraph(s.o.say(text))
	}
	c.paragraph(s.o.say(hold.Caution))
	return c.sheets
}

// columns set words in columns, sheet after sheet.
type columns struct {
	set    set
	sheets []*blank
	about  string // what is set now, for the title of the sheet
	n, of  int    // the column, and how many a sheet has
	wide   float64
	x, y   float64
}

// Letters, lines and columns of words, mm.
const (
	titleHead   = 4.0
	underTitle  = 1.8
	smallHead   = 3.0
	proseSize   = 2.5
	proseStep   = 4.4
	columnAir   = 10.0
	columnLeast = 105.0
)

func (c *columns) open(title string) {
	b := c.set.sheet(entry{title: title}, false)
	c.sheets = append(c.sheets, b)
	c.about = title
	c.of = max(1, int((b.room.Width()+columnAir)/(columnLeast+columnAir)))
	c.wide = (b.room.Width() - columnAir*float64(c.of-1)) / float64(c.of)
	c.n, c.x, c.y = 0, b.room.Min.X, b.room.Max.Y
}

func (c *columns) sheet() *blank { return c.sheets[len(c.sheets)-1] }

// need goes on in the next column when less than that is left of this one.
func (c *columns) need(high float64) {
	if c.y-high >= c.sheet().room.Min.Y {
		return
	}
	if c.n++; c.n == c.of {
		c.open(c.about)
		return
	}
	c.x, c.y = c.x+c.wide+columnAir, c.sheet().room.Max.Y
}

// head keeps with the two lines that follow.
func (c *columns) head(text string, size float64) {
	lines := wrapIn(text, size, c.wide, true)
	c.need(1.9*size*float64(len(lines)) + 2*proseStep)
	c.sheet().also(c.about)
	for _, l := range lines {
		c.y -= 1.5 * size
		c.sheet().text(c.x, c.y, size, l, true, c.sheet().ink.line)
	}
	c.y -= 0.4
	if size == titleHead {
		c.y -= underTitle
	}
}

// paragraph is not torn apart unless it is long.
func (c *columns) paragraph(text string) {
	lines := wrap(text, proseSize, c.wide)
	c.need(proseStep * float64(min(len(lines), 3)))
	for _, l := range lines {
		c.need(proseStep)
		c.y -= proseStep
		b := c.sheet()
		b.Items = append(b.Items, draw.Text{At: draw.Point{X: c.x, Y: c.y}, Size: proseSize, Text: l, Ink: b.ink.line, Layer: "notes"})
	}
	c.y -= 1.8
}
