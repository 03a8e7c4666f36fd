package field

import (
	"fyne.io/fyne/v2"
)

// labelWidth is the room for names, window units; a longer name takes two lines.
const labelWidth = 108

// CreateRenderer is for Fyne.
func (f *Field) CreateRenderer() fyne.WidgetRenderer { return &renderer{f: f} }

type renderer struct {
	f     *Field
	width float32
}

func (r *renderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.f.label, r.f.input, r.f.said, r.f.notices}
}

// Layout puts the name left, the input right of it, and what is said below the input. Text that
// wraps knows its height only once it has its width, so the width is given first.
func (r *renderer) Layout(size fyne.Size) {
	r.width = size.Width
	r.f.label.Move(fyne.NewPos(0, 0))
	r.f.label.Resize(fyne.NewSize(labelWidth, r.nameHeight()))
	input := r.f.input.MinSize().Height
	w := size.Width - labelWidth
	r.f.input.Move(fyne.NewPos(labelWidth, 0))
	r.f.input.Resize(fyne.NewSize(w, input))
	if r.f.said.Visible() {
		r.f.said.Move(fyne.NewPos(labelWidth, input-tuck))
		r.f.said.Resize(fyne.NewSize(w, r.saidHeight(w)))
	}
	r.f.notices.Move(fyne.NewPos(0, r.row(size.Width)))
	r.f.notices.Resize(fyne.NewSize(size.Width, r.noticesHeight(size.Width)))
}

// tuck brings what is said up to the input: the label has room above its line already.
const tuck = 4

// row is how high the name stands beside the input and what is said below that.
func (r *renderer) row(width float32) float32 {
	h := r.f.input.MinSize().Height
	if r.f.said.Visible() {
		h += r.saidHeight(width-labelWidth) - tuck
	}
	return max(h, r.nameHeight())
}

func (r *renderer) nameHeight() float32 {
	if r.f.label.Size().Width != labelWidth { // it wraps, and knows its height only once it has its width
		r.f.label.Resize(fyne.NewSize(labelWidth, r.f.label.Size().Height))
	}
	return max(r.f.label.MinSize().Height, r.f.input.MinSize().Height)
}

func (r *renderer) saidHeight(width float32) float32 {
	r.f.said.Resize(fyne.NewSize(width, r.f.said.Size().Height))
	return r.f.said.MinSize().Height
}

func (r *renderer) noticesHeight(width float32) float32 {
	if len(r.f.notices.Objects) == 0 {
		return 0
	}
	r.f.notices.Resize(fyne.NewSize(width, r.f.notices.MinSize().Height))
	return r.f.notices.MinSize().Height
}

func (r *renderer) MinSize() fyne.Size {
	width := r.width
	if width == 0 {
		width = leastWidth
	}
	return fyne.NewSize(leastWidth, r.row(width)+r.noticesHeight(width))
}

const leastWidth = labelWidth + 130

func (r *renderer) Refresh() {
	r.Layout(r.f.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *renderer) Destroy() {}
