package tongue

import "regexp"

// named is a list of things of which each has something in brackets behind it, as parts have their marks: "the top (1) and
// the sides (2, 3)". What stands in the brackets may look like a list itself, so that such a list is read first of all.
var named = regexp.MustCompile(`^[^().;:]+ \([^()]*\)(?:(?:, | and )[^().;:]+ \([^()]*\))+$`)

// next is one thing of such a list, with what stands before it.
var next = regexp.MustCompile(`(, | and |^)([^().;:]+? \([^()]*\))`)

// named reads such a list thing by thing; every one has to be known.
func (t *reader) named(english string, deep int) (string, bool) {
	if !named.MatchString(english) {
		return "", false
	}
	said := ""
	for _, m := range next.FindAllStringSubmatch(english, -1) {
		text, ok := t.work(m[2], deep-1)
		if !ok {
			return "", false
		}
		if m[1] != "" {
			said += t.own(m[1])
		}
		said += text
	}
	return said, true
}
