package check

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/joint"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// What a bench can cut.
const (
	// narrowestChisel, mm (1/8 in): common practice.
	narrowestChisel = 3.0
	// halfPinLimit, mm: about 1/4 in where the pin is narrow, so that it does not break; Popular
	// Woodworking no. 154 (April 2006) p. 71.
	halfPinLimit = 6.0
	// wideTail, mm: 1 1/4 in, “How to size dovetails”, woodworkingcreations.us
	wideTail = 31.75
	// tailsToPin: the widest tail about four times the narrowest pin,
	// https://www.woodworkingarchive.biz/custom-woodworking/layout.html
	tailsToPin = 4.0
)

const (
	kerfSource    = "Popular Woodworking no. 154 (April 2006) p. 71: a pin may be as narrow as the saw kerf"
	chiselSource  = "common practice: the narrowest chisel, 3 mm (1/8 in)"
	halfPinSource = "Popular Woodworking no. 154 (April 2006) p. 71: about 1/4 in, so that it does not break"
	wideSource    = "https://woodworkingcreations.us and https://www.woodworkingarchive.biz/custom-woodworking/layout.html"
	equalSource   = "Technique of Furniture Making, https://www.furnituremaking.us/making-3/through-dovetails.html"
)

// dovetails looks at the pins and tails of every dovetailed corner.
func dovetails(r *run) {
	for _, j := range r.p.Joints {
		if len(j.Tails) == 0 {
			continue
		}
		pins(r, j)
		tails(r, j)
		halfPins(r, j)
	}
}

func jointParts(j joint.Joint) []string { return []string{j.TailBoard, j.PinBoard} }

// boards names the boards that carry the pins or tails of a corner.
func boards(id string) string {
	switch {
	case id == "top" || id == "front" || id == "back":
		return id
	case strings.HasPrefix(id, "top-"):
		return "treads"
	case strings.HasPrefix(id, "end-"):
		return "ends"
	case strings.HasPrefix(id, "stave-"):
		return "staves"
	}
	return "sides"
}

// narrowPin is the narrowest of the whole pins at its narrow place. Pins run along their board's
// grain with parallel cheeks on each face, so the two faces are all there is to look at.
func narrowPin(j joint.Joint) (width float64, any bool) {
	width = math.Inf(1)
	for _, face := range [][]joint.Span{j.Pins, j.PinsInner} {
		for i := 1; i < len(face)-1; i++ {
			width = min(width, face[i].Width().MM())
		}
	}
	return width, !math.IsInf(width, 1)
}

func pins(r *run, j joint.Joint) {
	width, any := narrowPin(j)
	if !any {
		return
	}
	f := part.Finding{Level: part.Warning, Figure: width, Unit: "mm", Parts: jointParts(j),
		Sizes: []string{"corners.pin", "corners.tails", "corners.tail"}}
	kerf := r.d.Saw.Kerf.MM()
	switch {
	case width < narrowestChisel-noise:
		f.ID, f.Limit, f.Source = "pin-narrower-than-chisel", narrowestChisel, chiselSource
		wide, least := r.apart(width, narrowestChisel)
		f.Text = sentence("the pins on the %s are %s wide at their narrow place, less than the narrowest chisel, %s; %s.",
			boards(j.PinBoard), wide, least, r.widerPin(width, max(narrowestChisel, kerf)))
	case width < kerf-noise:
		f.ID, f.Limit, f.Source = "pin-narrower-than-kerf", kerf, kerfSource
		wide, least := r.apart(width, kerf)
		f.Text = sentence("the pins on the %s are %s wide at their narrow place, less than the saw's kerf, %s; %s, or cut them with a thinner saw.",
			boards(j.PinBoard), wide, least, r.widerPin(width, kerf))
	default:
		return
	}
	r.add(f)
}

// widerPin says what corners.pin would have to be. The pin grows at its narrow place as much as
// the figure typed grows, because the slope does not change.
func (r *run) widerPin(width, limit float64) string {
	return fmt.Sprintf("a pin of %s or more clears it", r.mm(r.up(r.typedPin(width)+limit-width)))
}

