package papers

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"

	"splaywright/model/form"
	"splaywright/model/word"
)

// Progress is how far the making of a set is.
type Progress struct {
	What        string // the sheet being drawn, or the file being written
	Sheet, Of   int    // of the file being written; Of is 0 while sheets are drawn, how many there will be is not known then
	Done, Files int    // files written; Files is 0 while sheets are drawn
}

// Share is how much of the whole is done, 0 to 1, as far as can be told: drawing counts as a third of it.
func (p Progress) Share() float64 {
	if p.Files == 0 {
		const usual = 25.0 // sheets of a set
		return min(float64(p.Sheet)/usual, 1) / 3
	}
	in := 0.0
	if p.Of > 0 {
		in = float64(p.Sheet-1) / float64(p.Of)
	}
	return 1.0/3 + 2.0/3*(float64(p.Done)+in)/float64(p.Files)
}

// Text says it in words.
func (p Progress) Text() string {
	switch {
	case p.Files == 0:
		return fmt.Sprintf("Drawing sheet %d: %s", p.Sheet, p.What)
	case p.Of > 1:
		return fmt.Sprintf("Writing file %d of %d: %s, sheet %d of %d", p.Done+1, p.Files, p.What, p.Sheet, p.Of)
	}
	return fmt.Sprintf("Writing file %d of %d: %s", p.Done+1, p.Files, p.What)
}

func (t *task) say() {
	if t.tell != nil {
		t.tell(t.step)
	}
}

// drawn notes a sheet that has been drawn.
func (t *task) drawn(title string) {
	t.step.Sheet, t.step.What = t.step.Sheet+1, title
	t.say()
}

// sheet notes that a sheet of a file is about to be written.
func (t *task) sheet(n, of int) error {
	t.step.Sheet, t.step.Of = n, of
	t.say()
	return t.ctx.Err()
}

// Write writes the set into dir, which is made when it is missing, and gives the names written.
func Write(dir string, p *form.Piece, o Options) ([]string, error) {
	return WriteSet(context.Background(), dir, p, o, nil)
}

// WriteSet writes the set and tells how far it is, sheet by sheet. Every file is made before the first is
// put into its place, so a set that is cancelled or fails while it is made leaves nothing behind, and each
// file is complete or absent. The error of a cancelled set is that of the context.
func WriteSet(ctx context.Context, dir string, p *form.Piece, o Options, tell func(Progress)) ([]string, error) {
	t := newTask(ctx, p, o, tell)
	files, err := t.files()
	if err != nil {
		return nil, err
	}
	made := make([][]byte, len(files))
	for i, f := range files {
		t.step = Progress{What: f.Name, Done: i, Files: len(files)}
		t.say()
		var buf bytes.Buffer
		if err := f.Write(&buf); err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		made[i] = buf.Bytes()
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, fmt.Errorf("folder for the papers: %w", err)
	}
	var names []string
	for i, f := range files {
		if err := place(dir, f.Name, made[i]); err != nil {
			return names, err
		}
		names = append(names, f.Name)
	}
	return names, nil
}

// Place puts data at a path, whole or not at all: it is written beside its place and then moved there.
func Place(path string, data []byte) error {
	dir, name := filepath.Split(path)
	if dir == "" {
		dir = "."
	}
	return place(dir, name, data)
}

func place(dir, name string, data []byte) error {
	path := filepath.Join(dir, name)
	tmp, err := os.CreateTemp(dir, "."+name+"-*")
	if err != nil {
		return word.OfFile(path, err)
	}
	defer func() { _ = os.Remove(tmp.Name()) }() // nothing is left there once it has moved
	_, err = tmp.Write(data)
	if cerr := tmp.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = os.Chmod(tmp.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(tmp.Name(), path)
	}
	if err != nil {
		return word.OfFile(path, err)
	}
	return nil
}
