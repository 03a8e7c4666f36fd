package app

import (
	"os"
	"os/signal"
	"syscall"
	"time"
)

// mostToEnd is how long the window's library may take to close its windows.
const mostToEnd = 4 * time.Second

// endWhenAsked ends the program when the system has asked it to and the window's library, which was asked as well, waits
// for something that does not come. Nothing is lost by it: unsaved work is in its journal with every change.
func endWhenAsked(asked <-chan os.Signal, wait time.Duration, end func(code int)) {
	<-asked
	time.Sleep(wait)
	end(0)
}

// heedTheSystem begins to listen for the system's wish that the program ends.
func heedTheSystem() {
	asked := make(chan os.Signal, 1)
	signal.Notify(asked, os.Interrupt, syscall.SIGTERM)
	go endWhenAsked(asked, mostToEnd, os.Exit)
}
