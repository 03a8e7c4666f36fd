package app

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/render/pattern"
)

// paperLabels are the papers in words.
func paperLabels() map[string]string {
	return map[string]string{
		form.PaperDrawings: say.It("Drawings"), form.PaperCutList: say.It("Cut list"), form.PaperSteps: say.It("Steps"),
		form.PaperSaw: say.It("Saw settings"), form.PaperMarking: say.It("Marking"), form.PaperBoring: say.It("Boring"),
		form.PaperStrength: say.It("Will it hold"), form.PaperCost: say.It("Cost"), form.PaperFindings: say.It("Findings"),
		form.PaperCautions: say.It("Cautions"), form.PaperBoardPlan: say.It("Board plan"), form.PaperToBuy: say.It("Wood to buy"),
		form.PaperPatterns: say.It("Full-size patterns"),
	}
}

// kindLabels are the kinds of files in words.
func kindLabels() map[string]string {
	return map[string]string{
		form.AsPDF: say.It("One PDF of all sheets"), form.AsSingle: say.It("A PDF of each paper"), form.AsSVG: say.It("Pictures as SVG"),
		form.AsPNG: say.It("First sheet as PNG"), form.AsCSV: say.It("Tables as CSV"), form.AsXLSX: say.It("Workbook of all tables"),
		form.AsHTML: say.It("Page for a browser"), form.AsJSON: say.It("All figures as JSON"),
	}
}

// lengthLabels and wordLabels are what stands before the dialog's entries.
func lengthLabels() [4]string {
	return [4]string{say.It("100 mm bar across measures"), say.It("100 mm bar down measures"), say.It("Printer's margin"), say.It("Overlap of sheets")}
}

func wordLabels() [5]string {
	return [5]string{say.It("Owner"), say.It("Drawn by"), say.It("Approved by"), say.It("Date"), say.It("Number")}
}

// choice is a set of boxes to tick, one for each of some names.
type choice struct {
	names []string
	group *keyed.Checks
}

func newChoice(names []string, labels map[string]string, chosen func(string) bool, changed func()) choice {
	c := choice{names: names}
	var shown, ticked []string
	for _, n := range names {
		l := labels[n]
		shown = append(shown, l)
		if chosen(n) {
			ticked = append(ticked, l)
		}
	}
	c.group = keyed.NewChecks(shown, ticked, func([]string) { changed() })
	return c
}

// chosen are the names whose boxes are ticked, in their order.
func (c choice) chosen() []string {
	var out []string
	for i, n := range c.names {
		if slices.Contains(c.group.Selected, c.group.Options[i]) {
			out = append(out, n)
		}
	}
	return out
}

// tick ticks the box of a name or clears it, as a person does.
func (c choice) tick(name string, on bool) {
	i := slices.Index(c.names, name)
	list := slices.DeleteFunc(slices.Clone(c.group.Selected), func(s string) bool { return s == c.group.Options[i] })
	if on {
		list = append(list, c.group.Options[i])
	}
	c.group.SetSelected(list)
}

// head is a heading with what ticks all boxes below it, or none: of a dozen papers one is often wanted alone.
func (c choice) head(title string) fyne.CanvasObject {
	all := keyed.NewButton(say.It("All"), func() { c.group.SetSelected(slices.Clone(c.group.Options)) })
	none := keyed.NewButton(say.It("None"), func() { c.group.SetSelected(nil) })
	all.Importance, none.Importance = widget.LowImportance, widget.LowImportance
	return container.NewBorder(nil, nil, nil, container.NewHBox(all, none), heading(title))
}

// papersDialog asks which papers are written, and how.
type papersDialog struct {
	w          *Window
	unit       measure.Unit
	before     form.Papers
	papers, as choice
	printed    bool // it goes to a printer: kinds of files are not asked for
	sheet      *keyed.Select
	lengths    [4]*entry // bar across, bar down, margin, overlap
	words      [5]*entry // of the title block
	keep       *keyed.Check
	said       *widget.Label
	write      *keyed.Button
}

// lengthPaths and wordPaths are where the dialog's entries stand in a design.
var (
	lengthPaths = [4]string{"papers.patterns.bar-x", "papers.patterns.bar-y", "papers.patterns.margin", "papers.patterns.overlap"}
	wordPaths   = [5]string{"papers.owner", "papers.drawn-by", "papers.approved-by", "papers.date", "papers.number"}
)

func newPapersDialog(w *Window) *papersDialog {
	d := w.s.Design()
	p := &papersDialog{w: w, unit: d.Units, before: w.s.Piece().Design.Papers}
	check := func() { p.check() }
	p.papers = newChoice(form.PaperNames, paperLabels(), p.before.Wants, check)
	p.as = newChoice(form.PaperKinds, kindLabels(), p.before.WantsAs, check)
	p.sheet = keyed.NewSelect(form.Sheets, nil)
	p.sheet.Selected = p.before.Sheet
	p.sheet.OnChanged = func(string) { p.check() }
	for i, path := range lengthPaths {
		p.lengths[i] = w.newEntry()
		p.lengths[i].SetText(w.s.Text(path))
		p.lengths[i].SetPlaceHolder(styleOf(d).Text([4]string{"100 mm", "100 mm", "6.5 mm", "10 mm"}[i]))
		p.lengths[i].OnChanged = func(string) { p.check() }
	}
	for i, path := range wordPaths {
		p.words[i] = w.newEntry()
		p.words[i].SetText(w.s.Text(path))
	}
	p.keep = keyed.NewCheck(say.It("Keep these choices with the design"), nil)
	p.said = widget.NewLabel("")
	p.said.Wrapping = fyne.TextWrapWord
	return p
}

