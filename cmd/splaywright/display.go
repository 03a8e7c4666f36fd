package main

import "slices"

// noDisplay says why no window can open where there is plainly no display, instead of leaving it to the
// window's driver, which ends the program with a trace; "" where one may be.
func noDisplay(system string, get func(string) string) string {
	if !slices.Contains([]string{"linux", "freebsd", "openbsd", "netbsd"}, system) || get("DISPLAY") != "" || get("WAYLAND_DISPLAY") != "" {
		return ""
	}
	return "there is no display here, so no window; the commands need none: `splaywright show FILE` prints the tables, `splaywright papers FILE --to DIR` writes the papers"
}
