package file

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf16"

	"pgregory.net/rapid"
)

// utf16Of writes a text as some editors save it.
func utf16Of(text string, big, marked bool) string {
	if marked {
		text = mark + text
	}
	var b strings.Builder
	for _, u := range utf16.Encode([]rune(text)) {
		high, low := byte(u>>8), byte(u)
		if big {
			b.Write([]byte{high, low})
		} else {
			b.Write([]byte{low, high})
		}
	}
	return b.String()
}

// forever is a group in a group in a group.
func forever(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// Each text is no design file; the refusal stands at the place and says the words.
func TestTextsThatAreNoDesignSayWhere(t *testing.T) {
	const head = "splaywright: 1\n"
	for _, c := range []struct {
		name, text   string
		line, column int
		words        string
	}{
		{"a tab for an indent", head + "size:\n\theight: 3\n", 3, 1, "tabs are not read as indents; use spaces"},
		{"a tab behind blanks", head + "size:\n  height: 3\n \twidth: 4\n", 4, 2, "tabs"},
		{"a tab before a hyphen", head + "features:\n\t- {on: top}\n", 3, 1, "tabs"},
		{"a tab further in", head + "splay:\n  ends: 6\nboards:\n  top:\n\t  thickness: 3\n", 6, 1, "tabs"},
		{"a tab for the second key", head + "size:\n  height: 3\n\twidth: 4\nform: stool\n", 4, 1, "tabs"},
		{"a NUL", head + "size: {height: 26\x000}\n", 2, 18, "U+0000"},
		{"a bell", head + "title: \a\n", 2, 8, "U+0007"},
		{"a word processor's é", head + "title: café caf\xe9\n", 2, 16, "UTF-8"},
		{"a picture", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", 1, 1, "no text"},
		{"UTF-16 with a mark", utf16Of(head, false, true), 1, 1, "save it again with the encoding UTF-8"},
		{"UTF-16 the other way round", utf16Of(head, true, true), 1, 1, "UTF-16"},
		{"UTF-16 without a mark", utf16Of(head, false, false), 1, 1, "UTF-16"},
		{"UTF-16 the other way round without a mark", utf16Of(head, true, false), 1, 1, "UTF-16"},
		{"brackets for ever", head + "title: " + strings.Repeat("[", 20000), 2, 8 + maxDepth, "nested too deeply"},
		{"closed brackets, too deep", head + "title: " + strings.Repeat("[", 30) + strings.Repeat("]", 30), 2, 8 + maxDepth, "nested too deeply"},
		{"lists for ever", strings.Repeat("- ", 20000) + "1", 1, 1, "nested too deeply"},
		{"groups for ever", head + forever(40), 13 + 2, maxDepth + 2, "nested too deeply"},
		{"a quote that never ends", head + "title: \"abc\nform: stool\n", 2, 8, `put " where it ends`},
		{"a bracket that never ends", head + "size: {height: 3, width: 4\nform: stool\n", 2, 7, "put } where it ends"},
		{"an inner bracket", head + "# [\ntitle: a [b, \"it\"\nfeatures: [{on: top], kind: hole}\nz: [\n", 5, 4, "put ] where"},
		{"a colon in a title", head + "title: Step: low\n", 2, 12, "quotes"},
		{"keys out of line", head + "size:\n   height: 3\n  width: 4\n", 4, 3, "the same indent"},
		{"no colon", head + "form stool\nunits: mm\n", 2, 1, "a colon and a blank"},
		{"a sign at the beginning", head + "title: @home\n", 2, 8, "quotes"},
		{"a list and keys", head + "- 1\n", 1, 1, "no key of it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read(strings.NewReader(c.text), "x.yaml")
			var list Errors
			if !errors.As(err, &list) {
				t.Fatalf("it is taken (%v)", err)
			}
			e := list[0]
			if e.Line != c.line || e.Column != c.column || !strings.Contains(e.Want, c.words) {
				t.Errorf("%v is not at %d:%d with %q", err, c.line, c.column, c.words)
			}
			if strings.Contains(err.Error(), "yaml: ") || len(err.Error()) > 400 {
				t.Errorf("%v is in the library's words, or too long", err)
			}
		})
	}
}

// Whatever is refused is refused with a place in the text.
func TestRefusedTextsHaveAPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`(splaywright: 1\n)?([ \t]{0,3}[a-z"'\[\]{}:,#@%&*!|>?-]{0,4}(: )?[a-z0-9"'\[\]{}:,@-]{0,4}\r?\n){1,5}`).Draw(t, "text")
		_, err := Read(strings.NewReader(text), "x.yaml")
		var list Errors
		if err == nil || !errors.As(err, &list) {
			return
		}
		lines := strings.Count(text, "\n") + 1
		for _, e := range list {
			if strings.Contains(e.Want, "is empty") {
				continue
			}
			if e.Line < 1 || e.Line > lines || e.Column < 1 {
				t.Fatalf("%v has no place in\n%s", e, text)
			}
		}
	})
}

// The walk over brackets finds nothing wrong in what the library reads.
func TestBracketsOfSoundTexts(t *testing.T) {
	for _, text := range []string{step, mark + step, "title: it's {not} [a list\n", "a: 'it''s'\nb: \"\\\"[\"\n", "a: {b: [c, 'd]'], e: \"}\"} # [\n", "{\"a\":[1]}\n", "- [a\n  ,b]\n"} {
		if b := bracketsOf(text); b != (brackets{}) {
			t.Errorf("%+v in\n%s", b, text)
		}
	}
}
