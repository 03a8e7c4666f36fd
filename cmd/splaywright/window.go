//go:build !nowindow

package main

import (
	"errors"
	"os"
	"runtime"

	fyneapp "fyne.io/fyne/v2/app"

	"splaywright/app"
	"splaywright/assets"
	_ "splaywright/cmd/splaywright/plainlocale"
)

func openWindow(_ *program, file string) error {
	if why := noDisplay(runtime.GOOS, os.Getenv); why != "" {
		return errors.New(why)
	}
	w := app.New(fyneapp.NewWithID(assets.AppID), app.Options{Path: file, Example: app.ExampleFor(os.Getenv), Comma: app.CommaFor(os.Getenv), Tongue: app.TongueFor(os.Getenv), Journal: app.JournalFolder()})
	w.ShowAndRun()
	return nil
}
