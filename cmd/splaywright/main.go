// Command splaywright opens the window of the modeler, or does one of its jobs at a terminal.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"splaywright/model/tongue"
	"splaywright/model/word"
)

// The exit codes that scripts can rely on.
const (
	exitDone    = 0
	exitStopped = 1 // the design was read, but a finding stops the piece
	exitRefused = 2 // the input was not understood, or a file could not be read or written
)

// errStopped marks a piece that a finding stops; everything there is to say has been said.
var errStopped = errors.New("the piece is stopped by what was found")

// outlet remembers that something could not be written, so that no command ends well with half of
// its output lost.
type outlet struct {
	w   io.Writer
	err error
}

func (o *outlet) Write(b []byte) (int, error) {
	n, err := o.w.Write(b)
	if err != nil && o.err == nil {
		o.err = err
	}
	return n, err
}

// collectAt, percent: a command is over in a moment and holds little, and collecting at the usual 100 takes up to a
// third of its time. The window sets its own (app).
const collectAt = 400

func main() {
	debug.SetGCPercent(collectAt)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

func run(args []string, in io.Reader, out, talk io.Writer) int {
	full := &outlet{w: out}
	speak := tongue.Load(tongueOf(args, os.Getenv))
	root := newRoot(in, full, talk, speak)
	root.SetArgs(args)
	err := root.Execute()
	switch {
	case full.err != nil:
		err = fmt.Errorf("the output cannot be written whole (%s); is there room for it?", word.OfSystem(full.err))
	case err == nil:
		return exitDone
	case errors.Is(err, errStopped):
		return exitStopped
	}
	fmt.Fprintln(talk, word.Said(err, speak.Say))
	return exitRefused
}
