package check

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// wayOut is a change that a finding proposes in its text.
type wayOut struct {
	words string
	edit  edit
}

// proposals are the ways in which findings propose a size, each with what it changes. The first
// group of the expression is the key or the number, the last the number.
var proposals = []struct {
	words *regexp.Regexp
	edit  func(f part.Finding, key string, v measure.Length) edit
}{
	{regexp.MustCompile(`a pin of ([\d.]+) mm or more`), func(_ part.Finding, _ string, v measure.Length) edit { return pin(v.MM()) }},
	{regexp.MustCompile(`a half pin of ([\d.]+) mm or more`), func(_ part.Finding, _ string, v measure.Length) edit { return halfPin(v.MM()) }},
	{regexp.MustCompile(`(\d+) tails of [\d.]+ mm would be nearer`), func(_ part.Finding, _ string, v measure.Length) edit { return tailCount(int(v)) }},
	{regexp.MustCompile(`a (screw) of ([\d.]+) mm or (?:less|more)`), changeScrew},
	{regexp.MustCompile(`a (counterbore) of ([\d.]+) mm or (?:less|more)`), changeScrew},
	{regexp.MustCompile(`a (diameter|length|width|rise) of ([\d.]+) mm or less`), changeFeature},
	{regexp.MustCompile(`\b(x|y) of (-?[\d.]+) mm`), changeFeature},
	{regexp.MustCompile(`set the stretcher ([\d.]+) mm below the top or more`), func(_ part.Finding, _ string, v measure.Length) edit {
		return stretcher(func(s *form.Stretcher) { s.BelowTop = v })
	}},
	{regexp.MustCompile(`below the top or more, or ([\d.]+) mm to one side`), func(_ part.Finding, _ string, v measure.Length) edit {
		return stretcher(func(s *form.Stretcher) { s.Across += v })
	}},
	{regexp.MustCompile(`move it ([\d.]+) mm towards the middle`), func(_ part.Finding, _ string, v measure.Length) edit {
		return stretcher(func(s *form.Stretcher) { s.Across -= v })
	}},
	{regexp.MustCompile(`move it ([\d.]+) mm inwards`), func(f part.Finding, _ string, v measure.Length) edit {
		return screwsAt(f, func(s *form.Screws) { s.FromEnd += v })
	}},
	{regexp.MustCompile(`the overhang in by ([\d.]+) mm`), func(_ part.Finding, _ string, v measure.Length) edit {
		return func(d *form.Design) { d.Corners.Overhang -= v }
	}},
}

func changeScrew(f part.Finding, key string, v measure.Length) edit {
	return screwsAt(f, func(s *form.Screws) {
		if key == "counterbore" {
			s.Counterbore = v
			return
		}
		s.Length = v
	})
}

func screwsAt(f part.Finding, change func(*form.Screws)) edit {
	if strings.HasPrefix(f.Sizes[0], "corners.") {
		return cornerScrews(change)
	}
	return railScrews(change)
}

func changeFeature(f part.Finding, key string, v measure.Length) edit {
	i, err := strconv.Atoi(strings.Split(f.Sizes[0], ".")[1])
	if err != nil {
		panic(err)
	}
	return func(d *form.Design) { setFeature(&d.Features[i], key, v.MM()) }
}

func waysOut(f part.Finding) (out []wayOut) {
	for _, p := range proposals {
		for _, m := range p.words.FindAllStringSubmatch(f.Text, -1) {
			v, err := strconv.ParseFloat(m[len(m)-1], 64)
			if err != nil {
				continue
			}
			out = append(out, wayOut{m[0], p.edit(f, m[1], measure.Length(v))})
		}
	}
	return out
}

// tryWaysOut does what a finding proposes and demands that it is gone.
func tryWaysOut(t *testing.T, d form.Design, f part.Finding) (tried int) {
	t.Helper()
	for _, w := range waysOut(f) {
		// "move it inwards" mends only what stands too near an end of the row.
		if strings.Contains(w.words, "inwards") && strings.Contains(f.Text, " face of ") {
			continue
		}
		tried++
		if left := withID(look(edited(d, w.edit)), f.ID); len(left) > 0 {
			t.Errorf("%s\ndone as told (%s), it is still found:%s", f.Text, w.words, describe(left))
		}
	}
	return tried
}
