package tongue

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// deepest is how often a text may stand within another: a part's name in a sentence in a list.
const deepest = 9

// betweenSentences is what stands between sentences, each of which keeps its full stop.
const (
	betweenSentences = ". "
	stop             = "."
	betweenItems     = "; "
)

// joints are what texts are put together with, the widest first. Each is said by the language's own,
// which it keeps as a text like any other.
var joints = []string{"\n", "; ", ", or ", ": ", " – ", ", ", " to ", " and ", " or ", " → ", " × ", " + ", " = ", "/", " "}

// mostWork bounds the pieces that one sentence is taken apart into: a long text that is not known must not
// hold anything up.
const mostWork = 300

// reader reads one text.
type reader struct {
	*Tongue
	seen map[string]reading
	left int // pieces that may still be looked at
}

func (t *reader) work(english string, deep int) (string, bool) {
	if r, ok := t.seen[english]; ok {
		return r.text, r.whole
	}
	if t.left--; t.left < 0 {
		return english, false
	}
	text, whole := t.find(english, deep)
	t.seen[english] = reading{text, whole}
	return text, whole
}

// find finds a text by the formats that may have printed it, and else by its parts.
func (t *reader) find(english string, deep int) (string, bool) {
	if !hasWords(english) {
		return english, true
	}
	if text, ok := t.texts[english]; ok {
		return text, true
	}
	if deep == 0 {
		return english, false
	}
	if strings.Count(english, betweenSentences) >= mostTogether { // no format prints so many
		return t.sentences(english, deep)
	}
	if list := strings.Split(english, betweenItems); len(list) > mostTogether { // a list, each of which is known
		if text, ok := t.joined(list, betweenItems, deep); ok {
			return text, true
		}
	}
	if text, ok := t.named(english, deep); ok {
		return text, true
	}
	some, found := "", false
	for _, p := range t.patterns {
		text, whole, ok := t.by(p, english, deep)
		if whole {
			return text, true
		}
		if ok && !found {
			some, found = text, true
		}
	}
	if text, ok := t.parts(english, deep); ok {
		return text, true
	}
	if text, ok := t.texts[great(english)]; ok { // a heading that stands within a line
		return text, true
	}
	if lower := small(english); lower != english { // a phrase that begins a sentence
		if text, whole := t.work(lower, deep-1); whole || !found && text != lower {
			return great(text), whole
		}
	}
	if found {
		return some, false
	}
	return english, false
}

// small and great change a text's first letter.
func small(text string) string { return first(text, unicode.ToLower) }
func great(text string) string { return first(text, unicode.ToUpper) }

func first(text string, change func(rune) rune) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(change(r)) + text[n:]
}

// by reads a text by one format; whole tells that its figures were known as well. Of several ways to find the figures the
// first counts, or the first in which no name has lost its end to the figure behind it.
func (t *reader) by(p pattern, english string, deep int) (text string, whole, ok bool) {
	if p.allOf(english) {
		return "", false, false // a list of what the format prints, not one with a list in it
	}
	p.match(english, func(figures []string) bool {
		all := true
		said := make([]string, len(figures))
		for i, f := range figures {
			known := true
			said[i] = f
			switch p.kinds[i] {
			case 's', 'v', 'w':
				said[i], known = t.work(f, deep-1)
			}
			all = all && known
		}
		if all && !whole || !ok {
			text, whole, ok = p.put(said), all, true
		}
		if all && !p.torn(figures) {
			text = p.put(said)
			return true
		}
		return t.left < 0
	})
	return text, whole, ok
}

// sides are the words that the names of boards end with, behind a comma.
var sides = []string{"left", "right", "middle", "front", "back", "lower", "upper"}

// torn tells figures one of which begins with the end of the name in the one before it: "3 Side" and "left, 6.0°".
func (p pattern) torn(figures []string) bool {
	for i, f := range figures[1:] {
		if begins, _, _ := strings.Cut(f, ", "); strings.HasPrefix(p.between[i+1], ", ") && slices.Contains(sides, begins) {
			return true
		}
	}
	return false
}

