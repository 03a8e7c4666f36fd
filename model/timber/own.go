package timber

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"unicode/utf8"

	"splaywright/model/measure"
	"splaywright/model/word"
)

// Own is a timber as a person knows it: a species that the table lacks or has other figures for, or the price of one.
type Own struct {
	Species                // SG is 0 where only a price is told
	Movement     *Movement // nil = not told
	PerM3        float64   // price of a cubic metre of rough wood; 0 = not told
	PerBoardFoot float64   // instead of that
	From         string    // the file it was read from; "" = the design
}

// Book is a person's own timbers; what it lacks is looked up in the built-in table. An empty one is of use.
type Book []Own

// own gives the person's own timber that goes by a name. Where the built-in table knows the name too, any of its names
// stands for the same timber.
func (b Book) own(name string) (Own, bool) {
	if len(b) == 0 {
		return Own{}, false
	}
	want := tableKey(name)
	for _, o := range b {
		if tableKey(o.Name) == want || slices.ContainsFunc(o.Aliases, func(a string) bool { return key(a) == key(name) }) {
			return o, true
		}
	}
	return Own{}, false
}

// tableKey is the key of the name that the built-in table has for a timber, or of the name itself.
func tableKey(name string) string {
	if s, ok := Find(name); ok {
		name = s.Name
	}
	return key(name)
}

// Same tells whether two names mean one timber, however they are written.
func (b Book) Same(one, other string) bool { return b.ownKey(one) == b.ownKey(other) }

func (b Book) ownKey(name string) string {
	if o, ok := b.own(name); ok {
		name = o.Name
	}
	return tableKey(name)
}

// Find gives the species that goes by a name, as Find does, the person's own first.
func (b Book) Find(name string) (Species, bool) {
	if o, ok := b.own(name); ok && o.SG > 0 {
		return o.Species, true
	}
	return Find(name)
}

// FindMovement gives the movement of a timber; of an own one only what was told of it.
func (b Book) FindMovement(name string) (Movement, bool) {
	o, ok := b.own(name)
	switch {
	case ok && o.Movement != nil:
		return *o.Movement, true
	case ok && o.SG > 0:
		return Movement{}, false
	}
	return FindMovement(name)
}

// Price is what a timber's rough wood costs, by the cubic metre or by the board foot; both 0 where it was not told.
func (b Book) Price(name string) (perM3, perBoardFoot float64) {
	o, _ := b.own(name)
	return o.PerM3, o.PerBoardFoot
}

// Source tells where the figures of a timber come from, and the file of the person's own that it stands in, "" where it
// stands in the design or in the built-in table; ok is false where no timber goes by the name.
func (b Book) Source(name string) (source, file string, own, ok bool) {
	if o, is := b.own(name); is && o.SG > 0 {
		return o.Source, o.From, true, true
	}
	s, ok := Find(name)
	return s.Source, "", false, ok
}

// Names lists the built-in timbers and the person's own, in alphabetical order.
func (b Book) Names() []string {
	out := Names()
	for _, o := range b {
		if !slices.Contains(out, o.Name) {
			out = append(out, o.Name)
		}
	}
	slices.Sort(out)
	return out
}

// Check refuses a timber that cannot be: one without a source for its figures, or with neither figures nor a price.
func (o Own) Check() error {
	_, known := Find(o.Name)
	switch {
	case key(o.Name) == "":
		return errors.New("it has no name")
	case o.PerM3 > 0 && o.PerBoardFoot > 0:
		return errors.New("it has two prices; keep that of a cubic metre or that of a board foot")
	case o.SG == 0 && !known:
		return fmt.Errorf("%q is not in the built-in table, so its figures are needed: kind, specific gravity, the two moduli and their source", o.Name)
	case o.SG == 0 && o.PerM3 == 0 && o.PerBoardFoot == 0:
		return errors.New("it has neither figures nor a price")
	case o.SG > 0 && o.Source == "":
		return errors.New("it has no source; say where the figures come from, if only \"my own boards, weighed\"")
	case o.SG >= 1.5:
		return fmt.Errorf("specific gravity is %v; no wood is heavier than 1.5", o.SG)
	case o.SG > 0 && o.Wood != Hardwood && o.Wood != Softwood:
		return fmt.Errorf("kind is %q, expected %q or %q", o.Wood, Hardwood, Softwood)
	case o.SG > 0 && !(o.MOE > 0 && o.MOR > 0):
		return errors.New("it needs both moduli, of elasticity and of rupture")
	}
	return nil
}

