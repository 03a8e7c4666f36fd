//go:build !nowindow

package main

import (
	"fmt"
	"io"
	"log"
	"os"

	"github.com/go-gl/glfw/v3.3/glfw"
)

// reach connects to the display, as the window's library does later. Where the display does not answer that one ends the
// program with a trace, so it is tried before and told in words.
func reach() (err error) {
	defer func() {
		if recover() != nil {
			err = unreached(os.Getenv)
		}
	}()
	was := log.Writer()
	log.SetOutput(io.Discard) // the library's own line on it
	defer log.SetOutput(was)
	if glfw.Init() != nil {
		return unreached(os.Getenv)
	}
	glfw.GetTime() // panics where there is no connection, whatever was returned
	return nil
}

// unreached says which display does not answer.
func unreached(get func(string) string) error {
	name := get("DISPLAY")
	if name == "" {
		name = get("WAYLAND_DISPLAY")
	}
	return fmt.Errorf("the display %+s does not answer, so no window; the commands need none: `splaywright show FILE` prints the tables, `splaywright papers FILE --to DIR` writes the papers", name)
}
