package file

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/word"
)

// mostCSV bounds a list of boards, bytes.
const mostCSV = 1 << 20

// boardColumns of a list of boards; those of boardNeeded must be there, in any order.
var (
	boardColumns = []string{"name", "timber", "length", "width", "thickness", "bow", "cup", "twist", "count", "price", "grain", "sawn", "face", "note", "outline", "avoid"}
	boardNeeded  = []string{"length", "width", "thickness"}
)

// ReadBoards reads boards on hand from comma-separated values with a line of heads. Lengths are as
// in a design file; bare numbers are of the unit. Every fault is told with its line and column, and
// none of the boards is taken then: the error is an Errors.
func ReadBoards(in io.Reader, name string, bare measure.Unit) ([]stock.Board, error) {
	text, err := io.ReadAll(io.LimitReader(in, mostCSV+1))
	if err != nil {
		return nil, &word.At{Where: name, Err: err}
	}
	if len(text) > mostCSV {
		return nil, Errors{{File: name, Want: fmt.Sprintf("a list of boards of more than %d kB is not taken", mostCSV>>10)}}
	}
	if err := notText(name, text); err != nil {
		return nil, Errors{err}
	}
	list := strings.TrimPrefix(string(text), "\ufeff")
	if !strings.Contains(list, "\n") {
		list = strings.ReplaceAll(list, "\r", "\n") // as some spreadsheets end lines
	}
	b := boardReader{name: name, bare: bare, csv: csv.NewReader(strings.NewReader(list))}
	b.split(list)
	b.csv.TrimLeadingSpace = true
	b.csv.Comment = '#'
	b.csv.FieldsPerRecord = -1
	return b.read()
}

// split settles what parts the fields from the line of heads: a comma, or else a semicolon, with which a comma is what
// stands before decimals, or a tab.
func (b *boardReader) split(text string) {
	for line := range strings.Lines(text) {
		switch {
		case strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "":
			continue
		case strings.Contains(line, ";") && !strings.Contains(line, ","):
			b.csv.Comma, b.decimalComma = ';', true
		case strings.Contains(line, "\t") && !strings.Contains(line, ","):
			b.csv.Comma = '\t'
		}
		return
	}
}

type boardReader struct {
	name  string
	bare  measure.Unit
	csv   *csv.Reader
	heads []string
	errs  Errors

	decimalComma bool // a comma stands before decimals
}

func (b *boardReader) read() ([]stock.Board, error) {
	heads, err := b.csv.Read()
	if err != nil {
		if errors.Is(err, io.EOF) {
			return nil, Errors{{File: b.name, Line: 1, Column: 1, Want: fmt.Sprintf("it is empty; a line of heads is expected first: %+s", strings.Join(boardColumns, ","))}}
		}
		return nil, b.broken(err)
	}
	for i, h := range heads {
		b.heads = append(b.heads, strings.ToLower(strings.TrimSpace(h)))
		if !slices.Contains(boardColumns, b.heads[i]) {
			b.refuse(i, h, fmt.Sprintf("there is no such column; %s", suggest(b.heads[i], boardColumns)))
		} else if slices.Contains(b.heads[:i], b.heads[i]) {
			b.refuse(i, h, "this column stands twice")
		}
	}
	for _, need := range boardNeeded {
		if !slices.Contains(b.heads, need) {
			b.refuse(0, strings.Join(heads, ","), fmt.Sprintf("the column %+s is missing", need))
		}
	}
	if len(b.errs) > 0 {
		return nil, b.errs
	}
	return b.rows()
}

func (b *boardReader) rows() ([]stock.Board, error) {
	var out []stock.Board
	for {
		row, err := b.csv.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, b.broken(err)
		}
		if len(out) == mostBoards {
			b.refuse(0, "", fmt.Sprintf("more than %d boards are not taken", mostBoards))
			break
		}
		out = append(out, b.board(row, len(out)+1))
	}
	if len(b.errs) > 0 {
		return nil, b.errs[:min(len(b.errs), maxTold)]
	}
	if len(out) == 0 {
		return nil, Errors{{File: b.name, Line: 2, Column: 1, Want: "no board stands below the heads"}}
	}
	return out, nil
}

