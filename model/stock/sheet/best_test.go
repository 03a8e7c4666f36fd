package sheet

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"
)

type sheetCase struct {
	name   string
	l, w   int
	want   float64
	pieces []Worth
}

func limited(t testing.TB) []sheetCase {
	f, err := os.Open("testdata/limited.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var all []sheetCase
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		w := strings.Fields(lines.Text())
		if len(w) == 0 || w[0] == "#" {
			continue
		}
		c := sheetCase{name: w[0]}
		if _, err := fmt.Sscan(strings.Join(w[1:4], " "), &c.l, &c.w, &c.want); err != nil {
			t.Fatal(err)
		}
		for _, s := range w[4:] {
			var p Worth
			size, value, given := strings.Cut(s, "=")
			if _, err := fmt.Sscanf(size, "%d*%d*%d", &p.Length, &p.Width, &p.Count); err != nil {
				t.Fatal(s, err)
			}
			p.Value = float64(p.Length * p.Width)
			if given {
				if _, err := fmt.Sscan(value, &p.Value); err != nil {
					t.Fatal(s, err)
				}
			}
			c.pieces = append(c.pieces, p)
		}
		all = append(all, c)
	}
	for n, want := range map[int]float64{1: 244, 2: 2892, 3: 1860} {
		file := fmt.Sprintf("cgcut%d.txt", n)
		bin := column(t, file+"_bins.csv")[0]
		c := sheetCase{name: file, l: bin["WIDTH"], w: bin["HEIGHT"], want: want}
		for _, r := range column(t, file+"_items.csv") {
			c.pieces = append(c.pieces, Worth{Length: r["WIDTH"], Width: r["HEIGHT"], Count: r["COPIES"], Value: float64(r["PROFIT"])})
		}
		all = append(all, c)
	}
	return all
}

func TestLimitedPublished(t *testing.T) {
	for _, c := range limited(t) {
		start := time.Now()
		ctx, stop := context.WithTimeout(context.Background(), 20*time.Second)
		got, taken, proven := Best(ctx, c.l, c.w, c.pieces)
		stop()
		if got != c.want || !proven {
			t.Errorf("%s: %g, proven %v; published %g", c.name, got, proven, c.want)
		}
		checkTaken(t, c, got, taken)
		t.Logf("%s: %v", c.name, time.Since(start))
	}
}

// The same with pieces that may turn, as an independent dynamic program gave them (no publication has these).
func TestLimitedTurned(t *testing.T) {
	want := map[string]float64{"cgcut1": 260, "cgcut3": 1920, "OF1": 2757, "OF2": 2769, "FO1": 81}
	for _, c := range limited(t) {
		name := strings.TrimSuffix(c.name, ".txt")
		best, ok := want[name]
		if !ok {
			continue
		}
		delete(want, name)
		for i := range c.pieces {
			c.pieces[i].Turn = true
		}
		ctx, stop := context.WithTimeout(context.Background(), 20*time.Second)
		got, taken, proven := Best(ctx, c.l, c.w, c.pieces)
		stop()
		if got != best || !proven {
			t.Errorf("%s: %g, proven %v; want %g", c.name, got, proven, best)
		}
		checkTaken(t, c, got, taken)
	}
	if len(want) > 0 {
		t.Errorf("not tried: %v", want)
	}
}

// checkTaken adds the cutting up again: within the sheet, nothing over anything else, no piece too often.
func checkTaken(t *testing.T, c sheetCase, value float64, taken []Taken) {
	t.Helper()
	sum, count := 0.0, make([]int, len(c.pieces))
	size := func(k Taken) (l, w int) {
		p := c.pieces[k.Piece]
		if k.Turned {
			return p.Width, p.Length
		}
		return p.Length, p.Width
	}
	for i, a := range taken {
		l, w := size(a)
		if a.X < 0 || a.Y < 0 || a.X+l > c.l || a.Y+w > c.w || a.Turned && !c.pieces[a.Piece].Turn {
			t.Errorf("%s: %+v lies off the sheet or turned", c.name, a)
		}
		for _, b := range taken[:i] {
			m, v := size(b)
			if a.X < b.X+m && b.X < a.X+l && a.Y < b.Y+v && b.Y < a.Y+w {
				t.Errorf("%s: %+v and %+v overlap", c.name, a, b)
			}
		}
		sum += c.pieces[a.Piece].Value
		if count[a.Piece]++; count[a.Piece] > c.pieces[a.Piece].Count {
			t.Errorf("%s: piece %d too often", c.name, a.Piece)
		}
	}
	if sum != value {
		t.Errorf("%s: pieces worth %g, stated %g", c.name, sum, value)
	}
}

func BenchmarkLimited(b *testing.B) {
	cases := limited(b)
	for b.Loop() {
		for _, c := range cases[:12] {
			if v, _, ok := Best(context.Background(), c.l, c.w, c.pieces); v != c.want || !ok {
				b.Fatal(c.name)
			}
		}
	}
}

// gcut1-12 with one copy of each piece; optima by through cuts from Wang, Baldacci, Liu, Wei, European Journal of
// Operational Research 327 (2025) 735-753, doi 10.1016/j.ejor.2025.05.033, proven there.
func TestOneOfEachPublished(t *testing.T) {
	for n, want := range []float64{48368, 59307, 60241, 60942, 195582, 236305, 238974, 245758, 919476, 903435, 955389, 970744} {
		l, w, items := gcut(t, n+1)
		c := sheetCase{name: fmt.Sprintf("gcut%d", n+1), l: l, w: w}
		for _, it := range items {
			c.pieces = append(c.pieces, Worth{Length: it.l, Width: it.w, Count: 1, Value: it.value})
		}
		start := time.Now()
		ctx, stop := context.WithTimeout(context.Background(), 20*time.Second)
		got, taken, proven := Best(ctx, l, w, c.pieces)
		stop()
		if got != want || !proven {
			t.Errorf("%s: %g, proven %v; published %g", c.name, got, proven, want)
		}
		checkTaken(t, c, got, taken)
		t.Logf("%s: %v", c.name, time.Since(start))
	}
}
