//go:build nowindow

package main

import "fmt"

// openWindow refuses: this build has the commands alone, so that it needs no display and no C compiler.
func openWindow(_ *program, file string) error {
	if file == "" {
		return fmt.Errorf("this build of splaywright has no window; `splaywright help` lists its commands")
	}
	return fmt.Errorf("this build of splaywright has no window; `splaywright show %+s` prints the tables", file)
}
