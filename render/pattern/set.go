package pattern

import (
	"splaywright/model/form"
	"splaywright/model/part"
	"splaywright/render/draw"
)

// Set is the patterns of one part, or of parts that are cut alike from one end to the other.
type Set struct {
	Parts []*part.Part
	Name  Name
	// Sheets are the patterns to be joined from sheets; the first says how and shows a map of them.
	Sheets []draw.Page
	// Whole is every pattern of the part on one large page, in true millimetres and never corrected.
	Whole draw.Page
}

// Sets lays out the patterns of every part that needs one. Parts that mirror each other have each
// their own; parts that are the same on every edge share one. The same piece gives the same pages. The error is that of the options.
func Sets(p *form.Piece, o Options) ([]Set, error) {
	if o.Sheet == "" {
		o.Sheet = p.Design.Papers.Sheet
	}
	if o.Style.Step == 0 && o.Style.Unit == 0 && !o.Style.Both {
		o.Style = p.Design.Style()
	}
	o, err := o.Fill()
	if err != nil {
		return nil, err
	}
	var out []Set
	groups, shared := alike(p.Parts), map[*part.Part]bool{}
	for _, same := range groups {
		for _, q := range same {
			shared[q] = len(same) > 1
		}
	}
	lines := triangles(p, shared)
	for _, same := range groups {
		name := nameOf(same)
		b := newBlank(same[0], name, o.Style)
		b.triangle, b.signs = lines[same[0].ID], Signs(same...)
		if all := b.patterns(); len(all) > 0 {
			name.Words = o.say(name.Words)
			for i := range all {
				all[i].said(name, o)
			}
			s := setOf(name, all, p.Title, o)
			s.Parts = same
			for i := range s.Sheets {
				s.Sheets[i].Retext(o.Style.Text)
			}
			s.Whole.Retext(o.Style.Text)
			out = append(out, s)
		}
	}
	return out, nil
}

// said puts what is written on a pattern into the language of the options; its place stays as it is known by.
func (p *Pattern) said(name Name, o Options) {
	p.Name, p.Tells = name, o.say(p.Tells)
	for _, l := range p.Labels {
		for i, line := range l.Lines {
			l.Lines[i] = o.say(line)
		}
		if l.sense != "" {
			l.Lines[0] = o.Tongue.Sense(l.sense)
		}
	}
}

func setOf(q Name, all []Pattern, piece string, o Options) Set {
	tilings := make([]*tiling, len(all))
	for i, p := range all {
		tilings[i] = newTiling(p, o)
	}
	s := Set{Name: q, Sheets: []draw.Page{cover(q, tilings, piece, o)}, Whole: whole(q, all, piece, o)}
	for _, t := range tilings {
		for _, k := range t.sheets() {
			s.Sheets = append(s.Sheets, t.sheet(k, piece))
		}
	}
	return s
}
