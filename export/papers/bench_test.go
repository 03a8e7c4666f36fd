package papers

import (
	"io"
	"testing"

	"splaywright/assets"
	"splaywright/model"
)

// The whole set of an example from its design to the last file: deriving, drawing, and writing all
// files to nowhere. The aim is at most one second.
func BenchmarkWholeSet(b *testing.B) {
	for _, e := range assets.Examples() {
		d := examplePiece(b, e).Design
		b.Run(e.Name, func(b *testing.B) {
			size := int64(0)
			for b.Loop() {
				files, err := Files(model.Derive(d), Options{})
				if err != nil {
					b.Fatal(err)
				}
				size = 0
				for _, f := range files {
					n := &counter{}
					if err := f.Write(n); err != nil {
						b.Fatal(err)
					}
					size += n.n
				}
			}
			b.ReportMetric(float64(size), "bytes")
		})
	}
}

// counter counts what it throws away.
type counter struct{ n int64 }

func (c *counter) Write(p []byte) (int, error) {
	c.n += int64(len(p))
	return io.Discard.Write(p)
}
