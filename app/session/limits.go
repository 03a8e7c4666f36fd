package session

import "splaywright/model/file"

// beyond are numbers of which a size that has a limit refuses one, whether it is a length, an angle or a count.
var beyond = []string{"-1", "-170", "170"}

// Limit says what the size at a path must keep to, as the reader of the design says it of a text beyond it;
// "" where the reader takes any number. The document stays as it is.
func (s *Session) Limit(path string) string {
	for _, text := range beyond {
		try := s.doc.Clone()
		if try.Set(path, text) != nil {
			continue
		}
		_, err := try.Design()
		if want := wantAt(asErrors(err), path); want != "" {
			return want
		}
	}
	return ""
}

func wantAt(errs file.Errors, path string) string {
	for _, e := range errs {
		if e.Path == path {
			return e.Want
		}
	}
	return ""
}
