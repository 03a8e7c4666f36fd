package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/twos"
	"splaywright/render/dimension"
	"splaywright/render/draw"
	"splaywright/render/view"
)

// arrangement is the three views placed by projection and the room left for the pictorial.
type arrangement struct {
	three  [3]drawnView
	scale  float64
	box    draw.Box
	corner draw.Box
	views  []Placed
}

// gap is the least room between the dimensions of two views, mm.
const gap = 6.0

// threeViews draws front, end and top at a scale. In first angle the view from the left stands to
// the right of the front and the view from above below it; in third angle the view from the right
// stands to the right and the view from above stands above (ISO 5456-2).
func threeViews(p *form.Piece, pics pictures, scale float64, o Options) arrangement {
	return arranged(p, pics, scale, o, func(pic *view.Picture) *figure {
		return newFigure(pic, scale, o.ink(), true, smallHoles(p.Parts, inPiece, pic.Direction, scale)...)
	})
}

// roughly is threeViews for finding out what room dimensions take at a scale: of the piece, only the visible lines are
// there, and none is thinned out.
func roughly(p *form.Piece, pics pictures, scale float64, o Options) arrangement {
	return arranged(p, pics, scale, o, func(pic *view.Picture) *figure {
		f := emptyFigure(pic.Direction, scale, o.ink())
		f.strokes(f.stretches(pic.Lines, view.Visible), false)
		return f
	})
}

// arranged is the three views at a scale, their dimensions put to what draw makes of their pictures.
func arranged(p *form.Piece, pics pictures, scale float64, o Options, draws func(*view.Picture) *figure) arrangement {
	var fi, ei, ti []draw.Item
	twos.Both(func() {
		fi = frontFigure(p, draws(pics.front), o).Finish()
		ei = endFigure(p, draws(pics.end), o).Finish()
	}, func() {
		ti = topFigure(p, draws(pics.top), o).Finish()
	})
	fb, eb, tb := draw.Bounds(fi), draw.Bounds(ei), draw.Bounds(ti)
	right := max(fb.Max.X, tb.Max.X) + gap - eb.Min.X
	up := fb.Min.Y - gap - tb.Max.Y
	if o.Projection == "third" {
		up = fb.Max.Y + gap - tb.Min.Y
	}
	a := arrangement{scale: scale, three: [3]drawnView{{items: fi}, {ei, draw.Point{X: right}}, {ti, draw.Point{Y: up}}}}
	a.views = []Placed{placedAt(pics.front, scale, draw.Point{}), placedAt(pics.end, scale, draw.Point{X: right}), placedAt(pics.top, scale, draw.Point{Y: up})}
	eb, tb = eb.Moved(draw.Point{X: right}), tb.Moved(draw.Point{Y: up})
	a.box = fb.Join(eb).Join(tb)
	a.corner = draw.Box{Min: draw.Point{X: max(fb.Max.X, tb.Max.X) + gap, Y: a.box.Min.Y}, Max: draw.Point{X: a.box.Max.X, Y: eb.Min.Y - gap}}
	if o.Projection == "third" {
		a.corner.Min.Y, a.corner.Max.Y = eb.Max.Y+gap, a.box.Max.Y
	}
	return a
}

// drawnView is a view and where it is to be moved to; of most trials of a scale only the room is asked for.
type drawnView struct {
	items []draw.Item
	by    draw.Point
}

// moved gives all that is drawn, shifted by d.
func (a *arrangement) moved(d draw.Point) []draw.Item {
	out := draw.Moved(a.three[0].items, d)
	for _, v := range a.three[1:] {
		out = append(out, draw.Moved(v.items, draw.Point{X: v.by.X + d.X, Y: v.by.Y + d.Y})...)
	}
	return out
}

// pictures are the projections that a page of views needs.
type pictures struct {
	front, end, top, pictorial *view.Picture
	scene                      *view.Scene
}

