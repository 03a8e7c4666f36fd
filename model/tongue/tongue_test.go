package tongue_test

import (
	"strconv"
	"strings"
	"testing"

	"splaywright/model/tongue"
)

func german() *tongue.Tongue {
	return tongue.New("de", map[string]string{
		"Height":                       "Höhe",
		"side":                         "Seite",
		"white oak":                    "Weißeiche",
		"oak":                          "Eiche",
		" and ":                        " und ",
		"%s is %s wide, less than %s.": "%s ist %s breit, weniger als %s.",
		"%s is wide.":                  "%s ist breit.",
		"The %s of %s moves %.1f mm in %d months.": "In %[4]d Monaten arbeitet %[2]s an: %[1]s, %.1[3]f mm.",
		"Nothing moves.":             "Nichts arbeitet.",
		"a hundred %% of %s":         "hundert %% von %s",
		"top":                        "Platte",
		"the board":                  "das Brett",
		"%s and %s differ by %s":     "%s und %s weichen um %s ab",
		" wider on each side":        " breiter auf jeder Seite",
		"Each figure runs from the ": "Jede Zahl läuft ab: ",
		"the bottom":                 "unten",
		"ends":                       "Enden",
		"the ends (%s)":              "die Schmalseiten (%s)",
		"the bottom (%s)":            "der Boden (%s)",
		"First %s.":                  "Zuerst: %s.",
	})
}

func TestSentencesAreKnownByTheirFormats(t *testing.T) {
	for _, c := range []struct {
		english, want string
		whole         bool
	}{
		{"Height", "Höhe", true},
		{"263.5 mm", "263.5 mm", true},
		{`10 3/8"`, `10 3/8"`, true},
		{"side 1", "Seite 1", true},
		{"side 1 is 40 mm wide, less than 50 mm.", "Seite 1 ist 40 mm breit, weniger als 50 mm.", true},
		{"The top of white oak moves 1.5 mm in 6 months.", "In 6 Monaten arbeitet Weißeiche an: Platte, 1.5 mm.", true},
		{"Nothing moves. the board is wide.", "Nichts arbeitet. das Brett ist breit.", true},
		{"a hundred % of oak", "hundert % von Eiche", true},
		{"side 1 and side 2 differ by 3 mm", "Seite 1 und Seite 2 weichen um 3 mm ab", true},
		{"white oak (top)", "Weißeiche (Platte)", true},
		{"3 mm wider on each side", "3 mm breiter auf jeder Seite", true},
		{"Each figure runs from the top", "Jede Zahl läuft ab: Platte", true},
		{"First the ends (2, 4) and the bottom (5).", "Zuerst: die Schmalseiten (2, 4) und der Boden (5).", true}, // "ends" alone are something else
		{"Gerda's board is wide.", "Gerda's board ist breit.", false},                                             // a name that nobody translates
		{"The top of oak moves much mm in 6 months.", "The top of oak moves much mm in 6 months.", false},
		{"white top", "white top", false}, // the words of a phrase do not stand alone
	} {
		got, whole := german().Read(c.english)
		if got != c.want || whole != c.whole {
			t.Errorf("%q is said %q (%v), want %q (%v)", c.english, got, whole, c.want, c.whole)
		}
		again, wholeAgain := german().Read(c.english)
		if again != got || wholeAgain != whole {
			t.Errorf("%q is said %q the second time", c.english, again)
		}
	}
}

// A name with a comma in it keeps its end, and each item of a list is read by itself, so that words which the language puts
// elsewhere stand with what they belong to.
func TestNamesAndItemsStayWhole(t *testing.T) {
	j := tongue.New("ja", map[string]string{
		"along %s, %s from plumb": "鉛直から%[2]s、%[1]sに沿って", "In %s for %s, %s deep.": "%sに%sのため、深さ%s。",
		"%s from %s, which is %s": "%sは%sから(%s)", "By thickness: %s.": "厚さ: %s。", "Then %s, %s.": "次に%sは%s。", "side": "側板", "left": "左", ", ": "、",
	})
	for english, want := range map[string]string{
		"along 3 side, left, 6.0° from plumb":                               "鉛直から6.0°、3 側板、左に沿って",
		"Then 1 side, left, along 2 side, left, 6.0° from plumb.":           "次に1 側板、左は鉛直から6.0°、2 側板、左に沿って。",
		"along 3 side, 6.0° from plumb":                                     "鉛直から6.0°、3 側板に沿って",
		"In 4 side for 1 side, left, 7.0 deep.":                             "4 側板に1 側板、左のため、深さ7.0。",
		"By thickness: 22 from 5/4, which is 27; 20 from 4/4, which is 21.": "厚さ: 22は5/4から(27); 20は4/4から(21)。",
	} {
		if got, whole := j.Read(english); got != want || !whole {
			t.Errorf("%q reads %q (%v), want %q", english, got, whole, want)
		}
	}
}

