// Package session is an open design: its document, edits, undo and what derives from it.
// It knows nothing of the window. A Session belongs to one goroutine; only Latest may be
// shared.
package session

import (
	"bytes"
	"time"

	"splaywright/model/file"
	"splaywright/model/form"
	"splaywright/model/timber"
)

// Session is one open design.
type Session struct {
	Clock func() time.Time // nil = the system's

	doc  *file.Document
	path string // where it is kept; "" = nowhere yet
	kept []byte // the text as last read or saved
	// What another program has made of the file, once the person knows of it, and when the file was
	// last found to be as known.
	ignored []byte
	missed  int // looks in a row without the file being there
	stamp   time.Time

	past, future []step
	typing       string // the path whose typing still joins the newest step

	gen     uint64 // counts changes of the text
	design  form.Design
	reads   bool // the text as it stands can be read
	errs    file.Errors
	refused map[string]refusal
	keeps   map[string]bool // sizes that resizing leaves as they are
	shelf   timber.Book     // timbers that the person keeps for all designs

	piece  *form.Piece // built last
	whole  *form.Piece // built last with parts
	looked *form.Piece // looked over last
	// The numbers of the texts that these two come from.
	pieceGen, lookedGen uint64
	looking             time.Time // since when Looked is not of Piece
}

// refusal is a text that could not even be put into the document, and why.
type refusal struct {
	text string
	err  error
}

// New begins with a document that is not kept in a file yet.
func New(doc *file.Document) *Session {
	s := &Session{doc: doc, kept: doc.Bytes(), refused: map[string]refusal{}, keeps: map[string]bool{}}
	s.changed()
	return s
}

// changed reads the document again after its text has changed.
func (s *Session) changed() {
	s.gen++
	s.doc.Know(nil, s.shelf) // the design's own come first
	d, err := s.doc.Design()
	s.errs, s.reads = asErrors(err), err == nil
	if s.reads {
		s.design = d
	}
}

// Shelve gives the session the timbers that a person keeps for all designs. What a design says of a timber itself goes
// before them, and nothing of them is written into its file.
func (s *Session) Shelve(own timber.Book) {
	s.shelf = own
	s.changed()
}

// Document gives the document as it stands. It is not to be changed directly.
func (s *Session) Document() *file.Document { return s.doc }

// Text gives the text at a path as the person typed it, "" when there is none.
func (s *Session) Text(path string) string {
	if r, ok := s.refused[path]; ok {
		return r.text
	}
	return textOf(s.doc, path)
}

// textOf is what stands at a path, a list of values in brackets.
func textOf(d *file.Document, path string) string {
	if text := d.Text(path); text != "" {
		return text
	}
	return d.List(path)
}

// Design gives the design of the text as it stands, or the last one that could be read.
func (s *Session) Design() form.Design { return s.design }

// Reads tells whether the text as it stands can be read.
func (s *Session) Reads() bool { return s.reads && len(s.refused) == 0 }

// Path is the file the design is kept in, "" when it has none yet.
func (s *Session) Path() string { return s.path }

// Dirty tells whether the text differs from what is kept, or nothing is kept any more.
func (s *Session) Dirty() bool {
	return s.missed >= missesGone || len(s.refused) > 0 || !bytes.Equal(s.doc.Bytes(), s.kept)
}

// Piece is the last piece that could be built; nil before the first. Its sizes, parts and joints are those that the
// pictures show; what was found about it and how it goes together is in Looked.
func (s *Session) Piece() *form.Piece { return s.piece }

// Whole is the last piece that has parts; nil before the first. Where sizes are refused there is nothing to draw, and the
// pictures stay with it.
func (s *Session) Whole() *form.Piece { return s.whole }

// Refused tells whether the sizes as they stand make no parts, so that the pictures show older ones.
func (s *Session) Refused() bool { return s.piece != nil && s.whole != nil && s.piece != s.whole }

// Looked is the last piece that was looked over, with its findings and the order in which it goes together; nil before
// the first. It may be of an older text than Piece; see Looking.
func (s *Session) Looked() *form.Piece { return s.looked }

// Looking tells whether the piece that the pictures show has still to be looked over.
func (s *Session) Looking() bool { return s.piece != nil && s.lookedGen != s.pieceGen }

// Patience is how long what was noticed about the piece before may stand beside the pictures of the next one: shorter than
// a person takes to read it.
const Patience = 150 * time.Millisecond

// Overdue tells whether looking over the piece that the pictures show takes longer than that.
func (s *Session) Overdue() bool { return s.Looking() && s.now().Sub(s.looking) >= Patience }

func (s *Session) now() time.Time {
	if s.Clock != nil {
		return s.Clock()
	}
	return time.Now()
}

// Current tells whether Looked belongs to the text as it stands.
func (s *Session) Current() bool { return s.looked != nil && s.lookedGen == s.gen }

// Job is a design to derive and the number of the text it comes from.
type Job struct {
	Gen    uint64
	Design form.Design
}

// Job gives what is to be derived now; false while the text cannot be read.
func (s *Session) Job() (Job, bool) {
	return Job{s.gen, s.design}, s.reads
}

// Show hands in a piece that is built and not looked over yet. A piece of a text that has changed since is dropped, and
// false is returned.
func (s *Session) Show(gen uint64, p *form.Piece) bool {
	if gen != s.gen || p == nil {
		return false
	}
	if !s.Looking() {
		s.looking = s.now()
	}
	s.piece, s.pieceGen = p, gen
	if len(p.Parts) > 0 {
		s.whole = p
	}
	return true
}

// Shows tells whether Piece, and with it the pictures, is of the text of a number.
func (s *Session) Shows(gen uint64) bool { return gen == s.pieceGen }

// Deliver hands in a piece that has been looked over. One of a text that has changed since is dropped, and false is
// returned.
func (s *Session) Deliver(gen uint64, p *form.Piece) bool {
	if !s.Show(gen, p) {
		return false
	}
	s.looked, s.lookedGen = p, gen
	return true
}
