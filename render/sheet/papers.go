package sheet

import (
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/draw"
	"splaywright/render/table"
)

// Papers is the whole set: the piece, each kind of part, sections and details, the tables, and the cautions. The same piece
// gives the same pages.
func Papers(p *form.Piece, o Options) []draw.Page {
	o = o.fill(p)
	o.Dark = false
	s := set{o: o, piece: p.Title, form: p.Form, note: sizesNote(o)}
	sheets := []*blank{general(p, s)}
	if b := belowSheet(p, s); b != nil {
		sheets = append(sheets, b)
	}
	for _, group := range kinds(p) {
		sheets = append(sheets, partSheet(p, s, group))
	}
	sheets = append(sheets, sectionSheets(p, s)...)
	if b := togetherSheet(p, s); b != nil {
		sheets = append(sheets, b)
	}
	if b := lookSheet(p, s); b != nil {
		sheets = append(sheets, b)
	}
	sheets = append(sheets, tableSheets(s, table.All(p, o.Style))...)
	sheets = append(sheets, cautionSheet(s))
	return number(sheets)
}

// sizesNote tells in which unit sizes are and how they are rounded. The tolerance is common practice
// for furniture joinery made by one person, from memory.
func sizesNote(o Options) string {
	if o.Style.Both && o.Style.Unit == measure.Imperial {
		return "inches (mm); joints ±1/128, elsewhere ±1/32"
	}
	if o.Style.Both {
		return "mm (inches); joints ±0.2, elsewhere ±1"
	}
	if o.Style.Unit == measure.Imperial {
		return "inches; joints ±1/128, elsewhere ±1/32"
	}
	return "millimetres; joints ±0.2, elsewhere ±1"
}