func project(p *form.Piece, o Options) pictures {
	s := view.NewScene(p, flattening)
	pics := threePictures(s, o)
	pics.scene = s
	pics.pictorial = s.Project(view.Pictorial(o.Turn, o.Tip))
	return pics
}

// threePictures projects all but the pictorial.
func threePictures(s *view.Scene, o Options) pictures {
	d := Directions3(o.Projection)
	list := s.Pictures(d[0], d[2], d[1])
	return pictures{front: list[0], end: list[2], top: list[1]}
}

// Directions3 are the directions from which a drawing table shows a piece: from the front, from the end that stands beside it
// in a projection, and from above, which takes the longest.
func Directions3(projection string) [3]view.Direction {
	end := view.Left
	if projection == "third" {
		end = view.End
	}
	return [3]view.Direction{view.Front, end, view.Top}
}

// frontFigure gives the front view its dimensions: widths, height, splay, thicknesses.
func frontFigure(p *form.Piece, f *figure, o Options) *figure {
	if p.Form == form.Steps {
		return stepsFigure(p, f, o)
	}
	d := p.Design
	v := p.Overall
	h := v.Height.MM()
	top, floor := topSpan(p, f, false), span(p, f, false, v.WidthFloor, 0)
	f.Linear(dimension.Above, f.at(top[0], h), f.at(top[1], h), o.label(v.WidthTop), "size.width")
	f.Linear(dimension.Below, f.at(floor[0], 0), f.at(floor[1], 0), o.label(v.WidthFloor), "size.width")
	f.Linear(dimension.LeftOf, f.at(floor[0], 0), f.at(top[0], h), o.label(v.Height), "size.height")
	if t := d.Boards.Top.Thickness; p.Part("top") == nil {
		// no top, no thickness of one
	} else if o.Style.Both { // both units stand too long beside so short a distance
		f.Leader(f.at(top[1]/2, h-t.MM()/2), true, o.with("%s thick", o.label(t)), "boards.top.thickness", -60, -120)
	} else {
		f.Linear(dimension.LeftOf, f.at(top[0], h-t.MM()), f.at(top[0], h), o.label(t), "boards.top.thickness")
	}
	if evenAcross(p) {
		f.axis(f.at(0, 0), f.at(0, h), 3)
	}
	if d.Form == "ring" { // its staves stand edge on in the end view
		return f
	}
	left, right := endWalls(p)
	edges := span(p, f, false, v.WidthTop, h)
	if form.OnSides(d.Form) { // whose top may hang over
		edges = [2]float64{-sideTop(d), sideTop(d)}
	}
	sideEdges(f, edges, left, right, h, o)
	frontStretchers(p, f, o)
	thick(p, f, edges[0], h, left, o)
	return f
}

// sideTop is where a stool's sides' outer planes meet the level of its top: a top that hangs over is wider.
func sideTop(d form.Design) float64 {
	w := d.Size.Width.MM() / 2
	if d.Size.TakenAt == form.AtFloor {
		return w - d.Size.Height.MM()*math.Tan(d.Splay.Ends.Radians())
	}
	return w
}

// slight is the angle below which two legs can no longer be told apart on paper: it is noted in words.
const slight = 1.2 * measure.Degree

// plumbFrom is where on a leaning edge its plumb line starts, as part of the height: low enough to
// be no part of an extension line at the upper corner, high enough for the angle to open.
const plumbFrom = 0.64

// sideEdges marks the lean at the right hand edge of a view, and that at the left where it is another.
func sideEdges(f *figure, top [2]float64, left, right leaning, h float64, o Options) {
	sideEdge(f, draw.Point{X: top[1], Y: h}, 1, right, h, o)
	if left.lean != right.lean {
		sideEdge(f, draw.Point{X: top[0], Y: h}, -1, left, h, o)
	}
}

