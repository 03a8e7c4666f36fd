package sheet

import (
	"testing"

	"splaywright/export/png"
	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/render/draw"
)

func BenchmarkPapers(b *testing.B) {
	p := model.Derive(formtest.Full())
	for b.Loop() {
		Papers(p, Options{})
	}
}

// What a key press costs once the piece is derived: views, dimensions, dots.
func BenchmarkTable3(b *testing.B) {
	p := model.Derive(formtest.Full())
	for b.Loop() {
		Table3(p, Options{})
	}
}

func BenchmarkTable3Dots(b *testing.B) {
	page := Table3(model.Derive(formtest.Full()), Options{})
	n := 0
	for _, it := range page.Items {
		if p, ok := it.(draw.Path); ok {
			n += len(p.Segs)
		}
	}
	for b.Loop() {
		png.Render(page, 1000/page.Width)
	}
	b.ReportMetric(float64(n), "segments")
}
