package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"splaywright/assets"
	"splaywright/model/tongue"
)

// program is what the commands share: where data is read from and goes, and where talk goes.
type program struct {
	in        io.Reader
	out, talk io.Writer
	speak     *tongue.Tongue
}

func newRoot(in io.Reader, out, talk io.Writer, speak *tongue.Tongue) *cobra.Command {
	p := &program{in, out, talk, speak}
	root := &cobra.Command{
		Use:   "splaywright [FILE]",
		Short: "Furniture of leaning, dovetailed boards: from a few sizes to papers to cut from",
		Long: paragraphs("Splaywright turns a few sizes (height, width, depth, splay, thickness) into a piece that can be\ncut: true sizes, compound angles, dovetails off square, a cut list, saw settings and drawings.",
			"Without a command it opens the window, with FILE in it when one is named.\nIt exits 0 on success, 1 when a finding stops the piece, 2 when the input is refused."),
		Example:       "  splaywright step.yaml\n  splaywright papers step.yaml --to papers",
		Version:       assets.Version(),
		Args:          atMostOne,
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE: func(c *cobra.Command, args []string) error {
			file := ""
			if len(args) == 1 {
				file = args[0]
			}
			if file != "" {
				if err := openable(c, file); err != nil {
					return err
				}
			}
			return openWindow(p, file)
		},
	}
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(talk)
	root.SetFlagErrorFunc(flagTrouble)
	root.SetHelpCommand(help(root))
	root.PersistentFlags().String("tongue", "", "language of what is printed: "+strings.Join(tongue.Codes(), ", ")+" (the system's when left out)")
	root.PersistentPreRunE = func(c *cobra.Command, _ []string) error {
		if code := c.Flag("tongue").Value.String(); code != "" && !slices.Contains(tongue.Codes(), code) {
			return fmt.Errorf("--tongue %+s: that language is not spoken; there are %+s", code, strings.Join(tongue.Codes(), ", "))
		}
		return nil
	}
	root.SetVersionTemplate("splaywright {{.Version}}\n")
	root.AddCommand(p.derive(), p.show(), p.papers(), p.check(), p.compare(), p.resize(), p.plan(), p.new(), p.units(), p.angles(), p.timbers(), p.schema())
	if speak.Code() != tongue.English {
		helpIn(root, speak)
	}
	return root
}

// help gives a command's help, and answers a mistyped one as anywhere else.
func help(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Help about a command",
		Example: "  splaywright help papers",
		RunE: func(_ *cobra.Command, args []string) error {
			c, _, err := root.Find(args)
			if err != nil || c == root && len(args) > 0 {
				return unknownCommand(root, args[0])
			}
			return c.Help()
		},
	}
}