// Figured completes a timber whose figures are as the tables print them: hardness in pounds-force, elasticity in
// million and rupture in single pounds-force per square inch, change of size as a part of it per percent of moisture.
func (o Own) Figured(hardness, elasticity, rupture, changeRadial, changeTangential float64) Own {
	o.Janka, o.MOE, o.MOR = hardness*measure.NewtonsPerPoundForce, elasticity*1e6*measure.MegapascalsPerPSI, rupture*measure.MegapascalsPerPSI
	o.Density12 = density12(o.SG, o.GreenSG)
	if changeRadial > 0 && changeTangential > 0 {
		o.Movement = &Movement{Name: o.Name, ChangeRadial: changeRadial, ChangeTangential: changeTangential,
			Radial: shrinkage(changeRadial), Tangential: shrinkage(changeTangential),
			ChangeRadialSure: "read", ChangeTangentialSure: "read", Source: o.Source}
	}
	return o
}

// Printed gives hardness and the two moduli as the tables print them, in the units that Figured takes.
func (o Own) Printed() (hardness, elasticity, rupture float64) {
	return o.Janka / measure.NewtonsPerPoundForce, o.MOE / (1e6 * measure.MegapascalsPerPSI), o.MOR / measure.MegapascalsPerPSI
}

// shrinkage is the percentage from green to oven-dry that a coefficient of change stands for: FPL-GTR-190 has its
// coefficients (Table 13-5) from its shrinkages (Table 4-3) by C = 1/(3000/S − 20), which a test of the tables shows.
func shrinkage(change float64) float64 { return 3000 / (1/change + 20) }

// ownColumns may follow those of the species table in a person's own.
var ownColumns = []string{"change_radial", "change_tangential", "price_per_m3", "price_per_board_foot"}

// LoadOwn reads a person's own timbers: the columns of the built-in species table in their order, and after them any
// of change_radial, change_tangential, price_per_m3 and price_per_board_foot. A row that is not understood is
// refused with its line, and none is taken then.
func LoadOwn(text []byte, name string) (Book, error) {
	if line, why := notPlain(text); why != "" {
		return nil, &word.At{Where: fmt.Sprintf("%s:%d", name, line), Err: errors.New(why)}
	}
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	r.Comment = '#'
	head, err := r.Read()
	if err != nil {
		return nil, &word.At{Where: name, Err: fmt.Errorf("a line of heads is expected first (%s)", word.OfFields(err))}
	}
	n := len(columns)
	if len(head) < n || !slices.Equal(head[:n], columns) {
		return nil, &word.At{Where: name + ":1", Err: fmt.Errorf("the columns are %q, expected %q and after them any of %q", head, columns, ownColumns)}
	}
	for _, h := range head[n:] {
		if !slices.Contains(ownColumns, h) {
			return nil, &word.At{Where: name + ":1", Err: fmt.Errorf("there is no column %q; after %q may follow any of %q", h, columns[n-1], ownColumns)}
		}
	}
	var out Book
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, &word.At{Where: name + ":" + lineOf(err), Err: fmt.Errorf("this line is no list of fields: %s", word.OfFields(err))}
		}
		o, err := ownRow(row, head)
		if err == nil {
			if _, twice := out.own(o.Name); twice {
				err = fmt.Errorf("%q stands here twice", o.Name)
			}
		}
		if err != nil {
			line, _ := r.FieldPos(0)
			return nil, &word.At{Where: fmt.Sprintf("%s:%d", name, line), Err: err}
		}
		o.From = name
		out = append(out, o)
	}
	if len(out) == 0 {
		return nil, &word.At{Where: name, Err: errors.New("no timber stands below the heads")}
	}
	return out, nil
}

// lineOf is the line that the reader of comma-separated values stumbled over.
func lineOf(err error) string {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return strconv.Itoa(p.Line)
	}
	return "1"
}

// ownRow reads a row: figures with their source as in the built-in table, or a name and a price.
func ownRow(row, head []string) (Own, error) {
	var o Own
	n := len(columns)
	more := map[string]float64{}
	for i, h := range head[n:] {
		if row[n+i] == "" {
			continue
		}
		x, err := strconv.ParseFloat(row[n+i], 64)
		if err != nil || !(x > 0) || x > 1e9 {
			return o, fmt.Errorf("%+s is %q, expected a positive number", h, row[n+i])
		}
		more[h] = x
	}
	if row[3] == "" { // no figures
		o.Name = row[0]
	} else {
		s, err := loadRow(row[:n])
		if err != nil {
			return o, err
		}
		o.Species = s
		cr, ct := more["change_radial"], more["change_tangential"]
		if (cr > 0) != (ct > 0) {
			return o, errors.New("change_radial and change_tangential go together")
		}
		hardness, elasticity, rupture := o.Printed()
		o = o.Figured(hardness, elasticity, rupture, cr, ct)
	}
	o.PerM3, o.PerBoardFoot = more["price_per_m3"], more["price_per_board_foot"]
	return o, o.Check()
}

// notPlain says in which line a text holds what is no plain text, and why.
func notPlain(text []byte) (line int, why string) {
	line = 1
	for len(text) > 0 {
		c, size := utf8.DecodeRune(text)
		if why = word.Unprinted(c, size); why != "" {
			return line, why
		}
		if c == '\n' {
			line++
		}
		text = text[size:]
	}
	return 0, ""
}
