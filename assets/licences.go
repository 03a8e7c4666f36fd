package assets

import (
	_ "embed"
	"strings"
)

//go:embed licences.txt
var licences string

// Licence is what is built into the program and the terms it stands under.
type Licence struct{ What, Terms string }

// Licences lists everything that is built into the program: fonts, libraries, modules by their paths.
func Licences() []Licence {
	var out []Licence
	for _, line := range strings.Split(strings.TrimSpace(licences), "\n") {
		what, terms, _ := strings.Cut(line, "\t")
		out = append(out, Licence{what, terms})
	}
	return out
}
