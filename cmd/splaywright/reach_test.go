//go:build !nowindow

package main

import (
	"strings"
	"testing"
)

func TestADisplayThatDoesNotAnswerIsNamed(t *testing.T) {
	for _, c := range []struct{ display, wayland, name string }{
		{":7", "", ":7"}, {":7", "wayland-1", ":7"}, {"", "wayland-1", "wayland-1"},
	} {
		env := map[string]string{"DISPLAY": c.display, "WAYLAND_DISPLAY": c.wayland}
		said := unreached(func(k string) string { return env[k] }).Error()
		if !strings.Contains(said, "the display "+c.name+" does not answer") || !strings.Contains(said, "splaywright show") {
			t.Errorf("%+v: %q", c, said)
		}
	}
}
