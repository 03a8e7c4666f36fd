package yield

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/model/stock"
)

// runs are the parts that are kept together for their grain, of each of the pieces that are made together.
func runs(p *form.Piece, index map[string]int) []stock.Run {
	var r stock.Run
	switch plan := p.Design.Plan; {
	case plan.Resawn:
		r = resawn(p)
	case plan.Run:
		r = stock.Run{Name: "round the piece", IDs: inARow(p)}
	default:
		return nil
	}
	if len(r.IDs) < 2 {
		return nil
	}
	var out []stock.Run
	for n := 1; n <= form.MostPieces; n++ {
		again := r
		again.IDs = nil
		for _, id := range r.IDs {
			if i, ok := index[another(id, n)]; ok {
				again.IDs, again.Parts = append(again.IDs, another(id, n)), append(again.Parts, i)
			}
		}
		if len(again.IDs) == len(r.IDs) {
			out = append(out, again)
		}
	}
	return out
}

// inARow are the parts that follow each other round the piece: side, top, side of a stool, all walls of the others,
// counter-clockwise from above and so from left to right where one walks round them.
func inARow(p *form.Piece) []string {
	switch {
	case p.Form == form.Steps:
		return []string{"side-middle", "top-upper", "side-right"}
	case form.OnSides(p.Form):
		return []string{"side-left", "top", "side-right"}
	case !slices.ContainsFunc(p.Parts, func(q *part.Part) bool { return strings.HasPrefix(q.ID, "stave-") }):
		return []string{"front", "end-right", "back", "end-left"}
	}
	var out []string
	for n := range p.Design.Staves() {
		out = append(out, fmt.Sprintf("stave-%d", n+1))
	}
	return out
}

// resawn are the boards that are sawn from one and opened like a book: a stool's two sides mirror each other; of walls
// each of the two has half of the way round. The faces that the saw leaves are the outer ones.
//
// Wood magazine, four-corner grain match, https://www.woodmagazine.com/4corner ; Popular Woodworking 138 (December 2003)
// p. 28, http://zhurnalko.net/=woodworking/popular-woodworking/2003-12-No-138--num28 : of the corners across from each
// other two are book-matched, and over the other two the grain runs on.
func resawn(p *form.Piece) stock.Run {
	r := stock.Run{Name: "resawn from one board", Kind: stock.Resawn}
	row := inARow(p)
	if form.OnSides(p.Form) {
		r.IDs = []string{row[0], row[2]}
		return r
	}
	if len(row)%2 == 0 {
		r.IDs, r.Row = row, len(row)/2
	}
	return r
}
