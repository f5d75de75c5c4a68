package outdir

import "golang.org/x/sync/errgroup"

// workers is how many files are read or removed at a time. Each mostly waits
// for the disk, so that more than one a processor pays; many more make a
// turning disk seek.
const workers = 4

// each calls do for 0 to n-1, from several goroutines, and waits for all.
func each(n int, do func(i int)) {
	var g errgroup.Group
	g.SetLimit(workers)
	for i := range n {
		g.Go(func() error {
			do(i)
			return nil
		})
	}
	_ = g.Wait() // no call gives an error
}
