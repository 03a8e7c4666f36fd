package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"splaywright/export/papers"
	"splaywright/export/pdf"
	"splaywright/model/file"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/word"
	"splaywright/model/yield"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

func (p *program) plan() *cobra.Command {
	var s source
	var width int
	var patience time.Duration
	var sheets string
	var buy, missing bool
	var list string
	c := &cobra.Command{
		Use:   "plan FILE",
		Short: "Plan which part comes out of which board on hand",
		Long: paragraphs("Print the board plan: how each board on hand is used, what comes out of where, and the cuts in order.\n"+
			"It exits 1 when the boards do not yield every part.", fileHelp),
		Example: "  splaywright plan step.yaml\n  splaywright plan example:barn-door-stool --pdf plan.pdf\n  splaywright plan example:washstand-step --buy",
		Args:    one,
		RunE: func(_ *cobra.Command, args []string) error {
			piece, err := s.load(p, args[0])
			if err != nil {
				return err
			}
			if err := p.stopped(piece); err != nil {
				return err
			}
			ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
			defer stop()
			if missing || buy && piece.Design.Plan.Missing {
				patience *= 2 // for the plan of the boards on hand as much as it has by itself
			}
			ctx, cancel := context.WithTimeout(ctx, patience)
			defer cancel()
			if list != "" {
				if piece.Design.OnHand, err = boardsOf(list, piece.Design.Units); err != nil {
					return err
				}
			}
			find := yield.Solve
			if buy = buy || missing; buy {
				piece.Design.Plan.Missing = piece.Design.Plan.Missing || missing
				find = yield.Shop
			}
			r, err := find(ctx, piece)
			if err != nil {
				return &word.At{Where: args[0], Err: err}
			}
			tables := table.Told(table.BoardPlan(r, piece.Design.Style()))
			if buy {
				tables = table.Bought(r, piece.Design.Style())
			}
			for i, t := range tables {
				if i > 0 {
					fmt.Fprintln(p.out)
				}
				if err := table.WriteText(p.out, t.In(p.speak), width); err != nil {
					return err
				}
			}
			if sheets != "" {
				draw := sheet.BoardPlan
				if buy {
					draw = sheet.WoodToBuy
				}
				if err := writeTo(sheets, func(w io.Writer) error {
					return pdf.Write(w, draw(piece, r, sheet.Options{Style: piece.Design.Style(), Tongue: p.speak}), pdf.Meta{Title: piece.Title, Subject: p.speak.Say("Board plan")})
				}); err != nil {
					return err
				}
			}
			if r.Short() {
				return errStopped
			}
			return nil
		},
	}
	s.flags(c)
	c.Flags().IntVar(&width, "width", 110, "columns of the terminal")
	c.Flags().StringVar(&list, "boards", "", "take the boards on hand from this CSV file (name, timber, length, width, thickness, count, price, grain, sawn, face, note, outline, avoid)")
	c.Flags().BoolVar(&buy, "buy", false, "find the cheapest wood to buy instead (boards-to-buy, yard, or common sizes where a board foot has a price), with a shopping list")
	c.Flags().BoolVar(&missing, "missing", false, "find what to buy for the parts that the boards on hand do not yield, as plan: {missing: true} does")
	c.Flags().StringVar(&sheets, "pdf", "", "also write the plan's sheets, boards drawn to scale, to this file")
	c.Flags().DurationVar(&patience, "patience", 3*time.Second, "how long to look for a better plan")
	return c
}

// boardsOf reads a list of boards.
func boardsOf(name string, bare measure.Unit) ([]stock.Board, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fileTrouble(name, err)
	}
	defer func() { _ = f.Close() }() // only read from
	return file.ReadBoards(f, name, bare)
}

// writeTo writes a file whole or not at all.
func writeTo(name string, write func(io.Writer) error) error {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	switch err := papers.Place(name, b.Bytes()); {
	case errors.Is(err, syscall.ENOSPC):
		return noRoom(name)
	case err != nil:
		return fmt.Errorf("%+s: this cannot be written (%s); choose a place where you may write", name, word.OfSystem(err))
	}
	return nil
}