// sideEdge marks a lean from plumb at the right hand edge, or with -1 for the way at the left one, by a short plumb line of its
// own that starts on the edge.
func sideEdge(f *figure, corner draw.Point, way float64, w leaning, h float64, o Options) {
	a, tan := way*w.lean.Radians(), way*math.Tan(w.lean.Radians())
	if math.Abs(w.lean.Degrees()) < 0.05 {
		return
	}
	if math.Abs(a) < slight.Radians() {
		up, down := 30.0, -30.0
		if way < 0 {
			up, down = 150, -150
		}
		f.Leader(f.at(corner.X+0.85*h*tan, 0.15*h), false, o.with("%s from plumb", degrees(size(w.lean))), w.leanRef, up, down)
		return
	}
	plumb, lean := -math.Pi/2, -math.Pi/2+a
	v := f.at(corner.X+(1-plumbFrom)*h*tan, plumbFrom*h)
	long := plumbFrom * h * f.scale
	have := [2]float64{0, long / math.Cos(a)}
	if a < 0 {
		plumb, lean = lean, plumb
		have[0], have[1] = have[1], have[0]
	}
	tell := f.Angle // with its value outside the view
	if way < 0 {
		tell = f.AngleBefore
	}
	tell(v, plumb, lean, have, []float64{0.72 * long, 0.62 * long, 0.82 * long, 0.52 * long, 0.9 * long, 0.42 * long}, degrees(size(w.lean)), w.leanRef)
}

// frontStretchers places each stretcher below the underside of the top; its own sizes are on its sheet.
func frontStretchers(p *form.Piece, f *figure, o Options) {
	d := p.Design
	under := p.Overall.Height - d.Boards.Top.Thickness
	inner := func(z measure.Length) draw.Point { // on the right side's inner face, where both corners are
		a := d.Splay.Ends.Radians()
		return f.at(sideTop(d)+(p.Overall.Height-z).MM()*math.Tan(a)-d.Boards.Side.Thickness.MM()/math.Cos(a), z.MM())
	}
	for i, s := range d.Stretchers {
		if s.BelowTop > 0 {
			f.Linear(dimension.RightOf, inner(under-s.BelowTop), inner(under), o.label(s.BelowTop), sizePath("stretchers", i)+".below-top")
		}
	}
}

// endFigure gives the end view its dimensions: depths, splay of the edges, features of the sides.
func endFigure(p *form.Piece, f *figure, o Options) *figure {
	v := p.Overall
	h := v.Height.MM()
	top, floor := topSpan(p, f, true), span(p, f, true, v.DepthFloor, 0)
	f.Linear(dimension.Above, f.at(top[0], h), f.at(top[1], h), o.label(v.DepthTop), "size.depth")
	left, right := besideEnd(p, o)
	third, even := o.Projection == "third", p.Form != "ring" || p.Design.Size.Staves%2 == 0
	if math.Abs((v.DepthFloor-v.DepthTop).MM()) > 0.1 || left.lean != right.lean {
		f.Linear(dimension.Below, f.at(floor[0], 0), f.at(floor[1], 0), o.label(v.DepthFloor), "size.depth")
		if even || !third { // else a corner stands at the right
			at := [2]float64{floor[0] + h*math.Tan(left.lean.Radians()), floor[1] - h*math.Tan(right.lean.Radians())}
			sideEdges(f, at, left, right, h, o)
		}
	}
	if p.Form == "ring" && (even || third) {
		thick(p, f, top[0], h, left, o)
	}
	apronSet(p, f, o)
	if evenDeep(p) {
		f.axis(f.at(0, 0), f.at(0, h), 3)
	}
	return f
}

// apronSet notes in the end view how far aprons are set in and how far below the top they hang.
func apronSet(p *form.Piece, f *figure, o Options) {
	q := slices.IndexFunc(p.Parts, func(q *part.Part) bool { return strings.HasPrefix(q.ID, "apron-") })
	if q < 0 {
		return
	}
	a := p.Design.Aprons
	at := f.dir.Point(p.Parts[q].Place.Col(3).Vec3())
	f.Leader(f.at(at.X, at.Y), false, o.with("%s set in", o.label(*a.SetIn)), "aprons.set-in", 30, -30, 45, -45)
	if a.BelowTop > 0 {
		f.Leader(f.at(at.X, (p.Overall.Height-p.Design.Boards.Top.Thickness-a.BelowTop).MM()), false,
			o.with("%s below the top", o.label(a.BelowTop)), "aprons.below-top", 30, -30, 45, -45)
	}
}

