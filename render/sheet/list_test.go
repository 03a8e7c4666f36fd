package sheet

import "testing"

// Titles of the list of sheets are never cut short, and none is torn apart between two columns.
func TestTheListOfSheetsIsWhole(t *testing.T) {
	for _, sheet := range []string{"A4", "A3", "A2", "Letter", "Tabloid"} {
		b := set{o: Options{Sheet: sheet}}.sheet(entry{}, true)
		var sheets []listed
		for i, title := range []string{"General arrangement", "Top", "Sizes, cut list, long and short points, runs", "Marking, gauge and bevel, seats of butted and housed boards", "Steps", "Saw settings", "Boring, shapes, eased edges", "Will it hold, findings", "Cautions"} {
			sheets = append(sheets, listed{i + 1, i + 1, title})
		}
		l := b.layList(sheets)
		said := ""
		for i, line := range l.lines {
			if line.number == "" && l.places[i][0] != l.places[i-1][0] {
				t.Errorf("%s: %q goes on in another column", sheet, line.title)
			}
			said += line.title + " "
		}
		want := ""
		for _, s := range sheets {
			want += s.title + " "
		}
		if said != want {
			t.Errorf("%s: the list says %q", sheet, said)
		}
		if right := l.at.X + float64(l.places[len(l.places)-1][0]+1)*l.column; right > b.frame().Max.X-block+1 {
			t.Errorf("%s: the list reaches %.1f, into the title block", sheet, right)
		}
	}
}
