package session

import (
	"fmt"
	"math"
	"strconv"

	"splaywright/model/file"
	"splaywright/model/measure"
	"splaywright/model/stock"
	"splaywright/model/timber"
)

// TakeBoards adds boards to a list of the design (boards-on-hand, boards-to-buy) as one step, said in the history as
// it is named here. When one of them cannot be taken, none is.
func (s *Session) TakeBoards(said, list string, boards ...stock.Board) error {
	return s.do(said, func(d *file.Document) error {
		for _, b := range boards {
			at := fmt.Sprintf("%s.%d", list, d.Len(list))
			if err := d.Append(list, s.boardFields(b)...); err != nil {
				return err
			}
			for _, p := range b.Outline {
				if err := d.Append(at+".outline", [2]string{"x", s.Length(p.X)}, [2]string{"y", s.Length(p.Y)}); err != nil {
					return err
				}
			}
			for _, a := range b.Avoid {
				if err := d.Append(at+".avoid", s.placeFields(a)...); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// TakePlace adds a place that is not to be used to a board, as one step.
func (s *Session) TakePlace(list string, board int, a stock.Avoid) error {
	return s.Append(fmt.Sprintf("%s.%d.avoid", list, board), s.placeFields(a)...)
}

// TakeOutline gives a board an outline, or another one, as one step.
func (s *Session) TakeOutline(list string, board int, corners []stock.Point) error {
	path := fmt.Sprintf("%s.%d.outline", list, board)
	return s.do("outline of "+Words(fmt.Sprintf("%s.%d", list, board)), func(d *file.Document) error {
		if d.Len(path) > 0 {
			d.Remove(path)
		}
		for _, p := range corners {
			if err := d.Append(path, [2]string{"x", s.Length(p.X)}, [2]string{"y", s.Length(p.Y)}); err != nil {
				return err
			}
		}
		return nil
	})
}

// MovePlace puts a place that is not to be used elsewhere or gives it another size, as one step. What has not changed
// keeps the text that was typed.
func (s *Session) MovePlace(list string, board, place int, from, to stock.Avoid) error {
	path := fmt.Sprintf("%s.%d.avoid.%d", list, board, place)
	var fields [][2]string
	for _, f := range []struct {
		key      string
		from, to float64
	}{{"x", from.X, to.X}, {"y", from.Y, to.Y}, {"length", from.Length, to.Length}, {"width", from.Width, to.Width}, {"diameter", from.Diameter, to.Diameter}} {
		if math.Abs(f.from-f.to) > 1e-9 {
			fields = append(fields, [2]string{path + "." + f.key, s.Length(f.to)})
		}
	}
	what := to.What
	if what == "" {
		what = "place"
	}
	return s.Change("move "+what+" on "+Words(fmt.Sprintf("%s.%d", list, board)), fields...)
}

// Length writes millimetres as the design's own numbers are meant, with the unit.
func (s *Session) Length(mm float64) string {
	if s.design.Units == measure.Imperial {
		return strconv.FormatFloat(math.Round(mm/25.4*1e6)/1e6, 'f', -1, 64) + " in"
	}
	return strconv.FormatFloat(math.Round(mm*1e6)/1e6, 'f', -1, 64) + " mm"
}

func (s *Session) boardFields(b stock.Board) [][2]string {
	var out [][2]string
	add := func(key, text string) {
		if text != "" {
			out = append(out, [2]string{key, text})
		}
	}
	if !b.Unnamed { // it goes by its place in the list it comes to
		add("name", b.Name)
	}
	add("timber", b.Timber)
	add("length", s.Length(b.Length))
	add("width", s.Length(b.Width))
	add("thickness", s.Length(b.Thickness))
	for _, v := range []struct {
		key string
		mm  float64
	}{{"bow", b.Bow}, {"cup", b.Cup}, {"twist", b.Twist}} {
		if v.mm > 0 {
			add(v.key, s.Length(v.mm))
		}
	}
	if b.Count > 1 {
		add("count", strconv.Itoa(b.Count))
	}
	if b.Price > 0 {
		add("price", strconv.FormatFloat(b.Price, 'f', -1, 64))
	}
	add("grain", b.Grain)
	add("sawn", b.Sawn)
	add("face", b.Face)
	add("note", b.Note)
	return out
}

func (s *Session) placeFields(a stock.Avoid) [][2]string {
	var out [][2]string
	if a.What != "" {
		out = append(out, [2]string{"what", a.What})
	}
	if a.From != stock.LeftNear {
		out = append(out, [2]string{"from", a.From.String()})
	}
	out = append(out, [2]string{"x", s.Length(a.X)}, [2]string{"y", s.Length(a.Y)})
	if a.Diameter > 0 {
		return append(out, [2]string{"diameter", s.Length(a.Diameter)})
	}
	return append(out, [2]string{"length", s.Length(a.Length)}, [2]string{"width", s.Length(a.Width)})
}

// TakeTimbers adds timbers of the person's own to the design as one step. When one of them cannot be taken, none is.
func (s *Session) TakeTimbers(said string, own timber.Book) error {
	return s.do(said, func(d *file.Document) error {
		for _, o := range own {
			if err := d.Append("timbers", timberFields(o)...); err != nil {
				return err
			}
		}
		return nil
	})
}

func timberFields(o timber.Own) [][2]string {
	out := [][2]string{{"name", o.Name}}
	number := func(key string, x float64) {
		if x > 0 {
			out = append(out, [2]string{key, strconv.FormatFloat(x, 'g', 10, 64)})
		}
	}
	if o.SG > 0 {
		out = append(out, [2]string{"kind", string(o.Wood)})
		number("specific-gravity", o.SG)
		if o.GreenSG {
			out = append(out, [2]string{"volume-at", "green"})
		}
		hardness, elasticity, rupture := o.Printed()
		number("side-hardness", hardness)
		number("modulus-of-elasticity", elasticity)
		number("modulus-of-rupture", rupture)
		if m := o.Movement; m != nil {
			number("change-radial", m.ChangeRadial)
			number("change-tangential", m.ChangeTangential)
		}
		out = append(out, [2]string{"source", o.Source})
	}
	number("price-per-m3", o.PerM3)
	number("price-per-board-foot", o.PerBoardFoot)
	return out
}
