package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/timber"
)

// source is the design that a command works on and what is changed in it for this run.
type source struct {
	changes []string // of --set
	more    []change // of flags of their own
	timbers string   // a file of own timbers
}

// change is a text put at a path, and the flag that it was typed behind.
type change struct{ flag, path, text string }

func (s *source) flags(c *cobra.Command) {
	c.Flags().StringArrayVar(&s.changes, "set", nil,
		"change a size for this run, such as size.height=300 or corners.tails=5 (may be repeated)")
	c.Flags().StringVar(&s.timbers, "timbers", "",
		"know the timbers of this CSV file too, by the columns of the built-in table (splaywright timbers prints it)")
}

// also makes a flag change what stands at a path; an empty text changes nothing.
func (s *source) also(flag, path, text string) {
	if text != "" {
		s.more = append(s.more, change{flag, path, text})
	}
}

// load reads a design from a file, from standard input ("-"), or from a built-in example
// ("example:reading-nook-step"), and derives the piece.
func (s *source) load(p *program, name string) (*form.Piece, error) {
	_, piece, err := s.open(p, name)
	return piece, err
}

// open is load that gives the document too, as changed for this run.
func (s *source) open(p *program, name string) (*file.Document, *form.Piece, error) {
	doc, err := read(p, name)
	if err != nil {
		return nil, nil, err
	}
	all := make([]change, 0, len(s.changes)+len(s.more))
	for _, c := range s.changes {
		path, text, ok := strings.Cut(c, "=")
		if !ok {
			return nil, nil, fmt.Errorf("--set %q: a path and a value are expected, such as size.height=300", c)
		}
		all = append(all, change{"--set", strings.TrimSpace(path), strings.TrimSpace(text)})
	}
	all = append(all, s.more...)
	for _, c := range all {
		set := doc.Set
		if c.path == "units" { // the piece stays as it is, as in the window
			set = func(_, to string) error { return doc.SetUnits(to) }
		}
		if err := set(c.path, c.text); err != nil {
			return nil, nil, blame(err, []change{c})
		}
	}
	if s.timbers != "" {
		own, err := ownTimbers(s.timbers)
		if err != nil {
			return nil, nil, err
		}
		doc.Know(own, nil)
	}
	d, err := doc.Design()
	if err != nil {
		return nil, nil, blame(err, all)
	}
	if !d.Round.Said {
		d.Round.Comma = p.speak.Comma()
	}
	return doc, model.Derive(d.Named(p.speak.Fill)), nil
}

// ownTimbers reads a person's own timbers.
func ownTimbers(name string) (timber.Book, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, listTrouble(name, err)
	}
	return timber.LoadOwn(text, name)
}

// blame points at the flag instead of a place in the file where what was typed behind the flag is
// refused: the file does not say it.
func blame(err error, changes []change) error {
	var list file.Errors
	var single *file.Error
	switch {
	case errors.As(err, &list):
	case errors.As(err, &single):
		list = file.Errors{single}
	default:
		return err
	}
	for _, e := range list {
		for _, c := range changes {
			if e.Path == c.path || strings.HasPrefix(e.Path, c.path+".") {
				e.File, e.Line, e.Column = c.flag, 0, 0
			}
		}
	}
	return list
}

func read(p *program, name string) (*file.Document, error) {
	if name == "-" {
		return file.Read(p.in, "standard input")
	}
	if ex, ok := strings.CutPrefix(name, "example:"); ok {
		e, found := assets.FindExample(ex)
		if !found {
			return nil, fmt.Errorf("no built-in example is called %q; `splaywright new --list` names them", ex)
		}
		return file.Read(strings.NewReader(string(e.YAML)), name)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, fileTrouble(name, err)
	}
	defer func() { _ = f.Close() }() // only read from
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fileTrouble(name, syscall.EISDIR)
	}
	return file.Read(io.Reader(f), name)
}
