package remedy

import (
	"math"
	"slices"

	"splaywright/model/form"
	"splaywright/model/joint"
)

const (
	tailsPath  = "corners.tails"
	widthsPath = "corners.tail-widths"
	tailWide   = "tail-wide"
	// mostPin is how much wider pins may become beside tails that are too wide for them: past a quarter the pins have been
	// changed to suit the tails, which are no narrower to saw for it (common practice).
	mostPin = 1.25
)

// tailCount is the count of tails of the corners as a number to turn, and what is left out with it: tails that are typed by
// their width, or one by one, would hold the count where it is.
func (s *search) tailCount() (value, *Offer, bool) {
	i := slices.IndexFunc(s.piece.Joints, s.concerned)
	if i < 0 {
		return value{}, nil, false
	}
	v := value{path: tailsPath, now: float64(len(s.piece.Joints[i].Tails)), step: 1}
	var also *Offer
	for _, path := range []string{"corners.mirrored", widthsPath, "corners.tail"} {
		if was := s.doc.Text(path) + s.doc.List(path); was != "" {
			also = &Offer{Path: path, Was: was, Also: also}
		}
	}
	return v, also, true
}

// concerned tells whether a joint has tails and is one that the finding is about.
func (s *search) concerned(j joint.Joint) bool {
	return len(j.Tails) > 0 && slices.Contains(s.finding.Parts, j.TailBoard)
}

// fatPins tells whether tails that were too wide for their pins have been cleared by the pins, or by fewer tails with wider
// pins between them.
func (s *search) fatPins(after *form.Piece) bool {
	if s.finding.ID != tailWide {
		return false
	}
	tails, pin := widest(s.piece, s.concerned)
	tailsThen, pinThen := widest(after, s.concerned)
	return tailsThen <= tails && pinThen > mostPin*pin
}

// widest is the count of tails of some joints and their widest whole pin, mm; one tail has none that could grow.
func widest(p *form.Piece, of func(joint.Joint) bool) (tails int, pin float64) {
	for _, j := range p.Joints {
		if !of(j) {
			continue
		}
		tails = max(tails, len(j.Tails))
		for i := 1; i < len(j.Pins)-1; i++ {
			pin = max(pin, j.Pins[i].Width().MM())
		}
	}
	if pin == 0 {
		pin = math.Inf(1)
	}
	return tails, pin
}
