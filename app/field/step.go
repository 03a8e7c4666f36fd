package field

import (
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/model/measure"
)

// Steps are how far the arrows of a field turn its number.
type Steps struct {
	MM, Inch measure.Length // of lengths typed in millimetres, and in inches
	Angle    measure.Angle
}

// UsualSteps are those that nobody has chosen others for.
var UsualSteps = Steps{MM: 1, Inch: measure.Inch / 16, Angle: measure.Degree / 2}

// Stepped turns the number of a field by so many steps, on the grid of the steps, and writes it as the
// text was written. It is not ok where the text is an expression, which it would destroy, or no number.
func Stepped(text string, now any, by int, s Steps, bare measure.Unit) (string, bool) {
	plain := strings.TrimSpace(text)
	switch v := now.(type) {
	case measure.Length:
		if _, err := measure.ParseLength(plain, bare); err != nil && plain != "" {
			return "", false
		}
		return steppedLength(plain, v, by, s, bare), true
	case measure.Angle:
		if _, err := measure.ParseAngle(plain); err != nil && plain != "" {
			return "", false
		}
		unit := ""
		if strings.ContainsAny(plain, "d°") {
			unit = " deg"
		}
		return decimal(onGrid(v.Degrees(), s.Angle.Degrees(), by)) + unit, true
	case int:
		if _, err := strconv.Atoi(plain); err != nil && plain != "" {
			return "", false
		}
		return strconv.Itoa(v + by), true
	case string: // a number in words: the first is one
		return strconv.Itoa(max(1, by)), plain == ""
	}
	return "", false
}

func steppedLength(plain string, v measure.Length, by int, s Steps, bare measure.Unit) string {
	unit, named := measure.UnitOf(plain)
	if !named {
		unit = bare
	}
	if unit != measure.Imperial {
		out := decimal(onGrid(v.MM(), s.MM.MM(), by))
		if named {
			out += " mm"
		}
		return out
	}
	to := measure.Length(onGrid(v.Inches(), s.Inch.Inches(), by)) * measure.Inch
	st := measure.Style{Unit: measure.Imperial, Step: min(s.Inch, measure.Inch/64)}
	if named {
		return strings.TrimSuffix(st.FormatUnit(to), `"`) + " in"
	}
	return st.Format(to)
}

// onGrid is the multiple of a step so many further on.
func onGrid(x, step float64, by int) float64 {
	const near = 1e-9
	n := math.Floor(x/step + near)
	if by < 0 {
		n = math.Ceil(x/step - near)
	}
	return (n + float64(by)) * step
}

func decimal(x float64) string {
	return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64)
}

// many is how many steps go with the Page keys.
const many = 10

// turn is called by the arrows and the keys.
func (f *Field) turn(by int) {
	if f.Spec.Choices != nil || f.state.Value == nil {
		return
	}
	steps := UsualSteps
	if f.Steps != nil {
		steps = f.Steps()
	}
	text, ok := Stepped(f.Text(), f.state.Value, by, steps, f.state.Bare)
	if ok {
		f.entry.SetText(text)
	}
}

// arrows are a pair of arrows, one over the other, that turn a number.
type arrows struct {
	widget.BaseWidget
	turn func(by int)
}

func newArrows(turn func(int)) *arrows {
	a := &arrows{turn: turn}
	a.ExtendBaseWidget(a)
	return a
}

// Tapped turns up in the upper half and down in the lower one.
func (a *arrows) Tapped(e *fyne.PointEvent) {
	if e.Position.Y < a.Size().Height/2 {
		a.turn(1)
	} else {
		a.turn(-1)
	}
}

// CreateRenderer is for Fyne.
func (a *arrows) CreateRenderer() fyne.WidgetRenderer {
	up, down := widget.NewIcon(theme.MenuDropUpIcon()), widget.NewIcon(theme.MenuDropDownIcon())
	return &arrowsRenderer{up, down}
}

type arrowsRenderer struct{ up, down *widget.Icon }

const arrowsWide, arrowsHigh = 14, 22

func (r *arrowsRenderer) Layout(size fyne.Size) {
	half := size.Height / 2
	r.up.Move(fyne.NewPos(0, 0))
	r.up.Resize(fyne.NewSize(size.Width, half))
	r.down.Move(fyne.NewPos(0, half))
	r.down.Resize(fyne.NewSize(size.Width, half))
}
func (r *arrowsRenderer) MinSize() fyne.Size           { return fyne.NewSize(arrowsWide, arrowsHigh) }
func (r *arrowsRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.up, r.down} }
func (r *arrowsRenderer) Destroy()                     {}
func (r *arrowsRenderer) Refresh() {
	r.up.Refresh()
	r.down.Refresh()
}
