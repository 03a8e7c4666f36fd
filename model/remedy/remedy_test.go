package remedy_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"splaywright/assets"
	"splaywright/model"
	"splaywright/model/file"
	"splaywright/model/file/filetest"
	"splaywright/model/form"
	"splaywright/model/measure"
	"splaywright/model/part"
	"splaywright/model/remedy"
)

const bench = `splaywright: 1
title: Bench
units: mm
form: stool
size: {height: 440, width: 800, depth: 300}
splay: {ends: 10, edges: 2}
timber: white oak
boards: {top: {thickness: 20}, side: {thickness: 18}}
corners: {joint: housing}
`

func document(t testing.TB, text string) *file.Document {
	t.Helper()
	return filetest.Document(t, []byte(text))
}

func derive(t testing.TB, doc *file.Document) *form.Piece {
	t.Helper()
	d, err := doc.Design()
	if err != nil {
		t.Fatal(err)
	}
	return model.Derive(d)
}

func find(p *form.Piece, id string) (part.Finding, bool) {
	i := slices.IndexFunc(p.Findings, func(f part.Finding) bool { return f.ID == id })
	if i < 0 {
		return part.Finding{}, false
	}
	return p.Findings[i], true
}

// A thin long top sags: a thicker one is offered, and a stretcher right under it; each clears the
// finding, and half a millimetre less of the thickness does not.
func TestSagIsCleared(t *testing.T) {
	doc := document(t, bench)
	f, found := find(derive(t, doc), "top-sags")
	if !found {
		t.Fatal("the top does not sag")
	}
	offers, err := remedy.Offers(context.Background(), doc, f)
	if err != nil {
		t.Fatal(err)
	}
	thicker, more := -1, -1
	for i, o := range offers {
		next := doc.Clone()
		if err := o.Apply(next); err != nil {
			t.Fatal(err)
		}
		if _, still := find(derive(t, next), "top-sags"); still {
			t.Errorf("%+v does not clear it", o)
		}
		switch o.Path {
		case "boards.top.thickness":
			thicker = i
		case "stretchers":
			more = i
		}
	}
	if thicker < 0 || more < 0 {
		t.Fatalf("offered: %+v", offers)
	}
	less := offers[thicker]
	next := doc.Clone()
	less.Now = halfLess(t, less.Now)
	if err := less.Apply(next); err != nil {
		t.Fatal(err)
	}
	p := derive(t, next)
	_, still := find(p, "top-sags")
	if !still && !p.Stopped() {
		t.Errorf("%s would have done", less.Now)
	}
}

// halfLess is a text of millimetres, half a millimetre less.
func halfLess(t *testing.T, text string) string {
	t.Helper()
	l, err := measure.ParseLength(text, measure.Metric)
	if err != nil {
		t.Fatal(err)
	}
	return fmt.Sprintf("%g mm", l.MM()-0.5)
}

// eachOffer makes what is offered for each finding of a piece, and tells what is found then. It must clear the finding.
func eachOffer(t *testing.T, doc *file.Document, p *form.Piece, tell func(f part.Finding, o remedy.Offer, after *form.Piece)) {
	t.Helper()
	for _, f := range p.Findings {
		offers, err := remedy.Offers(context.Background(), doc, f)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range offers {
			next := doc.Clone()
			if err := o.Apply(next); err != nil {
				t.Fatalf("%+v: %v", o, err)
			}
			after := derive(t, next)
			if g, still := find(after, f.ID); still && slices.Equal(g.Parts, f.Parts) {
				t.Errorf("%s: %+v leaves it", f.ID, o)
			}
			tell(f, o, after)
		}
	}
}

// Whatever is found in the examples and in some spoilt ones: what is offered clears it and brings no
// other stop or warning.
func TestOffersAreProved(t *testing.T) {
	texts := []string{bench, strings.Replace(bench, "joint: housing", "joint: butt, screws: {gauge: 8, length: 24, count: 3}", 1), strings.Replace(bench, "ends: 10", "ends: 25", 1)}
	for _, e := range assets.Examples() {
		texts = append(texts, string(e.YAML))
	}
	offered := 0
	for _, text := range texts {
		doc := document(t, text)
		p := derive(t, doc)
		eachOffer(t, doc, p, func(f part.Finding, o remedy.Offer, after *form.Piece) {
			offered++
			for _, g := range after.Findings {
				if _, known := find(p, g.ID); !known && g.Level != part.Note {
					t.Errorf("%s: %+v brings %s", f.ID, o, g.Text)
				}
			}
		})
	}
	if offered < 5 {
		t.Errorf("only %d offers", offered)
	}
}

// Given up at once when it is called off.
func TestCalledOff(t *testing.T) {
	doc := document(t, bench)
	f, _ := find(derive(t, doc), "top-sags")
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := remedy.Offers(ctx, doc, f); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
}

// A taper that begins in the joint is offered the other end of its edge, and there it clears.
func TestATaperIsTurnedRound(t *testing.T) {
	doc := document(t, strings.Replace(bench, "joint: housing", "joint: through dovetail", 1)+
		"features: [{on: side, kind: taper, edge: front-edge, from: top-end, length: 120, depth: 20}]\n")
	f, found := find(derive(t, doc), "opening-in-joint")
	if !found {
		t.Fatal("the taper is in no joint")
	}
	offers, err := remedy.Offers(context.Background(), doc, f)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(offers, func(o remedy.Offer) bool { return o.Path == "features.0.from" })
	if i < 0 || offers[i].Was != "top-end" || offers[i].Now != "floor-end" {
		t.Fatalf("offered are %v", offers)
	}
	if err := offers[i].Apply(doc); err != nil {
		t.Fatal(err)
	}
	if _, found := find(derive(t, doc), "opening-in-joint"); found {
		t.Error("turned round it is still in the joint")
	}
}

