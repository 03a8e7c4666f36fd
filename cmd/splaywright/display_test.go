package main

import (
	"strings"
	"testing"
)

func TestAWindowNeedsADisplay(t *testing.T) {
	for _, c := range []struct {
		system, display, wayland string
		opens                    bool
	}{
		{"linux", ":0", "", true}, {"linux", "", "wayland-0", true}, {"linux", "", "", false},
		{"freebsd", "", "", false}, {"windows", "", "", true}, {"darwin", "", "", true},
	} {
		env := map[string]string{"DISPLAY": c.display, "WAYLAND_DISPLAY": c.wayland}
		why := noDisplay(c.system, func(k string) string { return env[k] })
		if (why == "") != c.opens {
			t.Errorf("%+v: %q", c, why)
		}
		if why != "" && !strings.Contains(why, "splaywright show") {
			t.Errorf("%q does not say what would do", why)
		}
	}
}