func TestFillPrintsByTheFormatOfTheLanguage(t *testing.T) {
	g := german()
	if got := g.Fill("The %s of %s moves %.1f mm in %d months.", "Platte", "Eiche", 1.25, 6); got != "In 6 Monaten arbeitet Eiche an: Platte, 1.2 mm." {
		t.Errorf("filled: %q", got)
	}
	if got := g.Fill("%s is unknown here", "x"); got != "x is unknown here" {
		t.Errorf("a format without a translation prints %q", got)
	}
}

func TestTheLocaleGivesTheLanguage(t *testing.T) {
	for _, c := range []struct {
		why  string
		env  map[string]string
		want string
	}{
		{"nothing set", nil, "en"},
		{"German", map[string]string{"LANG": "de_AT.UTF-8"}, "de"},
		{"Japanese messages over a German LANG", map[string]string{"LANG": "de_DE.UTF-8", "LC_MESSAGES": "ja_JP.UTF-8"}, "ja"},
		{"LC_ALL over everything", map[string]string{"LC_ALL": "en_GB.UTF-8", "LC_MESSAGES": "ja_JP.UTF-8"}, "en"},
		{"the first of the wishes that is spoken", map[string]string{"LANG": "fr_FR.UTF-8", "LANGUAGE": "fr:de:en"}, "de"},
		{"wishes do not count in the plain locale", map[string]string{"LC_ALL": "C", "LANGUAGE": "de"}, "en"},
		{"a language that is not spoken", map[string]string{"LANG": "fr_FR.UTF-8"}, "en"},
	} {
		if got := tongue.FromLocale(func(k string) string { return c.env[k] }); got != c.want {
			t.Errorf("%s: %s, want %s", c.why, got, c.want)
		}
	}
}

func TestFiguresOfAFormat(t *testing.T) {
	for format, want := range map[string]int{"no figure, 100 %%": 0, "%s is %.1f": 2, "%[2]s of %[1]d": 2, "%[1]s and %[1]s": 1} {
		got, ok := tongue.Figures(format)
		if !ok || len(got) != want {
			t.Errorf("%q has the figures %v (%v), want %d", format, got, ok, want)
		}
	}
	for _, format := range []string{"%[2]s alone", "%[1]s and %[1]d"} {
		if got, ok := tongue.Figures(format); ok {
			t.Errorf("%q is taken for a format with %v", format, got)
		}
	}
}

// A long text that nobody translates, such as the order in which a piece goes together, costs little.
func BenchmarkATextThatIsNotKnown(b *testing.B) {
	long := strings.Repeat("First the top, and then: side 1, side 2 (and 3), level. ", 20) + "Unheard-of."
	de := tongue.Load("de")
	for n := 0; b.Loop(); n++ {
		if _, whole := de.Read(long + strconv.Itoa(n)); whole { // another text each time
			b.Fatal("it is known")
		}
	}
}

// Decimals that were given commas are read with points, and thousands among them keep theirs.
func TestCommasAreReadAsPoints(t *testing.T) {
	g := tongue.New("de", map[string]string{"screws: 108.25·G² each, 2,850/15,700 counted on": "Schrauben: je 108.25·G², 2850/15700 gerechnet"})
	if got, whole := g.Read("screws: 108,25·G² each, 2,850/15,700 counted on"); got != "Schrauben: je 108,25·G², 2850/15700 gerechnet" || !whole {
		t.Errorf("read %q (%v)", got, whole)
	}
}
