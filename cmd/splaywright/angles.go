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
	c := &cobra.Command{
		Use:   "angles LEAN [NEXT]",
		Short: "Print the compound angles of one corner, without a design",
		Long: `Print how to set the saw for a corner of boards that lean from plumb: butted, dovetailed and mitred ends,
flat and on edge, the angle inside the corner, and the line of the corner. LEAN and NEXT are degrees from
plumb, or rise and run such as 1:9.5 or 120:360, of the board that is cut and of its neighbour; NEXT is as
LEAN when it is left out. With --sides it is one corner of a ring of so many equal sides.`,
		Example: "  splaywright angles 12\n  splaywright angles 10 5\n  splaywright angles 9 --sides 6",
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) < 1 || len(args) > 2 {
				return errors.New("angles needs a lean from plumb, or two, such as `splaywright angles 10 5`")
			}
			corner, err := cornerOf(args, sides)
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
	c.Flags().IntVar(&width, "width", 110, "columns of the terminal")
	return c
}

func cornerOf(args []string, sides int) (cut.Corner, error) {
	var leans []measure.Angle
	for _, text := range args {
		a, err := measure.ParseAngle(text)
		if err != nil {
			return cut.Corner{}, err
		}
		if a < -steepest || a > steepest {
			return cut.Corner{}, fmt.Errorf("a lean of %s is beyond %s from plumb; was it measured from the floor?", measure.FormatAngle(a, 0), measure.FormatAngle(steepest, measure.Degree))
		}
		leans = append(leans, a)
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