// typedPin is corners.pin where it stands, and otherwise the width found.
func (r *run) typedPin(width float64) float64 {
	if r.d.Corners.Pin != nil {
		return r.d.Corners.Pin.MM()
	}
	return width
}

// tails looks at tails that are wider or narrower than the trade makes them, and at tails that
// leave no room for a chisel where they are narrow.
func tails(r *run, j joint.Joint) {
	root := math.Inf(1)
	for _, s := range j.TailRoots {
		root = min(root, s.Width().MM())
	}
	if root < narrowestChisel-noise {
		tailRoot(r, j, root)
		return
	}
	pin, any := narrowPin(j)
	if !any {
		oneTail(r, j)
		return
	}
	widest, narrowest := 0.0, math.Inf(1)
	for _, s := range j.Tails {
		widest, narrowest = max(widest, s.Width().MM()), min(narrowest, s.Width().MM())
	}
	f := part.Finding{Level: part.Note, Unit: "mm", Parts: jointParts(j), Sizes: []string{"corners.tails", "corners.tail", "corners.pin"}}
	switch {
	case narrowest < pin-noise:
		f.ID, f.Figure, f.Limit, f.Source = "tail-narrower-than-pin", narrowest, pin, equalSource
		wide, least := r.apart(narrowest, pin)
		f.Text = sentence("a tail on the %s is %s wide and the pin beside it %s; the trade makes the tail at least as wide as the pin.",
			boards(j.TailBoard), wide, least)
	case widest > wideTail+noise && widest > tailsToPin*pin+noise:
		limit := max(wideTail, tailsToPin*pin)
		wide, most := r.apart(widest, wideTail)
		f.ID, f.Figure, f.Limit, f.Source = "tail-wide", widest, limit, wideSource
		f.Text = sentence("the tails on the %s are up to %s wide, more than four times the pin of %s and more than the %s that hand work seldom passes; %s.",
			boards(j.TailBoard), wide, r.mm(pin), most, r.moreTails(j, pin, limit))
	default:
		return
	}
	r.add(f)
}

// oneTail looks at a joint without pins between half pins, as if these were the two halves of one.
func oneTail(r *run, j joint.Joint) {
	halves := math.Inf(1)
	for _, s := range j.Pins {
		halves = min(halves, 2*s.Width().MM())
	}
	pin := r.typedPin(halves)
	wide, limit := j.Tails[0].Width().MM(), max(wideTail, tailsToPin*pin)
	if wide <= limit+noise {
		return
	}
	width, most := r.apart(wide, wideTail)
	r.add(part.Finding{ID: "tail-wide", Level: part.Note, Figure: wide, Limit: limit, Unit: "mm", Source: wideSource,
		Parts: jointParts(j), Sizes: []string{"corners.tails", "corners.tail"},
		Text: sentence("the only tail on the %s is %s wide, more than the %s that hand work seldom passes; %s.",
			boards(j.TailBoard), width, most, r.moreTails(j, pin, limit))})
}

func tailRoot(r *run, j joint.Joint, root float64) {
	f := part.Finding{ID: "tail-narrow-at-root", Level: part.Warning, Figure: root, Limit: narrowestChisel, Unit: "mm",
		Source: chiselSource, Parts: jointParts(j), Sizes: []string{"corners.tails", "corners.tail", "corners.slope"}}
	wide, least := r.apart(root, narrowestChisel)
	f.Text = sentence("a tail on the %s is only %s wide at its baseline, so no chisel of %s goes between the pins there; make the tails at least %s wider, or fewer, or the slope less than %s.",
		boards(j.TailBoard), wide, least, r.mm(r.up(narrowestChisel-root)), deg(j.Slope))
	r.add(f)
}

// moreTails says how many equal tails of the same pins and half pins would be narrow enough.
func (r *run) moreTails(j joint.Joint, pin, limit float64) string {
	room := (j.Tails[len(j.Tails)-1].End - j.Tails[0].Start).MM()
	typed := r.typedPin(pin)
	n := int(math.Ceil((room+typed)/(limit+typed) - noise))
	each := (room+typed)/float64(n) - typed
	return fmt.Sprintf("%d tails of %s would be nearer", n, r.long(measure.Length(each)))
}
