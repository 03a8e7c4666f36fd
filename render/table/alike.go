package table

import (
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
)

// perPart adds the rows that each part gives, the part's name in front. Equal parts whose rows
// read alike, as those of a left and a right side do, share them.
func (s *sheet) perPart(p *form.Piece, rows func(q *part.Part) [][]Cell) {
	for _, g := range groups(p) {
		all := make([][][]Cell, len(g))
		alike := true
		for i, q := range g {
			all[i] = rows(q)
			alike = alike && reads(all[i]) == reads(all[0])
		}
		if alike {
			s.named(g, all[0])
			continue
		}
		for i, q := range g {
			s.named(group{q}, all[i])
		}
	}
}

// named adds rows under the name of a group of parts.
func (s *sheet) named(g group, rows [][]Cell) {
	for _, r := range rows {
		s.row(g[0].ID, append([]Cell{word(g.short())}, r...)...)
	}
}

func reads(rows [][]Cell) string {
	var b strings.Builder
	for _, r := range rows {
		for _, c := range r {
			b.WriteString(c.Text)
			b.WriteByte('\t')
		}
		b.WriteByte('\n')
	}
	return b.String()
}
