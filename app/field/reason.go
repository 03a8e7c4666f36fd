package field

import (
	"errors"
	"strings"

	"splaywright/app/say"
	"splaywright/model/file"
)

// Reason says what is wrong with a text beside the place where it was typed: the place in the
// file would only be in the way there.
func Reason(err error) string {
	var e *file.Error
	if !errors.As(err, &e) {
		return say.Error(err)
	}
	if e.Read == "" || strings.Contains(e.Want, e.Read) {
		return say.It(e.Want) // what was typed stands just above
	}
	return say.With("%s: %s", e.Read, say.It(e.Want))
}
