package field

import (
	"errors"
	"fmt"

	"splaywright/model/file"
)

// Reason says what is wrong with a text beside the place where it was typed: the place in the
// file would only be in the way there.
func Reason(err error) string {
	var e *file.Error
	if !errors.As(err, &e) {
		return err.Error()
	}
	if e.Read == "" {
		return e.Want
	}
	return fmt.Sprintf("%s: %s", e.Read, e.Want)
}
