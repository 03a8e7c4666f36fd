//go:build !nowindow

package main

import (
	fyneapp "fyne.io/fyne/v2/app"

	"splaywright/app"
	_ "splaywright/cmd/splaywright/plainlocale"
)

// appID names the program to the desktop; FyneApp.toml has the same.
const appID = "io.splaywright.Splaywright"

func openWindow(_ *program, file string) error {
	w := app.New(fyneapp.NewWithID(appID), app.Options{Path: file, Journal: app.JournalFolder()})
	w.ShowAndRun()
	return nil
}
