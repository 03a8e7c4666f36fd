package model_test

import (
	"testing"

	"splaywright/model"
	"splaywright/model/file/filetest"
	"splaywright/model/part"
	"splaywright/model/solid"
)

// Boards of one shape, or of its mirror image, are got out of blanks of one size; the right side of the hallway bench, whose apron's
// housing is cut behind the arch, is one.
func TestBoardsOfOneShapeHaveOneBlank(t *testing.T) {
	twins := 0
	for _, e := range filetest.Examples(t) {
		first := map[*solid.Solid]*part.Part{}
		for _, q := range model.Derive(e.Design).Parts {
			if q.Solid == nil {
				continue
			}
			if err := q.Shape().Check(); err != nil {
				t.Errorf("%s, %s: %v", e.Name, q.ID, err)
			}
			of, ok := first[q.Solid.Like()]
			if !ok {
				first[q.Solid.Like()] = q
				continue
			}
			twins++
			if d := float64(q.Blank.Length - of.Blank.Length); d > 1e-8 || d < -1e-8 {
				t.Errorf("%s: %s is got out of %v, %s of %v", e.Name, q.ID, q.Blank, of.ID, of.Blank)
			}
		}
	}
	if twins == 0 {
		t.Error("no boards of one shape")
	}
}
