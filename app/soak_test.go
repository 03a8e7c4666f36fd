package app

import (
	"bytes"
	"flag"
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/google/go-cmp/cmp"

	"splaywright/app/panel"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/render/table"
)

// soakEdits is how many edits the soak makes; make thorough makes 10,000.
var soakEdits = flag.Int("soak", 400, "random edits of the soak; a tenth of them with the window")

// texts that people type, and some that nobody should.
var typed = []string{"", "0", "1", "3", "6", "9.5", "12", "20", "25", "44", "95", "260", "420", "900", "3/8 in", "1 1/2 in", "10 in", "1:7", "8 deg",
	"-5", "1e9", "size.height / 5", "size.width / 0", "nonsense", "[38, 52, 38]", "[", "\"", "true", "false", "butt", "housing", "through dovetail",
	"oak", "white oak", "driftwood", "top", "floor", "flush", "square", "木", "2'", "12,5", "0.0001", "NaN"}

// edit makes one random edit of a session, through what the window would call.
func edit(r *rand.Rand, s *session.Session) string {
	d := s.Design()
	groups := panel.Groups(&d, nil, s.Document().Keys("names"))
	g := groups[r.IntN(len(groups))]
	switch n := r.IntN(20); {
	case n == 0:
		name := form.Forms()[r.IntN(len(form.Forms()))]
		return fmt.Sprint("form ", name, s.SetForm(name))
	case n == 1 && len(g.Adds) > 0:
		a := g.Adds[r.IntN(len(g.Adds))]
		if a.Name || len(d.Features)+len(d.Stretchers) > 12 {
			return "no more"
		}
		return fmt.Sprint(a.Label, put(s, a))
	case n == 2 && g.Remove != "":
		return fmt.Sprint("remove ", g.Remove, s.Remove(g.Remove))
	case n < 6:
		return fmt.Sprint("undo ", s.Undo())
	case n < 8:
		return fmt.Sprint("redo ", s.Redo())
	case len(g.Fields) > 0:
		f := g.Fields[r.IntN(len(g.Fields))]
		text := typed[r.IntN(len(typed))]
		if choices := append(slices.Clone(f.Choices), f.Offers...); len(choices) > 0 && r.IntN(4) > 0 {
			text = choices[r.IntN(len(choices))]
		}
		s.Set(f.Path, text)
		if r.IntN(3) == 0 {
			s.Seal()
		}
		return f.Path + ": " + text
	}
	return "nothing"
}

// freshly is the piece of a session's file, derived anew.
func freshly(t *testing.T, s *session.Session) *form.Piece {
	t.Helper()
	doc, err := file.Read(bytes.NewReader(s.Document().Bytes()), "soak.yaml")
	if err != nil {
		t.Fatalf("what the session holds cannot be read again: %v", err)
	}
	d, err := doc.Design()
	if err != nil {
		t.Fatalf("the session reads what its own file does not: %v", err)
	}
	return model.Derive(d)
}

func heap() uint64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// Random edits leave a session whose tables are those of its file derived afresh, and no heap: the
// history is bounded, so a session holds no more after the last quarter than before it.
func TestSoakOfTheSession(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 10_000))
	s, err := session.FromExample(assets.FirstExample)
	if err != nil {
		t.Fatal(err)
	}
	var before uint64
	for n := range *soakEdits {
		if n == *soakEdits*3/4 {
			before = heap()
		}
		last := edit(r, s)
		if n%25 != 0 {
			continue
		}
		job, ok := s.Job()
		if !ok || !s.Reads() {
			continue
		}
		p := model.Derive(job.Design)
		if !s.Deliver(job.Gen, p) {
			t.Fatalf("edit %d, %s: the piece of the text as it stands was refused", n, last)
		}
		if diff := cmp.Diff(table.All(freshly(t, s), p.Design.Style()), table.All(p, p.Design.Style())); diff != "" {
			t.Fatalf("edit %d, %s: the session's tables differ from a fresh derive's:\n%s", n, last, diff)
		}
	}
	if after := heap(); *soakEdits >= 4000 && float64(after) > 1.2*float64(before) {
		t.Errorf("the heap went from %d to %d bytes", before, after)
	}
	runtime.KeepAlive(s)
}

// The same with the whole window on top: what it shows is what a fresh derive gives.
func TestSoakOfTheWindow(t *testing.T) {
	if testing.Short() {
		t.Skip("a window follows every edit")
	}
	r := rand.New(rand.NewPCG(9, 10_000))
	w := New(test.NewTempApp(t), Options{Spawn: func(f func()) { f() }})
	defer w.close()
	for n := range *soakEdits / 10 {
		last := edit(r, w.s)
		w.changed()
		if r.IntN(5) == 0 {
			w.tabs.SelectIndex(r.IntN(len(w.tables)))
		}
		if n%5 != 0 || !w.s.Reads() {
			continue
		}
		p := freshly(t, w.s)
		if len(p.Parts) == 0 { // refused: the tables stay those of the last piece that could be built
			p = model.Derive(w.s.Whole().Design)
		}
		for _, tb := range w.tables {
			if tb.make == nil {
				continue
			}
			want := tb.make(p, p.Design.Style())
			got, ok := tb.show.Shown()
			at := slices.IndexFunc(want, func(x table.Table) bool { return x.ID == got.ID })
			if ok != (len(want) > 0) || ok && at < 0 {
				t.Fatalf("edit %d, %s: the tab %s shows %q of %d tables", n, last, tb.title, got.ID, len(want))
			}
			if ok {
				if diff := cmp.Diff(say.Table(want[at]), got); diff != "" {
					t.Fatalf("edit %d, %s: the tab %s differs from a fresh derive's:\n%s", n, last, tb.title, diff)
				}
			}
		}
	}
}
