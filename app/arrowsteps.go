package app

import (
	"fyne.io/fyne/v2/widget"

	"splaywright/app/field"
	"splaywright/app/say"
	"splaywright/model/measure"
)

// The preferences that hold how far the arrows turn: millimetres, millimetres of inches, degrees.
const (
	prefStepMM    = "step-mm"
	prefStepInch  = "step-inch"
	prefStepAngle = "step-angle"
)

// arrowSteps are how far the arrows of the fields turn.
func (w *Window) arrowSteps() field.Steps {
	p, usual := w.app.Preferences(), field.UsualSteps
	return field.Steps{
		MM:    measure.Length(p.FloatWithFallback(prefStepMM, usual.MM.MM())),
		Inch:  measure.Length(p.FloatWithFallback(prefStepInch, usual.Inch.MM())),
		Angle: measure.Angle(p.FloatWithFallback(prefStepAngle, usual.Angle.Degrees())) * measure.Degree,
	}
}

// chooseSteps asks how far the arrows of the fields turn.
func (w *Window) chooseSteps() {
	now := w.arrowSteps()
	mm, inch, angle := w.newEntry(), w.newEntry(), w.newEntry()
	mm.SetText(measure.Style{Step: 0.01}.FormatUnit(now.MM))
	inch.SetText(measure.Style{Unit: measure.Imperial, Step: measure.Inch / 64}.FormatUnit(now.Inch))
	angle.SetText(measure.FormatAngle(now.Angle, 0))
	title := say.It("Steps of the arrows")
	w.ask(title, say.It("Choose"), []*widget.FormItem{
		widget.NewFormItem(say.It("Millimetres"), mm), widget.NewFormItem(say.It("Inches"), inch), widget.NewFormItem(say.It("Angles"), angle),
	}, func() error { return w.keepSteps(mm.number(), inch.number(), angle.number()) }, mm)
}

func (w *Window) keepSteps(mm, inch, angle string) error {
	a, err := measure.ParseLength(mm, measure.Metric)
	if err == nil && a <= 0 {
		err = &measure.Error{Text: mm, Reason: "a step is more than nothing, such as 1 mm"}
	}
	if err != nil {
		return err
	}
	b, err := measure.ParseLength(inch, measure.Imperial)
	if err == nil && b <= 0 {
		err = &measure.Error{Text: inch, Reason: "a step is more than nothing, such as 1/16 in"}
	}
	if err != nil {
		return err
	}
	c, err := measure.ParseAngle(angle)
	if err == nil && c <= 0 {
		err = &measure.Error{Text: angle, Reason: "a step is more than nothing, such as 0.5 deg"}
	}
	if err != nil {
		return err
	}
	p := w.app.Preferences()
	p.SetFloat(prefStepMM, a.MM())
	p.SetFloat(prefStepInch, b.MM())
	p.SetFloat(prefStepAngle, c.Degrees())
	return nil
}