// The notch over a stopped tongue that leaves no room (the staves of model/notch_test.go): what the finding says would do is
// offered, the joint that runs out and other joints too, and each clears it.
func TestTheNotchOverATongueIsCleared(t *testing.T) {
	doc := document(t, "splaywright: 1\nform: ring\nsize: {height: 195, width: 404, staves: 15, taken-at: floor}\nsplay: {ends: -20}\ntimber: white oak\nboards: {side: {thickness: 27}}\ncorners: {joint: housing, stop: 3}\n")
	f, found := find(derive(t, doc), "notch-without-room")
	if !found {
		t.Fatal("the notch has room")
	}
	offers, err := remedy.Offers(context.Background(), doc, f)
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, o := range offers {
		said = append(said, o.String())
		next := doc.Clone()
		if err := o.Apply(next); err != nil {
			t.Fatal(err)
		}
		if _, still := find(derive(t, next), f.ID); still {
			t.Errorf("%s does not clear it", o)
		}
	}
	for _, want := range []string{"corners.stop: 3 mm → 0 mm", "boards.side.thickness: 27 mm → 21 mm", "size.staves: 15 → 13", "size.width: 404 mm → 474.5 mm", "corners.joint: housing → mitre with splines"} {
		if !slices.Contains(said, want) {
			t.Errorf("%q is not offered, but %q", want, said)
		}
	}
}

// A notch over a skirting board narrows the feet until the piece tips at its back edge: a shallower one is offered.
func TestANotchThatNarrowsTheFeetIsOfferedShallower(t *testing.T) {
	doc := document(t, "splaywright: 1\nform: stool\nsize: {height: 260, width: 420, depth: 250}\nsplay: {ends: 6, edges: 0}\ntimber: white oak\nboards: {top: {thickness: 20}, side: {thickness: 20}}\ncorners: {joint: through dovetail, tails-on: top, tails: 5}\nfeatures:\n  - {on: side, kind: notch, edge: back-edge, from: floor-end, width: 80, depth: 60}\n")
	f, found := find(derive(t, doc), "platform-tips")
	if !found {
		t.Fatal("it does not tip")
	}
	offers, err := remedy.Offers(context.Background(), doc, f)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(offers, func(o remedy.Offer) bool { return o.Path == "features.0.depth" })
	if i < 0 {
		t.Fatalf("offered are %v", offers)
	}
	if err := offers[i].Apply(doc); err != nil {
		t.Fatal(err)
	}
	if _, still := find(derive(t, doc), f.ID); still {
		t.Errorf("%s does not clear it", offers[i])
	}
}

// For tails that are too wide a joiner makes more of them, whichever size was typed, and leaves the pins as they are: that
// comes first, and pins that grow until they suit the tails are not offered at all.
func TestForWideTailsMoreTailsComeFirst(t *testing.T) {
	const stool = "splaywright: 1\nform: stool\nsize: {height: 300, width: 600, depth: 280}\nsplay: {ends: 8}\ntimber: white oak\nboards: {top: {thickness: 20}, side: {thickness: 20}}\ncorners: {joint: through dovetail, %s}\n"
	const tray = "splaywright: 1\nform: tray\nsize: {height: 200, width: 600, depth: 280}\nsplay: {ends: 8}\ntimber: white oak\nboards: {side: {thickness: 20}}\ncorners: {joint: through dovetail, %s}\n"
	for _, c := range []struct{ form, typed, first string }{
		{stool, "tails: 3, pin: 6, half-pin: 8", "corners.tails: 3 → 8"},
		{stool, "tail: 60", "corners.tails: 4 → 6; corners.tail: 60 → left out"},
		{stool, "tail: 60, pin: 10", "corners.tails: 4 → 6; corners.tail: 60 → left out"},
		{stool, "tail: 60, tails: 4", "corners.tails: 4 → 6; corners.tail: 60 → left out"},
		{stool, "tail: 57.5, tails: 4, pin: 10, half-pin: 10", "corners.tails: 4 → 6; corners.tail: 57.5 → left out"},
		{stool, "tail-widths: [60, 90, 60], pin: 10", "corners.tails: 3 → 6; corners.tail-widths: [60, 90, 60] → left out"},
		{stool, "tail-widths: [60, 70], mirrored: true", "corners.tails: 4 → 6; corners.tail-widths: [60, 70] → left out; corners.mirrored: true → left out"},
		{tray, "tails: 2", "corners.tails: 2 → 4"},
		{tray, "tail: 80", "corners.tails: 2 → 4; corners.tail: 80 → left out"},
	} {
		doc := document(t, fmt.Sprintf(c.form, c.typed))
		before := derive(t, doc)
		f, found := find(before, "tail-wide")
		if !found {
			t.Fatalf("%s: the tails are not wide", c.typed)
		}
		offers, err := remedy.Offers(context.Background(), doc, f)
		if err != nil {
			t.Fatal(err)
		}
		if len(offers) == 0 || offers[0].String() != c.first {
			t.Errorf("%s: offered are %v, want first %s", c.typed, offers, c.first)
			continue
		}
		for _, o := range offers {
			next := doc.Clone()
			if err := o.Apply(next); err != nil {
				t.Fatal(err)
			}
			was, now := before.Joints[0], derive(t, next).Joints[0]
			if a, b := was.Pins[1].Width(), now.Pins[1].Width(); len(now.Tails) <= len(was.Tails) && b > a*5/4 {
				t.Errorf("%s: %s makes pins of %.1f mm of pins of %.1f mm", c.typed, o, b.MM(), a.MM())
			}
		}
	}
}
