// Package tongue says the program's English in other languages. A text that always reads the same is
// looked up; a sentence with figures in it is known by the format that prints it, and its figures
// are put into the format of the other language. The model and the tables know nothing of languages.
package tongue

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"splaywright/assets"
	"splaywright/model/measure"
)

// English is the language that the program is written in.
const English = "en"

// Codes are the languages that the program speaks, English first.
func Codes() []string { return []string{English, "de", "ja"} }

// Name is a language's own name.
func Name(code string) string {
	switch code {
	case "de":
		return "Deutsch"
	case "ja":
		return "日本語"
	}
	return "English"
}

// Tongue is one language. It may be used from several goroutines.
type Tongue struct {
	code     string
	texts    map[string]string
	patterns []pattern // those with the most words first

	mu    sync.Mutex
	known map[string]reading
	miss  func(english string)
}

// reading is what a text has come to before.
type reading struct {
	text  string
	whole bool
}

// mostKnown bounds what is kept of readings; sizes that are typed make new texts all the time.
const mostKnown = 8192

// Load gives a language of Codes; any other code gives English.
func Load(code string) *Tongue {
	if !slices.Contains(Codes(), code) {
		code = English
	}
	texts := map[string]string{}
	for _, area := range assets.TongueAreas(code) {
		for english, text := range area {
			texts[english] = text
		}
	}
	return New(code, texts)
}

// New makes a language of English texts and what they are in it.
func New(code string, texts map[string]string) *Tongue {
	t := &Tongue{code: code, texts: texts, known: map[string]reading{}}
	for english, text := range texts {
		t.patterns = append(t.patterns, patternsOf(english, text)...)
	}
	slices.SortFunc(t.patterns, func(a, b pattern) int {
		if a.words != b.words {
			return b.words - a.words
		}
		return strings.Compare(a.english, b.english)
	})
	return t
}

// Code is the language's code. No language at all, nil, is English here as in Say, Fill and Read.
func (t *Tongue) Code() string {
	if t == nil {
		return English
	}
	return t.code
}

// Comma tells whether decimals are divided by a comma in the language: "12,5".
func (t *Tongue) Comma() bool { return t.Code() == "de" }

// Missed has a function called with each text that is said and not known whole, so that a test sees what is
// missing. It is set before the language is used.
func (t *Tongue) Missed(miss func(english string)) { t.miss = miss }

// Say gives a text in the language, and the English one where it has none.
func (t *Tongue) Say(english string) string {
	text, whole := t.Read(english)
	if !whole && t.miss != nil {
		t.miss(english)
	}
	return text
}

// Sense says a text that English has for several things, given with what is meant behind a stroke: "top|way" is
// "top" in English, and in the others what they have for "top|way".
func (t *Tongue) Sense(key string) string {
	english, _, _ := strings.Cut(key, "|")
	if t.Code() == English {
		return english
	}
	text, ok := t.texts[key]
	if !ok {
		if t.miss != nil {
			t.miss(key)
		}
		return t.Say(english)
	}
	return text
}

// Fill prints by a format in the language. The figures are not translated.
func (t *Tongue) Fill(format string, args ...any) string {
	if t.Code() == English {
		return fmt.Sprintf(format, args...)
	}
	text, ok := t.texts[format]
	if !ok {
		if t.miss != nil {
			t.miss(format)
		}
		text = format
	}
	return fmt.Sprintf(text, args...)
}

// read takes a text apart. One whose decimals were made commas before is read with points, where its own words hold
// some, and has its commas again.
func (t *Tongue) read(english string) (text string, whole bool) {
	work := reader{t, map[string]reading{}, mostWork}
	text, whole = work.work(english, deepest)
	if whole || !decimal.MatchString(english) {
		return text, whole
	}
	for _, thousands := range []bool{false, true} {
		again := reader{t, map[string]reading{}, mostWork}
		if said, ok := again.work(pointed(english, thousands), deepest); ok {
			return measure.Style{Comma: true}.Text(said), true
		}
	}
	return text, whole
}

// decimal is a number with a comma.
var decimal = regexp.MustCompile(`(\d),(\d+)`)

// pointed gives decimals their points again; thousands keeps the commas of numbers such as 15,700.
func pointed(text string, thousands bool) string {
	return decimal.ReplaceAllStringFunc(text, func(n string) string {
		if thousands && len(n) == len("5,700") {
			return n
		}
		return strings.Replace(n, ",", ".", 1)
	})
}

// Read gives a text in the language, and whether all of it was known. In English everything is.
func (t *Tongue) Read(english string) (text string, whole bool) {
	if t.Code() == English || !hasWords(english) {
		return english, true
	}
	if text, ok := t.texts[english]; ok {
		return text, true
	}
	t.mu.Lock()
	r, ok := t.known[english]
	t.mu.Unlock()
	if ok {
		return r.text, r.whole
	}
	r.text, r.whole = t.read(english)
	t.mu.Lock()
	defer t.mu.Unlock()
	if len(t.known) >= mostKnown {
		clear(t.known)
	}
	t.known[english] = r
	return r.text, r.whole
}
