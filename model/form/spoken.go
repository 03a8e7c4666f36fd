package form

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/part"
)

// spoken are the words for parts in a sentence: for one by its id, or by what its id begins with, and for
// several of a kind.
var spoken = []struct{ id, one, kind string }{
	{"top-lower", "the lower tread (%s)", "the treads (%s)"},
	{"top-upper", "the upper tread (%s)", "the treads (%s)"},
	{"top", "the top (%s)", ""},
	{"side-left", "the left side (%s)", "the sides (%s)"},
	{"side-middle", "the middle side (%s)", "the sides (%s)"},
	{"side-right", "the right side (%s)", "the sides (%s)"},
	{"front", "the front (%s)", "the front and back (%s)"},
	{"back", "the back (%s)", "the front and back (%s)"},
	{"end-left", "the left end (%s)", "the ends (%s)"},
	{"end-right", "the right end (%s)", "the ends (%s)"},
	{"apron-front", "the front apron (%s)", "the aprons (%s)"},
	{"apron-back", "the back apron (%s)", "the aprons (%s)"},
	{"stretcher", "the stretcher (%s)", "the stretchers (%s)"},
	{"stave", "the stave (%s)", "the staves (%s)"},
	{"bottom", "the bottom (%s)", ""},
	{"lid", "the lid (%s)", ""},
	{"batten", "the batten (%s)", "the battens (%s)"},
	{"spline", "the spline (%s)", "the splines (%s)"},
	{"key", "the key (%s)", "the keys (%s)"},
	{"wedge", "the wedge (%s)", "the wedges (%s)"},
}

// pairs are two of three of a kind.
var pairs = map[string]string{
	"side-left side-middle":  "the left and middle sides (%s)",
	"side-middle side-right": "the middle and right sides (%s)",
	"side-left side-right":   "the left and right sides (%s)",
}

// InWords names parts as a sentence does, kind by kind: "the left side", "the sides", "the front and back".
func InWords(p *Piece, ids ...string) []string {
	var out []string
	for _, k := range kindsOf(p, ids) {
		out = append(out, strings.TrimSuffix(k.format, marked))
	}
	return out
}

// InWordsWith is InWords with the marks of each kind's parts behind it, as marks writes them: "the sides (2, 3)".
func InWordsWith(p *Piece, marks func([]*part.Part) string, ids ...string) []string {
	var out []string
	for _, k := range kindsOf(p, ids) {
		out = append(out, fmt.Sprintf(k.format, marks(k.parts)))
	}
	return out
}

// marked ends the names, where their marks go.
const marked = " (%s)"

// kind is some of the parts that go by one name in a sentence.
type kind struct {
	format string
	parts  []*part.Part
}

func kindsOf(p *Piece, ids []string) []kind {
	var out []kind
	at := map[string]int{}
	for _, q := range p.Parts {
		if !slices.Contains(ids, q.ID) {
			continue
		}
		_, many := spokenOf(q)
		k, ok := at[many]
		if !ok {
			k = len(out)
			at[many], out = k, append(out, kind{})
		}
		out[k].parts = append(out[k].parts, q)
	}
	for k := range out {
		out[k].format = formatOf(p, out[k].parts)
	}
	return out
}

// formatOf names parts of one kind.
func formatOf(p *Piece, some []*part.Part) string {
	one, many := spokenOf(some[0])
	if len(some) == 1 {
		return one
	}
	if two := pairs[some[0].ID+" "+some[1].ID]; len(some) == 2 && two != "" && ofKind(p, many) > 2 {
		return two
	}
	return many
}

func ofKind(p *Piece, kind string) int {
	n := 0
	for _, q := range p.Parts {
		if _, k := spokenOf(q); k == kind {
			n++
		}
	}
	return n
}

// spokenOf is how a part is named alone, and with others of its kind.
func spokenOf(q *part.Part) (one, many string) {
	for _, w := range spoken {
		if q.ID == w.id || strings.HasPrefix(q.ID, w.id+"-") && !strings.Contains(w.id, "-") && w.id != "top" {
			if w.kind == "" {
				return w.one, w.one
			}
			return w.one, w.kind
		}
	}
	name := strings.ReplaceAll(strings.ToLower(q.Name), "%", "%%")
	return "the " + name + marked, "the " + name + "s" + marked
}
