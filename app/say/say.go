// Package say puts the window's texts into the language that was chosen. Texts are given in English,
// as they stand in the code; what the language has for them stands in assets/tongues.
package say

import (
	"os"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"splaywright/assets"
	"splaywright/model/tongue"
	"splaywright/model/word"
	"splaywright/render/table"
)

var current atomic.Pointer[tongue.Tongue]

func init() { current.Store(tongue.Load(tongue.English)) }

// Use chooses the language of everything that is said from now on; texts on the screen stay as they
// are until they are put there anew.
func Use(code string) {
	if code == Code() {
		return
	}
	current.Store(tongue.Load(code))
	library(code)
}

// Put takes a language that is made up, for tests.
func Put(t *tongue.Tongue) { current.Store(t) }

// Code is the language that is spoken.
func Code() string { return current.Load().Code() }

// It says a text: one of the window's own, or a sentence with figures from the model or the tables.
func It(english string) string { return current.Load().Say(english) }

// Error says an error; a place in a file that it tells stays as it is.
func Error(err error) string { return word.Said(err, It) }

// With says a format of the window's own with its figures, which are said as they are given.
func With(format string, figures ...any) string { return current.Load().Fill(format, figures...) }

// Sense says a text that English has for several things, given with what is meant behind a stroke: "top|way".
func Sense(key string) string { return current.Load().Sense(key) }

// All says each of several texts.
func All(english []string) []string {
	if english == nil {
		return nil
	}
	out := make([]string, len(english))
	for i, text := range english {
		out[i] = It(text)
	}
	return out
}

// Table says a table of the papers. Its figures and what its rows are about stay as they are.
func Table(t table.Table) table.Table {
	return t.In(current.Load())
}

// Tables says each of several tables.
func Tables(list []table.Table) []table.Table { return table.AllIn(list, current.Load()) }

// library lets the window's library speak the language as well, in its own dialogs and menus. It
// takes the language from the environment each time it is given texts.
func library(code string) {
	for _, key := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if v := os.Getenv(key); v == "C" || v == "POSIX" {
			_ = os.Unsetenv(key) // the library would look no further
		}
	}
	if err := os.Setenv("LANGUAGE", code); err != nil {
		fyne.LogError("The library's own dialogs stay in the system's language", err)
		return
	}
	own := assets.WindowWords(code)
	name := code
	if own == nil {
		own, name = []byte("{}"), tongue.English // nothing to add; the language is looked up all the same
	}
	if err := lang.AddTranslations(fyne.NewStaticResource(name+".json", own)); err != nil {
		fyne.LogError("The library's own dialogs stay in the system's language", err)
	}
}

// Tongue is the language itself, for drawings.
func Tongue() *tongue.Tongue { return current.Load() }

// Key marks a text that is said later, when it is shown.
func Key(english string) string { return english }
