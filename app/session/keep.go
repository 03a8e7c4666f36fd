package session

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"splaywright/assets"
	"splaywright/model/file"
	"splaywright/model/word"
)

// ErrNoPath tells that a design has no file yet and needs SaveAs.
var ErrNoPath = errors.New("the design has no file yet")

// Open reads a design file. A file that cannot be read whole is refused with every place in it
// that was not understood (file.Errors).
func Open(path string) (*Session, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("open the design: %w", err)
	}
	defer func() { _ = f.Close() }() // only read from
	doc, err := file.Read(f, filepath.Base(path))
	if err != nil {
		return nil, err
	}
	s := New(doc)
	if !s.reads {
		return nil, s.errs
	}
	s.path = path
	return s, nil
}

// FromExample begins a new design with a built-in one, with texts of the person's own put in at paths.
func FromExample(name string, with ...[2]string) (*Session, error) {
	e, ok := assets.FindExample(name)
	if !ok {
		return nil, fmt.Errorf("no built-in example is called %q", name)
	}
	doc, err := file.Read(strings.NewReader(string(e.YAML)), e.Name)
	if err != nil {
		return nil, err
	}
	for _, w := range with {
		if err := doc.Set(w[0], w[1]); err != nil {
			return nil, err
		}
	}
	s := New(doc)
	if !s.reads {
		return nil, s.errs
	}
	return s, nil
}

// Save writes the design to its file.
func (s *Session) Save() error {
	if s.path == "" {
		return ErrNoPath
	}
	return s.SaveAs(s.path)
}

// SaveAs writes the design to a file and keeps it there from now on. A design with a text that
// cannot be read is not written: the file could not be opened again.
func (s *Session) SaveAs(path string) error {
	if !s.Reads() {
		return fmt.Errorf("not saved, because the file could not be opened again: %w", errors.Join(s.Errors()...))
	}
	text := s.doc.Bytes()
	if err := replace(path, text); err != nil {
		return fmt.Errorf("save the design: %w", err)
	}
	s.path, s.kept, s.missed = path, text, 0
	s.Seal()
	return nil
}

// replace puts a text in the place of a file so that at any moment, even after a power cut,
// either the old file or the new one is there whole. A symbolic link keeps pointing to the
// file, and the file keeps its mode. A file that may not be written to is left alone, though its folder lets it be replaced.
func replace(path string, text []byte) error {
	path, err := target(path)
	if err != nil {
		return err
	}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
		if mode&anyWrite == 0 {
			return &fs.PathError{Op: "write", Path: path, Err: fs.ErrPermission}
		}
	}
	dir := filepath.Dir(path)
	tmp, err := os.CreateTemp(dir, "."+filepath.Base(path)+"-*")
	if err != nil {
		return word.OfFile(path, err)
	}
	defer func() { _ = os.Remove(tmp.Name()) }() // nothing is left there once it has moved
	if err := fill(tmp, text, mode); err != nil {
		return word.OfFile(path, err)
	}
	if err := os.Rename(tmp.Name(), path); err != nil {
		return word.OfFile(path, err)
	}
	return syncDir(dir)
}

// anyWrite is set in the mode of a file that somebody may write to.
const anyWrite fs.FileMode = 0o222

// target follows symbolic links to the file behind them, which need not exist yet.
func target(path string) (string, error) {
	for range 32 {
		info, err := os.Lstat(path)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return path, nil // a file, or nothing yet
		}
		to, err := os.Readlink(path)
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", fmt.Errorf("%+s: symbolic links go round in a circle", path)
}

func fill(f *os.File, text []byte, mode fs.FileMode) error {
	_, err := f.Write(text)
	if err == nil {
		err = f.Chmod(mode)
	}
	if err == nil {
		err = f.Sync()
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	return err
}

// syncDir makes the new name in a folder last. Not every system can sync a folder; the file
// itself is safe already, so that is no error.
func syncDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	_ = d.Sync()
	return d.Close()
}
