package word

import (
	"encoding/csv"
	"errors"
	"io"
	"io/fs"
	"os"
	"strings"
	"syscall"
)

// An error that tells where something stands has words and names of files and keys side by side. Whoever says it in
// another language says the words alone.
type placed interface {
	error
	// In gives the error with its words said.
	In(say func(english string) string) string
}

// Said says an error: one that tells a place or a file of the system with that as it is, any other as a whole.
func Said(err error, say func(english string) string) string {
	var p placed
	var file *fs.PathError
	var moved *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.In(say)
	case errors.As(err, &file):
		return file.Path + ": " + say(OfSystem(file.Err))
	case errors.As(err, &moved):
		return moved.New + ": " + say(OfSystem(moved.Err))
	}
	return say(err.Error())
}

// system are the usual reasons why a file cannot be read or written.
var system = []struct {
	err   error
	words string
}{
	{fs.ErrNotExist, "no such file or directory"}, {fs.ErrExist, "file exists"}, {fs.ErrPermission, "permission denied"},
	{syscall.ENOSPC, "no space left on device"}, {syscall.EROFS, "read-only file system"}, {syscall.EPIPE, "broken pipe"},
	{syscall.ENOTDIR, "not a directory"}, {syscall.EISDIR, "is a directory"}, {syscall.EIO, "input/output error"},
	{syscall.ENAMETOOLONG, "file name too long"}, {syscall.ELOOP, "too many levels of symbolic links"},
}

// OfSystem gives the system's reason without the name of its call and of the file.
func OfSystem(err error) string {
	for _, s := range system {
		if errors.Is(err, s.err) {
			return s.words
		}
	}
	var file *fs.PathError
	if errors.As(err, &file) {
		return file.Err.Error()
	}
	return err.Error()
}

// OfFile names the file that somebody asked for in the system's error about another that was written in its place.
func OfFile(path string, err error) error {
	var file *fs.PathError
	var moved *os.LinkError
	switch {
	case errors.As(err, &file):
		return &fs.PathError{Op: "write", Path: path, Err: file.Err}
	case errors.As(err, &moved):
		return &fs.PathError{Op: "write", Path: path, Err: moved.Err}
	}
	return err
}

// At is an error with where it stands before it: a file, a line of one, a flag.
type At struct {
	Where string
	Err   error
}

func (a *At) Error() string { return a.Where + ": " + a.Err.Error() }

// Unwrap gives the error without its place.
func (a *At) Unwrap() error { return a.Err }

// In says the error and leaves its place as it is.
func (a *At) In(say func(english string) string) string { return a.Where + ": " + Said(a.Err, say) }

// OfFields says in plain words why a line is no list of comma-separated fields.
func OfFields(err error) string {
	switch {
	case errors.Is(err, csv.ErrBareQuote):
		return "a quote stands within a field; put the whole field in quotes, and each quote in it twice"
	case errors.Is(err, csv.ErrQuote):
		return "a quote is opened and not closed, or one is too many"
	case errors.Is(err, io.EOF):
		return "it is empty"
	case errors.Is(err, csv.ErrFieldCount):
		return "it has not as many fields as the line of heads"
	}
	return strings.TrimPrefix(err.Error(), "csv: ")
}
