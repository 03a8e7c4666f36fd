package main

import (
	"io/fs"
	"strings"
	"syscall"
	"testing"
	"time"

	"splaywright/export/papers"
)

// A set that is quick says nothing; a slow one a line a second.
func TestSlowSetsSayHowFarTheyAre(t *testing.T) {
	var out strings.Builder
	at := time.Unix(0, 0)
	tell := slowly(&out, func() time.Time { return at }, nil)
	tell(papers.Progress{What: "Top", Sheet: 1})
	if out.String() != "" {
		t.Errorf("at once: %q", out.String())
	}
	for range 40 { // 4 s
		at = at.Add(time.Second / 10)
		tell(papers.Progress{What: "step.pdf", Sheet: 7, Of: 19, Done: 2, Files: 20})
	}
	want := strings.Repeat("Writing file 3 of 20: step.pdf, sheet 7 of 19\n", 3)
	if out.String() != want {
		t.Errorf("%q, want %q", out.String(), want)
	}
}

// A full disk wants room, not a right to write.
func TestAFullDiskWantsRoom(t *testing.T) {
	full := &fs.PathError{Op: "write", Path: "/shop/stool.pdf", Err: syscall.ENOSPC}
	for _, err := range []error{papersTrouble(t.TempDir(), full), newTrouble("/shop/stool.yaml", full)} {
		if got := err.Error(); !strings.Contains(got, "/shop/stool.") || !strings.Contains(got, "make room there") {
			t.Errorf("it says %q", got)
		}
	}
}
