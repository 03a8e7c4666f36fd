package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"splaywright/model/form"
	"splaywright/render/table"
)

// mostCompared is how many pieces still stand readably side by side.
const mostCompared = 4

func (p *program) compare() *cobra.Command {
	var s source
	var width int
	var all bool
	c := &cobra.Command{
		Use:   "compare FILE FILE...",
		Short: "Set two to four designs side by side: what changes and what does not",
		Long: paragraphs("Print sizes, ratios, parts, angles, joints, weight and strength of two to four designs side by side.\n"+
			"Rows that are the same in all are left out unless --all is given.", fileHelp),
		Example: "  splaywright compare example:reading-nook-step example:reading-nook-bench\n  splaywright compare old.yaml new.yaml --all",
		Args:    several,
		RunE: func(_ *cobra.Command, args []string) error {
			var pieces []*form.Piece
			for _, a := range args {
				piece, err := s.load(p, a)
				if err != nil {
					return err
				}
				if err := p.stopped(piece); err != nil {
					return err
				}
				pieces = append(pieces, piece)
			}
			t := table.Compare(pieces, pieces[0].Design.Style())
			if !all {
				t = changed(t)
			}
			marks := table.CompareMarks(pieces, pieces[0].Design.Style())
			if len(t.Rows)+len(marks.Rows) == 0 {
				fmt.Fprintln(p.talk, p.speak.Say("Nothing differs."))
				return nil
			}
			if err := table.WriteText(p.out, t.In(p.speak), width); err != nil || len(marks.Rows) == 0 {
				return err
			}
			fmt.Fprintln(p.out)
			return table.WriteText(p.out, marks.In(p.speak), width)
		},
	}
	s.flags(c)
	c.Flags().BoolVar(&all, "all", false, "also what is the same in all")
	c.Flags().IntVar(&width, "width", 110, "columns of the terminal")
	return c
}

// changed keeps the rows that are not the same in all.
func changed(t table.Table) table.Table {
	out := t
	out.Rows, out.Refs = nil, nil
	for i, row := range t.Rows {
		if row[len(row)-1].Text != "same" {
			out.Rows, out.Refs = append(out.Rows, row), append(out.Refs, t.Refs[i])
		}
	}
	if n := len(t.Rows) - len(out.Rows); n > 0 {
		out.Notes = append([]string{fmt.Sprintf("%d figures are the same in all and left out.", n)}, t.Notes...)
	}
	return out
}
