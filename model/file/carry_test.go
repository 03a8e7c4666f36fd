package file_test

import (
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model/file"
	"splaywright/model/form"
)

// Every example reads in every form, and going there and back keeps the sizes.
func TestEveryExampleReadsInEveryForm(t *testing.T) {
	for _, e := range assets.Examples() {
		for _, name := range form.Forms() {
			d, err := file.Read(strings.NewReader(string(e.YAML)), e.Name)
			if err != nil {
				t.Fatal(err)
			}
			was, width := d.Text("form"), d.Text("size.width")
			for _, to := range []string{name, was} {
				if err := d.SetForm(to); err != nil {
					t.Fatalf("%s as a %s: %v", e.Name, to, err)
				}
				got, err := d.Design()
				if err != nil {
					t.Errorf("%s as a %s: %v", e.Name, to, err)
				}
				if got.Form != to || d.Text("size.width") != width {
					t.Errorf("%s is a %s, %s wide", e.Name, got.Form, d.Text("size.width"))
				}
			}
		}
	}
}

func TestTheLeanOfTheFrontCarriesOver(t *testing.T) {
	d := read(t, "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\nsplay: {ends: 6, edges: 1:9}\ncorners: {tails-on: side}\n")
	if err := d.SetForm("tray"); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{"splay.front": "1:9", "splay.edges": "", "splay.ends": "6", "corners.tails-on": "end"} {
		if got := d.Text(path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
}
