package file

import (
	"math/bits"
	"strings"

	"splaywright/model/measure"
)

// markings are a text with the unit behind some of its bare numbers, fewest first; names that stand for bare numbers are times one
// of the unit where they are asked for.
func (m *mending) markings(text string, names bool) []string {
	text = strings.TrimRight(text, " ")
	plain := measure.Plain(text)
	if ends := m.ends(plain, false); len(ends) == 1 && ends[0].at == len(plain) && !names {
		return []string{text + m.mark} // with its ½ as typed
	}
	if plain != text {
		plain = strings.Join(strings.Fields(plain), " ")
	}
	var out []string
	ends := m.ends(plain, names)
	for _, chosen := range subsets(len(ends)) {
		var b strings.Builder
		from := 0
		for _, i := range chosen {
			b.WriteString(plain[from:ends[i].at] + ends[i].mark)
			from = ends[i].at
		}
		out = append(out, b.String()+plain[from:])
	}
	return out
}

// end is where a bare number ends and what makes it a length.
type end struct {
	at   int
	mark string
}

// ends are those of the bare numbers of an expression, and of the names that stand for some.
func (m *mending) ends(text string, names bool) (out []end) {
	scan(text, func(from, to int, kind measure.Kind) {
		switch {
		case kind == measure.Number:
			out = append(out, end{to, m.mark})
		case kind == aWord && names:
			if q, err := m.was.look(text[from:to]); err == nil && q.Kind == measure.Number {
				out = append(out, end{to, " * 1" + m.mark})
			}
		}
	})
	return out
}

// subsets are the choices of some of n things, fewest first; of many things each alone and all.
func subsets(n int) (out [][]int) {
	if n > everySubset {
		all := make([]int, n)
		for i := range all {
			all[i] = i
			out = append(out, []int{i})
		}
		return append(out, all)
	}
	for size := 1; size <= n; size++ {
		for set := range uint(1) << n {
			if bits.OnesCount(set) != size {
				continue
			}
			var chosen []int
			for i := range n {
				if set>>i&1 == 1 {
					chosen = append(chosen, i)
				}
			}
			out = append(out, chosen)
		}
	}
	return out
}

// wordsOf are the names and functions of an expression.
func wordsOf(text string) (out []string) {
	scan(text, func(from, to int, kind measure.Kind) {
		if kind == aWord {
			out = append(out, text[from:to])
		}
	})
	return out
}

// aWord is what scan finds besides quantities.
const aWord measure.Kind = -1

// scan goes over the words and quantities of an expression, as far as they are understood.
func scan(text string, found func(from, to int, kind measure.Kind)) {
	for e := (expression{text: text}); e.pos < len(text); {
		from, c := e.pos, text[e.pos]
		switch {
		case letter(c):
			for e.pos < len(text) && e.inName() {
				e.pos++
			}
			found(from, e.pos, aWord)
		case c >= '0' && c <= '9' || c == '.':
			q, n, err := measure.Literal(text[from:])
			if err != nil {
				return
			}
			e.pos += n
			found(from, e.pos, q.Kind)
		default:
			e.pos++
		}
	}
}
