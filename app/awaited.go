package app

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"splaywright/app/session"
	"splaywright/app/viewer"
	"splaywright/model/stock"
	"splaywright/render/table"
)

// planned is the plan that was shown last of a list of boards.
type planned struct {
	of     *session.Session
	listed []stock.Board // one by one, in the design
	boards []stock.Board // and those that the yard had
	cuts   []viewer.BoardCuts
}

// fresh tells whether a plan has been looked for so shortly that what the last one says may still stand: taken away and
// brought back at once, it would flicker.
func (p *boardPlan) fresh() bool { return p.busy && time.Since(p.since) < session.Patience }

// awaiting gives the boards of a list that has no plan yet, each with the room that it had: as many of those that are alike,
// and what lay open below them. What the plan cut from them stands no longer, unless they are the same boards still and it is
// not yet overdue.
func (l planned) awaiting(listed []stock.Board, overdue bool) (boards []stock.Board, cuts []viewer.BoardCuts) {
	boards, overdue = slices.Clone(listed), overdue || !sameBoards(l.listed, listed)
	place, taken := map[int]int{}, map[int]bool{}
	for i, b := range listed {
		if was := l.place(b, i, taken); was >= 0 {
			place[was], taken[was] = i, true
		}
	}
	for k := len(l.listed); k < len(l.boards); k++ {
		place[k] = len(boards)
		boards = append(boards, l.boards[k])
	}
	nth, of := map[int]int{}, map[int]int{}
	for _, c := range l.cuts {
		of[c.Layout.Board]++
	}
	for _, c := range l.cuts {
		i, is := place[c.Layout.Board]
		if !is || nth[i] == boards[i].Number() {
			continue
		}
		nth[i]++
		was := of[c.Layout.Board]
		c.Layout.Board, c.Awaited = i, overdue
		c.Title = table.NameOfNth(boards[i], nth[i], min(was, boards[i].Number()))
		cuts = append(cuts, c)
	}
	return boards, cuts
}

// place finds a board of the design among those that were planned: the one in the same place, unless that has another name
// and one further on has its; -1 = it is new.
func (l planned) place(b stock.Board, at int, taken map[int]bool) int {
	same := func(k int) bool { return !taken[k] && l.listed[k].Name == b.Name }
	if at < len(l.listed) && same(at) {
		return at
	}
	for k := range l.listed {
		if same(k) {
			return k
		}
	}
	if at < len(l.listed) && !taken[at] {
		return at // it has got another name
	}
	return -1
}

// ofItsLine puts what is seen beside each other, as high as the line that it stands in: when it comes or goes, nothing below
// moves.
type ofItsLine struct{}

func (ofItsLine) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		wide := o.MinSize().Width
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(wide, size.Height))
		x += wide + theme.Padding()
	}
}

func (ofItsLine) MinSize(objects []fyne.CanvasObject) (least fyne.Size) {
	for _, o := range objects {
		if o.Visible() {
			least.Width += o.MinSize().Width + theme.Padding()
		}
	}
	return least
}
