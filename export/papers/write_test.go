package papers

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form"
	"splaywright/model/form/formtest"
	"splaywright/render/pattern"
)

// names are those of the set that a design's papers ask for.
func names(t *testing.T, change func(*form.Papers)) []string {
	t.Helper()
	d := formtest.Full()
	change(&d.Papers)
	files, err := Files(model.Derive(d), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, f := range files {
		out = append(out, f.Name)
	}
	return out
}

func TestOnlyWhatIsChosenIsWritten(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*form.Papers)
		want   string // all of them, sorted; "…" stands for more
	}{
		{"cut list as CSV", func(p *form.Papers) { p.Only, p.As = []string{"cut-list"}, []string{"csv"} }, "cut-list.csv points.csv sizes.csv"},
		{"saw and steps, a PDF each", func(p *form.Papers) { p.Only, p.As = []string{"saw-settings", "steps"}, []string{"single-pdfs"} }, "saw-settings.pdf steps.pdf"},
		{"patterns alone", func(p *form.Papers) { p.Only, p.As = []string{"patterns"}, []string{"svg"} }, "pattern-…"},
		{"patterns with a list", func(p *form.Papers) { p.Only, p.As, p.Patterns.On = []string{"cut-list"}, []string{"csv"}, true }, "cut-list.csv points.csv sizes.csv"},
		{"drawings as SVG", func(p *form.Papers) { p.Only, p.As = []string{"drawings"}, []string{"svg"} }, "view-…"},
	} {
		got := names(t, c.change)
		slices.Sort(got)
		if begins, many := strings.CutSuffix(c.want, "…"); many {
			for _, n := range got {
				if !strings.HasPrefix(n, begins) {
					t.Errorf("%s: %s is written too", c.name, n)
				}
			}
			continue
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %s", c.name, got, c.want)
		}
	}
	all := names(t, func(*form.Papers) {})
	if slices.ContainsFunc(all, func(n string) bool { return strings.HasPrefix(n, "pattern-") }) {
		t.Error("patterns are written though nobody asked")
	}
	with := names(t, func(p *form.Papers) { p.Patterns.On = true })
	if !slices.ContainsFunc(with, func(n string) bool { return strings.HasPrefix(n, "pattern-") }) || len(with) <= len(all) {
		t.Error("patterns are not written though the design asks for them")
	}
}

// A set that is cancelled, at whatever sheet, leaves no file: not a whole one and not a half one.
func TestACancelledSetLeavesNothing(t *testing.T) {
	p := model.Derive(formtest.WorkedExample())
	o := Options{Patterns: &pattern.Options{}}
	steps := 0
	if _, err := WriteSet(context.Background(), t.TempDir(), p, o, func(Progress) { steps++ }); err != nil {
		t.Fatal(err)
	}
	if steps < 40 {
		t.Fatalf("%d steps of progress: too few to cancel at", steps)
	}
	for _, at := range []int{1, 5, steps / 2, steps - 1} {
		dir := filepath.Join(t.TempDir(), "papers")
		ctx, cancel := context.WithCancel(context.Background())
		n := 0
		written, err := WriteSet(ctx, dir, p, o, func(Progress) {
			if n++; n == at {
				cancel()
			}
		})
		cancel()
		if !errors.Is(err, context.Canceled) || len(written) > 0 {
			t.Errorf("cancelled at %d: %v, %v", at, written, err)
		}
		if left, err := os.ReadDir(dir); err == nil && len(left) > 0 {
			t.Errorf("cancelled at %d: %d files are left", at, len(left))
		}
	}
}

// Progress never goes back, ends near the whole, and says the sheet.
func TestProgressGoesOn(t *testing.T) {
	last, said := 0.0, ""
	_, err := WriteSet(context.Background(), t.TempDir(), model.Derive(formtest.WorkedExample()), Options{}, func(s Progress) {
		if s.Share() < last-1e-9 || s.Share() > 1 {
			t.Errorf("%s: %.3f after %.3f", s.Text(), s.Share(), last)
		}
		last, said = s.Share(), said+s.Text()+"\n"
	})
	if err != nil || last < 0.9 {
		t.Errorf("the last step is %.2f of the whole (%v)", last, err)
	}
	for _, want := range []string{"Drawing sheet 1: General arrangement", "Writing file 1 of", ".pdf, sheet 2 of"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is never said", want)
		}
	}
}
