package tongue

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// deepest is how often a text may stand within another: a part's name in a sentence in a list.
const deepest = 7

// betweenSentences is what stands between sentences, each of which keeps its full stop.
const (
	betweenSentences = ". "
	stop             = "."
)

// joints are what texts are put together with, the widest first. Each is said by the language's own,
// which it keeps as a text like any other.
var joints = []string{"\n", "; ", ": ", " – ", ", ", " to ", " and ", " or ", " → ", " × ", " + ", " = ", "/", " "}

// work finds a text by the formats that may have printed it, and else by its parts.
func (t *Tongue) work(english string, deep int) (string, bool) {
	if !hasWords(english) {
		return english, true
	}
	if text, ok := t.texts[english]; ok {
		return text, true
	}
	if deep == 0 {
		return english, false
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

// by reads a text by one format; whole tells that its figures were known as well.
func (t *Tongue) by(p pattern, english string, deep int) (text string, whole, ok bool) {
	p.match(english, func(figures []string) bool {
		all := true
		said := make([]string, len(figures))
		for i, f := range figures {
			known := true
			said[i] = f
			switch p.kinds[i] {
			case 's', 'v':
				said[i], known = t.work(f, deep-1)
			}
			all = all && known
		}
		if all || !ok {
			text, whole, ok = p.put(said), all, true
		}
		return all
	})
	return text, whole, ok
}

// parts reads a text piece by piece; every piece has to be known.
func (t *Tongue) parts(english string, deep int) (string, bool) {
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
			continue // "side 1" is a word and a figure; the words of a phrase do not stand alone
		}
		if text, ok := t.joined(pieces, j, deep); ok {
			return text, true
		}
	}
	return english, false
}

// sentences reads a text by the sentences that it begins with, as many as are known together, and the
// rest of it.
func (t *Tongue) sentences(english string, deep int) (string, bool) {
	between := " "
	if own, ok := t.texts[betweenSentences]; ok {
		between = own
	}
	for at := 0; ; {
		n := strings.Index(english[at:], betweenSentences)
		if n < 0 {
			return "", false
		}
		at += n + len(betweenSentences)
		if head, ok := t.work(english[:at-1], deep-1); ok {
			if rest, ok := t.work(english[at:], deep-1); ok {
				return head + between + rest, true
			}
		}
	}
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

func (t *Tongue) joined(pieces []string, joint string, deep int) (string, bool) {
	for i, p := range pieces {
		text, ok := t.work(p, deep-1)
		if !ok {
			return "", false
		}
		pieces[i] = text
	}
	return strings.Join(pieces, t.own(joint)), true
}

// own is what the language has for something between words.
func (t *Tongue) own(joint string) string {
	if own, ok := t.texts[joint]; ok {
		return own
	}
	return joint
}

// units are letters that are no words: they read the same in every language.
var units = map[string]bool{"mm": true, "in": true, "kg": true, "N": true, "x": true, "y": true, "z": true, "A": true, "B": true, "m": true, "cm": true, "MPa": true, "lb": true, "bd": true, "ft": true, "n": true, "R": true}

// hasWords tells whether there is anything in a text to translate.
func hasWords(text string) bool {
	words := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
	for _, w := range words {
		if !units[w] {
			return true
		}
	}
	return false
}
