package html

import (
	"bytes"
	"encoding/xml"
	"io"
	"regexp"
	"strings"
	"testing"

	"splaywright/model"
	"splaywright/model/form/formtest"
	"splaywright/render/sheet"
	"splaywright/render/table"
)

func whole(t *testing.T) []byte {
	t.Helper()
	p := model.Derive(formtest.Full())
	c := Content{Title: p.Title, Intro: "260 high", Tables: table.All(p, p.Design.Style()), Cautions: []sheet.Caution{{Head: "At the saw", Text: "Keep the guard on."}}}
	for _, v := range sheet.Views(p, nil) {
		c.Pictures = append(c.Pictures, Picture{v.Name, v.Page})
	}
	var b bytes.Buffer
	if err := Write(&b, c); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The page must work in a shop without a network: nothing in it may point elsewhere or run.
func TestThePageNeedsNothingElse(t *testing.T) {
	text := string(whole(t))
	for _, bad := range []string{"<script", "<link", "src=", "@import", "url("} {
		if strings.Contains(text, bad) {
			t.Errorf("the page has %q", bad)
		}
	}
	for _, href := range regexp.MustCompile(`href="[^"]*"`).FindAllString(text, -1) {
		t.Errorf("the page points to %s", href)
	}
}

// An independent reader finds every element closed, every table and every picture.
func TestThePageIsWellFormed(t *testing.T) {
	d := xml.NewDecoder(bytes.NewReader(whole(t)))
	d.Strict, d.AutoClose, d.Entity = false, []string{"meta"}, xml.HTMLEntity
	found := map[string]int{}
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if s, ok := tok.(xml.StartElement); ok {
			found[s.Name.Local]++
		}
	}
	p := model.Derive(formtest.Full())
	tables := table.All(p, p.Design.Style())
	if found["table"] != len(tables) {
		t.Errorf("%d tables, want %d", found["table"], len(tables))
	}
	if found["svg"] != len(sheet.Views(p, nil)) {
		t.Errorf("%d pictures, want %d", found["svg"], len(sheet.Views(p, nil)))
	}
	rows := len(tables)
	for _, tab := range tables {
		rows += len(tab.Rows)
	}
	if found["tr"] != rows {
		t.Errorf("%d rows, want %d", found["tr"], rows)
	}
}

func TestTextsAreEscaped(t *testing.T) {
	var b bytes.Buffer
	evil := `<b onload="x">&`
	if err := Write(&b, Content{Title: evil, Tables: []table.Table{{Title: evil, Columns: []table.Column{{Head: evil}}, Rows: [][]table.Cell{{{Text: evil}}}, Notes: []string{evil}}}}); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), "<b onload") {
		t.Error("a text became an element")
	}
}

func TestTheSameContentGivesTheSameBytes(t *testing.T) {
	if !bytes.Equal(whole(t), whole(t)) {
		t.Error("two pages of one piece differ")
	}
}
