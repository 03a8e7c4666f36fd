package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"splaywright/assets"
	"splaywright/export/derived"
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/table"
)

const fileHelp = "FILE is a design file, - for standard input, or example:NAME for a built-in design."

func (p *program) derive() *cobra.Command {
	var s source
	c := &cobra.Command{
		Use:     "derive FILE",
		Short:   "Print everything that follows from a design as JSON",
		Long:    paragraphs("Print parts, cuts, holes, joints and findings as JSON (see `splaywright schema`).", fileHelp),
		Example: "  splaywright derive step.yaml > step.json\n  splaywright derive example:reading-nook-step --set splay.ends=8",
		Args:    one,
		RunE: func(_ *cobra.Command, args []string) error {
			piece, err := s.load(p, args[0])
			if err != nil {
				return err
			}
			if err := derived.Write(p.out, piece); err != nil {
				return err
			}
			return p.stopped(piece)
		},
	}
	s.flags(c)
	return c
}

func (p *program) show() *cobra.Command {
	var s source
	var only string
	var width int
	c := &cobra.Command{
		Use:     "show FILE",
		Short:   "Print the tables: sizes, cut list, saw settings, marking, boring",
		Long:    paragraphs("Print the tables of a design at the terminal.", fileHelp),
		Example: "  splaywright show step.yaml\n  splaywright show step.yaml --table saw-settings",
		Args:    one,
		RunE: func(_ *cobra.Command, args []string) error {
			piece, err := s.load(p, args[0])
			if err != nil {
				return err
			}
			if !piece.Stopped() {
				if err := p.tables(piece, only, width); err != nil {
					return err
				}
			}
			return p.stopped(piece)
		},
	}
	s.flags(c)
	c.Flags().StringVar(&only, "table", "", "only the table of this id, such as cut-list")
	c.Flags().IntVar(&width, "width", 110, "columns of the terminal")
	return c
}

func (p *program) tables(piece *form.Piece, only string, width int) error {
	var ids []string
	shown := false
	for _, t := range table.All(piece, piece.Design.Style()) {
		ids = append(ids, t.ID)
		if only != "" && t.ID != only {
			continue
		}
		if shown {
			fmt.Fprintln(p.out)
		}
		if err := table.WriteText(p.out, t.In(p.speak), width); err != nil {
			return err
		}
		shown = true
	}
	if !shown {
		return fmt.Errorf("no table is called %q; there are %+s", only, strings.Join(ids, ", "))
	}
	return nil
}

// stopped says on the talking side what was found that matters, and tells whether it stops the piece.
func (p *program) stopped(piece *form.Piece) error {
	var loud []part.Finding
	for _, f := range piece.Findings {
		if f.Level != part.Note {
			loud = append(loud, f)
		}
	}
	if len(loud) > 0 {
		p.writeFindings(p.talk, loud)
	}
	if piece.Stopped() {
		return errStopped
	}
	return nil
}

func (p *program) new() *cobra.Command {
	var from string
	var list bool
	c := &cobra.Command{
		Use:     "new [FILE]",
		Short:   "Write a new design from a built-in example",
		Long:    "Write a built-in example as a new design file, or to standard output without FILE.\nA file that is already there is never overwritten.",
		Example: "  splaywright new step.yaml\n  splaywright new --list\n  splaywright new bench.yaml --from reading-nook-bench",
		Args:    atMostOne,
		RunE: func(_ *cobra.Command, args []string) error {
			if list {
				for _, e := range assets.Examples() {
					fmt.Fprintf(p.out, "%-22s %s\n", e.Name, p.speak.Say(e.Title))
				}
				return nil
			}
			e, ok := assets.FindExample(from)
			if !ok {
				return fmt.Errorf("no built-in example is called %q; `splaywright new --list` names them", from)
			}
			if len(args) == 0 {
				_, err := p.out.Write(e.YAML)
				return err
			}
			return writeNew(args[0], e.YAML)
		},
	}
	c.Flags().StringVar(&from, "from", assets.FirstExample, "example to start from")
	c.Flags().BoolVar(&list, "list", false, "list the examples")
	return c
}

func writeNew(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return newTrouble(name, err)
	}
	_, err = f.Write(data)
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err != nil {
		return newTrouble(name, err)
	}
	return nil
}

func (p *program) schema() *cobra.Command {
	return &cobra.Command{
		Use:     "schema",
		Short:   "Print the JSON Schema of what derive prints",
		Example: "  splaywright schema > derived.schema.json",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := p.out.Write(assets.Schema)
			return err
		},
	}
}
