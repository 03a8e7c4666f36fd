package panel

import (
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/field"
	"splaywright/app/keyed"
	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
)

// Sizes is the column of everything that can be typed.
type Sizes struct {
	// What the person does is passed on, for the window to put it into the session.
	OnSet    func(path, text string)
	OnDone   func()
	OnAdd    func(a Add)
	OnRemove func(path string)
	OnMenu   func(path, item string)
	OnLock   func(path string, on bool)
	OnKey    func(*fyne.KeyEvent) bool // takes a key of the window; nil = there is none
	OnFocus  func(spec field.Spec)     // the keyboard has come to a size; nil = nobody asks
	Steps    func() field.Steps        // of the arrows; nil = the usual ones

	box      *fyne.Container
	scroll   *container.Scroll
	fields   map[string]*field.Field // by path
	twins    map[string]*field.Field // fields of the same sizes beside the drawing, by path
	folded   map[string]bool         // by the section's title
	sections []*section
	adding   bool         // a button that adds something was pressed
	last     *field.Field // that the keyboard came to; nil = none yet
	key      string
	groups   Grouper
}

// Grouper gives the groups of a column: those of a design with the timbers to offer and its named values.
type Grouper func(d *form.Design, timbers, names []string) []Group

// NewSizes makes an empty column of a design's sizes.
func NewSizes() *Sizes { return NewColumn(Groups) }

// NewColumn makes an empty column of other groups.
func NewColumn(groups Grouper) *Sizes {
	p := &Sizes{groups: groups, box: container.NewVBox(), fields: map[string]*field.Field{}, twins: map[string]*field.Field{}, folded: map[string]bool{}}
	p.scroll = container.NewVScroll(p.box)
	return p
}

// Object is what the window shows.
func (p *Sizes) Object() fyne.CanvasObject { return p.scroll }

// Field gives the field of a path, nil when the design does not use it.
func (p *Sizes) Field(path string) *field.Field {
	f := p.fields[path]
	if f == nil || !strings.Contains(p.key, "\n"+path+"\n") {
		return nil
	}
	return f
}

// Paths are those of the sizes that the column shows.
func (p *Sizes) Paths() []string {
	var out []string
	for path := range p.fields {
		if p.Field(path) != nil {
			out = append(out, path)
		}
	}
	slices.Sort(out)
	return out
}

// Update shows the session as it stands.
func (p *Sizes) Update(s *session.Session) {
	d := s.Design()
	groups := p.groups(&d, d.Timbers.Names(), s.Document().Keys("names"))
	if key := keyOf(groups); key != p.key {
		p.key = key
		p.build(groups)
	}
	found := p.findings(s, groups)
	for _, g := range groups {
		for _, spec := range g.Fields {
			st := stateOf(s, &d, spec, found[spec.Path])
			p.fields[spec.Path].Put(st)
			if twin := p.twins[spec.Path]; twin != nil {
				twin.Put(st)
			}
		}
	}
}

func keyOf(groups []Group) string {
	var b strings.Builder
	for _, g := range groups {
		b.WriteString(g.Title + "\t" + g.Remove + "\n")
		for _, f := range g.Fields {
			b.WriteString("\n" + f.Path + "\n" + f.Label)
		}
	}
	return b.String()
}

// build makes the column anew. Fields that stay keep their widget, and with it the cursor.
func (p *Sizes) build(groups []Group) {
	for _, s := range p.sections {
		p.folded[s.title] = s.folded
	}
	was := p.stops()
	p.box.RemoveAll()
	p.sections = nil
	for _, g := range groups {
		s := newSection(g.Title, p.remover(g.Remove), p.bodyOf(g)...)
		s.head.came = func() { p.bring(s.head) }
		if s.remove != nil {
			s.remove.Came = s.head.came
		}
		if p.folded[g.Title] {
			s.fold()
		}
		p.sections = append(p.sections, s)
		p.box.Add(s)
	}
	p.box.Refresh()
	p.handOver(was)
}

