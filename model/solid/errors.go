package solid

import "strings"

// BuildError tells why a board cannot be built: walls that do not close, a bore that
// breaks out. Tags name the walls, pockets or bores concerned.
type BuildError struct {
	Tags   []string
	Reason string
}

// Error gives the tags and the reason in one line.
func (e *BuildError) Error() string {
	return strings.Join(e.Tags, ", ") + ": " + e.Reason
}

func fail(reason string, tags ...string) error {
	return &BuildError{Tags: tags, Reason: reason}
}
