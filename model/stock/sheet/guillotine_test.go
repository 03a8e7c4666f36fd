package sheet

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

func column(t testing.TB, file string) []map[string]int {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]int
	for _, r := range rows[1:] {
		m := map[string]int{}
		for i, v := range r {
			if m[rows[0][i]], err = strconv.Atoi(v); err != nil {
				t.Fatal(err)
			}
		}
		out = append(out, m)
	}
	return out
}

func gcut(t testing.TB, n int) (l, w int, items []item) {
	bin := column(t, fmt.Sprintf("gcut%d.txt_bins.csv", n))[0]
	for _, r := range column(t, fmt.Sprintf("gcut%d.txt_items.csv", n)) {
		items = append(items, item{r["WIDTH"], r["HEIGHT"], float64(r["PROFIT"])})
	}
	return bin["WIDTH"], bin["HEIGHT"], items
}

// Optima of gcut1–12, each piece as often as wanted, not turned and turned by a right angle
// (gcut instances: Universidade de São Paulo).
var gcuts = [12][2]float64{{56460, 58136}, {60536, 60611}, {61036, 61626}, {61698, 62265}, {246000, 246000},
	{238998, 240951}, {242567, 245866}, {246633, 247787}, {971100, 971100}, {982025, 982025}, {980096, 980096}, {979986, 988694}}

func turned(items []item) []item {
	out := items
	for _, it := range items {
		out = append(out, item{it.w, it.l, it.value})
	}
	return out
}

func TestUnlimitedPublished(t *testing.T) {
	for n := range 12 {
		l, w, items := gcut(t, n+1)
		start := time.Now()
		got := newTable(l, w, items, true).of(l, w)
		took := time.Since(start)
		if got != gcuts[n][0] {
			t.Errorf("gcut%d: %g, published %g", n+1, got, gcuts[n][0])
		}
		if got := newTable(l, w, turned(items), true).of(l, w); got != gcuts[n][1] {
			t.Errorf("gcut%d turned: %g, published %g", n+1, got, gcuts[n][1])
		}
		t.Logf("gcut%d: %v", n+1, took)
	}
}

// Herz 12348, HZ1 5226 (the full sheet): M. Hifi and V. Zissimopoulos 1996 and
// https://www.ibr.cs.tu-bs.de/alg/packlib/article/fhz-ealst-98.shtml
func TestUnlimitedWorked(t *testing.T) {
	for _, c := range []struct {
		name  string
		l, w  int
		sizes [][2]int
		want  float64
	}{
		{"Herz", 127, 98, [][2]int{{21, 13}, {36, 17}, {54, 20}, {24, 27}, {18, 65}}, 12348},
		{"HZ1", 78, 67, [][2]int{{7, 10}, {32, 54}, {6, 13}, {14, 54}, {9, 5}, {24, 13}}, 5226},
	} {
		var items []item
		for _, s := range c.sizes {
			items = append(items, item{s[0], s[1], float64(s[0] * s[1])})
		}
		if got := newTable(c.l, c.w, items, true).of(c.l, c.w); got != c.want {
			t.Errorf("%s: %g, published %g", c.name, got, c.want)
		}
	}
}

func BenchmarkUnlimited(b *testing.B) {
	for _, n := range []int{1, 4, 8, 12} {
		l, w, items := gcut(b, n)
		b.Run(fmt.Sprintf("gcut%d", n), func(b *testing.B) {
			for b.Loop() {
				if newTable(l, w, items, true).of(l, w) != gcuts[n-1][0] {
					b.Fatal("not the optimum")
				}
			}
		})
	}
}
