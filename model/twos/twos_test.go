package twos_test

import (
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"splaywright/model/twos"
)

func TestEachIsDoneOnce(t *testing.T) {
	for _, n := range []int{-1, 0, 1, 2, 3, 100} {
		done := make([]atomic.Int32, max(n, 0))
		twos.Each(n, func(i int) { done[i].Add(1) })
		for i := range done {
			if k := done[i].Load(); k != 1 {
				t.Errorf("of %d the number %d was done %d times", n, i, k)
			}
		}
	}
}

// Two that wait for each other come to an end only side by side.
func TestTwoAreDoneSideBySide(t *testing.T) {
	met := make(chan struct{})
	meet := func() {
		select {
		case met <- struct{}{}:
		case <-met:
		case <-time.After(time.Minute):
			t.Error("nobody came")
		}
	}
	twos.Both(meet, meet)
	twos.Each(4, func(int) { meet() })
}

func TestAPanicIsTheCallersAndComesWhenAllIsDone(t *testing.T) {
	for name, do := range map[string]func(done *sync.WaitGroup){
		"the first of both":  func(w *sync.WaitGroup) { twos.Both(func() { panic("dull") }, w.Done) },
		"the second of both": func(w *sync.WaitGroup) { twos.Both(w.Done, func() { panic("dull") }) },
		"one of many": func(w *sync.WaitGroup) {
			twos.Each(2, func(i int) {
				if i == 0 {
					w.Done()
					panic("dull")
				}
			})
		},
	} {
		var other sync.WaitGroup
		other.Add(1)
		func() {
			defer func() {
				if p := recover(); p != "dull" {
					t.Errorf("%s: %v came out", name, p)
				}
			}()
			do(&other)
		}()
		other.Wait()
	}
}
