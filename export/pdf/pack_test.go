package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// contents are the page contents of a document, unpressed, as its table of objects finds them.
func contents(t *testing.T, doc []byte) []string {
	t.Helper()
	at := startOfTable.FindSubmatch(doc)
	if at == nil {
		t.Fatal("no table")
	}
	table, _ := strconv.Atoi(string(at[1]))
	head := headOfTable.FindSubmatch(doc[table:])
	if head == nil {
		t.Fatal("the table is elsewhere")
	}
	n, _ := strconv.Atoi(string(head[1]))
	var out []string
	for i := 1; i < n; i++ {
		entry := doc[table+len(head[0])+i*entrySize:]
		offset, _ := strconv.Atoi(string(entry[:10]))
		object := doc[offset:]
		if !bytes.HasPrefix(object, fmt.Appendf(nil, "%d 0 obj\n", i)) {
			t.Fatalf("object %d is not where the table says", i)
		}
		if m := pressed.FindSubmatchIndex(object); m != nil {
			size, _ := strconv.Atoi(string(object[m[2]:m[3]]))
			r, err := zlib.NewReader(bytes.NewReader(object[m[1] : m[1]+size]))
			if err != nil {
				t.Fatal(err)
			}
			b, err := io.ReadAll(r)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.HasPrefix(object[m[1]+size:], []byte("\nendstream")) {
				t.Fatalf("object %d is longer than it says", i)
			}
			out = append(out, string(b))
		}
	}
	return out
}

// document is a small one, made as the library makes them.
func document(pages ...string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.3\n")
	offsets := []int{}
	for i, p := range pages {
		var z bytes.Buffer
		w, _ := zlib.NewWriterLevel(&z, zlib.BestSpeed)
		io.WriteString(w, p)
		w.Close()
		offsets = append(offsets, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n%s\nendstream\nendobj\n", i+1, z.Len(), z.Bytes())
	}
	table := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(pages)+1)
	for _, o := range offsets {
		fmt.Fprintf(&b, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&b, "trailer\n<<\n/Size %d\n>>\nstartxref\n%d\n%%%%EOF\n", len(pages)+1, table)
	return b.Bytes()
}

func TestPressedHarderSaysTheSame(t *testing.T) {
	page := strings.Repeat("12.34 56.78 m 90.12 34.56 l S\n 1.25 7.75 l 12.30 56.70 m\n", 300)
	doc := document(page, "0 0 m", page+page)
	small, err := packed(doc)
	if err != nil {
		t.Fatal(err)
	}
	if len(small) >= len(doc) {
		t.Errorf("%d bytes became %d", len(doc), len(small))
	}
	was, now := contents(t, doc), contents(t, small)
	if len(was) != 3 || strings.Join(was, "|") != strings.Join(now, "|") {
		t.Errorf("%d pages became %d, or others", len(was), len(now))
	}
}

func TestWhatIsNoDocumentIsRefused(t *testing.T) {
	doc := document("0 0 m")
	for name, bad := range map[string][]byte{
		"nothing":       nil,
		"cut off":       doc[:len(doc)-20],
		"table astray":  regexp.MustCompile(`startxref\n\d+`).ReplaceAll(doc, []byte("startxref\n3")),
		"table outside": regexp.MustCompile(`startxref\n\d+`).ReplaceAll(doc, []byte("startxref\n99999")),
		"object astray": bytes.Replace(doc, []byte("0000000009 00000 n"), []byte("0000099999 00000 n"), 1),
		"spoilt":        bytes.Replace(doc, []byte("stream\nx"), []byte("stream\ny"), 1),
	} {
		if _, err := packed(bad); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}
