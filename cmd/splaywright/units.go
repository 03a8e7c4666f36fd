package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"splaywright/model/measure"
)

func (p *program) units() *cobra.Command {
	var inches bool
	c := &cobra.Command{
		Use:   "units TEXT ...",
		Short: "Say how a length or an angle is understood",
		Long: `Read each TEXT as a length, or as an angle when it has a degree sign, "deg" or a ratio, and print
it in millimetres, in inches to 1/64 with what rounding leaves, or in degrees and as a ratio.
A bare number is millimetres, or inches with --inches.`,
		Example: "  splaywright units '9 3/8 in' '26 cm' '7 deg' 1:8",
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("units needs a text to read, such as `splaywright units '9 3/8 in'`")
			}
			bare := measure.Metric
			if inches {
				bare = measure.Imperial
			}
			guessed := false
			for _, text := range args {
				line, err := understood(text, bare)
				if err != nil {
					return err
				}
				fmt.Fprintf(p.out, "%s = %s\n", text, line)
				guessed = guessed || isBare(text)
			}
			if guessed && !inches {
				fmt.Fprintln(p.talk, "Bare numbers were read as millimetres; --inches reads them as inches.")
			}
			return nil
		},
	}
	c.Flags().BoolVar(&inches, "inches", false, "bare numbers are inches")
	return c
}

// isBare tells whether a text is a length without a unit: one that is longer in inches.
func isBare(text string) bool {
	mm, err := measure.ParseLength(text, measure.Metric)
	in, err2 := measure.ParseLength(text, measure.Imperial)
	return err == nil && (err2 != nil || mm != in)
}

func understood(text string, bare measure.Unit) (string, error) {
	if strings.ContainsAny(text, "°:") || strings.Contains(text, "deg") {
		a, err := measure.ParseAngle(text)
		if err != nil {
			return "", err
		}
		return fmt.Sprintf("%.4f° = %s", a.Degrees(), measure.Ratio(a)), nil
	}
	l, err := measure.ParseLength(text, bare)
	if err != nil {
		return "", err
	}
	fine := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 64}
	_, off := fine.Round(l)
	return fmt.Sprintf("%.4f mm = %s (%+.4f mm)", l.MM(), fine.FormatUnit(l), off.MM()), nil
}
