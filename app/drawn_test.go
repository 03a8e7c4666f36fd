package app

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver"
	"fyne.io/fyne/v2/test"
)

// given is a window as the system has given it, or has not.
type given struct {
	fyne.Window
	system any
}

func (g given) RunNative(f func(any)) { f(g.system) }

func TestAWindowThatTheSystemDoesNotGiveIsTold(t *testing.T) {
	plain := test.NewTempWindow(t, nil)
	for _, c := range []struct {
		name string
		win  fyne.Window
		want bool
	}{
		{"X11", given{plain, driver.X11WindowContext{WindowHandle: 7}}, true},
		{"X11, none", given{plain, driver.X11WindowContext{}}, false},
		{"Wayland", given{plain, driver.WaylandWindowContext{WaylandSurface: 7}}, true},
		{"Wayland, none", given{plain, driver.WaylandWindowContext{}}, false},
		{"no word on it", plain, true},
	} {
		if got := drawn(c.win); got != c.want {
			t.Errorf("%s: drawn %v, want %v", c.name, got, c.want)
		}
	}
}
