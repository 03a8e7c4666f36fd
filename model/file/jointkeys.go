package file

import (
	"strings"

	"gopkg.in/yaml.v3"

	"splaywright/model/form"
	"splaywright/model/measure"
)

func init() { // keys that only loose parts and tenons have
	for _, k := range strings.Fields("stop shoulder proud slot flare") {
		kinds[k] = measure.OfLength
	}
	kinds["wedges"] = measure.Number
}

func (r *reader) spline(to **form.Spline) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		s := &form.Spline{}
		r.group(fields{
			"thickness": r.length(&s.Thickness, aboveZero),
			"width":     r.length(&s.Width, aboveZero),
			"inset":     r.length(&s.Inset, aboveZero),
			"stop":      r.length(&s.Stop, notNegative),
			"timber":    r.text(&s.Timber),
		})(n, path)
		*to = s
	}
}

func (r *reader) tenon(to **form.Tenon) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		t := &form.Tenon{}
		r.group(fields{
			"width":     r.length(&t.Width, aboveZero),
			"thickness": r.length(&t.Thickness, aboveZero),
			"depth":     r.length(&t.Depth, aboveZero),
			"proud":     r.length(&t.Proud, notNegative),
			"wedges":    r.maybeCount(&t.Wedges, 0, mostItems),
			"slot":      r.length(&t.Slot, aboveZero),
			"flare":     r.length(&t.Flare, aboveZero),
		})(n, path)
		*to = t
	}
}

func (r *reader) keys(to **form.Keys) taker {
	return func(n *yaml.Node, path string) {
		if isNull(n) {
			return
		}
		k := &form.Keys{}
		r.group(fields{
			"count":     r.count(&k.Count, 1, mostItems),
			"thickness": r.length(&k.Thickness, aboveZero),
			"depth":     r.length(&k.Depth, aboveZero),
			"pitch":     r.length(&k.Pitch, aboveZero),
			"timber":    r.text(&k.Timber),
		})(n, path)
		*to = k
	}
}
