package app

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/assets"
	"splaywright/model/tongue"
)

// marked lets the window speak a language in which every text stands in brackets, so that one that
// was not put into it shows.
func marked(t *testing.T) {
	t.Helper()
	texts := map[string]string{}
	for _, area := range assets.TongueAreas("de") {
		for english := range area {
			texts[english] = "⟦" + english + "⟧"
			if !strings.ContainsFunc(english, unicode.IsLetter) {
				texts[english] = english // what stands between texts
			}
		}
	}
	say.Put(tongue.New("marked", texts))
	t.Cleanup(func() { say.Put(tongue.Load(tongue.English)) })
}

// shownTexts gives every text in a tree of objects, and where it stands.
func shownTexts(o fyne.CanvasObject) []string {
	var out []string
	add := func(texts ...string) { out = append(out, texts...) }
	for _, o := range test.LaidOutObjects(o) {
		switch o := o.(type) {
		case *widget.Label:
			add(o.Text)
		case *keyed.Button:
			add(o.Text)
		case *keyed.Check:
			add(o.Text)
		case *keyed.Select:
			add(o.Options...)
			add(o.PlaceHolder)
		case *widget.Entry:
			add(o.PlaceHolder)
		case *widget.RadioGroup:
			add(o.Options...)
		case *drawers:
			for _, it := range o.Items {
				add(it.Text)
				out = append(out, shownTexts(it.Content)...)
			}
		}
	}
	return out
}

// unsaid are the texts that are in no brackets though they have words. Names are a person's own.
func unsaid(texts []string, own ...string) []string {
	var out []string
	for _, text := range texts {
		rest := text
		for _, o := range own {
			rest = strings.ReplaceAll(rest, o, "")
		}
		for strings.Contains(rest, "⟦") {
			from := strings.LastIndex(rest, "⟦")
			to := strings.Index(rest[from:], "⟧")
			if to < 0 {
				break // cut short to fit
			}
			rest = rest[:from] + rest[from+to+len("⟧"):]
		}
		words := strings.FieldsFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) })
		words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains([]string{"mm", "kg", "in", "A"}, w) })
		if len(words) > 0 && !strings.Contains(rest, "⟦") && !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	slices.Sort(out)
	return out
}

func TestEveryTextOfTheWindowIsSaid(t *testing.T) {
	marked(t)
	for _, e := range assets.Examples() {
		w := open(t, Options{Example: e.Name})
		for _, it := range allItems(w.menu.main.Items) {
			for _, text := range unsaid([]string{it.Label}, tongue.Name("en"), tongue.Name("de"), tongue.Name("ja")) {
				t.Errorf("%s: the menu says %q", e.Name, text)
			}
		}
		for _, text := range unsaid(shownTexts(w.win.Content()), append(ownNames, e.Title)...) {
			t.Errorf("%s: the window says %q", e.Name, text)
		}
	}
}

// ownNames are what the examples' designs name: boards on hand with their notes, places to avoid, a value.
var ownNames = []string{"grey outside, nail edge along the far side", "pencil marks on one face", "plank with the hinge", "plank", "long shelf", "clean", "hinge holes", "bracket holes", "nail edge", "pin-width"}

func allItems(menus []*fyne.Menu) []*fyne.MenuItem {
	var out []*fyne.MenuItem
	for _, m := range menus {
		for _, it := range m.Items {
			out = append(out, it)
			if it.ChildMenu != nil {
				out = append(out, allItems([]*fyne.Menu{it.ChildMenu})...)
			}
		}
	}
	return out
}
