package session_test

import (
	"slices"
	"sync"
	"testing"

	"splaywright/app/session"
)

func TestLatestSkipsWhatIsOvertaken(t *testing.T) {
	var started []func()
	var l session.Latest
	l.Spawn = func(f func()) { started = append(started, f) }
	var done []int
	for i := range 5 {
		l.Do(func() { done = append(done, i) })
	}
	for _, f := range started {
		f()
	}
	if !slices.Equal(done, []int{4}) {
		t.Errorf("work %v was done, want the newest alone", done)
	}
	l.Do(func() { done = append(done, 9) })
	started[len(started)-1]()
	if !slices.Equal(done, []int{4, 9}) {
		t.Errorf("work %v, want more to be done after a rest", done)
	}
}

func TestLatestDoesOneThingAtATime(t *testing.T) {
	var l session.Latest
	var mu sync.Mutex
	var last sync.WaitGroup
	running, most := 0, 0
	last.Add(1)
	for i := range 200 {
		l.Do(func() {
			mu.Lock()
			running++
			most = max(most, running)
			mu.Unlock()
			mu.Lock()
			running--
			mu.Unlock()
			if i == 199 {
				last.Done()
			}
		})
	}
	last.Wait()
	if most != 1 {
		t.Errorf("%d things were done at once", most)
	}
}
