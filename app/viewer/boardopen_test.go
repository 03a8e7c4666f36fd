package viewer

import (
	"context"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"splaywright/app/look"
	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
	"splaywright/model/yield"
	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
	"splaywright/render/table"
)

func boardsOf(t *testing.T, d form.Design) *Boards {
	t.Helper()
	r, err := yield.Solve(context.Background(), model.Derive(d))
	if err != nil || r.Short() {
		t.Fatalf("%v %+v", err, r.Plan.Misfits)
	}
	names, ids := table.PartNames(r), table.PartIDs(r)
	show := BoardShow{Boards: d.OnHand, Kerf: r.Task.Saw.Kerf, Resaw: r.Task.Saw.Resaw, Step: 1,
		Say:   func(mm float64) string { return measure.Style{Step: 0.5}.Format(measure.Length(mm)) },
		Exact: func(mm float64) string { return measure.Style{}.Exact().Format(measure.Length(mm)) }}
	for i, l := range r.Plan.Layouts {
		show.Cuts = append(show.Cuts, BoardCuts{Layout: l, Cuts: l.Cuts(r.Task), Opened: r.Opened(i), Title: table.BoardName(r, i), Names: names, IDs: ids})
	}
	b := NewBoards()
	b.Spawn(func(f func()) { f() })
	b.Set(show)
	return b
}

// What is resawn is drawn below its board, in a wide place as in a narrow one: every part is named, no word lies on
// another or leaves the place at its side, and a part that lies open is found under the pointer.
func TestWhatIsResawnLiesOpen(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{})
	long := formtest.LetterBox() // takes all of its board
	long.OnHand[0].Length = 576
	for name, d := range map[string]form.Design{"box": formtest.LetterBox(), "tight": long, "stool": formtest.MirrorStool()} {
		for _, wide := range []float32{420, 740, 1100} {
			b := boardsOf(t, d)
			b.Resize(fyne.NewSize(wide, 2000))
			b.CreateRenderer().Layout(fyne.NewSize(wide, 2000))
			page := b.Page()
			var words []draw.Item
			all := ""
			for _, it := range page.Items {
				if s, ok := it.(draw.Text); ok {
					words = append(words, s)
					all += s.Text + "\n"
					if box := draw.Bounds([]draw.Item{s}); box.Max.X > page.Width {
						t.Errorf("%s, %v wide: %q ends at %.0f", name, wide, s.Text, box.Max.X)
					}
				}
			}
			for _, v := range drawtest.Overlaps(draw.Page{Width: page.Width, Height: page.Height, Items: words}) {
				t.Errorf("%s, %v wide: %s", name, wide, v)
			}
			for _, q := range d.OnHand {
				if !strings.Contains(all, q.Name) {
					t.Errorf("%s: %s is not drawn", name, q.Name)
				}
			}
			pointed(t, name, b)
			halves := regexp.MustCompile(`A ([\d.]+) over B ([\d.]+)`).FindStringSubmatch(all)
			if halves == nil { // a narrow place has no room for it
				if wide > 500 {
					t.Errorf("%s, %v wide: how thick the halves are is not said", name, wide)
				}
				continue
			}
			upper, _ := strconv.ParseFloat(halves[1], 64)
			lower, _ := strconv.ParseFloat(halves[2], 64)
			if sum := upper + b.show.Resaw + lower; math.Abs(sum-d.OnHand[0].Thickness) > 0.02 {
				t.Errorf("%s: the halves and the cut between come to %.2f mm, the board is %g thick", name, sum, d.OnHand[0].Thickness)
			}
		}
	}
}

// pointed goes over every part that lies open with the pointer, and over the piece that they come from.
func pointed(t *testing.T, name string, b *Boards) {
	t.Helper()
	seen := 0
	for _, r := range b.rows() {
		if r.cuts == nil {
			continue
		}
		for _, o := range r.cuts.Opened {
			if ref := b.partAt(fyne.NewPos(r.x((o.Piece.X1+o.Piece.X2)/2), r.y((o.Piece.Y1+o.Piece.Y2)/2))); ref != "" {
				t.Errorf("%s: %q where two lie over one another", name, ref)
			}
			for n, f := range o.Leaves {
				foot, _, _ := r.leafFoot(0, n)
				for _, x := range f.Lies {
					seen++
					if ref := b.partAt(fyne.NewPos(r.x((x.X1+x.X2)/2), r.y(foot+(x.Y1+x.Y2)/2))); ref != r.cuts.IDs[x.Piece] {
						t.Errorf("%s: %q where %s lies", name, ref, r.cuts.IDs[x.Piece])
					}
				}
			}
		}
	}
	if seen < 2 {
		t.Errorf("%s: %d parts lie open", name, seen)
	}
}
