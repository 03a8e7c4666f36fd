package app

import (
	"context"
	"errors"

	"fyne.io/fyne/v2"

	"splaywright/app/say"
	"splaywright/app/session"
	"splaywright/model/part"
	"splaywright/model/remedy"
)

func errUnread() error {
	return errors.New(say.It("the design as it stands cannot be read; mend what is marked in the column of sizes first"))
}

// offering is the looking for what would clear a finding.
type offering struct {
	work   session.Latest
	cancel context.CancelFunc
	asked  int
}

// whatWouldDo looks for changes that clear a finding, beside everything else, and shows them under it.
// A change of the design in the meantime calls the looking off.
func (w *Window) whatWouldDo(f part.Finding) {
	w.callOffOffers()
	ctx, cancel := context.WithCancel(context.Background())
	w.offers.cancel = cancel
	n, doc := w.offers.asked, w.s.Document().Clone()
	w.findings.Wait(f)
	w.offers.work.Do(func() {
		offers, err := remedy.Offers(ctx, doc, f)
		cancel()
		fyne.Do(func() {
			if n == w.offers.asked && err == nil {
				w.findings.Offer(f, offers)
			}
		})
	})
}

func (w *Window) callOffOffers() {
	w.offers.asked++
	if w.offers.cancel != nil {
		w.offers.cancel()
		w.offers.cancel = nil
	}
}

// accept makes a change that clears a finding.
func (w *Window) accept(o remedy.Offer) {
	if err := w.s.Accept(o); err != nil {
		w.tell(say.It("Accept"), err)
		return
	}
	w.changed()
}
