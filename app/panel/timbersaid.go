package panel

import (
	"strings"

	"splaywright/app/say"
	"splaywright/model/timber"
)

// timberSaid tells under a timber's name where its figures come from, after the name in the language where that is another:
// the field has it as the design file does.
func timberSaid(known timber.Book, name string) string {
	from := figuresFrom(known, name)
	if said := say.It(name); said != name {
		return said + "; " + from
	}
	return from
}

func figuresFrom(known timber.Book, name string) string {
	source, file, own, ok := known.Source(name)
	switch {
	case !ok:
		return say.It("no figures: it is in no table")
	case own && file != "":
		return say.With("your own, %s: %s", file, source)
	case own:
		return say.With("of this design: %s", source)
	}
	first, _, _ := strings.Cut(source, ";")
	if read, recalled := strings.CutSuffix(first, fromMemory); recalled {
		first = read + say.It(fromMemory)
	}
	return say.With("built in: %s", first)
}

// fromMemory is how the built-in table marks figures that were not read in the source that they name.
const fromMemory = " (from memory)"
