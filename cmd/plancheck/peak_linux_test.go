package main

import (
	"os"
	"syscall"
)

// peakOf is the most memory that an ended process had, in bytes.
func peakOf(state *os.ProcessState) int64 {
	return state.SysUsage().(*syscall.Rusage).Maxrss << 10
}
