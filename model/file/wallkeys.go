package file

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/measure"
)

func (r *reader) lean(a *measure.Angle) taker { return r.angle(a, lean.low, lean.high, lean.say) }

// maybeLean reads the lean of a wall that leans unlike its fellow.
func (r *reader) maybeLean(to **measure.Angle) taker {
	return func(n *yaml.Node, path string) {
		var a measure.Angle
		r.lean(&a)(n, path)
		*to = &a
	}
}

func (r *reader) bottom(to **form.Bottom) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		b := &form.Bottom{}
		r.group(fields{
			"thickness": r.length(&b.Thickness, aboveZero),
			"timber":    r.text(&b.Timber),
			"joint":     r.choice(&b.Joint, form.InGroove, form.InRabbet, form.ScrewedOn),
			"up":        r.length(&b.Up, notNegative),
			"depth":     r.maybeLength(&b.Depth, aboveZero),
			"clearance": r.maybeLength(&b.Clearance, notNegative),
			"screws":    r.screws(&b.Screws),
		})(n, path)
		*to = b
	}
}

func (r *reader) lid(to **form.Lid) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		l := &form.Lid{}
		r.group(fields{
			"thickness": r.length(&l.Thickness, aboveZero),
			"timber":    r.text(&l.Timber),
			"overhang":  r.length(&l.Overhang, notNegative),
			"battens":   r.battens(&l.Battens),
		})(n, path)
		*to = l
	}
}

func (r *reader) battens(to **form.Battens) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		b := &form.Battens{}
		r.group(fields{
			"width":     r.length(&b.Width, aboveZero),
			"thickness": r.length(&b.Thickness, aboveZero),
			"inset":     r.length(&b.Inset, notNegative),
			"count":     r.count(&b.Count, 1, mostItems),
			"timber":    r.text(&b.Timber),
			"screws":    r.screws(&b.Screws),
		})(n, path)
		*to = b
	}
}

// joints are the joints that corners can have.
func joints() []string { return form.CornerJoints() }

// only are keys that some forms have no use for: the forms that have, and what to write in others.
var only = []struct {
	path, forms, instead string
}{
	{"size.depth", "stool steps tray chest", "a ring is as deep as it is wide: leave the depth out"},
	{"size.staves", "ring", "only a ring has staves"},
	{"size.lower-height", "steps", "only steps have a lower tread"},
	{"size.lower-width", "steps", "only steps have a lower tread"},
	{"splay.middle", "steps", "only steps have a side in the middle"},
	{"splay.edges", "stool steps", "its front leans by splay.front and its ends by splay.ends; a ring has splay.ends alone"},
	{"splay.front", "tray chest", "the front and back edges of a stool or of steps lean by splay.edges, and every stave of a ring by splay.ends"},
	{"splay.back", "tray chest", "only a tray or a chest has walls that may lean one by one"},
	{"splay.end-left", "tray chest", "only a tray or a chest has walls that may lean one by one"},
	{"splay.end-right", "tray chest", "only a tray or a chest has walls that may lean one by one"},
	{"boards.top", "stool steps", "only a stool or steps have a top; walls are boards.side, and a chest is closed by its lid"},
	{"boards.front", "tray chest", "only a tray or a chest has a front; boards.side is every stave of a ring"},
	{"boards.back", "tray chest", "only a tray or a chest has a back; boards.side is every stave of a ring"},
	{"boards.end", "tray chest", "only a tray or a chest has ends; the sides of a stool or of steps are boards.side, and a ring's staves too"},
	{"corners.over", "tray chest", "only a tray or a chest has walls that run over others; in a ring every stave runs over the next"},
	{"corners.overhang-edges", "stool steps", "only the top of a stool or of steps overhangs at front and back"},
	{"bottom", "tray chest ring", "what has a top on sides has no bottom"},
	{"lid", "chest", "only a chest has a lid"},
	{"stretchers", "stool steps", "stretchers stand between the sides of a stool or of steps; walls need none"},
	{"came-out.width-top", "stool tray chest ring", "steps are measured at the floor, and in height at either end"},
	{"came-out.depth-top", "tray chest", "of a board that is cut to its depth there is nothing to find out"},
	{"came-out.depth-floor", "tray chest", "of a board that is cut to its depth there is nothing to find out"},
	{"came-out.height-whole", "tray chest", "a stool and steps are measured in height at either end, height-left and height-right"},
	{"came-out.height-left", "stool steps", "walls are measured in height as a whole, height-whole"},
	{"came-out.height-right", "stool steps", "walls are measured in height as a whole, height-whole"},
	{"aprons", "stool", "aprons stand between a stool's two sides; steps take stretchers, and walls need none"},
}

// onlyWhere refuses keys that the form has no use for, so that nothing typed is passed over.
func (r *reader) onlyWhere(d *form.Design) {
	for _, k := range only {
		n := r.doc.find(k.path)
		if n == nil || isNull(n) || len(n.Content) == 0 && n.Kind != yaml.ScalarNode {
			continue
		}
		if d.Form != "" && !slices.Contains(strings.Fields(k.forms), d.Form) {
			r.refuse(n, k.path, 0, n.Value, makesNoUse(d.Form, k.instead))
		}
	}
	for i := range d.Stretchers {
		if n := r.doc.find(underPath(i)); n != nil && !isNull(n) && d.Form != form.Steps {
			r.refuse(n, underPath(i), 0, n.Value, makesNoUse(cmp.Or(d.Form, "stool"), "it has one top only"))
		}
	}
}

// underPath is the key of the tread that a stretcher of steps stands under.
func underPath(i int) string { return "stretchers." + strconv.Itoa(i) + ".under" }

func makesNoUse(name, instead string) string {
	if name == form.Steps {
		return fmt.Sprintf("steps make no use of this: %s", instead)
	}
	return fmt.Sprintf("a %s makes no use of this: %s", name, instead)
}
