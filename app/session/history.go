package session

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"splaywright/model/file"
	"splaywright/model/form"
)

// maxSteps is how many steps back are kept; a document is a few kilobytes.
const maxSteps = 500

// step is one change that can be taken back. A typed change names the path and both texts, any
// other one says what it was.
type step struct {
	before, after *file.Document
	said          string
	path          string
	from, to      string
}

func (t step) label() string {
	if t.said != "" {
		return t.said
	}
	return fmt.Sprintf("%s: %s → %s", Words(t.path), shown(t.from), shown(t.to))
}

// shown gives a text as the history names it; an empty one was left to follow.
func shown(text string) string {
	switch text {
	case "":
		return "left out"
	case "true":
		return "yes"
	case "false":
		return "no"
	}
	return text
}

// Set puts a text at a path; an empty text leaves the value out. Texts typed one after the
// other at the same path are one step until Seal. A text that the document cannot hold is
// reported by ErrorAt and leaves the document alone.
func (s *Session) Set(path, text string) {
	before := textOf(s.doc, path)
	if _, was := s.refused[path]; before == text && !was {
		return
	}
	next := s.doc.Clone()
	err := put(next, path, text)
	if err == nil && extent.MatchString(path) {
		err = follow(s.begun(path), next, path, text)
	}
	if err != nil {
		s.refused[path] = refusal{text, err}
		return
	}
	delete(s.refused, path)
	if before == text {
		return
	}
	if n := len(s.past); n > 0 && s.typing == path {
		s.retype(&s.past[n-1], next, text)
		return
	}
	s.push(step{before: s.doc, after: next, path: path, from: before, to: text})
	s.typing = path
}

// begun is the design as it was before the typing at a path began.
func (s *Session) begun(path string) form.Design {
	doc := s.doc
	if n := len(s.past); n > 0 && s.typing == path {
		doc = s.past[n-1].before
	}
	d, _ := doc.Design() // of one that does not read what was read
	return d
}

// retype goes on with the step that typing has begun; a text typed back is no step at all.
func (s *Session) retype(t *step, next *file.Document, text string) {
	t.after, t.to = next, text
	s.doc = next
	s.changed()
	if bytes.Equal(t.before.Bytes(), next.Bytes()) {
		s.past, s.typing = s.past[:len(s.past)-1], ""
	}
}

func put(doc *file.Document, path, text string) error {
	if text != "" {
		return doc.Set(path, text)
	}
	if strings.HasPrefix(path, "names.") {
		return errors.New("a value is expected here, such as 10 or size.height / 5")
	}
	if textOf(doc, path) != "" {
		doc.Remove(path)
	}
	return nil
}

// Append adds an item to a list of the design, such as a stretcher, as one step.
func (s *Session) Append(path string, fields ...[2]string) error {
	return s.do(fmt.Sprintf("add a %s", one(path)), func(d *file.Document) error { return d.Append(path, fields...) })
}

// Remove takes out what is at a path, such as "stretchers.0", as one step.
func (s *Session) Remove(path string) error {
	return s.do(fmt.Sprintf("remove %s", Words(path)), func(d *file.Document) error { d.Remove(path); return nil })
}

// SetForm makes the piece one of another form, as one step; what carries over stays.
func (s *Session) SetForm(name string) error {
	return s.do(fmt.Sprintf("form: %s → %s", s.design.Form, name), func(d *file.Document) error { return d.SetForm(name) })
}

// SetJoint gives the corners another joint, as one step; what carries over stays.
func (s *Session) SetJoint(name string) error {
	const path = "corners.joint"
	change := step{path: path, from: textOf(s.doc, path), to: name}
	return s.do(change.label(), func(d *file.Document) error { return d.SetJoint(name) })
}

// SetUnits makes bare numbers count another unit, as one step; the piece stays as it is.
func (s *Session) SetUnits(to string) error {
	const path = "units"
	change := step{path: path, from: textOf(s.doc, path), to: to}
	return s.do(change.label(), func(d *file.Document) error { return d.SetUnits(to) })
}

// Rename gives a named value another name, everywhere it is used, as one step.
func (s *Session) Rename(from, to string) error {
	return s.do(fmt.Sprintf("rename %s to %s", from, to), func(d *file.Document) error { return d.Rename(from, to) })
}

// Inline takes a named value out and leaves its value where it was used, as one step.
func (s *Session) Inline(name string) error {
	return s.do(fmt.Sprintf("remove %s", name), func(d *file.Document) error { return d.Inline(name) })
}

// Change puts several texts in place as one step, said in the history as it is named here.
func (s *Session) Change(said string, fields ...[2]string) error {
	return s.do(said, func(d *file.Document) error {
		for _, f := range fields {
			if err := put(d, f[0], f[1]); err != nil {
				return err
			}
		}
		return nil
	})
}

func (s *Session) do(said string, f func(*file.Document) error) error {
	next := s.doc.Clone()
	if err := f(next); err != nil {
		return err
	}
	s.Seal()
	s.push(step{before: s.doc, after: next, said: said})
	return nil
}

func (s *Session) push(t step) {
	s.past = append(s.past, t)
	if len(s.past) > maxSteps {
		s.past = slices.Delete(s.past, 0, len(s.past)-maxSteps)
	}
	s.future = nil
	s.doc = t.after
	s.changed()
}

// Seal ends a step of typing: what is typed next is a step of its own.
func (s *Session) Seal() { s.typing = "" }

// Undo takes the newest step back and tells whether there was one. A text that the document
// could not hold is the newest that was done.
func (s *Session) Undo() bool {
	if len(s.refused) > 0 {
		s.goTo(s.doc)
		return true
	}
	n := len(s.past)
	if n == 0 {
		return false
	}
	t := s.past[n-1]
	s.past, s.future = s.past[:n-1], append(s.future, t)
	s.goTo(t.before)
	return true
}

// Redo makes the step that was taken back last again and tells whether there was one.
func (s *Session) Redo() bool {
	n := len(s.future)
	if n == 0 {
		return false
	}
	t := s.future[n-1]
	s.future, s.past = s.future[:n-1], append(s.past, t)
	s.goTo(t.after)
	return true
}

func (s *Session) goTo(doc *file.Document) {
	s.doc = doc
	s.refused = map[string]refusal{}
	s.Seal()
	s.changed()
}

// CanUndo tells whether a step can be taken back.
func (s *Session) CanUndo() bool { return len(s.past) > 0 || len(s.refused) > 0 }

// CanRedo tells whether a step that was taken back can be made again.
func (s *Session) CanRedo() bool { return len(s.future) > 0 }

// History says in words what was done, oldest first.
func (s *Session) History() []string { return labels(s.past) }

// Undone says in words what was taken back and can be made again, the next one first.
func (s *Session) Undone() []string {
	out := labels(s.future)
	slices.Reverse(out)
	return out
}

func labels(steps []step) []string {
	out := make([]string, len(steps))
	for i, t := range steps {
		out[i] = t.label()
	}
	return out
}

func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// JumpTo takes back or makes again as many steps as it takes to stand after the n-th, 0 being how the
// design was when it was opened, or as far back as is remembered.
func (s *Session) JumpTo(n int) {
	if len(s.refused) > 0 {
		s.goTo(s.doc)
	}
	for len(s.past) > n && s.Undo() {
	}
	for len(s.past) < n && s.Redo() {
	}
}