// Unfold unfolds the group of a size.
func (p *Sizes) Unfold(path string) {
	for _, s := range p.sections {
		if s.folded && slices.Contains(s.body.Objects, fyne.CanvasObject(p.fields[path])) {
			s.fold()
		}
	}
}

// Bring shows the group of a size, from its heading on.
func (p *Sizes) Bring(path string) {
	p.Unfold(path)
	for _, s := range p.sections {
		if slices.Contains(s.body.Objects, fyne.CanvasObject(p.fields[path])) {
			p.bring(s)
		}
	}
}

func (p *Sizes) remover(path string) func() {
	if path == "" {
		return nil
	}
	return func() { p.OnRemove(path) }
}

func (p *Sizes) bodyOf(g Group) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, spec := range g.Fields {
		out = append(out, p.fieldOf(spec))
	}
	for _, a := range g.Adds {
		b := keyed.NewButtonWithIcon(say.It(a.Label), theme.ContentAddIcon(), func() {
			p.adding = !a.Name // that is asked for first
			p.OnAdd(a)
			p.adding = false
		})
		b.Alignment = widget.ButtonAlignLeading
		b.Importance = widget.LowImportance
		b.Came = func() { p.bring(b) }
		out = append(out, b)
	}
	return out
}

// Wrong is the path of the first size of the column whose text is not understood, "" where all are.
func (p *Sizes) Wrong() string {
	for _, s := range p.sections {
		for _, o := range s.body.Objects {
			if f, ok := o.(*field.Field); ok && f.State().Err != nil {
				return f.Spec.Path
			}
		}
	}
	return ""
}

// Twin makes another field of a size, for a place beside the drawing; the last one made for a
// path follows the session. It is nil when the design does not use the size.
func (p *Sizes) Twin(path string) *field.Field {
	f := p.Field(path)
	if f == nil {
		return nil
	}
	twin := p.newField(f.Spec)
	p.twins[path] = twin
	twin.Put(f.State())
	return twin
}

func (p *Sizes) newField(spec field.Spec) *field.Field {
	f := field.New(spec)
	f.Changed = func(text string) { p.OnSet(spec.Path, text) }
	f.Done = func() { p.OnDone() }
	f.Key = func(k *fyne.KeyEvent) bool { return p.OnKey != nil && p.OnKey(k) }
	f.Steps = func() field.Steps {
		if p.Steps != nil {
			return p.Steps()
		}
		return field.UsualSteps
	}
	f.Locked = func(on bool) {
		if p.OnLock != nil {
			p.OnLock(spec.Path, on)
		}
	}
	f.Picked = func(item string) { p.OnMenu(spec.Path, item) }
	return f
}

// Next is what the keyboard goes to in the column: the size that it came to last, or the first one; nil where there is none.
func (p *Sizes) Next() fyne.Focusable {
	if p.last != nil && p.Field(p.last.Spec.Path) == p.last {
		return p.last.Input()
	}
	for _, s := range p.sections {
		for _, o := range s.body.Objects {
			if f, ok := o.(*field.Field); ok && !s.folded {
				return f.Input()
			}
		}
	}
	return nil
}

// came shows a field that the keyboard has come to whole, and tells of it.
func (p *Sizes) came(f *field.Field) {
	p.last = f
	if p.OnFocus != nil {
		p.OnFocus(f.Spec) // what explains it may take of the column's height
	}
	p.bring(f)
}

// bring scrolls the column so far that a field or a heading is seen whole.
func (p *Sizes) bring(f fyne.CanvasObject) { keyed.Bring(p.scroll, f) }

func (p *Sizes) fieldOf(spec field.Spec) *field.Field {
	if f := p.fields[spec.Path]; f != nil && f.Spec.Label == spec.Label && f.Spec.Hint == spec.Hint && slices.Equal(f.Spec.Choices, spec.Choices) {
		return f
	}
	f := p.newField(spec)
	f.Focused = func() { p.came(f) }
	p.fields[spec.Path] = f
	return f
}

