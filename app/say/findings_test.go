package say_test

import (
	"go/ast"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"splaywright/model/tongue"
)

// finding are the packages whose sentences a woodworker reads: findings, refusals and what would do.
var finding = []string{"check", "form", "motion", "remedy", "resize", "joint", "hold", "yield", "stock/line"}

// sentenceWords is from how many words on a text is taken for a sentence rather than for a key or a tag.
const sentenceWords = 4

// inside are texts of those packages that nobody reads: they tell of a fault of the program itself.
var inside = regexp.MustCompile(`^screw-%d |^socket %d %s$|^(bar|stock|part) %[dq]|^kerf %g|^cost stated|^bound %|^%s: %d (cut|taken), %d`)

// formatVerb is a figure's place in a format.
var formatVerb = regexp.MustCompile(`%(\[\d+\])?[+\-#0]*\d*(\.\d+)?[a-zA-Z]`)

// TestEveryFindingHasItsTextInEveryLanguage reads the sources: a finding that no example has would else show in English on
// the day that somebody runs into it. A format has to be known, and so has every plain sentence.
func TestEveryFindingHasItsTextInEveryLanguage(t *testing.T) {
	found := sentences(t)
	if len(found) < 300 {
		t.Fatalf("only %d sentences of findings; the walk is broken", len(found))
	}
	for _, code := range others() {
		have, speak := texts(t, code), tongue.Load(code)
		for _, text := range sorted(found) {
			if _, ok := have[text]; ok {
				continue
			}
			if _, whole := speak.Read(filled(text)); !whole {
				t.Errorf("%s has no text for %q of %s", code, text, found[text])
			}
		}
	}
}

// filled puts figures into a format, which are no words.
func filled(format string) string {
	return strings.ReplaceAll(formatVerb.ReplaceAllStringFunc(format, func(v string) string {
		switch v[len(v)-1] {
		case 'q':
			return `"x"`
		case 's', 'v', 'w':
			return "3 mm"
		}
		return "3"
	}), "%%", "%")
}

// sentences are the formats with words and the plain sentences of the packages of findings, and where they stand.
func sentences(t *testing.T) map[string]string {
	t.Helper()
	c := code{map[string]string{}, map[string]bool{}, map[string]string{}}
	for name, f := range parse(t) {
		if !ofFindings(name) {
			continue
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.CallExpr:
				return nameOf(n.Fun) != "panic"
			case ast.Expr:
				text, ok := c.text(filepath.Dir(name), n)
				if ok && isSentence(text) && !inside.MatchString(text) {
					c.said[text] = name
				}
				return !ok
			}
			return true
		})
	}
	return c.said
}

func ofFindings(name string) bool {
	dir := strings.TrimPrefix(filepath.ToSlash(filepath.Dir(name)), "../../model/")
	for _, d := range finding {
		if dir == d {
			return true
		}
	}
	return false
}

func isSentence(text string) bool {
	plain := formatVerb.ReplaceAllString(text, "")
	return wordy(plain) && strings.Contains(text, " ") && (plain != text || len(strings.Fields(text)) >= sentenceWords)
}
