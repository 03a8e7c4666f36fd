package table

import (
	"fmt"
	"slices"
	"strings"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/timber"
)

// soldNotes says what to ask for where wood is bought surfaced instead of rough: hardwood by the
// rough thickness that still holds the finished one, softwood by its nominal size.
func soldNotes(s *sheet, p *form.Piece) {
	var hard, soft []string
	for _, g := range groups(p) {
		q := g[0]
		finished, _ := q.Lying()
		species, known := p.Design.Timbers.Find(q.Timber)
		switch {
		case !known:
		case species.Wood == timber.Hardwood:
			hard = appendNew(hard, s.hardwoodSold(finished.Thickness))
		default:
			soft = appendNew(soft, s.softwoodSold(finished.Thickness, finished.Width))
		}
	}
	if len(hard) > 0 {
		s.note(fmt.Sprintf("Bought surfaced on both sides (S2S), by finished thickness: %s.", strings.Join(hard, "; ")))
	}
	if len(soft) > 0 {
		s.note(fmt.Sprintf("Bought dressed and dry, by finished thickness × width: %s.", strings.Join(soft, "; ")))
	}
}

func appendNew(list []string, text string) []string {
	if slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}

func (s *sheet) hardwoodSold(thick measure.Length) string {
	size, ok := timber.Surfaced(timber.HardwoodThickness, thick)
	if !ok {
		return s.style.FormatUnit(thick) + " is thicker than any on the chart: rough"
	}
	return fmt.Sprintf("%s from %s, which is %s", s.style.FormatUnit(thick), size.Nominal, measured(size.Surfaced))
}

func (s *sheet) softwoodSold(thick, wide measure.Length) string {
	finished := s.style.FormatUnit(thick) + " × " + s.style.FormatUnit(wide)
	t, ok := timber.Surfaced(timber.SoftwoodThickness, thick)
	if !ok {
		return finished + " is thicker than any: rough"
	}
	w, ok := timber.Surfaced(timber.SoftwoodWidth, wide)
	if !ok {
		return fmt.Sprintf("%s from nominal %s, which is %s, glued up, for no width holds it", finished, t.Nominal, measured(t.Surfaced))
	}
	return fmt.Sprintf("%s from nominal %s × %s, which is %s × %s", finished, t.Nominal, w.Nominal, measured(t.Surfaced), measured(w.Surfaced))
}

// measured is a size of the chart as printed there, and in millimetres to a tenth.
func measured(l measure.Length) string {
	inches := measure.Style{Unit: measure.Imperial, Step: measure.Inch / 32}
	return fmt.Sprintf("%s (%.1f mm)", inches.FormatUnit(l), l.MM())
}
