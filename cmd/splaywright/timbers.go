package main

import (
	"github.com/spf13/cobra"

	"splaywright/assets"
)

func (p *program) timbers() *cobra.Command {
	return &cobra.Command{
		Use:   "timbers",
		Short: "Print the built-in table of timbers, for one of your own",
		Long: `Print the table of species with every figure's source, as comma-separated values. Rows of your own go under the
same heads into a file for --timbers, or under timbers in the design. After the last column may follow
change_radial and change_tangential (the change of size per percent of moisture), and price_per_m3 or
price_per_board_foot; a row with a price alone is for a timber of this table.`,
		Example: "  splaywright timbers > own.csv\n  splaywright show step.yaml --timbers own.csv",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := p.out.Write(assets.Species)
			return err
		},
	}
}
