package view

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"splaywright/assets"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
)

// A picture without hidden lines has the same lines otherwise, in the same order.
func TestSeenIsThePictureWithoutHiddenLines(t *testing.T) {
	for _, e := range assets.Examples() {
		s := NewScene(form.Build(filetest.Named(t, e.Name)), 0.05)
		for _, d := range []Direction{Front, Top, Pictorial(30, 22), Pictorial(215, -40)} {
			var want []Line
			for _, l := range s.Project(d).Lines {
				if l.Kind != Hidden {
					l.Arc = nil
					want = append(want, l)
				}
			}
			if diff := cmp.Diff(want, s.Seen(d).Lines); diff != "" {
				t.Errorf("%s, %s (-of the whole picture +seen):\n%s", e.Name, d.Name, diff)
			}
		}
	}
}
