package tongue

import (
	"strings"
	"unicode"
)

// deepest is how often a text may stand within another: a part's name in a sentence in a list.
const deepest = 5

// joints are what texts are put together with, the widest first. Each is said by the language's own,
// which it keeps as a text like any other.
var joints = []string{"\n", sentences, "; ", ": ", " – ", ", ", " and ", " or ", " → ", " × ", " + ", " = ", "/", " "}

// sentences parts sentences; each keeps its full stop, and a language says what stands between them.
const sentences = ". "

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
	if found {
		return some, false
	}
	return english, false
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
		if joint == sentences && i < len(pieces)-1 {
			p += "."
		}
		text, ok := t.work(p, deep-1)
		if !ok {
			return "", false
		}
		pieces[i] = text
	}
	own, ok := t.texts[joint]
	switch {
	case ok:
		joint = own
	case joint == sentences:
		joint = " "
	}
	return strings.Join(pieces, joint), true
}

// units are letters that are no words: they read the same in every language.
var units = map[string]bool{"mm": true, "in": true, "kg": true, "N": true, "x": true, "y": true, "z": true, "A": true, "B": true, "m": true}

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
