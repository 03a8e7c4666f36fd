package panel

import (
	"fmt"

	"splaywright/app/field"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/stock"
)

// The lists of boards that a design keeps.
const (
	OnHand = "boards-on-hand"
	ToBuy  = "boards-to-buy"
)

// Boards are those of a list of the design.
func Boards(d *form.Design, list string) []stock.Board {
	if list == ToBuy {
		return d.ToBuy
	}
	return d.OnHand
}

// boardOf is one board of a list, an empty one where there is none.
func boardOf(list string, board int) func(d *form.Design) stock.Board {
	return func(d *form.Design) stock.Board {
		if all := Boards(d, list); board < len(all) {
			return all[board]
		}
		return stock.Board{}
	}
}

// BoardGroups gives the fields of one board of a list, of its places that are not to be used and of the corners of its
// outline.
func BoardGroups(d *form.Design, timbers []string, list string, board int) []Group {
	if board < 0 || board >= len(Boards(d, list)) {
		return nil
	}
	path, at := fmt.Sprintf("%s.%d", list, board), boardOf(list, board)
	size := func(key, label string, get func(stock.Board) float64) field.Spec {
		return length(path+"."+key, label, func(d *form.Design) measure.Length { return measure.Length(get(at(d))) })
	}
	warp := func(key, label string, get func(stock.Board) float64) field.Spec {
		return lengthIfAny(path+"."+key, label, "none", func(d *form.Design) measure.Length { return measure.Length(get(at(d))) })
	}
	out := []Group{{Title: at(d).Name, Remove: path, Fields: []field.Spec{
		words(path+".name", "Name", func(d *form.Design) string { return at(d).Name }),
		size("length", "Length", func(b stock.Board) float64 { return b.Length }),
		size("width", "Width", func(b stock.Board) float64 { return b.Width }),
		size("thickness", "Thickness", func(b stock.Board) float64 { return b.Thickness }),
		warp("bow", "Bow", func(b stock.Board) float64 { return b.Bow }),
		warp("cup", "Cup", func(b stock.Board) float64 { return b.Cup }),
		warp("twist", "Twist", func(b stock.Board) float64 { return b.Twist }),
		words(path+".timber", "Timber", func(d *form.Design) string { return at(d).Timber }, timbers...),
		{Path: path + ".count", Label: "Alike", Turns: true, Value: func(d *form.Design) any { return alike(list, at(d)) }},
		{Path: path + ".price", Label: "Price of each", Number: true, Value: func(d *form.Design) any { return money(at(d).Price) }},
		choice(path+".grain", "Grain", func(d *form.Design) string { return at(d).Grain }, stock.Grains()...),
		choice(path+".sawn", "Sawn", func(d *form.Design) string { return at(d).Sawn }, stock.Saws()...),
		words(path+".face", "Better face", func(d *form.Design) string { return at(d).Face }),
		{Path: path + ".note", Label: "Notes", Long: true, Value: func(d *form.Design) any { return at(d).Note }},
	}}}
	for i := range at(d).Avoid {
		out = append(out, placeGroup(d, list, board, i))
	}
	if g, ok := outlineGroup(d, list, board); ok {
		out = append(out, g)
	}
	return out
}

// alike says how many boards there are of a kind. A yard that is not said to have so many has as many as are needed.
func alike(list string, b stock.Board) any {
	if list == ToBuy && b.Count == 0 {
		return "as many as are needed"
	}
	return b.Number()
}

// money says a price as it is.
func money(price float64) any {
	if price == 0 {
		return nil
	}
	return fmt.Sprintf("%.2f", price)
}

// placeGroup is one place that is not to be used.
func placeGroup(d *form.Design, list string, board, i int) Group {
	path, on := fmt.Sprintf("%s.%d.avoid.%d", list, board, i), boardOf(list, board)
	at := func(d *form.Design) stock.Avoid {
		if all := on(d).Avoid; i < len(all) {
			return all[i]
		}
		return stock.Avoid{}
	}
	size := func(key, label string, get func(stock.Avoid) float64) field.Spec {
		return length(path+"."+key, label, func(d *form.Design) measure.Length { return measure.Length(get(at(d))) })
	}
	now := at(d)
	title := fmt.Sprintf("Not to be used %d", i+1)
	if now.What != "" {
		title = fmt.Sprintf("Not to be used %d: %s", i+1, now.What)
	}
	g := Group{Title: title, Remove: path, Fields: []field.Spec{
		words(path+".what", "What", func(d *form.Design) string { return at(d).What }, "knot", "nail hole", "split", "old joint", "rot", "strip to rip off"),
		choice(path+".from", "Measured from", func(d *form.Design) string { return at(d).From.String() }, stock.CornerNames()...),
		size("x", "From that end", func(a stock.Avoid) float64 { return a.X }),
		size("y", "From that edge", func(a stock.Avoid) float64 { return a.Y }),
	}}
	if now.Diameter > 0 {
		g.Fields = append(g.Fields, size("diameter", "Diameter", func(a stock.Avoid) float64 { return a.Diameter }))
	} else {
		g.Fields = append(g.Fields, size("length", "Length", func(a stock.Avoid) float64 { return a.Length }),
			size("width", "Width", func(a stock.Avoid) float64 { return a.Width }))
	}
	return g
}

// outlineGroup is the corners of a board that is no rectangle.
func outlineGroup(d *form.Design, list string, board int) (Group, bool) {
	on := boardOf(list, board)
	path := fmt.Sprintf("%s.%d.outline", list, board)
	g := Group{Title: "Outline", Remove: path}
	for i := range on(d).Outline {
		at := func(d *form.Design) stock.Point {
			if all := on(d).Outline; i < len(all) {
				return all[i]
			}
			return stock.Point{}
		}
		g.Fields = append(g.Fields,
			length(fmt.Sprintf("%s.%d.x", path, i), fmt.Sprintf("Corner %d, from left", i+1), func(d *form.Design) measure.Length { return measure.Length(at(d).X) }),
			length(fmt.Sprintf("%s.%d.y", path, i), fmt.Sprintf("Corner %d, from near", i+1), func(d *form.Design) measure.Length { return measure.Length(at(d).Y) }))
	}
	return g, len(g.Fields) > 0
}