// findings puts each finding beside the first of the sizes that would change it which has a
// field; a sentence said once is enough.
func (p *Sizes) findings(s *session.Session, groups []Group) map[string][]part.Finding {
	piece := s.Looked()
	if piece == nil {
		return nil
	}
	out := map[string][]part.Finding{}
	for _, n := range piece.Findings {
		if i := slices.IndexFunc(n.Sizes, func(path string) bool { return p.fields[path] != nil && shows(groups, path) }); i >= 0 {
			out[n.Sizes[i]] = append(out[n.Sizes[i]], n)
		}
	}
	if s.Overdue() { // what stands beside sizes keeps its place
		for path := range out {
			out[path] = []part.Finding{{Level: part.Note, Text: LookingOver}}
		}
	}
	return out
}

func shows(groups []Group, path string) bool {
	return slices.ContainsFunc(groups, func(g Group) bool {
		return slices.ContainsFunc(g.Fields, func(f field.Spec) bool { return f.Path == path })
	})
}

// stateOf is what the field of a size shows; d is the session's design.
func stateOf(s *session.Session, d *form.Design, spec field.Spec, found []part.Finding) field.State {
	figures := figuresOf(d)
	st := field.State{Text: s.Text(spec.Path), Err: s.ErrorAt(spec.Path), Findings: Figured(found, d), Kept: spec.Lock && s.Keeps(spec.Path), Comma: figures.Comma}
	if spec.Value == nil { // a named value is in no design
		if q, ok := s.Document().Quantity(spec.Path); ok {
			st.Said = figures.Text(saidQuantity(q, st.Text, d.Units))
		}
		return st
	}
	st.Bare = d.Units
	if spec.Turns {
		st.Value = spec.Value(d)
		if piece := s.Piece(); st.Text == "" && piece != nil {
			st.Value = spec.Value(&piece.Design)
		}
	}
	if st.Text != "" {
		st.Said = field.Said(spec.Value(d), d.Units)
		if strings.HasPrefix(spec.Path, "splay.") {
			if other, how, ok := d.OtherLean(spec.Path); ok {
				st.Said += "; " + measure.FormatAngle(other, 0) + " " + say.It(how)
			}
		}
		st.Said = figures.Text(st.Said)
		if spec.Long {
			st.Said = st.Text
		}
		if spec.Path == "timber" || strings.HasSuffix(spec.Path, ".timber") {
			st.Said = timberSaid(d.Timbers, st.Text)
		}
		return st
	}
	if piece := s.Piece(); piece != nil {
		st.Follows = figures.Text(follows(spec, &piece.Design))
	}
	return st
}

// saidQuantity says what a named value comes to, as sizes are said; a number that is typed as it is needs no saying.
func saidQuantity(q measure.Quantity, typed string, u measure.Unit) string {
	switch q.Kind {
	case measure.OfLength:
		return field.SaidLength(measure.Length(q.Value), u)
	case measure.OfAngle:
		return field.SaidAngle(measure.Angle(q.Value))
	}
	if said := strconv.FormatFloat(q.Value, 'g', 6, 64); said != strings.TrimSpace(typed) {
		return said
	}
	return ""
}

// figuresOf is how figures stand in what is said of a design: with a comma where the design asks for one, or the language does
// and the design says nothing.
func figuresOf(d *form.Design) measure.Style {
	return measure.Style{Comma: d.Round.Comma || !d.Round.Said && say.Tongue().Comma()}
}

// Figured is findings with their figures as a design has them.
func Figured(found []part.Finding, d *form.Design) []part.Finding {
	out := slices.Clone(found)
	for i := range out {
		out[i].Text = figuresOf(d).Text(out[i].Text)
	}
	return out
}

// follows says what an empty field comes to.
func follows(spec field.Spec, d *form.Design) string {
	switch v := spec.Value(d).(type) {
	case string:
		return v
	case bool:
		return strconv.FormatBool(v)
	default:
		return field.Said(v, d.Units)
	}
}
