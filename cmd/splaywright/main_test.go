package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"splaywright/assets"
)

// narrow takes so many bytes and no more, as a full disk does.
type narrow struct{ room int }

func (n *narrow) Write(b []byte) (int, error) {
	if n.room -= len(b); n.room < 0 {
		return 0, errors.New("no space left")
	}
	return len(b), nil
}

func TestNoCommandEndsWellWithItsOutputLost(t *testing.T) {
	const step = "example:" + assets.FirstExample
	for _, args := range [][]string{
		{"derive", step}, {"show", step}, {"check", step}, {"schema"}, {"new"}, {"new", "--list"}, {"units", "3 in"},
		{"compare", step, "example:reading-nook-bench"}, {"papers", step, "--to", t.TempDir()},
	} {
		var talk bytes.Buffer
		if code := run(args, strings.NewReader(""), &narrow{10}, &talk); code != exitRefused || !strings.Contains(talk.String(), "cannot be written whole") {
			t.Errorf("%v: exit %d, %q", args, code, talk.String())
		}
	}
}
