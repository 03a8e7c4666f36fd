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
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/word"
	"splaywright/model/yield"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

func (p *program) plan() *cobra.Command {
	var o planning
	c := &cobra.Command{
		Use:   "plan FILE",
		Short: "Plan which part comes out of which board on hand",
		Long: paragraphs("Print the board plan: how each board on hand is used, what comes out of where, and the cuts in order.\n"+
			"It exits 1 when the boards do not yield every part.", fileHelp),
		Example: "  splaywright plan step.yaml\n  splaywright plan example:barn-door-stool --pdf plan.pdf\n  splaywright plan example:washstand-step --buy",
		Args:    one,
		RunE:    func(_ *cobra.Command, args []string) error { return o.run(p, args[0]) },
	}
	o.from.flags(c)
	c.Flags().IntVar(&o.width, "width", 110, "columns of the terminal")
	c.Flags().StringVar(&o.list, "boards", "", "take the boards on hand from this CSV file (name, timber, length, width, thickness, bow, cup, twist, count, price, grain, sawn, face, note, outline, avoid)")
	c.Flags().BoolVar(&o.buy, "buy", false, "find the cheapest wood to buy instead (boards-to-buy, yard, or common sizes where a board foot has a price), with a shopping list")
	c.Flags().BoolVar(&o.missing, "missing", false, "find what to buy for the parts that the boards on hand do not yield, as plan: {missing: true} does")
	c.Flags().StringVar(&o.sheets, "pdf", "", "also write the plan's sheets, boards drawn to scale, to this file")
	c.Flags().DurationVar(&o.patience, "patience", 3*time.Second, "how long to look for a better plan")
	return c
}

// planning is what the flags of the board plan say.
type planning struct {
	from         source
	width        int    // columns
	list         string // file of the boards on hand; "" = the design's
	buy, missing bool
	sheets       string // file of the sheets; "" = none
	patience     time.Duration
}

func (o *planning) run(p *program, name string) error {
	piece, err := o.from.load(p, name)
	if err != nil {
		return err
	}
	if err := p.stopped(piece); err != nil {
		return err
	}
	if o.list != "" {
		if piece.Design.OnHand, err = boardsOf(o.list, piece.Design.Units); err != nil {
			return err
		}
		piece.Design = piece.Design.Named(p.speak.Fill)
	}
	r, err := o.solve(piece)
	if err != nil {
		return &word.At{Where: name, Err: err}
	}
	if err := o.print(p, piece, r); err != nil {
		return err
	}
	if r.Short() {
		return errStopped
	}
	return nil
}

// shops tells whether wood is bought, all or what is missing.
func (o *planning) shops() bool { return o.buy || o.missing }

func (o *planning) solve(piece *form.Piece) (yield.Result, error) {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	patience := o.patience
	if o.missing || o.buy && piece.Design.Plan.Missing {
		patience *= 2 // for the plan of the boards on hand as much as it has by itself
	}
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	if !o.shops() {
		return yield.Solve(ctx, piece)
	}
	piece.Design.Plan.Missing = piece.Design.Plan.Missing || o.missing
	return yield.Shop(ctx, piece)
}

// print writes the tables, and the sheets where they are wanted.
func (o *planning) print(p *program, piece *form.Piece, r yield.Result) error {
	style, draw := piece.Design.Style(), sheet.BoardPlan
	tables := table.Told(table.BoardPlan(r, style))
	if o.shops() {
		tables, draw = table.Bought(r, style), sheet.WoodToBuy
	}
	for i, t := range tables {
		if i > 0 {
			fmt.Fprintln(p.out)
		}
		if err := table.WriteText(p.out, t.In(p.speak), o.width); err != nil {
			return err
		}
	}
	if o.sheets == "" {
		return nil
	}
	return writeTo(o.sheets, func(w io.Writer) error {
		return pdf.Write(w, draw(piece, r, sheet.Options{Style: style, Tongue: p.speak}), pdf.Meta{Title: piece.Title, Subject: p.speak.Say("Board plan")})
	})
}

// boardsOf reads a list of boards.
func boardsOf(name string, bare measure.Unit) ([]stock.Board, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, listTrouble(name, err)
	}
	defer func() { _ = f.Close() }() // only read from
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, listTrouble(name, syscall.EISDIR)
	}
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