// ask shows the dialog under a title, with what its button goes on with; then is done with what was chosen.
func (p *papersDialog) ask(title, on string, then func(form.Papers)) {
	d := dialog.NewCustomWithoutButtons(title, p.content(), p.w.win)
	p.write = keyed.NewButton(on, func() {
		chosen, err := p.chosen()
		if err != nil {
			return
		}
		d.Hide()
		if p.keep.Checked {
			p.store(chosen)
		}
		then(chosen)
	})
	p.write.Importance = widget.HighImportance
	d.SetButtons([]fyne.CanvasObject{keyed.NewButton(say.It("Cancel"), d.Hide), p.write})
	p.w.show(d)
	p.w.inDialog = map[string]fyne.CanvasObject{"write": p.write}
	d.Resize(p.w.whole(760, 780))
	p.check()
	p.w.win.Canvas().Focus(p.write)
}

func (p *papersDialog) content() fyne.CanvasObject {
	sheet := widget.NewForm(widget.NewFormItem(say.It("Sheet"), p.sheet))
	bars := widget.NewForm()
	for i, e := range p.lengths {
		bars.Append(lengthLabels()[i], e)
	}
	block := widget.NewForm()
	for i, e := range p.words {
		block.Append(wordLabels()[i], e)
	}
	left := container.NewVBox(p.papers.head("Papers"), p.papers.group)
	right := container.NewVBox(p.as.head("Written as"), p.as.group, sheet)
	if p.printed {
		right = container.NewVBox(heading("Printed on"), sheet)
	}
	patterns := container.NewVBox(heading("Full-size patterns"), bars)
	title := container.NewVBox(heading("Title block"), block)
	grid := container.NewVBox(container.NewGridWithColumns(2, left, right), container.NewGridWithColumns(2, patterns, title), p.keep)
	p.said.Hide() // until there is something to say
	return container.NewBorder(nil, p.said, nil, nil, keyed.NewScroll(grid))
}

// chosen is what the dialog says, or why it cannot be.
func (p *papersDialog) chosen() (form.Papers, error) {
	out := p.before
	out.Sheet = p.sheet.Selected
	out.Only, out.As = p.papers.chosen(), p.as.chosen()
	out.Patterns.On = slices.Contains(out.Only, form.PaperPatterns)
	to := [4]*measure.Length{&out.Patterns.BarX, &out.Patterns.BarY, &out.Patterns.Margin, &out.Patterns.Overlap}
	for i, e := range p.lengths {
		*to[i] = 0
		if text := e.number(); text != "" {
			l, err := measure.ParseLength(text, p.unit)
			if err != nil {
				return out, err
			}
			*to[i] = l
		}
	}
	if out.Patterns.On {
		_, err := pattern.Options{Sheet: out.Sheet, Margin: out.Patterns.Margin, Overlap: out.Patterns.Overlap,
			AcrossBar: out.Patterns.BarX, DownBar: out.Patterns.BarY}.Fill()
		if err != nil {
			return out, err
		}
	}
	b := &out.Block
	for i, s := range [5]*string{&b.Owner, &b.DrawnBy, &b.ApprovedBy, &b.Date, &b.Number} {
		*s = strings.TrimSpace(p.words[i].Text)
	}
	return out, nil
}

// check says what is wrong with the choices, and lets only what is right be written.
func (p *papersDialog) check() {
	chosen, err := p.chosen()
	why := ""
	switch {
	case err != nil:
		why = explain(err)
	case len(chosen.Only) == 0:
		why = say.It("No paper is ticked.")
	case len(chosen.As) == 0 && !p.printed:
		why = say.It("No kind of file is ticked.")
	}
	p.said.SetText(why)
	seeing(p.said, why != "")
	if p.write == nil {
		return
	}
	if why == "" {
		p.write.Enable()
	} else {
		p.write.Disable()
	}
}

// store puts the choices into the design as one step that can be taken back; what is as usual is left out.
func (p *papersDialog) store(c form.Papers) {
	list := func(names, all []string, usual string) string {
		most := slices.DeleteFunc(slices.Clone(all), func(n string) bool { return n == usual })
		if slices.Equal(names, most) {
			return ""
		}
		return "[" + strings.Join(names, ", ") + "]"
	}
	on := ""
	if c.Patterns.On {
		on = "true"
	}
	only := slices.DeleteFunc(slices.Clone(c.Only), func(n string) bool { return n == form.PaperPatterns })
	fields := [][2]string{
		{"papers.only", list(only, form.PaperNames, form.PaperPatterns)}, {"papers.as", list(c.As, form.PaperKinds, form.AsSingle)}, {"papers.patterns.on", on},
	}
	if c.Sheet != p.before.Sheet {
		fields = append(fields, [2]string{"papers.sheet", c.Sheet})
	}
	for i, path := range lengthPaths {
		fields = append(fields, [2]string{path, p.lengths[i].number()})
	}
	for i, path := range wordPaths {
		fields = append(fields, [2]string{path, strings.TrimSpace(p.words[i].Text)})
	}
	fields = slices.DeleteFunc(fields, func(f [2]string) bool {
		return f[1] == "" && p.w.s.Text(f[0]) == "" && p.w.s.Document().List(f[0]) == ""
	})
	if len(fields) == 0 {
		return
	}
	if err := p.w.s.Change(say.It("papers chosen"), fields...); err != nil {
		p.w.tell("The choices were not kept", err)
		return
	}
	p.w.changed()
}
