package check

import (
	"testing"

	"splaywright/model/form"
	"splaywright/model/form/formtest"
)

func BenchmarkRun(b *testing.B) {
	for name, d := range map[string]form.Design{"sound": sound(), "everything": formtest.Full()} {
		p := form.Build(d)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Run(p)
			}
		})
	}
}
