package line

import (
	"bufio"
	"context"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

type known struct {
	name    string
	optimum int
	task    Task
}

// read takes one of testdata's files (see the README there); capacity and lengths become millimetres.
func read(t testing.TB, file string) []known {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var all []known
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		w := strings.Fields(lines.Text())
		num := make([]int, len(w))
		for i := range w[1:] {
			if num[i+1], err = strconv.Atoi(w[i+1]); err != nil {
				t.Fatal(err)
			}
		}
		k := known{name: w[0], optimum: num[1], task: Task{Stocks: []Stock{{Name: "stock", Length: float64(num[2])}}}}
		for _, l := range num[3:] {
			k.task.Parts = append(k.task.Parts, Part{Name: strconv.Itoa(l), Length: float64(l), Count: 1})
		}
		all = append(all, k)
	}
	if len(all) == 0 {
		t.Fatalf("%s holds nothing", file)
	}
	return all
}

var sets = []struct {
	file string
	most time.Duration // for one plan; from the figures this project set itself
}{
	{"pm_u.txt", 100 * time.Millisecond},
	{"shop.txt", 100 * time.Millisecond},
	{"uniform.txt", time.Second},
	{"triplets.txt", time.Second},
}

func TestPublishedSetsAreProven(t *testing.T) {
	for _, set := range sets {
		worst, sum := time.Duration(0), time.Duration(0)
		for _, k := range read(t, set.file) {
			start := time.Now()
			p, err := Solve(context.Background(), k.task)
			took := time.Since(start)
			worst, sum = max(worst, took), sum+took
			if err != nil {
				t.Errorf("%s: %v", k.name, err)
				continue
			}
			if err := Verify(k.task, p); err != nil {
				t.Errorf("%s: %v", k.name, err)
			}
			if !p.Proven || p.Number() != k.optimum {
				t.Errorf("%s: %d bars (bound %.4g bars, proven %v, %d nodes, %v), known %d", k.name, p.Number(),
					p.Bound/k.task.Stocks[0].Length, p.Proven, p.Nodes, took, k.optimum)
			}
		}
		t.Logf("%s: worst %v, all %v (aim %v each)", set.file, worst, sum, set.most)
	}
}

// paper is the paper machine: masters of 5600 mm, 13 widths, 73 masters
// (https://graphsearch.epfl.ch/en/concept/826868; also by an LP solver: 72.91667 relaxed, 73 whole).
func paper() Task {
	t := Task{Stocks: []Stock{{Name: "master", Length: 5600}}}
	for _, p := range [][2]int{{1380, 22}, {1520, 25}, {1560, 12}, {1710, 14}, {1820, 18}, {1880, 18}, {1930, 20},
		{2000, 10}, {2050, 12}, {2100, 14}, {2140, 16}, {2150, 18}, {2200, 20}} {
		t.Parts = append(t.Parts, Part{Name: strconv.Itoa(p[0]), Length: float64(p[0]), Count: p[1]})
	}
	return t
}

// raws are 100-inch raws, 453 of them (Linear Programming, chapter 13; relaxed 452.25).
func raws() Task {
	const in = 25.4
	return Task{Stocks: []Stock{{Name: "raw", Length: 100 * in}}, Parts: []Part{
		{"45 in", 45 * in, 97}, {"36 in", 36 * in, 610}, {"31 in", 31 * in, 395}, {"14 in", 14 * in, 211}}}
}

func TestWorkedExamples(t *testing.T) {
	for _, c := range []struct {
		name string
		task Task
		want int
	}{
		{"paper machine", paper(), 73},
		{"100-inch raws", raws(), 453},
		// floor((L+k)/(p+k)) per length: 8, 7, 7 from 96 in (arithmetic)
		{"8 ft board, no kerf", Task{Stocks: []Stock{{Length: 96 * 25.4}}, Parts: []Part{{"foot", 12 * 25.4, 8}}}, 1},
		{"8 ft board, 3/32", Task{Stocks: []Stock{{Length: 96 * 25.4}}, Parts: []Part{{"foot", 12 * 25.4, 14}}, Kerf: 3. / 32 * 25.4}, 2},
		{"8 ft board, 1/8", Task{Stocks: []Stock{{Length: 96 * 25.4}}, Parts: []Part{{"foot", 12 * 25.4, 15}}, Kerf: 25.4 / 8}, 3},
		// four 24 in pieces do not come from 8 ft (https://www.slashgear.com/1866963/kerf-cut-woodworking-meaning/)
		{"four from 8 ft", Task{Stocks: []Stock{{Length: 96 * 25.4}}, Parts: []Part{{"rail", 24 * 25.4, 4}}, Kerf: 25.4 / 8}, 2},
		{"four from 8 ft, 3/8 short", Task{Stocks: []Stock{{Length: 96 * 25.4}}, Parts: []Part{{"rail", 24 * 25.4, 3}, {"last", 23.625 * 25.4, 1}}, Kerf: 25.4 / 8}, 1},
	} {
		start := time.Now()
		p, err := Solve(context.Background(), c.task)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if err := Verify(c.task, p); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if p.Number() != c.want || !p.Proven {
			t.Errorf("%s: %d, proven %v; want %d", c.name, p.Number(), p.Proven, c.want)
		}
		t.Logf("%s: %v, %d nodes", c.name, time.Since(start), p.Nodes)
	}
}

// The relaxed plans of the two examples, as a linear-programming solver gives them over all patterns: 72.91667 and
// 452.25.
func TestRelaxedAgainstSolver(t *testing.T) {
	for _, c := range []struct {
		task Task
		want float64
	}{{paper(), 72.91667}, {raws(), 452.25}} {
		w, err := turn(c.task)
		if err != nil {
			t.Fatal(err)
		}
		s := newSearch(context.Background(), w)
		x := s.relax(w.all(), s.upper, true)
		sum := 0.0
		for _, h := range x.shares {
			sum += h.x
		}
		if math.Abs(sum-c.want) > 1e-5 || x.lower != int64(math.Ceil(c.want)) {
			t.Errorf("relaxed %g, bound %d; a solver gives %g", sum, x.lower, c.want)
		}
	}
}
