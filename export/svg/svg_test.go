package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"splaywright/render/draw"
	"splaywright/render/draw/drawtest"
)

// element is one start tag of a file that was read back.
type element struct {
	name string
	attr map[string]string
	text string
}

func read(t *testing.T, data []byte) []element {
	t.Helper()
	var out []element
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			e := element{name: tok.Name.Local, attr: map[string]string{}}
			for _, a := range tok.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			out = append(out, e)
		case xml.CharData:
			if len(out) > 0 {
				out[len(out)-1].text += strings.TrimSpace(string(tok))
			}
		}
	}
}

func write(t *testing.T, p draw.Page) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestSizesAreTrueMillimetres(t *testing.T) {
	els := read(t, write(t, drawtest.Page()))
	root := els[0].attr
	if root["width"] != "297mm" || root["height"] != "210mm" || root["viewBox"] != "0 0 297 210" {
		t.Errorf("the drawing says it is %s by %s, view box %s", root["width"], root["height"], root["viewBox"])
	}
	bar := "M40,180L140,180L140,178L40,178Z" // 100 mm long and 30 mm from the lower edge: y runs down here
	for _, e := range els {
		if e.attr["d"] == bar {
			return
		}
	}
	t.Errorf("no bar %s in the file", bar)
}

func TestTextsStayTexts(t *testing.T) {
	want := map[string]bool{"→ ∠ ⅛ 2′ 3″ × ≤ <a&b>": false, "10 3/8″ = 263.5 mm ±½°": false, "Sample <1> & more": false}
	for _, e := range read(t, write(t, drawtest.Page())) {
		if _, ok := want[e.text]; ok {
			want[e.text] = true
		}
		if e.text == "→ ∠ ⅛ 2′ 3″ × ≤ <a&b>" && (e.attr["transform"] != "rotate(-90 230 110)" || e.attr["data-ref"] != "size.height" || e.attr["text-anchor"] != "middle") {
			t.Errorf("the upright text reads %v", e.attr)
		}
	}
	for text, found := range want {
		if !found {
			t.Errorf("%q is not in the file", text)
		}
	}
}

func TestForbiddenCharactersDoNotBreakTheFile(t *testing.T) {
	p := draw.Page{Title: "a\x00b\xff", Width: 10, Height: 10, Items: []draw.Item{draw.Text{Text: "\x01]]>\x1b\uFFFE", Size: 1, Ref: `"<`}}}
	read(t, write(t, p))
}

func TestSameBytesTwice(t *testing.T) {
	if a, b := write(t, drawtest.Page()), write(t, drawtest.Page()); !bytes.Equal(a, b) {
		t.Error("two writings of one page differ")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestAWritersErrorIsReported(t *testing.T) {
	if err := Write(full{}, drawtest.Busy(2000)); err == nil {
		t.Error("a full disk went unnoticed")
	}
}

func TestNumbers(t *testing.T) {
	for v, want := range map[float64]string{0: "0", -0.00001: "0", 1.5: "1.5", 100: "100", 25.4: "25.4", 1.23456: "1.2346", -3: "-3"} {
		if got := num(v); got != want {
			t.Errorf("%v is written %q, want %q", v, got, want)
		}
	}
}

// Japanese letters are looked for in Japanese fonts before a viewer takes any that has them.
func TestJapaneseHasItsFonts(t *testing.T) {
	page := draw.Page{Width: 100, Height: 50, Items: []draw.Item{draw.Text{Size: 3, Text: "天板 1"}}}
	families := ""
	for _, e := range read(t, write(t, page)) {
		if f := e.attr["font-family"]; f != "" {
			families = f
		}
	}
	list := strings.Split(families, ", ")
	for i, want := range []string{"'Noto Sans'", "'BIZ UDPGothic'"} {
		if i >= len(list) || list[i] != want {
			t.Errorf("font %d of %s is not %s, in which the page was laid out", i, families, want)
		}
	}
	if list[len(list)-1] != "sans-serif" {
		t.Errorf("%s ends without a generic family", families)
	}
}
