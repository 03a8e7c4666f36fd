package app

import (
	"os"
	"syscall"
	"testing"
	"time"
)

// The program ends when it was asked to, after a while in which it may end by itself, and not before it was asked.
func TestTheProgramEndsWhenItIsAskedTo(t *testing.T) {
	asked, ended := make(chan os.Signal), make(chan int)
	go endWhenAsked(asked, 30*time.Millisecond, func(code int) { ended <- code })
	select {
	case <-ended:
		t.Fatal("ended without being asked")
	case <-time.After(60 * time.Millisecond):
	}
	at := time.Now()
	asked <- syscall.SIGTERM
	if code := <-ended; code != 0 || time.Since(at) < 30*time.Millisecond {
		t.Errorf("ended with %d after %v", code, time.Since(at))
	}
}
