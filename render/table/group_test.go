package table

import "testing"

func TestJoinNames(t *testing.T) {
	for want, names := range map[string][]string{
		"Top":                          {"Top"},
		"Side, left and right":         {"Side, left", "Side, right"},
		"Stretcher 1 and Stretcher 2":  {"Stretcher 1", "Stretcher 2"},
		"Stave 1–6":                    {"Stave 1", "Stave 2", "Stave 3", "Stave 4", "Stave 5", "Stave 6"},
		"Stave 9–11":                   {"Stave 9", "Stave 10", "Stave 11"},
		"Stave 1, Stave 2 and Stave 4": {"Stave 1", "Stave 2", "Stave 4"},
	} {
		if got := JoinNames(names); got != want {
			t.Errorf("%q: %q, want %q", names, got, want)
		}
	}
}
