package main

import (
	"io"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"splaywright/model/tongue"
)

// Every paragraph of every command's help, its line and those of its flags are said in every language; what is typed as it
// stands is set in.
func TestHelpIsSaidWhole(t *testing.T) {
	for _, code := range []string{"de", "ja"} {
		speak := tongue.Load(code)
		seen := 0
		var look func(c *cobra.Command)
		look = func(c *cobra.Command) {
			if c.Name() == "completion" || c.Name() == "help" { // the library's own
				return
			}
			texts := append(strings.Split(c.Long, "\n\n"), c.Short)
			for _, para := range texts {
				if strings.TrimSpace(para) == "" {
					continue
				}
				if _, whole := speak.Read(para); whole {
					seen++
					continue
				}
				for line := range strings.Lines(para) {
					line = strings.TrimRight(line, "\n")
					if _, whole := speak.Read(line); !whole && !strings.HasPrefix(line, "  ") {
						t.Errorf("%s: of the help of %s is not said: %q", code, c.Name(), line)
					}
				}
			}
			for _, sub := range c.Commands() {
				look(sub)
			}
		}
		look(newRoot(strings.NewReader(""), io.Discard, io.Discard, tongue.Load("en")))
		if seen < 15 {
			t.Errorf("%s: only %d paragraphs were looked at", code, seen)
		}
	}
}
