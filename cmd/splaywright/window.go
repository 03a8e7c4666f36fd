//go:build !nowindow

package main

import (
	"errors"
	"os"
	"runtime"
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"

	"splaywright/app"
	"splaywright/assets"
	_ "splaywright/cmd/splaywright/plainlocale"
)

func openWindow(p *program, file string) error {
	if why := noDisplay(runtime.GOOS, os.Getenv); why != "" {
		return errors.New(why)
	}
	if err := reach(); err != nil {
		return err
	}
	// The window's library need not ask on every step which goroutine it is on.
	fyneapp.SetMetadata(fyne.AppMetadata{ID: assets.AppID, Name: "Splaywright", Version: assets.Version(), Migrations: map[string]bool{"fyneDo": true}})
	w := app.New(fyneapp.NewWithID(assets.AppID), app.Options{
		Path: file, Example: app.ExampleFor(os.Getenv), Comma: app.CommaFor(os.Getenv), Tongue: p.speak.Code(),
		Journal: app.JournalFolder(), Times: times(p), Rest: rest,
	})
	return w.ShowAndRun()
}

// timesVar names the variable of the environment that has the window tell its times: when the program was started,
// nanoseconds since 1970, or anything else for now. See .ci/times.
const timesVar = "SPLAYWRIGHT_TIMES"

func times(p *program) *app.Times {
	text := os.Getenv(timesVar)
	if text == "" {
		return nil
	}
	t := &app.Times{Out: p.talk, Began: time.Now()}
	if n, err := strconv.ParseInt(text, 10, 64); err == nil {
		t.Began = time.Unix(0, n)
	}
	return t
}
