package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"splaywright/export/papers"
	"splaywright/model/form"
	"splaywright/model/tongue"
)

// chosenHelp tells what holds for both choices.
const chosenHelp = "Both take several, with commas between; the design's papers.only and papers.as hold when they are left out,\n" +
	"and without those all papers but the patterns are written, as all kinds but single-pdfs."

var choiceHelp = strings.Join([]string{
	"--only chooses papers:", "  " + strings.Join(form.PaperNames, ", "),
	"--as chooses kinds of files:", "  " + strings.Join(form.PaperKinds, ", "), "", chosenHelp,
}, "\n")

func (p *program) papers() *cobra.Command {
	var s source
	var dir, only, as string
	var o papers.Options
	var full patternFlags
	c := &cobra.Command{
		Use:   "papers FILE --to DIR",
		Short: "Write the papers: one PDF of the whole set, SVG views, CSV tables, full-size patterns",
		Long: paragraphs("Write the whole set of papers into a folder, or some of it, and print the names of the files.\n"+
			"Interrupted, it leaves nothing behind.", choiceHelp, patternHelp, fileHelp),
		Example: "  splaywright papers step.yaml --to papers --sheet A3\n" +
			"  splaywright papers step.yaml --to papers --only drawings,cut-list --as pdf\n" +
			"  splaywright papers step.yaml --to papers --patterns --bar-x 99.2 --bar-y 100.1",
		Args: one,
		RunE: func(c *cobra.Command, args []string) error {
			if dir == "" {
				return errors.New("papers needs a folder to write into, such as --to papers; it is made where it is missing")
			}
			s.also("--sheet", "papers.sheet", o.Sheet)
			s.also("--projection", "papers.projection", o.Projection)
			s.also("--only", "papers.only", listed(only))
			s.also("--as", "papers.as", listed(as))
			piece, err := s.load(p, args[0])
			if err != nil {
				return err
			}
			if err := p.stopped(piece); err != nil {
				fmt.Fprintln(p.talk, p.speak.Say("No papers were written."))
				return err
			}
			if o.Patterns, err = full.options(); err != nil {
				return err
			}
			o.Tongue = p.speak
			if c.Flags().Changed("tongue") { // more than what the design says
				piece.Design.Papers.Tongue = p.speak.Code()
			}
			return p.writePapers(c.Context(), dir, piece, o)
		},
	}
	s.flags(c)
	c.Flags().StringVar(&dir, "to", "", "folder to write into; made when it is missing")
	c.Flags().StringVar(&only, "only", "", "papers to write, such as drawings,cut-list,steps")
	c.Flags().StringVar(&as, "as", "", "kinds of files to write, such as pdf,svg")
	c.Flags().StringVar(&o.Sheet, "sheet", "", strings.Join(form.Sheets, ", ")+" (the design's when left out)")
	c.Flags().StringVar(&o.Projection, "projection", "", "first or third (the design's when left out)")
	full.flags(c)
	return c
}

// listed is a text of words with commas between as a list of the design file.
func listed(text string) string {
	if text == "" || strings.HasPrefix(text, "[") {
		return text
	}
	return "[" + text + "]"
}

// writePapers writes the set; an interrupt cancels it whole.
func (p *program) writePapers(ctx context.Context, dir string, piece *form.Piece, o papers.Options) error {
	if ctx == nil {
		ctx = context.Background()
	}
	ctx, free := signal.NotifyContext(ctx, os.Interrupt)
	defer free()
	names, err := papers.WriteSet(ctx, dir, piece, o, slowly(p.talk, time.Now, p.speak))
	for _, n := range names {
		fmt.Fprintln(p.out, n)
	}
	switch {
	case errors.Is(err, context.Canceled):
		return errors.New("interrupted; nothing was written")
	case err != nil:
		return papersTrouble(dir, err)
	}
	return nil
}

// The times after which a set that takes long begins to say how far it is, and between what it says.
const (
	quiet   = 2 * time.Second
	between = time.Second
)

// slowly tells progress a line at a time, and nothing of what is done quickly.
func slowly(w io.Writer, now func() time.Time, speak *tongue.Tongue) func(papers.Progress) {
	next := now().Add(quiet)
	return func(s papers.Progress) {
		if t := now(); !t.Before(next) {
			next = t.Add(between)
			fmt.Fprintln(w, speak.Say(s.Text()))
		}
	}
}
