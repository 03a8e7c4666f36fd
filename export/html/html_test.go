package html

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strconv"
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
	c := Content{Title: p.Title, Intro: "260 high", Cautions: []sheet.Caution{{Head: "At the saw", Text: "Keep the guard on."}}}
	part := Part{Tables: table.All(p, p.Design.Style())}
	for _, v := range sheet.Fitted(p, nil, Wide, High) {
		part.Pictures = append(part.Pictures, Picture{Caption: v.Name, Page: v.Page})
	}
	c.Parts = []Part{part}
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
	if found["svg"] != len(sheet.Fitted(p, nil, Wide, High)) {
		t.Errorf("%d pictures, want %d", found["svg"], len(sheet.Fitted(p, nil, Wide, High)))
	}
	rows := len(tables)
	for _, tab := range tables {
		rows += len(tab.Rows)
	}
	if found["tr"] != rows {
		t.Errorf("%d rows, want %d", found["tr"], rows)
	}
}

// Pictures of a piece larger than the screen fit the page, and their lines and words are hardly smaller than on paper.
func TestPicturesFitTheScreen(t *testing.T) {
	size := regexp.MustCompile(`<svg width="([0-9.]+)mm" height="([0-9.]+)mm" viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)
	found := size.FindAllStringSubmatch(string(whole(t)), -1)
	if len(found) == 0 {
		t.Fatal("no picture has a size")
	}
	for _, m := range found {
		var n [4]float64
		for i := range n {
			n[i], _ = strconv.ParseFloat(m[i+1], 64)
		}
		if n[0] > Wide+20 || n[1] > High+20 {
			t.Errorf("a picture is %.1f × %.1f mm", n[0], n[1])
		}
		if shown := n[1] / n[3]; shown < 0.45 || math.Abs(n[0]/n[2]-shown) > 0.01 {
			t.Errorf("a picture of %.1f × %.1f mm is shown as %.1f × %.1f", n[2], n[3], n[0], n[1])
		}
	}
}

// Sentences are broken to the width of the page, lines of a cell kept; figures stand in one line.
func TestSentencesAreBroken(t *testing.T) {
	long := strings.Repeat("wood ", 20)
	tab := table.Table{Title: "T", Columns: []table.Column{{Head: "How"}, {Head: "Length", Align: table.Right}},
		Rows: [][]table.Cell{{{Text: "Square:\n1 Top."}, {Text: "449.0"}}, {{Text: long}, {Text: "1"}}, {{Text: "Top"}, {Text: "2"}}}}
	var b bytes.Buffer
	if err := Write(&b, Content{Title: "T", Parts: []Part{{Tables: []table.Table{tab}}}}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"<td class=\"t\">Square:\n1 Top.</td><td class=\"r\">449.0</td>", "<td class=\"t\">" + long + "</td>", "<td>Top</td>"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("%q is missing in\n%s", want, b.String())
		}
	}
}

func TestTextsAreEscaped(t *testing.T) {
	var b bytes.Buffer
	evil := `<b onload="x">&`
	if err := Write(&b, Content{Title: evil, Parts: []Part{{Tables: []table.Table{{Title: evil, Columns: []table.Column{{Head: evil}}, Rows: [][]table.Cell{{{Text: evil}}}, Notes: []string{evil}}}}}}); err != nil {
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
