package table

import "splaywright/model/form"

// Same gives the ids of the equal parts that share rows in the tables, for each part: a row that
// refers to the left side is about the right one too where they are cut alike.
func Same(p *form.Piece) map[string][]string {
	out := map[string][]string{}
	for _, g := range groups(p) {
		var ids []string
		for _, q := range g {
			ids = append(ids, q.ID)
		}
		for _, id := range ids {
			out[id] = ids
		}
	}
	return out
}
