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

func openWindow(p *program, file string) error {
	if why := noDisplay(runtime.GOOS, os.Getenv); why != "" {
		return errors.New(why)
	}
	w := app.New(fyneapp.NewWithID(assets.AppID), app.Options{Path: file, Example: app.ExampleFor(os.Getenv), Comma: app.CommaFor(os.Getenv), Tongue: p.speak.Code(), Journal: app.JournalFolder()})
	w.ShowAndRun()
	return nil
}
