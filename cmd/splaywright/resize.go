package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/resize"
	"splaywright/render/table"
)

// resized is what the flags of resize ask for.
type resized struct {
	height, width, depth string
	holds, keep          []string
	columns              int
}

func (p *program) resize() *cobra.Command {
	var r resized
	c := &cobra.Command{
		Use:   "resize FILE [NEW.yaml]",
		Short: "Give a piece new overall sizes and hold something of it: its footprint, its pins, its tails",
		Long: paragraphs("Give a design new overall sizes and print what changes. What is held comes out as it was: splay, footprint\n"+
			"or leg-length (one of the three), pin-width, number-of-tails, stretcher-inset. With a second file the new\n"+
			"design is written into it, comments and all.", fileHelp),
		Example: "  splaywright resize step.yaml bench.yaml --height 440 --width 1050 --depth 320 --hold splay,pin-width\n" +
			"  splaywright resize step.yaml --height 300 --hold footprint",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 2 {
				return nil
			}
			return one(c, args)
		},
		RunE: func(_ *cobra.Command, args []string) error { return p.runResize(r, args) },
	}
	c.Flags().StringVar(&r.height, "height", "", "new height, such as 440 or 17 1/4 in")
	c.Flags().StringVar(&r.width, "width", "", "new width, taken where the design takes it")
	c.Flags().StringVar(&r.depth, "depth", "", "new depth, taken where the design takes it")
	c.Flags().StringSliceVar(&r.holds, "hold", nil, "what to hold, several with commas")
	c.Flags().StringSliceVar(&r.keep, "keep", nil, "sizes that must not change, such as splay.edges")
	c.Flags().IntVar(&r.columns, "columns", 110, "columns of the terminal")
	return c
}

func (p *program) runResize(r resized, args []string) error {
	var sizes []resize.Edit
	for _, e := range []resize.Edit{{Path: "size.height", Text: r.height}, {Path: "size.width", Text: r.width}, {Path: "size.depth", Text: r.depth}} {
		if e.Text != "" {
			sizes = append(sizes, e)
		}
	}
	if len(sizes) == 0 {
		return errors.New("resize needs a new size: --height, --width or --depth, such as --height 440")
	}
	for i, h := range r.holds {
		r.holds[i] = strings.ReplaceAll(h, "-", " ")
	}
	doc, err := read(p, args[0])
	if err != nil {
		return err
	}
	was, err := doc.Design()
	if err != nil {
		return err
	}
	edits, err := resize.Apply(doc, sizes, r.holds, r.keep)
	if err != nil {
		return blame(err, []change{{"--height", "size.height", r.height}, {"--width", "size.width", r.width}, {"--depth", "size.depth", r.depth}})
	}
	now, err := doc.Design()
	if err != nil {
		return err
	}
	if !now.Round.Said {
		now.Round.Comma = p.speak.Comma()
	}
	before, after := model.Derive(was), model.Derive(now)
	before.Title, after.Title = p.speak.Say("before"), p.speak.Say("after")
	for _, e := range append(sizes, edits...) {
		if e.Text == "" {
			e.Text = p.speak.Say("left out")
		}
		fmt.Fprintf(p.out, "%s: %s\n", e.Path, e.Text)
	}
	fmt.Fprintln(p.out)
	if err := table.WriteText(p.out, changed(table.Compare([]*form.Piece{before, after}, after.Design.Style())).In(p.speak), r.columns); err != nil {
		return err
	}
	if len(args) == 2 {
		if err := writeNew(args[1], doc.Bytes()); err != nil {
			return err
		}
	}
	return p.stopped(after)
}