func (b *boardReader) board(row []string, nth int) stock.Board {
	board, before := stock.Board{Name: fmt.Sprintf(form.NameOnHand, nth), Unnamed: true}, len(b.errs)
	if len(row) != len(b.heads) {
		b.refuse(0, strings.Join(row, ","), fmt.Sprintf("%d fields stand here under %d heads; a field with a comma in it goes in quotes", len(row), len(b.heads)))
		return board
	}
	for i, field := range row {
		b.field(&board, i, strings.TrimSpace(field))
	}
	if len(b.errs) == before {
		if err := board.Check(); err != nil {
			i, read := 0, strings.Join(row, ",")
			if fault, ok := errors.AsType[*stock.Fault](err); ok {
				head, _, _ := strings.Cut(fault.At, ".")
				if at := slices.Index(b.heads, head); at >= 0 {
					i, read = at, strings.TrimSpace(row[at])
				}
			}
			b.refuse(i, read, err.Error())
		}
	}
	return board
}

// field takes one value of a board. One that is left empty is not told.
func (b *boardReader) field(board *stock.Board, i int, text string) {
	head := b.heads[i]
	if text == "" && !slices.Contains(boardNeeded, head) {
		return
	}
	var err error
	switch head {
	case "name":
		board.Name, err = ownWords(text)
		board.Unnamed = false
	case "timber":
		board.Timber, err = ownWords(text)
	case "face":
		board.Face, err = ownWords(text)
	case "note":
		board.Note, err = ownWords(text)
	case "length", "width", "thickness", "bow", "cup", "twist":
		to := map[string]*float64{"length": &board.Length, "width": &board.Width, "thickness": &board.Thickness,
			"bow": &board.Bow, "cup": &board.Cup, "twist": &board.Twist}[head]
		if text, err = b.number(text); err == nil {
			*to, err = mmOf(text, b.bare)
		}
	case "grain":
		board.Grain, err = oneOf(text, stock.Grains())
	case "sawn":
		board.Sawn, err = oneOf(text, stock.Saws())
	case "outline":
		board.Outline, err = outlineOf(text, b.bare)
	case "avoid":
		board.Avoid, err = avoidOf(text, b.bare)
	case "count":
		board.Count, err = strconv.Atoi(text)
		if err != nil || board.Count < 1 || board.Count > mostBoards {
			err = fmt.Errorf("a whole number from 1 to %d is expected here", mostBoards)
		}
	case "price":
		board.Price, err = b.price(text)
	}
	if err != nil {
		b.refuse(i, text, err.Error())
	}
}

// number is a number with a point before its decimals.
func (b *boardReader) number(text string) (string, error) {
	if !b.decimalComma {
		return text, nil
	}
	if strings.Contains(text, ",") && strings.Contains(text, ".") {
		return text, errors.New("a comma stands before decimals in this list; leave the point out, as in 1250,5")
	}
	return strings.Replace(text, ",", ".", 1), nil
}

// price reads an amount of money.
func (b *boardReader) price(text string) (float64, error) {
	text, err := b.number(text)
	if err != nil {
		return 0, err
	}
	p, err := strconv.ParseFloat(text, 64)
	if err != nil || !(p >= 0) || p > 1e9 {
		return 0, errors.New("a price is expected here, such as 12.50")
	}
	return p, nil
}

// ownWords are words of a person's own, in one line, as a design file takes them.
func ownWords(text string) (string, error) {
	switch {
	case utf8.RuneCountInString(text) > longestText:
		return "", fmt.Errorf("longer than %d characters; shorter words are expected", longestText)
	case strings.ContainsFunc(text, func(c rune) bool { return c < ' ' || c == 0x7f }):
		return "", errors.New("this holds a character that does not print; one line of words is expected")
	}
	return text, nil
}

func oneOf(text string, words []string) (string, error) {
	if !slices.Contains(words, text) {
		return "", errors.New(suggest(text, words))
	}
	return text, nil
}

// refuse notes a fault in the i-th field of the line that was read last.
func (b *boardReader) refuse(i int, read, want string) {
	line, column := b.csv.FieldPos(i)
	b.errs = append(b.errs, &Error{File: b.name, Line: line, Column: column, Read: clip(read), Want: want})
}

// broken words what the reader of comma-separated values refuses.
func (b *boardReader) broken(err error) error {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return Errors{{File: b.name, Line: p.Line, Column: max(p.Column, 1), Want: fmt.Sprintf("this line is no list of fields: %s", word.OfFields(p))}}
	}
	return &word.At{Where: b.name, Err: err}
}
