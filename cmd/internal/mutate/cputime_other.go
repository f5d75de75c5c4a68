//go:build !unix

package mutate

import "time"

var start = time.Now()

// processorTime is the time since the start, where a system tells it otherwise.
func processorTime() time.Duration { return time.Since(start) }
