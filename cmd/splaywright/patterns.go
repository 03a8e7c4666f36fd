package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"splaywright/model/measure"
	"splaywright/model/word"
	"splaywright/render/pattern"
)

const patternHelp = "Full-size patterns carry bars of 100 mm and 4 in both ways. Print one sheet at 100 %, measure the\n" +
	"100 mm bars, and give what they measure: the patterns are drawn again so that they come out right."

// patternFlags are the lengths that the full-size patterns are told, as typed.
type patternFlags struct {
	on                          bool
	barX, barY, margin, overlap string
}

func (f *patternFlags) flags(c *cobra.Command) {
	c.Flags().BoolVar(&f.on, "patterns", false, "write the full-size patterns too; so does any of the settings below")
	c.Flags().StringVar(&f.barX, "bar-x", "", "what the 100 mm bar across the sheet measures as printed, such as 99.2")
	c.Flags().StringVar(&f.barY, "bar-y", "", "what the 100 mm bar down the sheet measures as printed")
	c.Flags().StringVar(&f.margin, "pattern-margin", "", "what the printer leaves blank round a sheet (6.5 mm when left out)")
	c.Flags().StringVar(&f.overlap, "pattern-overlap", "", "of neighbouring sheets (10 mm when left out)")
}

// options gives the patterns' options, nil when none are asked for. Bare numbers are millimetres.
func (f *patternFlags) options() (*pattern.Options, error) {
	o := &pattern.Options{}
	for _, v := range []struct {
		flag, text string
		to         *measure.Length
	}{
		{"bar-x", f.barX, &o.AcrossBar}, {"bar-y", f.barY, &o.DownBar},
		{"pattern-margin", f.margin, &o.Margin}, {"pattern-overlap", f.overlap, &o.Overlap},
	} {
		if v.text == "" {
			continue
		}
		l, err := measure.ParseLength(v.text, measure.Metric)
		if err == nil && l <= 0 {
			err = fmt.Errorf("%q is not more than nothing", v.text)
		}
		if err != nil {
			return nil, &word.At{Where: "--" + v.flag, Err: err}
		}
		f.on, *v.to = true, l
	}
	if !f.on {
		return nil, nil
	}
	return o, nil
}
