package outdir

import (
	"sync"
	"sync/atomic"
)

// workers is how many files are read or removed at a time. Each mostly waits
// for the disk, so that more than one a processor pays; many more make a
// turning disk seek.
const workers = 4

// each calls do for 0 to n-1, from several goroutines, and waits for all.
func each(n int, do func(i int)) {
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(workers, n) {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	wg.Wait()
}
