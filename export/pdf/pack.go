package pdf

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
)

// The library presses what is drawn for speed. Pressed as far as it goes a set of papers is a fifth smaller.

var (
	startOfTable = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\s*$`)
	headOfTable  = regexp.MustCompile(`^xref\n0 (\d+)\n`)
	pressed      = regexp.MustCompile(`^\d+ 0 obj\n<</Filter /FlateDecode /Length (\d+)>>\nstream\n`)
)

const entrySize = 20 // bytes of an entry of the table of objects, by ISO 32000-1, 7.5.4

// packed is the same document with the contents of its pages pressed harder. A document whose table of objects is
// not as expected is an error, and not a document with another one.
func packed(doc []byte) ([]byte, error) {
	at := startOfTable.FindSubmatchIndex(doc)
	if at == nil {
		return nil, fmt.Errorf("the document ends without its table of objects")
	}
	table, err := strconv.Atoi(string(doc[at[2]:at[3]]))
	if err != nil || table >= len(doc) {
		return nil, fmt.Errorf("the table of objects lies outside the document")
	}
	head := headOfTable.FindSubmatch(doc[table:])
	if head == nil {
		return nil, fmt.Errorf("there is no table of objects where the document says")
	}
	n, _ := strconv.Atoi(string(head[1]))
	entries := table + len(head[0])
	if entries+n*entrySize > len(doc) {
		return nil, fmt.Errorf("the table of objects is cut off")
	}
	offsets, order := make([]int, n), make([]int, 0, n)
	for i := 1; i < n; i++ {
		entry := doc[entries+i*entrySize:]
		if offsets[i], err = strconv.Atoi(string(entry[:10])); err != nil || offsets[i] >= table {
			return nil, fmt.Errorf("object %d lies outside the document", i)
		}
		order = append(order, i)
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Compare(offsets[i], offsets[j]) })
	var out bytes.Buffer
	if len(order) > 0 {
		out.Write(doc[:offsets[order[0]]])
	}
	moved := make([]int, n)
	for k, i := range order {
		end := table
		if k+1 < len(order) {
			end = offsets[order[k+1]]
		}
		moved[i] = out.Len()
		if err := pressHarder(&out, doc[offsets[i]:end]); err != nil {
			return nil, fmt.Errorf("object %d: %w", i, err)
		}
	}
	newTable := out.Len()
	out.Write(doc[table : entries+entrySize])
	for i := 1; i < n; i++ {
		fmt.Fprintf(&out, "%010d%s", moved[i], doc[entries+i*entrySize+10:entries+(i+1)*entrySize])
	}
	out.Write(doc[entries+n*entrySize : at[2]])
	fmt.Fprintf(&out, "%d%s", newTable, doc[at[3]:])
	return out.Bytes(), nil
}

// pressHarder writes one object, with its contents pressed harder where they are those of a page.
func pressHarder(out *bytes.Buffer, object []byte) error {
	at := pressed.FindSubmatchIndex(object)
	if at == nil {
		out.Write(object)
		return nil
	}
	size, err := strconv.Atoi(string(object[at[2]:at[3]]))
	if err != nil || at[1]+size > len(object) {
		return fmt.Errorf("its contents are cut off")
	}
	r, err := zlib.NewReader(bytes.NewReader(object[at[1] : at[1]+size]))
	if err != nil {
		return err
	}
	var small bytes.Buffer
	w, err := zlib.NewWriterLevel(&small, zlib.BestCompression)
	if err != nil {
		return err
	}
	if _, err := io.Copy(w, r); err != nil {
		return err
	}
	if err := w.Close(); err != nil {
		return err
	}
	out.Write(object[:at[2]])
	fmt.Fprintf(out, "%d%s", small.Len(), object[at[3]:at[1]])
	out.Write(small.Bytes())
	out.Write(object[at[1]+size:])
	return nil
}
