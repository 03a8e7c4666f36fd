package app

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"splaywright/app/field"
	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/model/tongue"
)

// inTongue lets the window speak a language for one test.
func inTongue(t *testing.T, code string) {
	t.Helper()
	t.Setenv("LANGUAGE", "") // what the library is told is taken back
	say.Use(code)
	t.Cleanup(func() { say.Use(tongue.English) })
}

func menuItem(t *testing.T, items []*fyne.MenuItem, label string) *fyne.MenuItem {
	t.Helper()
	i := slices.IndexFunc(items, func(it *fyne.MenuItem) bool { return it.Label == label })
	if i < 0 {
		t.Fatalf("the menu has no %q", label)
	}
	return items[i]
}

func TestTheLanguageIsChosenInTheMenuAndKept(t *testing.T) {
	inTongue(t, tongue.English)
	w := open(t, Options{})
	typeInto(t, w, "splay.ends", "12")
	w.tabs.SelectIndex(1)
	menuItem(t, menuItem(t, w.menu.main.Items[2].Items, "Language").ChildMenu.Items, "Deutsch").Action()
	if got := w.menu.main.Items[0].Label; got != "Datei" {
		t.Errorf("the first menu is %q in German", got)
	}
	if got := w.tabs.Selected().Text; got != "Sägeeinstellungen" {
		t.Errorf("the open tab is %q, want that of the saw", got)
	}
	if f := w.sizes.Field("splay.ends"); f.Text() != "12" {
		t.Errorf("the splay is %q after the language has changed", f.Text())
	}
	if !w.s.CanUndo() || !w.s.Dirty() {
		t.Error("what was done is forgotten with the language")
	}
	typeInto(t, w, "splay.ends", "10")
	if d := w.s.Design(); d.Splay.Ends.Degrees() < 9.99 || d.Splay.Ends.Degrees() > 10.01 {
		t.Errorf("typing in German gives a splay of %v", d.Splay.Ends)
	}
	say.Use(tongue.English)
	again := newWindow(w.app, Options{Spawn: w.spawn}, w.group)
	if got := again.menu.main.Items[0].Label; got != "Datei" {
		t.Errorf("a window that is opened later has the menu %q", got)
	}
}

// A choice reads in the language and stands in English in the design file.
func TestChoicesAreWrittenAsTheFileHasThem(t *testing.T) {
	inTongue(t, "de")
	w := open(t, Options{})
	f := w.sizes.Field("corners.joint")
	f.Input().(*field.Chooser).SetSelected("stumpf")
	if got := w.s.Text("corners.joint"); got != "butt" || f.Text() != "butt" {
		t.Errorf("the file has %q and the field %q, want butt", got, f.Text())
	}
}

// A design that begins with an example has the title by which it was offered, and under the timber's name, which is that of
// the file, stands the one in the language.
func TestWhatANewDesignBeginsWithIsInTheLanguage(t *testing.T) {
	inTongue(t, "de")
	w := open(t, Options{})
	w.newFrom("reading-nook-step")
	if got := w.s.Design().Title; got != "Leseeckentritt" || w.s.Dirty() || w.s.CanUndo() {
		t.Errorf("the title is %q, unsaved %v", got, w.s.Dirty())
	}
	f := w.sizes.Field("timber")
	if got := f.SaidText(); f.Text() != "white oak" || !strings.HasPrefix(got, "Weißeiche; eingebaut: ") {
		t.Errorf("under the timber %q stands %q", f.Text(), got)
	}
}

// In another language the window shows what it showed: the tab, the list of boards, the pictorial as wood or from the eye.
func TestWhatIsShownStaysInAnotherLanguage(t *testing.T) {
	inTongue(t, tongue.English)
	w := onScreen(t)
	w.openTabOf(boardsTab)
	w.boards.which.SetSelectedIndex(1)
	w.look3(true, true)
	for _, code := range []string{"de", "ja", tongue.English} {
		w.speak(code)
		wooden, near := w.turner.Shows()
		if w.openTab() != boardsTab || w.boards.list != panel.ToBuy || !wooden || !near || !w.menu.wooden.Checked || !w.menu.near.Checked {
			t.Errorf("%s: the tab is %s, the list %s; the pictorial is wooden: %v, from the eye: %v, marked so: %v, %v",
				code, w.openTab(), w.boards.list, wooden, near, w.menu.wooden.Checked, w.menu.near.Checked)
		}
	}
}
