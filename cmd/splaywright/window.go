//go:build !nowindow

package main

import (
	"os"

	fyneapp "fyne.io/fyne/v2/app"

	"splaywright/app"
	"splaywright/assets"
	_ "splaywright/cmd/splaywright/plainlocale"
)

func openWindow(_ *program, file string) error {
	w := app.New(fyneapp.NewWithID(assets.AppID), app.Options{Path: file, Example: app.ExampleFor(os.Getenv), Journal: app.JournalFolder()})
	w.ShowAndRun()
	return nil
}
