// Package filetest hands designs that are read from text to tests: the built-in examples, or a text of their own.
package filetest

import (
	"bytes"
	"testing"

	"splaywright/assets"
	"splaywright/model/file"
	"splaywright/model/form"
)

// Example is a built-in design as it is read.
type Example struct {
	assets.Example
	Design form.Design
}

// Examples reads every built-in example, in their order.
func Examples(t testing.TB) []Example {
	t.Helper()
	all := assets.Examples()
	if len(all) == 0 {
		t.Fatal("there are no examples")
	}
	out := make([]Example, len(all))
	for i, e := range all {
		out[i] = Example{e, Design(t, e.YAML)}
	}
	return out
}

// Named reads one built-in example.
func Named(t testing.TB, name string) form.Design {
	t.Helper()
	e, ok := assets.FindExample(name)
	if !ok {
		t.Fatalf("there is no example %s", name)
	}
	return Design(t, e.YAML)
}

// Document reads a text as a design file.
func Document(t testing.TB, text []byte) *file.Document {
	t.Helper()
	doc, err := file.Read(bytes.NewReader(text), "test.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// Design reads a text as a design.
func Design(t testing.TB, text []byte) form.Design {
	t.Helper()
	d, err := Document(t, text).Design()
	if err != nil {
		t.Fatal(err)
	}
	return d
}
