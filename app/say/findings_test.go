package say_test

import (
	"go/ast"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"splaywright/model/tongue"
)

// whole are the packages whose every sentence a person may come to read, or those of a file of theirs: findings, refusals,
// what would do, what a command answers.
var whole = []string{"model/check", "model/file", "model/form", "model/hold", "model/joint", "model/measure", "model/motion", "model/remedy",
	"model/resize", "model/solid", "model/stock", "model/timber", "model/word", "model/yield", "cmd/splaywright"}

// refusing are the packages that a refusal or a failure may come from; the rest of what they say stands on papers and in
// the window, where other tests read it.
var refusing = []string{"app", "export", "render", "model/cut", "model/part", "model/tongue"}

// apart are sources whose sentences nobody reads.
var apart = map[string]string{
	"model/file/shape.go":             "keys of the design file",
	"model/file/carry.go":             "the design file's names of boards",
	"model/file/new.go":               "the text of a new design file",
	"model/solid/check.go":            "what tests ask of a solid",
	"model/solid/mesh.go":             "what tests ask of a solid",
	"model/timber/rows.go":            "a built-in table, which tests read",
	"model/timber/movement.go":        "a built-in table, which tests read",
	"model/stock/line/task.go":        "a task that tests set, for neither window nor command asks this package",
	"model/stock/line/verify.go":      "the answer to one",
	"model/file/filetest/filetest.go": "a fault of a test",
	"export/pdf/pack.go":              "faults of the program's own writer, which tests read",
}

// sentenceWords is from how many words on a text is taken for a sentence rather than for a key or a tag.
const sentenceWords = 4

// inside are texts of those packages that nobody reads.
var inside = regexp.MustCompile(`^screw-%d |^socket %d %s$` + // names of things in the code
	`|^table of sizes sold$|^%q is no ladder|^%q already stands for|^it is no larger than|^surfacing leaves|^%s: %q is no size in inches|does not say how sure it is` + // built-in tables, which tests read
	`|^(stool|steps|tray|chest|ring|top|side|front)( [a-z-]+)+$|^size: \{|^round\(size` + // words of the design file
	`|^  splaywright |^papers FILE`) // a command as it is typed

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

// sentences are the formats with words and the plain sentences that a person may come to read, and where they stand.
func sentences(t *testing.T) map[string]string {
	t.Helper()
	c := code{map[string]string{}, map[string]bool{}, map[string]string{}}
	files := parse(t)
	for name, f := range files {
		c.gather(filepath.Dir(name), f)
	}
	for name, f := range files {
		short := strings.TrimPrefix(filepath.ToSlash(name), "../../")
		if apart[short] != "" || strings.HasSuffix(filepath.Dir(short), "test") { // a package that helps tests
			continue
		}
		if in(short, whole) {
			c.hear(name, f)
		} else if in(short, refusing) {
			ast.Inspect(f, func(n ast.Node) bool {
				if call, ok := n.(*ast.CallExpr); ok && (nameOf(call.Fun) == "Errorf" || qualified(call.Fun) == "errors.New") {
					c.hear(name, call.Args[0])
				}
				return true
			})
		}
	}
	return c.said
}

// hear takes the sentences of a part of a source. A panic is for programmers, a list of fields and what is looked for in
// another text are no sentences.
func (c code) hear(file string, part ast.Node) {
	ast.Inspect(part, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.CallExpr:
			return !slices.Contains([]string{"panic", "has", "strings.Fields", "strings.Contains", "strings.Index"}, qualified(n.Fun))
		case ast.Expr:
			text, ok := c.text(filepath.Dir(file), n)
			if ok && isSentence(text) && !inside.MatchString(text) {
				c.said[text] = file
			}
			return !ok
		}
		return true
	})
}

// qualified is the name of a function with that of its package.
func qualified(e ast.Expr) string {
	if s, ok := e.(*ast.SelectorExpr); ok {
		return nameOf(s.X) + "." + s.Sel.Name
	}
	return nameOf(e)
}

// in tells whether a source stands in one of the folders or below.
func in(file string, folders []string) bool {
	return slices.ContainsFunc(folders, func(f string) bool { return strings.HasPrefix(file, f+"/") })
}

func isSentence(text string) bool {
	plain := formatVerb.ReplaceAllString(text, "")
	return wordy(plain) && strings.Contains(text, " ") && (plain != text || len(strings.Fields(text)) >= sentenceWords)
}
