package file

import (
	"math"

	"gopkg.in/yaml.v3"

	"splaywright/model/timber"
)

// mostTimbers bounds a person's own timbers.
const mostTimbers = 200

// timbers reads a person's own timbers, with figures as the built-in table prints them, or prices alone.
func (r *reader) timbers(to *timber.Book) taker {
	return r.list(func(n *yaml.Node, path string, i int) {
		if r.more(n, path, i, mostTimbers, "timbers") {
			return
		}
		var o timber.Own
		var kind, at string
		var hardness, elasticity, rupture, radial, tangential float64
		r.group(fields{
			"name":                  r.text(&o.Name),
			"kind":                  r.choice(&kind, string(timber.Hardwood), string(timber.Softwood)),
			"specific-gravity":      r.figure(&o.SG),
			"volume-at":             r.choice(&at, "12 %", "green"),
			"side-hardness":         r.figure(&hardness),
			"modulus-of-elasticity": r.figure(&elasticity),
			"modulus-of-rupture":    r.figure(&rupture),
			"change-radial":         r.figure(&radial),
			"change-tangential":     r.figure(&tangential),
			"source":                r.text(&o.Source),
			"price-per-m3":          r.price(&o.PerM3),
			"price-per-board-foot":  r.price(&o.PerBoardFoot),
		}, "name")(n, path)
		o.Wood, o.GreenSG = timber.Wood(kind), at == "green"
		o = o.Figured(hardness, elasticity, rupture, radial, tangential)
		if err := o.Check(); err != nil && len(r.errs) == 0 {
			r.refuse(n, path, 0, o.Name, err.Error())
		}
		if (radial > 0) != (tangential > 0) && len(r.errs) == 0 {
			r.refuse(n, path, 0, o.Name, "change-radial and change-tangential go together")
		}
		*to = append(*to, o)
	})
}

// figure reads a plain number above 0.
func (r *reader) figure(to *float64) taker {
	return func(n *yaml.Node, path string) {
		if q, ok := r.at(path); ok && r.inside(n, path, q.Value, bounds{0, math.Inf(1), true, "a number above 0 is expected here"}) {
			*to = q.Value
		}
	}
}
