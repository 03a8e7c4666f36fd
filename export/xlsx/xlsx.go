// Package xlsx writes the tables as one workbook, a sheet a table.
package xlsx

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"splaywright/render/table"
)

// Meta is what the workbook says of itself.
type Meta struct{ Title, Subject string }

// stamp stands for the time of writing, so that the same tables give the same bytes.
const stamp = "2000-01-01T00:00:00Z"

// Write writes the workbook. A cell with a number behind it holds that number, unrounded, in the
// column's unit, and is shown as the papers show it: the same decimals, or the same fraction of an
// inch. All other cells are text, whatever they begin with, so none is ever read as a formula.
// Notes stand below their table.
func Write(w io.Writer, tables []table.Table, m Meta) error {
	f := excelize.NewFile()
	defer f.Close()
	b := &book{f: f, styles: map[string]int{}}
	for i, t := range tables {
		if err := b.sheet(t, i == 0); err != nil {
			return fmt.Errorf("table %q as a spreadsheet: %w", t.ID, err)
		}
	}
	if err := f.SetDocProps(&excelize.DocProperties{
		Title: m.Title, Subject: m.Subject, Creator: "Splaywright", Created: stamp, Modified: stamp,
	}); err != nil {
		return fmt.Errorf("spreadsheet: %w", err)
	}
	if err := f.Write(w); err != nil {
		return fmt.Errorf("spreadsheet: %w", err)
	}
	return nil
}

type book struct {
	f      *excelize.File
	styles map[string]int // by number format and whether bold
}

func (b *book) sheet(t table.Table, first bool) error {
	name := b.name(t.Title)
	if first {
		if err := b.f.SetSheetName(b.f.GetSheetName(0), name); err != nil {
			return err
		}
	} else if _, err := b.f.NewSheet(name); err != nil {
		return err
	}
	for c, col := range t.Columns {
		if err := b.text(name, c, 0, head(col), true, false); err != nil {
			return err
		}
	}
	for r, row := range t.Rows {
		for c, cell := range row {
			if err := b.cell(name, c, r+1, cell); err != nil {
				return err
			}
		}
	}
	for i, n := range t.Notes {
		if err := b.text(name, 0, len(t.Rows)+2+i, n, false, false); err != nil {
			return err
		}
	}
	return b.layout(name, t)
}

// longestName is how many letters a sheet's name may have.
const longestName = 31

// name makes a sheet's name of a title: short, without the signs that are not allowed, and its own.
func (b *book) name(title string) string {
	base := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:\/?*[]`, r) {
			return -1
		}
		return r
	}, title)
	for n := 1; ; n++ {
		tail := ""
		if n > 1 {
			tail = fmt.Sprintf(" %d", n)
		}
		letters := []rune(base)
		if room := longestName - len(tail); len(letters) > room {
			letters = letters[:room]
		}
		name := strings.Trim(string(letters), " '") + tail
		if i, err := b.f.GetSheetIndex(name); err == nil && i < 0 {
			return name
		}
	}
}

func head(c table.Column) string {
	if c.Unit == "" {
		return c.Head
	}
	return c.Head + " (" + c.Unit + ")"
}

func (b *book) cell(sheet string, col, row int, c table.Cell) error {
	format, ok := shownAs(c.Text)
	if c.Number == nil || !ok {
		return b.text(sheet, col, row, c.Text, false, wide(c) > widest || strings.Contains(c.Text, "\n"))
	}
	at, err := excelize.CoordinatesToCellName(col+1, row+1)
	if err != nil {
		return err
	}
	if err := b.f.SetCellFloat(sheet, at, *c.Number, -1, 64); err != nil {
		return err
	}
	return b.style(sheet, at, format, false, false)
}

func (b *book) text(sheet string, col, row int, s string, bold, broken bool) error {
	at, err := excelize.CoordinatesToCellName(col+1, row+1)
	if err != nil || s == "" {
		return err
	}
	if err := b.f.SetCellStr(sheet, at, s); err != nil {
		return err
	}
	return b.style(sheet, at, "@", bold, broken)
}

// shownAs is the number format that shows a number as the papers do: as many decimals, or parts of
// an inch of the same size. It is not ok where the text is more than a number.
func shownAs(text string) (format string, ok bool) {
	text = strings.TrimPrefix(strings.TrimPrefix(text, "-"), "−")
	whole, part, fraction := strings.Cut(text, "/")
	if fraction {
		if !digits(part) || !digits(strings.ReplaceAll(whole, " ", "")) {
			return "", false
		}
		return "# " + strings.Repeat("?", len(part)) + "/" + part, true
	}
	whole, part, point := strings.Cut(text, ".")
	if !digits(whole) || (point && !digits(part)) {
		return "", false
	}
	if point {
		return "0." + strings.Repeat("0", len(part)), true
	}
	return "0", true
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

func (b *book) style(sheet, at, format string, bold, broken bool) error {
	key := fmt.Sprint(format, bold, broken)
	id, ok := b.styles[key]
	if !ok {
		var err error
		id, err = b.f.NewStyle(&excelize.Style{CustomNumFmt: &format, Font: &excelize.Font{Bold: bold},
			Alignment: &excelize.Alignment{Vertical: "top", WrapText: broken}})
		if err != nil {
			return err
		}
		b.styles[key] = id
	}
	return b.f.SetCellStyle(sheet, at, at, id)
}

// widest a column becomes, letters; longer texts are broken into lines.
const widest = 60

// wide is how many letters a cell's widest line has.
func wide(c table.Cell) int { return table.Widest(c.Text, utf8.RuneCountInString) }

// layout makes the columns as wide as their texts, keeps the head in sight and prints the sheet
// across, one page wide.
func (b *book) layout(sheet string, t table.Table) error {
	for c, col := range t.Columns {
		w := len([]rune(head(col)))
		for _, row := range t.Rows {
			if c < len(row) {
				w = max(w, wide(row[c]))
			}
		}
		letter, err := excelize.ColumnNumberToName(c + 1)
		if err != nil {
			return err
		}
		if err := b.f.SetColWidth(sheet, letter, letter, float64(min(w, widest)+2)); err != nil {
			return err
		}
	}
	if err := b.f.SetPanes(sheet, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	across, wide, any := "landscape", 1, 0
	if err := b.f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &across, FitToWidth: &wide, FitToHeight: &any}); err != nil {
		return err
	}
	fit := true
	return b.f.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit})
}
