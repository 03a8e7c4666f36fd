package main

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"splaywright/model/tongue"
)

// tongueOf is the language that a run speaks: what stands behind --tongue, else the system's. The help is made before
// the library reads the flags, so it is looked for here; a code that is not spoken is refused later.
func tongueOf(args []string, env func(string) string) string {
	for i, a := range args {
		switch {
		case a == "--":
			return tongue.FromLocale(env)
		case a == tongueFlag && i+1 < len(args):
			return args[i+1]
		case strings.HasPrefix(a, tongueFlag+"="):
			return a[len(tongueFlag)+1:]
		}
	}
	return tongue.FromLocale(env)
}

const tongueFlag = "--tongue"

// paragraphs joins what a command's help says.
func paragraphs(list ...string) string { return strings.Join(list, "\n\n") }

// words are those that the library puts into its help.
var words = []string{"Usage:", "Aliases:", "Examples:", "Available Commands:", "Additional Commands:", "Global Flags:", "Flags:", "Additional help topics:"}

// moreHelp is the library's last line of help.
const moreHelp = `Use "{{.CommandPath}} [command] --help" for more information about a command.`

// helpIn says the help of all commands in another language. What is typed stays as it is.
func helpIn(root *cobra.Command, speak *tongue.Tongue) {
	frame := root.UsageTemplate()
	for _, w := range words {
		frame = strings.ReplaceAll(frame, w, speak.Say(w))
	}
	root.SetUsageTemplate(strings.ReplaceAll(frame, moreHelp, speak.Say(moreHelp)))
	root.InitDefaultCompletionCmd()
	root.InitDefaultVersionFlag()
	helpOf(root, speak)
}

func helpOf(c *cobra.Command, speak *tongue.Tongue) {
	if c.Name() == "completion" { // the library's own, about shells
		c.Short = speak.Say("Print a script with which a shell completes commands")
		c.Long = ""
		for _, shell := range c.Commands() {
			shell.Short, shell.Long = shell.Name(), ""
		}
	} else {
		c.Short, c.Long = speak.Say(c.Short), longIn(c.Long, speak)
	}
	c.InitDefaultHelpFlag()
	if f := c.Flags().Lookup("help"); f != nil {
		f.Usage = speak.Say("this help")
	}
	if f := c.Flags().Lookup("version"); f != nil {
		f.Usage = speak.Say("the program's version")
	}
	say := func(f *pflag.Flag) {
		if f.Name != "help" && f.Name != "version" && c.Name() != "completion" && (c.Parent() == nil || c.Parent().Name() != "completion") {
			f.Usage = speak.Say(f.Usage)
		}
	}
	c.LocalNonPersistentFlags().VisitAll(say)
	if !c.HasParent() {
		c.PersistentFlags().VisitAll(say)
	}
	for _, sub := range c.Commands() {
		helpOf(sub, speak)
	}
}

// longIn says a long text paragraph by paragraph; one that holds names of the design file, line by line. A line that is
// set in is typed as it stands.
func longIn(text string, speak *tongue.Tongue) string {
	list := strings.Split(text, "\n\n")
	for i, para := range list {
		if said, whole := speak.Read(para); whole && !strings.Contains(para, "\n  ") {
			list[i] = said
			continue
		}
		lines := strings.Split(para, "\n")
		for k, l := range lines {
			if said, whole := speak.Read(l); whole && !strings.HasPrefix(l, "  ") {
				lines[k] = said
			}
		}
		list[i] = strings.Join(lines, "\n")
	}
	return strings.Join(list, "\n\n")
}
