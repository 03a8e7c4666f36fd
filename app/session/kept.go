package session

import (
	"strings"

	"splaywright/model/file"
	"splaywright/model/remedy"
	"splaywright/model/resize"
)

// Keep makes a size one that resizing must leave as it is, or lets it go.
func (s *Session) Keep(path string, on bool) {
	if on {
		s.keeps[path] = true
	} else {
		delete(s.keeps, path)
	}
}

// Keeps tells whether resizing must leave a size as it is.
func (s *Session) Keeps(path string) bool { return s.keeps[path] }

// Kept are the sizes that resizing must leave as they are.
func (s *Session) Kept() []string { return sorted(s.keeps) }

// Resize gives the piece new overall sizes and holds what is named, as one step; see resize.Plan.
func (s *Session) Resize(sizes []resize.Edit, holds []string) error {
	said := "new overall sizes"
	if len(holds) > 0 {
		said += ", " + strings.Join(holds, ", ") + " held"
	}
	return s.do(said, func(d *file.Document) error {
		_, err := resize.Apply(d, sizes, holds, s.Kept())
		return err
	})
}

// Accept makes a change that clears a finding, as one step.
func (s *Session) Accept(o remedy.Offer) error {
	if o.Fields != nil {
		return s.do("add a "+one(o.Path), o.Apply)
	}
	return s.do(Words(o.Path)+": "+o.Was+" → "+shown(o.Now), o.Apply)
}

// Take makes the design another one, as one step.
func (s *Session) Take(title string, doc *file.Document) error {
	return s.do("take "+title, func(d *file.Document) error { *d = *doc.Clone(); return nil })
}
