package session

import (
	"errors"

	"splaywright/model/file"
)

// asErrors gives the list behind an error of the file package; an error of any other kind
// becomes a list of one without a place.
func asErrors(err error) file.Errors {
	if err == nil {
		return nil
	}
	var list file.Errors
	if errors.As(err, &list) {
		return list
	}
	var one *file.Error
	if errors.As(err, &one) {
		return file.Errors{one}
	}
	return file.Errors{{Want: err.Error()}}
}

// Errors gives everything that could not be read, in the order of the file; nil when all is well.
func (s *Session) Errors() []error {
	var out []error
	for _, e := range s.errs {
		out = append(out, e)
	}
	for _, path := range sorted(s.refused) {
		out = append(out, s.refused[path].err)
	}
	return out
}

// ErrorAt gives what is wrong with the text at a path, nil when it is understood.
func (s *Session) ErrorAt(path string) error {
	if r, ok := s.refused[path]; ok {
		return r.err
	}
	for _, e := range s.errs {
		if e.Path == path {
			return e
		}
	}
	return nil
}
