package model_test

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/model/measure"
)

// BenchmarkSweep derives random pieces of every form and joint and proves their solids sound, on all
// processors: pieces/s is the figure.
func BenchmarkSweep(b *testing.B) {
	defer asCommands()()
	for name, prove := range map[string]func(form.Design) *form.Piece{"built": form.Build, "derived": model.Derive} {
		b.Run(name, func(b *testing.B) {
			var next atomic.Uint64
			var group sync.WaitGroup
			b.ResetTimer()
			for range runtime.GOMAXPROCS(0) {
				group.Go(func() {
					for {
						n := next.Add(1)
						if n > uint64(b.N) {
							return
						}
						for _, q := range prove(formtest.Random(n % 2000)).Parts {
							if q.Solid != nil {
								if err := q.Solid.Check(); err != nil {
									b.Errorf("piece %d: %s: %v", n%2000, q.ID, err)
								}
							}
						}
					}
				})
			}
			group.Wait()
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "pieces/s")
		})
	}
}

// BenchmarkTails derives a long bench with ever more tails a corner: ns/tail should hardly grow.
func BenchmarkTails(b *testing.B) {
	for _, n := range []int{12, 25, 50, 100, 200} {
		d := formtest.WorkedExample()
		pin, half := measure.Length(6), measure.Length(8)
		d.Size.Depth = measure.Length(20*n) + 16
		d.Corners.Tails, d.Corners.Pin, d.Corners.HalfPin = &n, &pin, &half
		for name, work := range map[string]func(form.Design) *form.Piece{"built": form.Build, "derived": model.Derive} {
			b.Run(fmt.Sprintf("%s/%d", name, n), func(b *testing.B) {
				for b.Loop() {
					if p := work(d); len(p.Parts) != 3 || p.Parts[0].Solid == nil {
						b.Fatal(p.Findings)
					}
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/tail")
			})
		}
	}
}