// parts reads a text piece by piece; every piece has to be known.
func (t *reader) parts(english string, deep int) (string, bool) {
	if inner, ok := strings.CutSuffix(english, ")"); ok {
		if before, in, ok := strings.Cut(inner, " ("); ok {
			a, okA := t.work(before, deep-1)
			b, okB := t.work(in, deep-1)
			if okA && okB {
				return a + " (" + b + ")", true
			}
		}
	}
	if inner, ok := strings.CutSuffix(english, stop); ok {
		if text, ok := t.work(inner, deep-1); ok {
			return text + t.own(stop), true
		}
	}
	if text, ok := t.sentences(english, deep); ok {
		return text, true
	}
	for _, j := range joints {
		pieces := strings.Split(english, j)
		if len(pieces) < 2 {
			continue
		}
		if j == " " && wordy(pieces) > 1 {
			if text, ok := t.counted(english, deep); ok {
				return text, true
			}
			continue // "side 1" is a word and a figure; the words of a phrase do not stand alone
		}
		if text, ok := t.joined(pieces, j, deep); ok {
			return text, true
		}
	}
	return english, false
}

// counted reads a phrase with figures before or behind it: "hand hole 90 × 24".
func (t *reader) counted(english string, deep int) (string, bool) {
	for i := len(english) - 1; i > 0; i-- {
		if english[i] == ' ' && !hasWords(english[i:]) {
			if text, ok := t.work(english[:i], deep-1); ok {
				return text + english[i:], true
			}
		}
	}
	for i := range len(english) {
		if english[i] == ' ' && !hasWords(english[:i]) {
			if text, ok := t.work(english[i+1:], deep-1); ok {
				return english[:i+1] + text, true
			}
		}
	}
	return "", false
}

// mostTogether is how many sentences are kept as one text.
const mostTogether = 3

// sentences reads a text sentence by sentence, or as many together as are known; whole tells whether all are.
func (t *reader) sentences(english string, deep int) (said string, whole bool) {
	list := strings.Split(english, betweenSentences)
	if len(list) < 2 {
		return "", false
	}
	whole = true
	var out []string
	for len(list) > 0 {
		n := 0
		for k := 1; k <= min(mostTogether, len(list)) && n == 0; k++ {
			text := strings.Join(list[:k], betweenSentences)
			if k < len(list) {
				text += stop
			} else if len(out) == 0 {
				break // the whole text again
			}
			t.left = mostWork
			if said, ok := t.work(text, deep-1); ok {
				out, n = append(out, said), k
			}
		}
		if n == 0 { // said as far as it is known
			text := list[0]
			if len(list) > 1 {
				text += stop
			}
			said, _ := t.work(text, deep-1)
			out, n, whole = append(out, said), 1, false
		}
		list = list[n:]
	}
	between := " "
	if own, ok := t.texts[betweenSentences]; ok {
		between = own
	}
	return strings.Join(out, between), whole
}

func wordy(pieces []string) int {
	n := 0
	for _, p := range pieces {
		if hasWords(p) {
			n++
		}
	}
	return n
}

func (t *reader) joined(pieces []string, joint string, deep int) (string, bool) {
	most := 1
	if joint == " or " { // "40 mm or less" is one
		most = mostTogether
	}
	var said []string
	for left := pieces; len(left) > 0; {
		n := 0
		for k := 1; k <= min(most, len(left), len(pieces)-1) && n == 0; k++ {
			if text, ok := t.work(strings.Join(left[:k], joint), deep-1); ok {
				said, n = append(said, text), k
			}
		}
		if n == 0 {
			return "", false
		}
		left = left[n:]
	}
	return strings.Join(said, t.own(joint)), true
}

// own is what the language has for something between words.
func (t *Tongue) own(joint string) string {
	if own, ok := t.texts[joint]; ok {
		return own
	}
	return joint
}

// units are letters that are no words: they read the same in every language.
var units = map[string]bool{"mm": true, "in": true, "kg": true, "N": true, "x": true, "y": true, "z": true, "A": true, "B": true, "m": true, "cm": true, "MPa": true, "lb": true, "lbf": true, "psi": true, "bd": true, "ft": true, "n": true, "R": true, "Ø": true,
	"FAS": true, "SEL": true, "F": true, "C": true, "AC": true} // the marks of grades: F1F, 1C, 2AC

// address is a place on the net, which has no words.
var address = regexp.MustCompile(`[a-z]+://\S+`)

// path is a place in the design file, which reads the same in every language.
var path = regexp.MustCompile(`^[a-z]+(-[a-z]+)*(\.[a-z0-9-]+)+$`)

// hasWords tells whether there is anything in a text to translate.
func hasWords(text string) bool {
	if strings.Contains(text, "://") {
		text = address.ReplaceAllString(text, "")
	}
	if strings.Contains(text, ".") && !strings.Contains(text, " ") && path.MatchString(text) {
		return false
	}
	words := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
	for _, w := range words {
		if !units[w] {
			return true
		}
	}
	return false
}
