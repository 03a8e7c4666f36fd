package file

import (
	"os"
	"strings"
	"testing"
)

func example(b *testing.B) string {
	b.Helper()
	text, err := os.ReadFile("../../assets/examples/reading-nook-step.yaml")
	if err != nil {
		b.Fatal(err)
	}
	return string(text)
}

func BenchmarkReadAndDesign(b *testing.B) {
	text := example(b)
	for b.Loop() {
		d, err := Read(strings.NewReader(text), "step.yaml")
		if err != nil {
			b.Fatal(err)
		}
		if _, err := d.Design(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTypingOneSize(b *testing.B) {
	d, err := Read(strings.NewReader(example(b)), "step.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		next := d.Clone()
		if err := next.Set("size.height", "10 1/4 in"); err != nil {
			b.Fatal(err)
		}
		if _, err := next.Design(); err != nil {
			b.Fatal(err)
		}
	}
}

// An endless file is given up after the first mebibyte.
func BenchmarkTooLarge(b *testing.B) {
	for b.Loop() {
		if _, err := Read(endless{}, "endless.yaml"); err == nil {
			b.Fatal("it is read")
		}
	}
}

// The largest file that is parsed at all.
func BenchmarkLargest(b *testing.B) {
	text := strings.Repeat("# nothing but talk\n", MaxBytes/20) + step
	for b.Loop() {
		if _, err := Read(strings.NewReader(text), "large.yaml"); err != nil {
			b.Fatal(err)
		}
	}
}
