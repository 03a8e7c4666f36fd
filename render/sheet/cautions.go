package sheet

import (
	"slices"

	"splaywright/model/hold"
	"splaywright/model/tongue"
	"splaywright/render/draw"
)

// Caution is a heading with what to mind.
type Caution struct{ Head, Text string }

// Cautions are the usual ones of the trade; they take the place of no law, manual or training.
func Cautions(speak *tongue.Tongue) []Caution {
	out := slices.Clone(cautions)
	for i, c := range out {
		out[i] = Caution{speak.Say(c.Head), speak.Say(c.Text)}
	}
	return out
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

// cautionSheet stands at the end of every set.
func cautionSheet(s set) *blank {
	b := s.sheet(entry{title: s.o.say("Cautions")}, false)
	const headSize, textSize, step = 3.0, 2.5, 4.6
	y := b.room.Max.Y - 5
	width := min(b.room.Width(), 200)
	b.text(b.room.Min.X, y, 4, s.o.say("Before you cut"), true, b.ink.line)
	y -= 5
	for _, c := range Cautions(s.o.Tongue) {
		y -= 5
		b.text(b.room.Min.X, y, headSize, c.Head, true, b.ink.line)
		for _, l := range wrap(c.Text, textSize, width) {
			y -= step
			b.Items = append(b.Items, draw.Text{At: draw.Point{X: b.room.Min.X, Y: y}, Size: textSize, Text: l, Ink: b.ink.line, Layer: "notes"})
		}
		y -= 1.5
	}
	return b
}

// uncheckedSheet says plainly what the program has not looked into; it follows the cautions.
func uncheckedSheet(s set) *blank {
	b := s.sheet(entry{title: s.o.say("What was not checked")}, false)
	const textSize, step = 3.0, 5.4
	y := b.room.Max.Y - 5
	width := min(b.room.Width(), 200)
	b.text(b.room.Min.X, y, 4, s.o.say("What was not checked"), true, b.ink.line)
	y -= 5
	write := func(text string) {
		for _, l := range wrap(s.o.say(text), textSize, width) {
			y -= step
			b.Items = append(b.Items, draw.Text{At: draw.Point{X: b.room.Min.X, Y: y}, Size: textSize, Text: l, Ink: b.ink.line, Layer: "notes"})
		}
		y -= 3
	}
	write("The tables say what was reckoned, with limits and sources. These things were not looked into; judge them yourself, or ask somebody who can:")
	for _, text := range hold.NotChecked() {
		write(text)
	}
	write(hold.Caution)
	return b
}
