package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
)

// source is the design that a command works on and the sizes changed on the command line.
type source struct{ changes []string }

func (s *source) flags(c *cobra.Command) {
	c.Flags().StringArrayVar(&s.changes, "set", nil,
		"change a size for this run, such as size.height=300 or corners.tails=5 (may be repeated)")
}

// load reads a design from a file, from standard input ("-"), or from a built-in example
// ("example:reading-nook-step"), and derives the piece.
func (s *source) load(p *program, name string) (*form.Piece, error) {
	doc, err := read(p, name)
	if err != nil {
		return nil, err
	}
	for _, c := range s.changes {
		path, text, ok := strings.Cut(c, "=")
		if !ok {
			return nil, fmt.Errorf("--set %q: expected a path and a value, such as size.height=300", c)
		}
		if err := doc.Set(strings.TrimSpace(path), strings.TrimSpace(text)); err != nil {
			return nil, fmt.Errorf("--set %q: %w", c, err)
		}
	}
	d, err := doc.Design()
	if err != nil {
		return nil, err
	}
	return model.Derive(d), nil
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
		return nil, fmt.Errorf("design: %w", err)
	}
	defer func() { _ = f.Close() }() // only read from
	return file.Read(io.Reader(f), name)
}
