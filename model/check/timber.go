package check

import (
	"fmt"

	"splaywright/model/part"
	"splaywright/model/timber"
)

// timbers tells of timbers that the table does not have, so that nothing is known of their weight.
func timbers(r *run) {
	for _, q := range r.p.Parts {
		if _, ok := r.p.Design.Timbers.Find(q.Timber); ok {
			continue
		}
		f := part.Finding{ID: "timber-unknown", Level: part.Warning, Source: "the program's own table of species",
			Parts: []string{q.ID}, Sizes: []string{timberPath(r, q)}}
		if q.Timber == "" {
			f.Text = "No timber is named, so the weight of the piece is not known."
		} else {
			f.Text = sentence("the timber %q is not in the table, so its weight is not known%s.", q.Timber, nearest(q.Timber))
		}
		r.add(f)
	}
}

func nearest(name string) string {
	near := timber.Nearest(name, 3)
	if len(near) == 0 {
		return ""
	}
	return fmt.Sprintf("; the table has %s", list(near, "and"))
}

// timberPath is the key that a board's timber was read from.
func timberPath(r *run, q *part.Part) string {
	own, path := "", ""
	switch {
	case isStretcher(q):
		if s, ok := r.railOf(q); ok {
			own, path = s.Timber, s.Path+".timber"
		}
	case isSide(q):
		own, path = r.d.Boards.Side.Timber, "boards.side.timber"
	case isWall(q) || q.ID == "bottom" || q.ID == "lid" || isBatten(q):
		own, path = wallTimber(r.d, q)
	case isTop(q):
		own, path = r.d.Boards.Top.Timber, "boards.top.timber"
	}
	if own == "" || own == r.d.Timber {
		return "timber"
	}
	return path
}
