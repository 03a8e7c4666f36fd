package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"time"

	"splaywright/model/file"
)

// Journal keeps what is not saved in a file of its own, so that a crash or a power cut loses
// nothing. It belongs to one window; Write may run on any goroutine.
type Journal struct {
	file   string
	mu     sync.Mutex
	closed bool
}

// Entry is what a journal holds.
type Entry struct {
	PID   int       `json:"pid"`
	When  time.Time `json:"when"`
	Path  string    `json:"path"` // of the design's file; "" = it had none
	Title string    `json:"title"`
	Kept  string    `json:"kept"` // the text as last read or saved
	Text  string    `json:"text"` // as it stood

	file string
}

// NewJournal begins a journal in a folder, which need not exist yet.
func NewJournal(dir string) *Journal {
	name := fmt.Sprintf("%d-%d.json", os.Getpid(), time.Now().UnixNano())
	return &Journal{file: filepath.Join(dir, name)}
}

// Entry gives what a journal has to hold now; nil when nothing is unsaved.
func (s *Session) Entry() *Entry {
	if s.missed < missesGone && bytes.Equal(s.doc.Bytes(), s.kept) {
		return nil
	}
	return &Entry{PID: os.Getpid(), When: time.Now(), Path: s.path, Title: s.design.Title, Kept: string(s.kept), Text: string(s.doc.Bytes())}
}

// Close takes the entry out for good: the person has decided about what was not saved.
func (j *Journal) Close() error {
	j.mu.Lock()
	j.closed = true
	j.mu.Unlock()
	return j.Write(nil)
}

// Write puts an entry in the place of the one before; nil takes it out.
func (j *Journal) Write(e *Entry) error {
	j.mu.Lock()
	defer j.mu.Unlock()
	if e == nil || j.closed {
		if err := os.Remove(j.file); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	}
	text, err := json.Marshal(e)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(j.file), 0o700); err != nil {
		return err
	}
	return replace(j.file, text)
}

// Lost gives what programs that are gone have left in a folder of journals, the oldest first. What
// cannot be read is passed over: it must not keep the program from starting.
func Lost(dir string) []Entry {
	files, err := filepath.Glob(filepath.Join(dir, "*.json"))
	if err != nil {
		return nil
	}
	var out []Entry
	for _, f := range files {
		text, err := os.ReadFile(f)
		e := Entry{file: f}
		if err != nil || json.Unmarshal(text, &e) != nil || running(e.PID) {
			continue
		}
		out = append(out, e)
	}
	return out
}

// running tells whether the program that wrote an entry still runs. After a restart another program
// may have its number, so the name is compared where the system tells it.
func running(pid int) bool {
	p, err := os.FindProcess(pid)
	if err != nil || p.Signal(syscall.Signal(0)) != nil {
		return false
	}
	theirs, err1 := os.Readlink(fmt.Sprintf("/proc/%d/exe", pid))
	ours, err2 := os.Executable()
	return err1 != nil || err2 != nil || filepath.Base(theirs) == filepath.Base(ours)
}

// Discard throws an entry away.
func (e Entry) Discard() error { return os.Remove(e.file) }

// Session opens the design as it stood. Undo leads back to what was saved last.
func (e Entry) Session() (*Session, error) {
	name := "recovered"
	if e.Path != "" {
		name = filepath.Base(e.Path)
	}
	kept, err := file.Read(strings.NewReader(e.Kept), name)
	if err != nil {
		return nil, err
	}
	doc, err := file.Read(strings.NewReader(e.Text), name)
	if err != nil {
		return nil, err
	}
	s := New(kept)
	s.path = e.Path
	s.push(step{before: kept, after: doc, said: "what was not saved"})
	return s, nil
}

// Outside tells whether another program has changed the design's file since it was read or saved,
// and gives its text. A change that KeepMine was told of is not told again.
func (s *Session) Outside() (text []byte, changed bool) {
	if s.path == "" {
		return nil, false
	}
	info, err := os.Stat(s.path)
	if err != nil || info.ModTime().Equal(s.stamp) || info.Size() > file.MaxBytes {
		return nil, false
	}
	text, err = os.ReadFile(s.path)
	if err != nil || bytes.Equal(text, s.kept) || bytes.Equal(text, s.ignored) {
		if err == nil {
			s.stamp = info.ModTime()
		}
		return nil, false
	}
	return text, true
}

// missesGone is after how many looks without it a file is gone: programs that replace one take it away for a moment.
const missesGone = 2

// Gone looks for the design's file and tells, once, that it is not there any more. From then on the design counts as unsaved,
// until it is saved or the file is back.
func (s *Session) Gone() bool {
	if s.path == "" {
		return false
	}
	if _, err := os.Stat(s.path); !errors.Is(err, fs.ErrNotExist) {
		s.missed = 0
		return false
	}
	s.missed++
	return s.missed == missesGone
}

// KeepMine goes on with the design as it is open, whatever the file holds now.
func (s *Session) KeepMine(text []byte) {
	s.ignored = text
}
