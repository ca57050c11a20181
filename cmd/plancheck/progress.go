package main

// How far a check of many plans has come, on a terminal.

import (
	"fmt"
	"os"
	"sync/atomic"
	"time"

	"golang.org/x/term"
)

// patience is how long a check may take before it says how far it is.
const patience = time.Second

// progress says on a terminal, from time to time, how many plans of all are done, until stop is
// called, which wipes the line away.
func (s *streams) progress(all int, done *atomic.Int64) (stop func()) {
	file, ok := s.err.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return func() {}
	}
	ended, wiped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(wiped)
		next, said := time.NewTimer(patience), false
		for {
			select {
			case <-next.C:
				fmt.Fprintf(s.err, "\r%d of %d plans checked ", done.Load(), all)
				next.Reset(patience / 10)
				said = true
			case <-ended:
				if said {
					fmt.Fprint(s.err, "\r\x1b[K")
				}
				return
			}
		}
	}()
	return func() { close(ended); <-wiped }
}
