package tongue

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// pattern knows the texts that a format prints.
type pattern struct {
	english string
	text    string   // the format in the other language
	between []string // the words before the first figure, between figures, after the last one
	kinds   []byte   // of the figures: the verb that prints them
	words   int      // letters of the format that are no figures
}

// asItStands is the kind of a figure that is no word of ours, whatever it reads like: a key of the design file, the name
// of a file or of a flag. Formats print it by %+s.
const asItStands = '+'

// verb is a figure's place in a format; an index tells which figure it is.
var verb = regexp.MustCompile(`%(?:\[(\d+)\])?[+\-#0]*\d*(?:\.\d+)?(?:\[(\d+)\])?([a-zA-Z%])`)

// patternsOf reads a format: as it stands, and where its spaces tell that a text is put before or behind it, with that
// text; one that ends in an addition without it as well. A text without a figure is no pattern, and neither is one without words.
func patternsOf(english, text string) []pattern {
	var out []pattern
	add := func(english, text string) {
		if p, ok := patternOf(english, text); ok {
			out = append(out, p)
		}
	}
	add(english, text)
	if m := addition.FindStringSubmatchIndex(english); m != nil {
		add(english[:m[2]]+english[m[3]:], without(text, len(verb.FindAllString(english, -1))))
	}
	if len(english) <= 2 || slices.Contains(joints, english) {
		return out
	}
	whole, said := english, text
	if strings.HasSuffix(english, " ") && !strings.Contains(said, "%[") {
		whole, said = whole+"%s", said+"%s"
	}
	for _, begins := range []string{" ", ", ", "; ", ". ", "\n"} {
		if strings.HasPrefix(english, begins) {
			whole, said = "%s"+whole, behind(said)
			break
		}
	}
	if whole != english {
		add(whole, said)
	}
	return out
}

// addition is a last figure that stands right behind a word, which is a clause of its own or nothing at all.
var addition = regexp.MustCompile(`[^\s(%](%s)\.?$`)

// without takes the last of n figures out of a format.
func without(text string, n int) string {
	if index := "%[" + strconv.Itoa(n) + "]s"; strings.Contains(text, index) {
		return strings.Replace(text, index, "", 1)
	}
	if at := strings.LastIndex(text, "%s"); at >= 0 {
		return text[:at] + text[at+len("%s"):]
	}
	return text
}

// behind is a format with a text before it: the numbers of its figures count one on.
func behind(text string) string {
	return "%[1]s" + numbered(text)
}

// numbered gives every figure of a format its number, counted from 2.
func numbered(text string) string {
	next := 0
	return verb.ReplaceAllStringFunc(text, func(v string) string {
		m := verb.FindStringSubmatch(v)
		if m[3] == "%" {
			return v
		}
		if index := m[1] + m[2]; index != "" {
			n, err := strconv.Atoi(index)
			if err != nil {
				return v
			}
			next = n - 1
		}
		next++
		return "%[" + strconv.Itoa(next+1) + "]" + m[3]
	})
}

func patternOf(english, text string) (pattern, bool) {
	p := pattern{english: english, text: text}
	at := 0
	var words strings.Builder
	for _, m := range verb.FindAllStringSubmatchIndex(english, -1) {
		words.WriteString(english[at:m[0]])
		at = m[1]
		kind := english[m[6]]
		if kind == '%' {
			words.WriteByte('%')
			continue
		}
		p.between = append(p.between, words.String())
		if kind == 's' && strings.Contains(english[m[0]:m[1]], "+") {
			kind = asItStands
		}
		p.kinds = append(p.kinds, kind)
		words.Reset()
	}
	if len(p.kinds) == 0 {
		return p, false
	}
	p.between = append(p.between, words.String()+english[at:])
	for _, b := range p.between {
		for _, r := range b {
			if unicode.IsLetter(r) {
				p.words++
			}
		}
	}
	return p, p.words > 1
}

// allOf tells whether each item of a list reads as the format prints it.
func (p pattern) allOf(text string) bool {
	items := strings.Split(text, betweenItems)
	return len(items) > 1 && !slices.ContainsFunc(items, func(item string) bool {
		return !p.match(item, func([]string) bool { return true })
	})
}

// match gives the figures of a text that the format may have printed, in one way after the other
// until take is content with one.
func (p pattern) match(text string, take func(figures []string) bool) bool {
	first, last := p.between[0], p.between[len(p.between)-1]
	if len(text) < len(first)+len(last) || !strings.HasPrefix(text, first) || !strings.HasSuffix(text, last) {
		return false
	}
	return p.rest(text[len(first):len(text)-len(last)], nil, take)
}

func (p pattern) rest(text string, figures []string, take func([]string) bool) bool {
	i := len(figures)
	if i == len(p.kinds)-1 {
		return fits(p.kinds[i], text) && take(append(slices.Clone(figures), text))
	}
	sep := p.between[i+1]
	for at := 0; ; {
		n := strings.Index(text[at:], sep)
		if n < 0 || at+n+len(sep) > len(text) {
			return false
		}
		if figure := text[:at+n]; fits(p.kinds[i], figure) {
			if p.rest(text[at+n+len(sep):], append(slices.Clone(figures), figure), take) {
				return true
			}
		}
		at += n + max(1, len(sep))
		if at > len(text) {
			return false
		}
	}
}

// fits tells whether a text may be what a verb prints.
func fits(kind byte, text string) bool {
	switch kind {
	case 'd':
		_, err := strconv.Atoi(strings.TrimPrefix(text, "+"))
		return err == nil
	case 'f', 'g', 'e':
		_, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		return err == nil
	case 'q':
		return quoted(text)
	}
	return text != ""
}

// quoted tells whether a text is what %q prints of a text or of a list of texts.
func quoted(text string) bool {
	if n := len(text); n >= 2 && text[0] == '[' && text[n-1] == ']' {
		text = text[1 : n-1]
		return text == "" || quoted(text)
	}
	return len(text) >= 2 && text[0] == '"' && text[len(text)-1] == '"'
}

// put puts figures into the format of the other language.
func (p pattern) put(figures []string) string {
	next := 0
	return verb.ReplaceAllStringFunc(p.text, func(v string) string {
		m := verb.FindStringSubmatch(v)
		if m[3] == "%" {
			return "%"
		}
		if index := m[1] + m[2]; index != "" {
			n, err := strconv.Atoi(index)
			if err != nil || n < 1 || n > len(figures) {
				return v // a test of the translations finds it
			}
			next = n - 1
		}
		if next >= len(figures) {
			return v
		}
		next++
		return figures[next-1]
	})
}

// Figures lists the verbs that a format prints its figures by, in the order of the figures; false when
// a figure is numbered that is not there, or is printed by two verbs.
func Figures(format string) (verbs []string, ok bool) {
	kinds, next, most := map[int]string{}, 0, 0
	for _, m := range verb.FindAllStringSubmatch(format, -1) {
		if m[3] == "%" {
			continue
		}
		next++
		if index := m[1] + m[2]; index != "" {
			n, err := strconv.Atoi(index)
			if err != nil || n < 1 {
				return nil, false
			}
			next = n
		}
		if was, twice := kinds[next]; twice && was != m[3] {
			return nil, false
		}
		kinds[next] = m[3]
		most = max(most, next)
	}
	for i := 1; i <= most; i++ {
		if kinds[i] == "" {
			return nil, false
		}
		verbs = append(verbs, kinds[i])
	}
	return verbs, true
}
