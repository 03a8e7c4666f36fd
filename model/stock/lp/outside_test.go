package lp

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// problem is a relaxation as the master takes it.
type problem struct {
	name        string
	need, limit []float64
	dear        float64
	cols        []Column
}

func (p problem) solve(t *testing.T) float64 {
	t.Helper()
	l := New(p.need, p.dear, p.limit)
	for _, c := range p.cols {
		l.Add(c)
	}
	if !l.Run() {
		t.Fatalf("%s: no solution", p.name)
	}
	return l.Value()
}

// text is the problem in the text form that general-purpose solvers read.
func (p problem) text() string {
	rows := make([]string, len(p.need)+len(p.limit))
	cost := ""
	for i := range p.need {
		rows[i] = fmt.Sprintf(" + s%d", i)
		cost += fmt.Sprintf(" + %.17g s%d", p.dear, i)
	}
	for j, c := range p.cols {
		cost += fmt.Sprintf(" + %.17g x%d", c.Cost, j)
		for k, i := range c.Row {
			rows[i] += fmt.Sprintf(" + %.17g x%d", c.Val[k], j)
		}
	}
	var b strings.Builder
	b.WriteString("Minimize\n obj:" + cost + "\nSubject To\n")
	for i, n := range p.need {
		fmt.Fprintf(&b, " r%d:%s >= %.17g\n", i, rows[i], n)
	}
	for i, n := range p.limit {
		if r := rows[len(p.need)+i]; r != "" {
			fmt.Fprintf(&b, " r%d:%s <= %.17g\n", len(p.need)+i, r, n)
		}
	}
	b.WriteString("End\n")
	return b.String()
}

// patterns adds every way to cut a bar of which nothing more can be had.
func (p *problem) patterns(bar int, sizes []int) {
	var walk func(i, left int, taken []int)
	walk = func(i, left int, taken []int) {
		if i == len(sizes) {
			for _, s := range sizes {
				if s <= left {
					return
				}
			}
			c := Column{Cost: 1, Tag: len(p.cols)}
			for k, n := range taken {
				if n > 0 {
					c.Row, c.Val = append(c.Row, k), append(c.Val, float64(n))
				}
			}
			p.cols = append(p.cols, c)
			return
		}
		for n := left / sizes[i]; n >= 0; n-- {
			walk(i+1, left-n*sizes[i], append(taken[:i:i], n))
		}
	}
	walk(0, bar, make([]int, len(sizes)))
}

func numbers(n ...float64) []float64 { return n }

// published are one-dimensional plans whose relaxation is known.
func published() []problem {
	rolls := problem{name: "raw 100", need: numbers(97, 610, 395, 211), dear: 100}
	rolls.patterns(100, []int{45, 36, 31, 14})
	paper := problem{name: "paper machine", need: numbers(22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20), dear: 100}
	paper.patterns(5600, []int{1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200})
	return []problem{rolls, paper}
}

func random(r *rand.Rand, n int) problem {
	p := problem{name: fmt.Sprintf("random %d", n), dear: 50}
	for range 2 + r.IntN(12) {
		p.need = append(p.need, float64(1+r.IntN(30)))
	}
	for range r.IntN(4) {
		p.limit = append(p.limit, float64(1+r.IntN(15)))
	}
	for j := range 5 + r.IntN(60) {
		c := Column{Cost: 1 + 4*r.Float64(), Tag: j}
		for i := range p.need {
			if r.IntN(3) == 0 {
				c.Row, c.Val = append(c.Row, i), append(c.Val, float64(1+r.IntN(5)))
			}
		}
		if len(p.limit) > 0 {
			c.Row, c.Val = append(c.Row, len(p.need)+r.IntN(len(p.limit))), append(c.Val, 1)
		}
		p.cols = append(p.cols, c)
	}
	return p
}

// Relaxations of the 100-inch rolls (452.25; the data stand at https://miro.gams.com/gallery/app_direct/cutstock/ ) and
// of the paper machine (72.91667; https://graphsearch.epfl.ch/en/concept/826868 ), both computed with a general-purpose
// solver over all maximal patterns: 12 and 213 of them.
func TestPublishedRelaxations(t *testing.T) {
	want := []struct {
		value    float64
		patterns int
	}{{452.25, 12}, {72.91667, 213}}
	for i, p := range published() {
		if got := p.solve(t); math.Abs(got-want[i].value) > 5e-6 || len(p.cols) != want[i].patterns {
			t.Errorf("%s: %.6f over %d patterns, want %.6f over %d", p.name, got, len(p.cols), want[i].value, want[i].patterns)
		}
	}
}

// With SPLAYWRIGHT_LP set to a folder, random and published relaxations go there with our values, for a solver from
// outside to hold them against.
func TestRelaxationsForASolver(t *testing.T) {
	dir := os.Getenv("SPLAYWRIGHT_LP")
	all := published()
	r := rand.New(rand.NewPCG(11, 4))
	for n := range 200 {
		all = append(all, random(r, n))
	}
	type entry struct {
		File, Name string
		Value      float64
	}
	var list []entry
	for i, p := range all {
		e := entry{fmt.Sprintf("%03d.lp", i), p.name, p.solve(t)}
		if !(e.Value > 0) || math.IsInf(e.Value, 0) {
			t.Errorf("%s comes to %g", p.name, e.Value)
		}
		list = append(list, e)
		if dir == "" {
			continue
		}
		if err := os.WriteFile(filepath.Join(dir, e.File), []byte(p.text()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if dir == "" {
		return
	}
	text, err := json.Marshal(list)
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, "values.json"), text, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}
