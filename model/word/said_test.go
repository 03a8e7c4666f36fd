package word_test

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"syscall"
	"testing"

	"splaywright/model/word"
)

// The place of an error is no word, whatever its file is called, and however deep it is wrapped.
func TestSaidLeavesPlacesAsTheyAre(t *testing.T) {
	say := func(english string) string { return strings.ToUpper(english) }
	at := &word.At{Where: "side:3", Err: &word.At{Where: "--bar", Err: errors.New("it has no name")}}
	for _, c := range []struct {
		err  error
		want string
	}{
		{errors.New("it has no name"), "IT HAS NO NAME"},
		{at, "side:3: --bar: IT HAS NO NAME"},
		{fmt.Errorf("read: %w", at), "side:3: --bar: IT HAS NO NAME"},
		{fmt.Errorf("save the design: %w", &fs.PathError{Op: "open", Path: "side", Err: syscall.EACCES}), "side: PERMISSION DENIED"},
		{&os.LinkError{Op: "rename", Old: "a", New: "side", Err: syscall.ENOSPC}, "side: NO SPACE LEFT ON DEVICE"},
	} {
		if got := word.Said(c.err, say); got != c.want {
			t.Errorf("%v is said %q, want %q", c.err, got, c.want)
		}
	}
	if at.Error() != "side:3: --bar: it has no name" {
		t.Errorf("in English %q", at.Error())
	}
}

func TestFieldsInPlainWords(t *testing.T) {
	for text, want := range map[string]string{
		"a,b\n1,\"2\n":   "a quote is opened and not closed",
		"a,b\n1,9\" w\n": "a quote stands within a field",
		"a,b\n1\n":       "not as many fields",
	} {
		_, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err == nil || !strings.Contains(word.OfFields(err), want) {
			t.Errorf("%q: %v is put as %q", text, err, word.OfFields(err))
		}
	}
}
