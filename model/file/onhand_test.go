package file

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"splaywright/model/form"
	"splaywright/model/stock"
)

const withBoards = `splaywright: 1
title: Gate stool
units: in
form: stool
size: {height: 12, width: 18, depth: 9}
plan: {trim-ends: 1, keep: 5, first: rip, run: true}
boards-on-hand:
  - name: gate rail
    timber: white oak
    length: 5 ft
    width: 9 1/2
    thickness: 30 mm      # after planing off the paint
    price: 12.50
    outline: [{x: 0, y: 0}, {x: 60, y: 1/2}, {x: 60, y: 9 1/2}, {x: 0, y: 9 1/2}]
    avoid:
      - {what: hinge holes, from: right near, x: 2, y: 0, length: 6, width: 3}
      - {what: knot, x: 20, y: 4, diameter: 1 1/4}
  - {length: 48, width: 8, thickness: 1, count: 3}
`

func TestBoardsOnHandAreRead(t *testing.T) {
	d, err := Read(strings.NewReader(withBoards), "gate.yaml")
	if err != nil {
		t.Fatal(err)
	}
	got, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	in := 25.4
	want := []stock.Board{
		{Name: "gate rail", Timber: "white oak", Length: 60 * in, Width: 9.5 * in, Thickness: 30, Price: 12.5,
			Outline: []stock.Point{{X: 0, Y: 0}, {X: 60 * in, Y: 0.5 * in}, {X: 60 * in, Y: 9.5 * in}, {X: 0, Y: 9.5 * in}},
			Avoid: []stock.Avoid{
				{What: "hinge holes", From: stock.RightNear, X: 2 * in, Y: 0, Length: 6 * in, Width: 3 * in},
				{What: "knot", X: 20 * in, Y: 4 * in, Diameter: 1.25 * in},
			}},
		{Name: "board 2", Unnamed: true, Length: 48 * in, Width: 8 * in, Thickness: in, Count: 3},
	}
	if diff := cmp.Diff(want, got.OnHand, cmpopts.EquateApprox(0, 1e-9)); diff != "" {
		t.Errorf("boards (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(form.Plan{TrimEnds: 25.4, Keep: 127, First: "rip", Run: true}, got.Plan); diff != "" {
		t.Errorf("plan (-want +got):\n%s", diff)
	}
}

// A board that is typed in later stands in the file as a board with its comment kept.
func TestABoardIsChangedInPlace(t *testing.T) {
	d, err := Read(strings.NewReader(withBoards), "gate.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Set("boards-on-hand.0.thickness", "28 mm"); err != nil {
		t.Fatal(err)
	}
	if text := string(d.Bytes()); !strings.Contains(text, "thickness: 28 mm      # after planing off the paint") {
		t.Errorf("the comment is gone:\n%s", text)
	}
}
