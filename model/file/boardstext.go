package file

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"splaywright/model/measure"
	"splaywright/model/stock"
)

// What a list of boards says in one field of a board's outline and of its places that are not to be used.
const (
	outlineLike = "corners as x, y with a semicolon between, in order round the board, such as 0, 0; 1200, 0; 1200, 180; 0, 200"
	avoidLike   = "what, its diameter or its length x width, and where, with a semicolon between, such as knot 30 at 700, 40; split 150 x 20 at 0, 60 from right near"
)

// outlineOf reads the corners of a board that is no rectangle.
func outlineOf(text string, bare measure.Unit) ([]stock.Point, error) {
	var out []stock.Point
	all := strings.Split(text, ";")
	if len(all) > mostPlaces {
		return nil, fmt.Errorf("more than %d corners are not taken", mostPlaces)
	}
	for _, corner := range all {
		p, err := pointOf(corner, bare)
		if err != nil {
			return nil, fmt.Errorf("%w; expected are %s", err, outlineLike)
		}
		out = append(out, p)
	}
	return out, nil
}

func pointOf(text string, bare measure.Unit) (p stock.Point, err error) {
	x, y, ok := strings.Cut(text, ",")
	if !ok {
		return p, fmt.Errorf("%q is no place", strings.TrimSpace(text))
	}
	if p.X, err = mmOf(x, bare); err == nil {
		p.Y, err = mmOf(y, bare)
	}
	return p, err
}

func mmOf(text string, bare measure.Unit) (float64, error) {
	l, err := measure.ParseLength(strings.TrimSpace(text), bare)
	return l.MM(), err
}

// avoidOf reads the places of a board that are not to be used.
func avoidOf(text string, bare measure.Unit) ([]stock.Avoid, error) {
	var out []stock.Avoid
	all := strings.Split(text, ";")
	if len(all) > mostPlaces {
		return nil, fmt.Errorf("more than %d places to avoid are not taken", mostPlaces)
	}
	for _, place := range all {
		a, err := placeOf(strings.TrimSpace(place), bare)
		if err != nil {
			return nil, fmt.Errorf("%w; expected is %s", err, avoidLike)
		}
		out = append(out, a)
	}
	return out, nil
}

func placeOf(text string, bare measure.Unit) (a stock.Avoid, err error) {
	what, where, ok := cutLast(text, " at ")
	if !ok {
		return a, fmt.Errorf("%q does not say where", text)
	}
	where, from, told := cutLast(where, " from ")
	if told {
		i := slices.Index(stock.CornerNames(), strings.TrimSpace(from))
		if i < 0 {
			return a, fmt.Errorf("%q is no corner of a board; %+s are", strings.TrimSpace(from), strings.Join(stock.CornerNames(), ", "))
		}
		a.From = stock.Corner(i)
	}
	p, err := pointOf(where, bare)
	if err != nil {
		return a, err
	}
	a.X, a.Y = p.X, p.Y
	i := strings.IndexAny(what, "0123456789")
	if i < 0 {
		return a, fmt.Errorf("%q has no size", strings.TrimSpace(what))
	}
	a.What = clip(strings.TrimSpace(what[:i]))
	return a, sizeOf(&a, what[i:], bare)
}

// sizeOf reads one size as a diameter, two as a length and a width.
func sizeOf(a *stock.Avoid, text string, bare measure.Unit) (err error) {
	long, wide, two := strings.Cut(strings.ReplaceAll(text, "×", "x"), "x")
	if !two {
		a.Diameter, err = mmOf(long, bare)
		return err
	}
	if a.Length, err = mmOf(long, bare); err == nil {
		a.Width, err = mmOf(wide, bare)
	}
	if err == nil && (a.Length == 0 || a.Width == 0) {
		err = errors.New("a length or a width is 0")
	}
	return err
}

// cutLast cuts around the last of several places where sep stands.
func cutLast(text, sep string) (before, after string, found bool) {
	i := strings.LastIndex(text, sep)
	if i < 0 {
		return text, "", false
	}
	return text[:i], text[i+len(sep):], true
}
