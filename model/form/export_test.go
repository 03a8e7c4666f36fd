package form

import "splaywright/model/part"

// BuildAlone is Build with each board cut by itself, whether it has a twin or not.
func BuildAlone(d Design) *Piece {
	return buildEach(d, func(*part.Part) {}, func(boards []*board) (first []int, _ []twin) {
		for i := range boards {
			first = append(first, i)
		}
		return first, nil
	})
}
