package check

import (
	"fmt"
	"math"
	"strings"

	"splaywright/model/measure"
	"splaywright/model/part"
)

// Sources that several checks share.
const (
	commonPractice = "common practice"
	ownGeometry    = "geometry of this piece"
)

// fine is the design's style with a step fine enough that a figure and its limit read
// differently: 0.1 mm, or 1/64 in.
func fine(s measure.Style) measure.Style {
	least := measure.Millimetre / 10
	if s.Unit == measure.Imperial {
		least = measure.Inch / 64
	}
	if s.Step <= 0 || s.Step > least {
		s.Step = least
	}
	return s
}

// long shows a length in the design's units.
func (r *run) long(l measure.Length) string { return fine(r.style).FormatUnit(l) }

// mm shows a length given in millimetres in the design's units.
func (r *run) mm(l float64) string { return r.long(measure.Length(l)) }

// past shows by how much, mm, something reaches past where it may: never nothing.
func (r *run) past(by float64) string {
	text, _ := r.apart(by, 0)
	return text
}

// apart shows two lengths given in millimetres, a figure and its limit, so that they read differently where they are.
func (r *run) apart(figure, limit float64) (one, other string) {
	return fine(r.style).Apart(measure.Length(figure), measure.Length(limit))
}

// deg shows an angle to a tenth of a degree.
func deg(a measure.Angle) string { return measure.FormatAngle(a, measure.Degree/10) }

// about shows a rough limit in round figures: to 5 mm, or to the inch.
func (r *run) about(l measure.Length) string {
	s := r.style
	s.Step = 5
	if s.Unit == measure.Imperial {
		s.Step = measure.Inch
	}
	return s.FormatUnit(l)
}

// rough shows the limit of a range that a figure is not in: in round figures, unless the figure were within them.
func (r *run) rough(limit, figure measure.Length) string {
	round := measure.Length(5)
	if r.style.Unit == measure.Imperial {
		round = measure.Inch
	}
	shown := round * measure.Length(math.Round(float64(limit/round)))
	if (figure < limit) == (figure < shown) && math.Abs((figure-shown).MM()) > fine(r.style).Step.MM() {
		return r.about(limit)
	}
	_, text := r.apart(figure.MM(), limit.MM())
	return text
}

// step is the smallest difference that the design's papers show, or what sentences show where that is no whole number of these.
func (r *run) step() float64 {
	switch shown := float64(r.style.Step / fine(r.style).Step); {
	case r.style.Step > 0 && math.Abs(shown-math.Round(shown)) > noise:
		return fine(r.style).Step.MM()
	case r.style.Step > 0:
		return r.style.Step.MM()
	case r.style.Unit == measure.Imperial:
		return measure.DefaultFraction.MM()
	}
	return measure.DefaultStep.MM()
}

// up and down round a length to what the papers show, away from and towards zero.
func (r *run) up(l float64) float64 {
	return math.Ceil(l/r.step()-noise) * r.step()
}

func (r *run) down(l float64) float64 {
	return math.Floor(l/r.step()+noise) * r.step()
}

// list joins words as a sentence does: "a", "a or b", "a, b or c".
func list(words []string, last string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}

// sentence begins with a capital letter.
func sentence(format string, args ...any) string {
	s := fmt.Sprintf(format, args...)
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// cutName turns a cut's id into words: "front-edge" is "front edge".
func cutName(id string) string { return strings.ReplaceAll(id, "-", " ") }

// boardName is what a part is called in a sentence. The two sides go by one name, so that
// equal trouble on both reads the same and is told once.
func boardName(q *part.Part) string {
	switch {
	case isSide(q):
		return "side"
	case strings.HasPrefix(q.ID, "top-"):
		return strings.TrimPrefix(q.ID, "top-") + " tread"
	case isApron(q):
		return strings.TrimPrefix(q.ID, "apron-") + " apron"
	case isStretcher(q):
		return "stretcher " + strings.TrimPrefix(q.ID, "stretcher-")
	case strings.HasPrefix(q.ID, "end-"):
		return strings.TrimPrefix(q.ID, "end-") + " end"
	}
	return strings.ReplaceAll(q.ID, "-", " ")
}

// theBoard is a board's name with its article; a numbered one has none.
func theBoard(q *part.Part) string {
	if isStave(q) {
		return "every stave"
	}
	if every, ok := everySlip[q.Slip]; ok {
		return every
	}
	if isStretcher(q) && !isApron(q) || isBatten(q) {
		return boardName(q)
	}
	return "the " + boardName(q)
}

// everySlip names loose parts together: one strip makes them all.
var everySlip = map[part.Slip]string{part.Spline: "every spline", part.Key: "every key", part.Wedge: "every wedge"}

func isTop(q *part.Part) bool { return q.ID == "top" || strings.HasPrefix(q.ID, "top-") }

func isSide(q *part.Part) bool { return strings.HasPrefix(q.ID, "side") }

// isStretcher tells of a stretcher or an apron, which stands in the sides as one does.
func isStretcher(q *part.Part) bool {
	return strings.HasPrefix(q.ID, "stretcher") || isApron(q)
}

// railWord is "the stretcher" or "the apron".
func railWord(q *part.Part) string {
	if isApron(q) {
		return "the apron"
	}
	return "the stretcher"
}

func isApron(q *part.Part) bool { return strings.HasPrefix(q.ID, "apron") }

// boardSizes are the paths of the sizes that a board's outline follows from.
func boardSizes(q *part.Part) []string {
	switch {
	case isSide(q):
		return []string{"size.height", "size.depth"}
	case isStretcher(q):
		return []string{stretcherPath(q, "width"), "size.width"}
	case isWall(q):
		return wallSizes(q)
	}
	return []string{"size.width", "size.depth"}
}
