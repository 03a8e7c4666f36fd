package hold_test

import (
	"testing"

	"splaywright/model/check"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/hold"
)

// BenchmarkFindings works out the engineering findings of every example: whether it will hold, and what stops or spoils
// it. The aim is at most a millisecond each; run it where the processor's time is told (go test -c, time).
func BenchmarkFindings(b *testing.B) {
	for _, e := range filetest.Examples(b) {
		p := form.Build(e.Design)
		b.Run(e.Name+"/hold", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				hold.Run(p)
			}
		})
		b.Run(e.Name+"/check", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				check.Run(p)
			}
		})
	}
}
