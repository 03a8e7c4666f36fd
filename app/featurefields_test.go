package app

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"splaywright/app/panel"
	"splaywright/app/session"
	"splaywright/assets"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
)

// featureAdds are the features that a design can be given at a press of a button.
func featureAdds(d *form.Design) []panel.Add {
	for _, g := range panel.Groups(d, nil, nil) {
		if g.Title == "Features" {
			return g.Adds
		}
	}
	return nil
}

// featureGroup is the group of the i-th feature.
func featureGroup(t *testing.T, d *form.Design, i int) panel.Group {
	t.Helper()
	path := fmt.Sprintf("features.%d", i)
	for _, g := range panel.Groups(d, nil, nil) {
		if g.Remove == path {
			return g
		}
	}
	t.Fatalf("feature %d has no group", i+1)
	return panel.Group{}
}

// kindOf is what a button adds.
func kindOf(a panel.Add) string {
	for _, f := range a.Fields {
		if f[0] == "kind" {
			return f[1]
		}
	}
	return ""
}

// Every kind of feature can be added to every example, has its sizes in fields, goes and comes with undo and redo,
// and can be removed; the fields offer only edges and ends that the board has.
func TestEveryFeatureIsAddedChangedAndRemoved(t *testing.T) {
	for _, example := range assets.Examples() {
		for _, kind := range form.FeatureKinds() {
			t.Run(example.Name+" "+kind, func(t *testing.T) {
				s := session.New(filetest.Document(t, example.YAML))
				d := s.Design()
				adds := featureAdds(&d)
				at := slices.IndexFunc(adds, func(a panel.Add) bool { return kindOf(a) == kind })
				if at < 0 {
					t.Fatalf("no button adds a %s", kind)
				}
				before := len(d.Features)
				if err := put(s, adds[at]); err != nil {
					t.Fatal(err)
				}
				d = s.Design()
				if len(d.Features) != before+1 {
					t.Fatalf("%d features, want %d", len(d.Features), before+1)
				}
				group := featureGroup(t, &d, before)
				offeredEdges(t, s, group)
				eachFieldTakes(t, s, group, before)
				for s.Undo() {
				}
				if got := s.Design(); len(got.Features) != before {
					t.Errorf("%d features after undo, want %d", len(got.Features), before)
				}
				for s.Redo() {
				}
				if err := s.Remove(group.Remove); err != nil {
					t.Fatal(err)
				}
				if got := s.Design(); len(got.Features) != before {
					t.Errorf("%d features after it was removed, want %d", len(got.Features), before)
				}
			})
		}
	}
}

// offeredEdges: the edges that a choice offers are those of the board.
func offeredEdges(t *testing.T, s *session.Session, g panel.Group) {
	t.Helper()
	d := s.Design()
	f := d.Features[len(d.Features)-1]
	if f.On == "all" {
		return
	}
	have := map[string]bool{form.LongEdges: true, form.BothEnds: true, form.AllEdges: true}
	for _, q := range form.Build(d).Parts {
		if q.ID == f.On || strings.HasPrefix(q.ID, f.On+"-") {
			for _, c := range q.Cuts {
				have[c.ID] = true
			}
		}
	}
	for _, spec := range g.Fields {
		if strings.HasSuffix(spec.Path, ".edge") || strings.HasSuffix(spec.Path, ".from") {
			for _, c := range spec.Choices {
				if !have[c] {
					t.Errorf("%s offers %q, and the %s has %v", spec.Path, c, f.On, have)
				}
			}
		}
	}
}

// eachFieldTakes types a size into every field that takes one.
func eachFieldTakes(t *testing.T, s *session.Session, g panel.Group, i int) {
	t.Helper()
	for _, spec := range g.Fields {
		if len(spec.Choices) > 0 {
			continue
		}
		text := "7"
		s.Set(spec.Path, text)
		s.Seal()
		if got := s.Text(spec.Path); got != text {
			t.Errorf("%s holds %q after %q was typed", spec.Path, got, text)
		}
		d := s.Design()
		if v := spec.Value(&d); v == nil || fmt.Sprint(v) == "0" {
			t.Errorf("%s shows %v after %s was typed", spec.Path, v, text)
		}
	}
}
