package resize

import (
	"splaywright/model/file"
	"splaywright/model/form"
)

// Apply puts new overall sizes into a design file and what else is needed to hold what is named; see
// Plan. The document is changed as a whole or, on an error, not at all. It gives the edits that the
// holds asked for.
func Apply(doc *file.Document, sizes []Edit, holds, kept []string) ([]Edit, error) {
	was, err := doc.Design()
	if err != nil {
		return nil, err
	}
	next := doc.Clone()
	now, err := enter(next, sizes)
	if err != nil {
		return nil, err
	}
	edits, err := Plan(was, now, holds, kept)
	if err != nil {
		return nil, err
	}
	if _, err := enter(next, edits); err != nil {
		return nil, err
	}
	*doc = *next
	return edits, nil
}

func enter(doc *file.Document, edits []Edit) (form.Design, error) {
	for _, e := range edits {
		if e.Text == "" {
			doc.Remove(e.Path)
			continue
		}
		if err := doc.Set(e.Path, e.Text); err != nil {
			return form.Design{}, err
		}
	}
	return doc.Design()
}
