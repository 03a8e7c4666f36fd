package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"splaywright/model/cut"
	"splaywright/model/measure"
	"splaywright/render/table"
)

// steepest lean that a corner is worked out for.
const steepest = 89 * measure.Degree

func (p *program) angles() *cobra.Command {
	var sides, width int
	var by triangle
	c := &cobra.Command{
		Use:   "angles [LEAN] [NEXT]",
		Short: "Print the compound angles of one corner, without a design",
		Long: paragraphs(`Print how to set the saw for a corner of boards that lean from plumb: butted, dovetailed and mitred ends,
flat and on edge, the angle inside the corner, and the line of the corner. LEAN and NEXT are degrees from
plumb, or rise and run such as 1:9.5 or 120:360, of the board that is cut and of its neighbour; NEXT is as
LEAN when it is left out. With --sides it is one corner of a ring of so many equal sides.`, `Two lengths give LEAN too: --out is how far the board comes out of plumb, --height is over what height, plumb
from the floor, and --along over what length of the board's own slope. All three have to agree. Then only NEXT
is named beside them.`),
		Example: "  splaywright angles 12\n  splaywright angles 10 5\n  splaywright angles 9 --sides 6\n  splaywright angles --out '1 1/4 in' --along '17 1/2 in'",
		RunE: func(_ *cobra.Command, args []string) error {
			leans, err := leansOf(args, by)
			if err != nil {
				return err
			}
			corner, err := cornerOf(leans, sides)
			if err != nil {
				return err
			}
			for i, t := range table.Angles(corner) {
				if i > 0 {
					fmt.Fprintln(p.out)
				}
				if err := table.WriteText(p.out, t.In(p.speak), width); err != nil {
					return err
				}
			}
			return nil
		},
	}
	c.Flags().IntVar(&sides, "sides", 4, "sides of the ring")
	c.Flags().StringVar(&by.out, "out", "", "how far out of plumb, a length; --height or --along says over what")
	c.Flags().StringVar(&by.height, "height", "", "plumb height over which the board comes out of plumb")
	c.Flags().StringVar(&by.along, "along", "", "length of the board's slope over which it comes out of plumb")
	c.Flags().IntVar(&width, "width", 110, "columns of the terminal")
	return c
}

// leansOf are the leans of a corner as they are named, the first of them perhaps by two lengths.
func leansOf(args []string, by triangle) (leans []measure.Angle, err error) {
	if by != (triangle{}) {
		lean, err := by.lean()
		if err != nil {
			return nil, err
		}
		leans = append(leans, lean)
	}
	if n := len(leans) + len(args); n < 1 || n > 2 {
		return nil, errors.New("angles needs a lean from plumb, or two, such as `splaywright angles 10 5`")
	}
	for _, text := range args {
		a, err := measure.ParseAngle(text)
		if err != nil {
			return nil, err
		}
		leans = append(leans, a)
	}
	return leans, nil
}

func cornerOf(leans []measure.Angle, sides int) (cut.Corner, error) {
	for _, a := range leans {
		if a < -steepest || a > steepest {
			return cut.Corner{}, fmt.Errorf("a lean of %s is beyond %s from plumb; was it measured from the floor?", measure.FormatAngle(a, 0), measure.FormatAngle(steepest, measure.Degree))
		}
	}
	switch {
	case sides < 3:
		return cut.Corner{}, fmt.Errorf("--sides %d: a ring has three sides or more", sides)
	case sides == 4:
		return cut.Square(leans[0], leans[len(leans)-1]), nil
	case len(leans) > 1:
		return cut.Corner{}, fmt.Errorf("--sides %d: the sides of a ring lean alike; leave the second lean out", sides)
	}
	return cut.Ring(sides, leans[0]), nil
}
