package sheet

import (
	"math"

	"splaywright/model/form"
	"splaywright/render/draw"
	"splaywright/render/pattern"
	"splaywright/render/view"
)

// runGap is between the boards of a run as they are shown laid end to end, mm, and runLabel the height of
// their marks.
const (
	runGap   = 2.5
	runHigh  = 30.0 // the most that a run's boards are shown wide
	runTall  = 60.0 // and on a sheet of its own
	runLeast = 17.0 // the least, to fit what a sheet has left
	runLabel = 3.0
)

// runWords is what stands over and under a run's boards, mm.
const runWords = 24.0

// runPicture shows the boards of a run end to end, outer faces up, with their marks underlined and the
// carpenter's triangle over them, as they lie in the board that they are cut from.
func runPicture(p *form.Piece, run []form.Laid, wide, most float64, i ink) picture {
	long, high := 0.0, 0.0
	for _, l := range run {
		b := extent(l.Part)
		long, high = long+b.Width(), max(high, b.Height())
	}
	scale := min((wide-runGap*float64(len(run)-1))/long, most/high)
	lines := pattern.OnWood(p)
	var out picture
	x := 0.0
	for _, l := range run {
		b := extent(l.Part)
		place := func(q draw.Point) draw.Point { // the part's frame to the paper
			u, v := q.X-b.Min.X, q.Y-(b.Min.Y+b.Max.Y)/2
			if l.Turned {
				u, v = b.Max.X-q.X, -v
			}
			return draw.Point{X: x + u*scale, Y: v * scale}
		}
		path := func(pts []draw.Point, pen draw.Pen) {
			moved := make([]draw.Point, len(pts))
			for k, q := range pts {
				moved[k] = place(q)
			}
			out.items = append(out.items, draw.Path{Segs: draw.Polyline(moved), Pen: pen, Layer: "picture", Ref: l.Part.ID})
		}
		f := &figure{scale: scale}
		for _, s := range f.stretches(partScene(l.Part).Project(faceView).Lines, view.Visible) {
			path(s.Points, draw.Pen{Width: narrowLine * 0.55, Ink: i.line})
		}
		for _, s := range lines[l.Part.ID] {
			path([]draw.Point{{X: s[0].X(), Y: s[0].Y()}, {X: s[1].X(), Y: s[1].Y()}}, draw.Pen{Width: narrowLine, Ink: i.line})
		}
		mid := draw.Point{X: x + b.Width()*scale/2, Y: -high*scale/2 - 2 - runLabel}
		half := draw.TextWidth(l.Part.Mark, runLabel, true)/2 + 0.6
		under := mid.Y - (draw.Descent+0.06)*runLabel
		out.items = append(out.items, draw.Text{At: mid, Size: runLabel, Align: draw.Centre, Bold: true, Ink: i.line, Text: l.Part.Mark, Layer: "mark", Ref: l.Part.ID},
			draw.Path{Segs: draw.Polyline([]draw.Point{{X: mid.X - half, Y: under}, {X: mid.X + half, Y: under}}), Pen: draw.Pen{Width: 0.35, Ink: i.line}, Layer: "mark", Ref: l.Part.ID})
		x += b.Width()*scale + runGap
	}
	out.box = draw.Bounds(out.items)
	return out
}

// paragraph sets a text on the line that is due, and what does not fit it on those below.
func (w *writer) paragraph(text string) {
	for i, l := range wrap(text, cellSize, w.b.room.Width()) {
		if i > 0 {
			w.y -= lineStep
		}
		w.put(w.b.room.Min.X, w.y, cellSize, draw.Left, false, l, "")
	}
}

// runAs is how large a run is shown.
type runAs struct {
	run        int
	wide, most float64
}

// run is the picture of a run, drawn once.
func (w *writer) run(k int, run []form.Laid, wide, most float64) picture {
	as := runAs{k, wide, most}
	pic, ok := w.drawn[as]
	if !ok {
		if w.drawn == nil {
			w.drawn = map[runAs]picture{}
		}
		pic = runPicture(w.piece, run, wide, most, w.blank().ink)
		w.drawn[as] = pic
	}
	return pic
}

// runs sets the pictures of the runs under the cut list.
func (w *writer) runs() {
	title := w.set.o.say("Runs")
	const beside = 12.0                              // mm, between two runs
	high := runHigh                                  // of the boards of the row
	row := draw.Box{Min: draw.Point{X: math.Inf(1)}} // of the run before
	for k, run := range form.Runs(w.piece) {
		if left := w.b.room.Max.X - row.Max.X - beside; k > 0 && left > 0 {
			if by := w.run(k, run, left, high); by.box.Width() <= left && by.box.Height() <= row.Height()+0.5 && by.box.Height() > 0.6*row.Height() {
				at := draw.Point{X: row.Max.X + beside - by.box.Min.X, Y: row.Max.Y - by.box.Max.Y}
				w.picture(by, at)
				row.Max.X = by.box.Max.X + at.X
				continue
			}
		}
		most := runHigh
		wide := 0.8 * w.b.room.Width()
		if left := w.y - w.b.room.Min.Y - runWords; left >= runLeast && left < runHigh {
			most = left
		} else if left < runLeast { // on a sheet of their own they fill its width
			most, wide = runTall, w.b.room.Width()
		}
		pic := w.run(k, run, wide, most)
		high = most
		room := pic.box.Height() + 3
		if k == 0 {
			room += 14
		}
		w.need(room, title)
		if k == 0 {
			if w.y < w.b.room.Max.Y {
				w.tally.joined = true
				w.y -= 5
				w.b.also(title)
			}
			w.y -= 4.2
			w.put(w.b.room.Min.X, w.y, 3, draw.Left, true, title, "")
			w.y -= lineStep + 0.8
			w.paragraph(w.set.o.say("Boards that follow each other round the piece, laid end to end as in one board, outer faces up: the triangle across them shows at once which goes where."))
		}
		w.y -= 3
		at := draw.Point{X: w.b.room.Min.X - pic.box.Min.X, Y: w.y - pic.box.Max.Y}
		w.picture(pic, at)
		row = pic.box.Moved(at)
		w.y -= pic.box.Height()
	}
}
