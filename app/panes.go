package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"splaywright/app/keyed"
	"splaywright/app/look"
	"splaywright/app/panel"
	"splaywright/app/say"
)

// With less room than this, window units, the window shows one of its parts at a time.
const (
	leastWide = 720
	leastHigh = 430
)

// panes are the parts of the window. Where there is room they stand side by side; in a small window, or on a
// large scale, one is shown and a row of buttons chooses it.
type panes struct {
	parts   []fyne.CanvasObject // in the order of the buttons
	groups  []fyne.CanvasObject // what holds parts: hidden with the last of them
	holds   [][]int             // the parts of each group
	buttons []*keyed.Button
	bar     fyne.CanvasObject
	all     fyne.CanvasObject
	object  *fyne.Container
	chosen  int
	small   bool
	stale   bool // parts have come or gone since they were laid out
}

// paneNames are the names of the parts, in the order of the buttons.
func paneNames() []string {
	return []string{say.It("Sizes"), say.It("Drawing"), say.It("Pictorial"), say.It("Tables")}
}

// newPanes takes the window's content, its four parts, and the groups that hold several of them.
func newPanes(all fyne.CanvasObject, parts []fyne.CanvasObject, groups []fyne.CanvasObject, holds [][]int) *panes {
	p := &panes{all: all, parts: parts, groups: groups, holds: holds, chosen: 1}
	row := container.NewHBox()
	for i, name := range paneNames() {
		b := keyed.NewButton(name, func() { p.choose(i) })
		p.buttons = append(p.buttons, b)
		row.Add(b)
	}
	p.bar = panel.Backed(look.Strip, container.NewHScroll(row))
	p.object = container.New(p, p.bar, all)
	p.show()
	return p
}

// choose shows a part alone while the window is small.
func (p *panes) choose(part int) {
	p.chosen = part
	p.show()
	p.object.Refresh()
}

// show hides what is not to be seen.
func (p *panes) show() {
	p.stale = true
	seen := func(i int) bool { return !p.small || i == p.chosen }
	for i, part := range p.parts {
		visible(part, seen(i))
		p.buttons[i].Importance = widget.LowImportance
		if i == p.chosen {
			p.buttons[i].Importance = widget.HighImportance
		}
	}
	for k, g := range p.groups {
		any := false
		for _, i := range p.holds[k] {
			any = any || seen(i)
		}
		visible(g, any)
	}
	visible(p.bar, p.small)
	if p.small {
		p.bar.Refresh()
	}
}

func visible(o fyne.CanvasObject, on bool) {
	if o.Visible() == on {
		return
	}
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

// Layout is for Fyne.
func (p *panes) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	if small := size.Width < leastWide || size.Height < leastHigh; small != p.small {
		p.small = small
		p.show()
	}
	y := float32(0)
	if p.small {
		y = p.bar.MinSize().Height
		p.bar.Move(fyne.NewPos(0, 0))
		p.bar.Resize(fyne.NewSize(size.Width, y))
	}
	p.all.Move(fyne.NewPos(0, y))
	p.all.Resize(fyne.NewSize(size.Width, size.Height-y))
	if !p.stale {
		return
	}
	p.stale = false
	for _, g := range append(p.groups, p.all) {
		g.Refresh() // its parts have come or gone, maybe at the same size
	}
}

// MinSize lets the window be as small as one part can be.
func (p *panes) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(240, 160) }
