package app

import (
	"errors"
	"math"
	"sync/atomic"

	"splaywright/app/say"
	"splaywright/app/viewer"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/solid"
	"splaywright/model/twos"
	"splaywright/render/draw"
	"splaywright/render/sheet"
	"splaywright/render/table"
	"splaywright/render/view"
	"splaywright/render/wood"
)

// result is what is seen of a design: its pictures. They are made and shown before the tables of its parts and before the
// piece is looked over, so that nothing keeps a core from them.
type result struct {
	piece *form.Piece
	page  draw.Page
	views sheet.Shown
	ruler viewer.Ruler
	sight viewer.Sight
	same  map[string][]string
	err   error

	// The pictures of both, painted for the places as they were; nil = these had no size yet.
	table, pictorial *viewer.Ahead
}

// flattening is how far chords may lie off arcs in the window's pictures, as a share of the piece: about a sixth of what a dot
// shows of a piece that fills its place. What the drawing shows of an arc stays one, and papers are drawn finer.
const flattening = 1.0 / 2500

// chords is that for a design, mm.
func chords(d form.Design) float64 {
	s := d.Size
	return max(flattening*math.Hypot(s.Height.MM(), math.Hypot(s.Width.MM(), s.Depth.MM())), solid.Flattening)
}

// manner is how a design is to be drawn.
type manner struct {
	dark   bool
	room   draw.Point // of the drawing table, mm; 0 = a sheet's
	rulers bool

	// What paints the pictures of the window's places; nil = they are painted when they are shown.
	table     func(draw.Page, viewer.Ruler) *viewer.Ahead
	pictorial func(viewer.Sight) *viewer.Ahead
}

// derive works the pictures out. It runs away from the window, so a mistake of the program in
// it must not take the person's unsaved design down with it.
func derive(d form.Design, how manner) (r result) {
	d = spoken(d)
	r.err = guarded(func() {
		r.piece, r.sight.Scene = view.Raise(d, chords(d))
	})
	if r.err != nil {
		return r
	}
	r.err = r.inTwos(how)
	return r
}

// inTwos makes the drawing and the pictorial on two cores. Both take the drawing's views, one at a time, the one that takes
// the longest first; the core that takes the last goes on with the drawing, the other with the pictorial.
func (r *result) inTwos(how manner) error {
	ways := sheet.Directions3(r.piece.Design.Papers.Projection)
	var views [len(ways)]*view.Picture
	var left, taken atomic.Int32
	left.Store(int32(len(ways)))
	work := func() {
		last := false
		for i := left.Add(-1); i >= 0; i = left.Add(-1) {
			views[i] = r.sight.Scene.Project(ways[i])
			last = int(taken.Add(1)) == len(ways)
		}
		if last {
			r.draw(how, views)
		} else {
			r.portray(how)
		}
	}
	var one, other error
	twos.Both(func() { one = guarded(work) }, func() { other = guarded(work) })
	return errors.Join(one, other)
}

// guarded does work; a mistake of the program in it becomes an error.
func guarded(work func()) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = errors.New(say.With("the piece could not be worked out: %v", p))
		}
	}()
	work()
	return nil
}

// draw makes the drawing and its picture.
func (r *result) draw(how manner, views [3]*view.Picture) {
	r.page, r.views = sheet.Scaled3(r.piece, views, sheet.Options{
		Sheet: r.piece.Design.Papers.Sheet, Projection: r.piece.Design.Papers.Projection,
		Style: r.piece.Design.Style(), Dark: how.dark, Width: how.room.X, Height: how.room.Y, Tongue: say.Tongue(),
	})
	if how.rulers {
		r.ruler = rulerOf(r.piece, r.views)
	}
	if how.table != nil {
		r.table = how.table(r.page, r.ruler)
	}
}

// portray makes the pictorial.
func (r *result) portray(how manner) {
	r.sight.Diagonal = diagonal(r.piece)
	r.sight.Subject, r.sight.Eye = wood.NewSubject(r.piece, r.sight.Scene), sheet.ClearEye(r.piece, r.sight.Scene)
	if how.pictorial != nil {
		r.pictorial = how.pictorial(r.sight)
	}
	r.same = table.Same(r.piece)
}

// tablesOf makes the tables for which there is a maker, by their tabs' titles.
func tablesOf(p *form.Piece, how func(maker) func(*form.Piece, measure.Style) []table.Table) map[string][]table.Table {
	out := map[string][]table.Table{}
	for _, t := range newTables() {
		if by := how(t); by != nil {
			out[t.title] = say.Tables(by(p, p.Design.Style()))
		}
	}
	return out
}

// drop gives back what will not be shown.
func (r *result) drop() {
	r.table.Drop()
	r.pictorial.Drop()
}

// diagonal is the piece's largest extent from any side.
func diagonal(p *form.Piece) float64 {
	w := max(p.Overall.WidthTop, p.Overall.WidthFloor).MM()
	d := max(p.Overall.DepthTop, p.Overall.DepthFloor).MM()
	return math.Sqrt(w*w + d*d + math.Pow(p.Overall.Height.MM(), 2))
}
