package field

import (
	"errors"
	"fmt"
	"strings"

	"splaywright/model/file"
)

// Reason says what is wrong with a text beside the place where it was typed: the place in the
// file would only be in the way there.
func Reason(err error) string {
	var e *file.Error
	if !errors.As(err, &e) {
		return err.Error()
	}
	if e.Read == "" || strings.Contains(e.Want, e.Read) {
		return e.Want // what was typed stands just above
	}
	return fmt.Sprintf("%s: %s", e.Read, e.Want)
}
