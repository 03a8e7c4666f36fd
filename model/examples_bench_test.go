package model_test

import (
	"runtime/debug"
	"strings"
	"syscall"
	"testing"

	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file"
)

// BenchmarkDeriveExamples derives every built-in design, its rounded edges and findings with it. Beside the time
// on the clock it tells processor time, which other work on the machine hardly changes.
func BenchmarkDeriveExamples(b *testing.B) {
	defer asCommands()()
	for _, e := range assets.Examples() {
		f, err := file.Read(strings.NewReader(string(e.YAML)), e.Name)
		if err != nil {
			b.Fatal(err)
		}
		d, err := f.Design()
		if err != nil {
			b.Fatal(err)
		}
		b.Run(e.Name, func(b *testing.B) {
			began := processorTime(b)
			for b.Loop() {
				model.Derive(d)
			}
			b.ReportMetric((processorTime(b)-began)*1e3/float64(b.N), "cpu-ms/op")
		})
	}
}

// asCommands collects what is left over as seldom as the commands do (cmd/splaywright), until it is undone.
func asCommands() (undo func()) {
	usual := debug.SetGCPercent(400)
	return func() { debug.SetGCPercent(usual) }
}

// processorTime is what the process has used of all processors, seconds.
func processorTime(b *testing.B) float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	seconds := func(t syscall.Timeval) float64 { return float64(t.Sec) + float64(t.Usec)/1e6 }
	return seconds(u.Utime) + seconds(u.Stime)
}
