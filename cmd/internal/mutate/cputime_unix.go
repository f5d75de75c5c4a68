//go:build unix

package mutate

import (
	"syscall"
	"time"
)

// processorTime is what this process has used of the processors so far.
func processorTime() time.Duration {
	var use syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &use) != nil {
		return 0
	}
	return time.Duration(use.Utime.Nano() + use.Stime.Nano())
}
