package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"splaywright/model/file"
	"splaywright/model/hold"
	"splaywright/model/part"
	"splaywright/model/remedy"
)

func (p *program) check() *cobra.Command {
	var s source
	var offer bool
	c := &cobra.Command{
		Use:   "check FILE",
		Short: "Print what is worth noticing about a design",
		Long: paragraphs("Print the findings of a design with their figures, limits and sources; with --offer also which sizes, changed\n"+
			"as little as it takes, clear each of them, every one tried and found clear.", fileHelp),
		Example: "  splaywright check step.yaml\n  splaywright check step.yaml --offer",
		Args:    one,
		RunE: func(c *cobra.Command, args []string) error {
			doc, piece, err := s.open(p, args[0])
			if err != nil {
				return err
			}
			p.writeFindings(p.out, piece.Findings)
			if duty := hold.Duty(piece); duty != "" {
				fmt.Fprintf(p.out, "\n%s\n", p.speak.Say(duty))
			}
			if offer {
				if err := p.writeOffers(c.Context(), p.out, doc, piece.Findings); err != nil {
					return err
				}
			}
			if piece.Stopped() {
				return errStopped
			}
			return nil
		},
	}
	s.flags(c)
	c.Flags().BoolVar(&offer, "offer", false, "also what would clear each finding")
	return c
}

func (p *program) writeFindings(w io.Writer, findings []part.Finding) {
	if len(findings) == 0 {
		fmt.Fprintln(w, p.speak.Say("Nothing found that would stop or spoil this piece."))
		return
	}
	for _, f := range findings {
		fmt.Fprintf(w, "%s  %s\n", p.speak.Say(string(f.Level)), p.speak.Say(f.Text))
		if len(f.Sizes) > 0 {
			fmt.Fprintf(w, "    %s\n", p.speak.Fill("sizes: %s", strings.Join(f.Sizes, ", ")))
		}
		if f.Source != "" {
			fmt.Fprintf(w, "    %s\n", p.speak.Fill("source: %s", p.speak.Say(f.Source)))
		}
	}
}

// writeOffers says of each finding what would clear it.
func (p *program) writeOffers(ctx context.Context, w io.Writer, doc *file.Document, findings []part.Finding) error {
	for _, f := range findings {
		offers, err := remedy.Offers(ctx, doc, f)
		if err != nil {
			return err
		}
		if len(offers) == 0 {
			continue
		}
		fmt.Fprintf(w, "\n%s\n", p.speak.Fill("This would clear %q; each by itself, tried and found clear:", f.ID))
		for _, o := range offers {
			fmt.Fprintf(w, "    %s\n", o)
		}
	}
	return nil
}
