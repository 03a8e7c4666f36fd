package form

import (
	"fmt"
	"strings"
	"testing"

	"splaywright/model/stock"
)

// Boards that nobody named are told apart by their list and their place in it, in the language that is spoken; a name that
// somebody gave stays, whatever it reads like.
func TestUnnamedBoardsAreToldApart(t *testing.T) {
	d := Design{
		OnHand: []stock.Board{{Name: "board 1", Unnamed: true}, {Name: "board 7"}, {Name: "board 3", Unnamed: true}},
		ToBuy:  []stock.Board{{Name: "yard board 1", Unnamed: true}},
	}
	said := d.Named(func(format string, figures ...any) string {
		return strings.ToUpper(fmt.Sprintf(format, figures...))
	})
	var got []string
	for _, b := range append(said.OnHand, said.ToBuy...) {
		got = append(got, b.Name)
	}
	if want := "BOARD 1, board 7, BOARD 3, YARD BOARD 1"; strings.Join(got, ", ") != want {
		t.Errorf("they are called %q, want %s", got, want)
	}
	if d.OnHand[0].Name != "board 1" {
		t.Error("the design itself has changed")
	}
}