// topFigure gives the view from above what only it can show: where stretchers lie across.
func topFigure(p *form.Piece, f *figure, o Options) *figure {
	w := p.Overall.WidthTop.MM() / 2
	for i, s := range p.Design.Stretchers {
		if s.Across != 0 {
			alongStretcher(p, f, fmt.Sprintf("stretcher-%d", i+1), s.Across.MM())
			f.Linear(dimension.RightOf, f.at(w, 0), f.at(w, s.Across.MM()), o.label(measure.Length(math.Abs(s.Across.MM()))), sizePath("stretchers", i)+".across")
		}
	}
	middleLines(p, f)
	return f
}

// alongStretcher draws the centre line that a stretcher's place is measured to, where no screw's stands there.
func alongStretcher(p *form.Piece, f *figure, id string, across float64) {
	q := p.Part(id)
	if q == nil {
		return
	}
	for _, o := range p.Parts {
		for _, b := range o.Bores {
			at, way := mgl64.TransformCoordinate(b.Entry, o.Place), mgl64.TransformNormal(b.Axis, o.Place)
			if math.Abs(at[1]-across) < sameShape && math.Abs(way[1]) < sameShape && math.Abs(way[0]) > math.Abs(way[2]) {
				return
			}
		}
	}
	middle, half := q.Place.Col(3)[0], q.Blank.Length.MM()/2
	f.axis(f.at(middle-half, across), f.at(middle+half, across), 3)
}

// inCorner scales the pictorial to the room that the views leave.
func inCorner(p *form.Piece, pics pictures, room draw.Box, i ink) []draw.Item {
	pic := pics.pictorial
	w, h := pic.Max.X-pic.Min.X, pic.Max.Y-pic.Min.Y
	if w <= 0 || h <= 0 || room.Width() < 15 || room.Height() < 15 {
		return nil
	}
	scale := min(room.Width()/w, room.Height()/h) * 0.94
	f := newFigure(pic, scale, i, false)
	markPictorial(p, pic, newFronts(pics.scene, pic.Direction), f)
	items := f.Finish()
	b := draw.Bounds(items)
	return draw.Moved(items, draw.Point{X: (room.Min.X + room.Max.X - b.Min.X - b.Max.X) / 2, Y: (room.Min.Y + room.Max.Y - b.Min.Y - b.Max.Y) / 2})
}

// largest gives the arrangement at the largest scale whose views fit the room, at the smallest when
// none does.
func largest(p *form.Piece, pics pictures, room draw.Box, o Options) (arrangement, string) {
	var a arrangement
	var name string
	for _, s := range o.scales() {
		if pics.front.Max.X-pics.front.Min.X > room.Width()/s.of {
			continue
		}
		a, name = threeViews(p, pics, s.of, o), s.name
		if a.box.Width() <= room.Width() && a.box.Height() <= room.Height() {
			break
		}
	}
	return a, name
}

const generalTitle = "General arrangement"

// general is the first sheet: the whole piece, and the list of the set's sheets.
func general(p *form.Piece, s set, sheets []listed) *blank {
	b := s.sheet(entry{title: s.o.say(generalTitle)}, true)
	pics := project(p, s.o)
	// the list of sheets stands where it leaves the views the larger scale: beside the title block, or in a
	// column of its own at the right
	list, side := b.layList(sheets), b.sideList(sheets)
	below, beside := b.room, b.room
	below.Min.Y = max(b.room.Min.Y, list.at.Y+2)
	beside.Max.X = side.at.X - gap
	a, name := largest(p, pics, below, s.o)
	if c, other := largest(p, pics, beside, s.o); below.Min.Y > b.room.Min.Y && c.scale > a.scale && side.height() < b.room.Height() {
		a, name, list, below = c, other, side, beside
	}
	b.room = below
	list.draw(b)
	b.entry.scale = name
	d := draw.Point{X: b.room.Min.X + (b.room.Width()-a.box.Width())*0.35 - a.box.Min.X, Y: b.room.Max.Y - (b.room.Height()-a.box.Height())/2 - a.box.Max.Y}
	b.Items = append(b.Items, a.moved(d)...)
	corner := a.corner.Moved(d)
	corner.Max.X = b.room.Max.X
	if s.o.Projection == "third" {
		corner.Max.Y = b.room.Max.Y
	} else {
		corner.Min.Y = b.room.Min.Y
	}
	b.Items = append(b.Items, inCorner(p, pics, corner, b.ink)...)
	return b
}

// Table3 is what a drawing table shows: front, end and top with dimensions, placed by projection,
// without a frame. The pictorial turns in a place of its own there. Only the whole of it is scaled,
// so that the values stay as large as on paper.
func Table3(p *form.Piece, o Options) draw.Page {
	o = o.fill(p)
	t := threePictures(view.NewScene(p, flattening), o)
	page, _ := Scaled3(p, [3]*view.Picture{t.front, t.end, t.top}, o)
	return page
}

// Scaled3 is Table3 of a piece whose pictures from Directions3 are there already, with where its views lie; nothing is shown of
// a piece without solids.
func Scaled3(p *form.Piece, three [3]*view.Picture, o Options) (page draw.Page, shown Shown) {
	o = o.fill(p)
	size := sizes[o.Sheet]
	if o.Width > 0 && o.Height > 0 {
		size = [2]float64{o.Width, o.Height}
	}
	page = draw.Page{Title: p.Title, Width: size[0], Height: size[1]}
	all := draw.Box{Max: draw.Point{X: size[0], Y: size[1]}}
	page.Items = append(page.Items, draw.Path{Segs: draw.Rect(all), Filled: true, Fill: o.ink().paper, Layer: "paper"})
	pics := pictures{front: three[0], end: three[1], top: three[2]}
	if len(pics.front.Lines) == 0 {
		return page, Shown{}
	}
	room := all.Grow(-tableMargin)
	a, scale := fitted(p, pics, room, o)
	d := draw.Point{X: room.Min.X - a.box.Min.X + (room.Width()-a.box.Width())/2, Y: room.Min.Y - a.box.Min.Y + (room.Height()-a.box.Height())/2}
	page.Items = append(page.Items, a.moved(d)...)
	page.Retext(o.Style.Text)
	return page, Shown{scale, moved(a.views, d)}
}

// tableMargin is what stays free round the views on a drawing table, mm.
const tableMargin = 4.0

// fitted takes any scale, so that the views fill a screen. Dimensions keep their size, so the scale
// is corrected by what the trial before took for them.
func fitted(p *form.Piece, pics pictures, room draw.Box, o Options) (a arrangement, scale float64) {
	v := p.Overall
	depth := max(v.DepthTop, v.DepthFloor).MM()
	w, h := max(v.WidthTop, v.WidthFloor).MM()+depth, v.Height.MM()+depth
	const dims = 80.0 // about what dimensions and gaps take each way, mm
	scale = min((room.Width()-dims)/w, (room.Height()-dims)/h)
	a = roughly(p, pics, scale, o)
	for trial := range 4 {
		better := min((room.Width()-(a.box.Width()-w*scale))/w, (room.Height()-(a.box.Height()-h*scale))/h)
		if better < 0.2*scale {
			better = 0.8 * scale // more dimensions than room: the views give way
		}
		if near := math.Abs(better-scale) < 0.01*scale; trial > 0 && near && fitsIn(a.box, room.Grow(3)) {
			break
		}
		scale = better
		a = threeViews(p, pics, scale, o)
		if fitsIn(a.box, room.Grow(0.5)) {
			break
		}
	}
	return a, scale
}
