package files

import (
	"cmp"
	"context"
	"runtime"

	"golang.org/x/sync/errgroup"
)

// Each does n things, as many at a time as there are processors, each by a worker of
// its own. After an error or the context's end it begins no more. It gives the error of
// the first that failed, in their order, whichever came first in time, or the context's.
func Each(ctx context.Context, n int, worker func() func(int) error) error {
	idle := make(chan func(int) error, min(runtime.GOMAXPROCS(0), n))
	for range cap(idle) {
		idle <- worker()
	}
	errs := make([]error, n)
	begun := 0
	g, going := errgroup.WithContext(ctx)
	g.SetLimit(max(1, cap(idle)))
	for ; begun < n && going.Err() == nil; begun++ {
		i := begun
		g.Go(func() error {
			work := <-idle
			defer func() { idle <- work }()
			// What was begun before another failed is done, so that the first in
			// order is found.
			if errs[i] = ctx.Err(); errs[i] == nil {
				errs[i] = work(i)
			}
			return errs[i]
		})
	}
	_ = g.Wait() // the first in time
	if err := cmp.Or(errs...); err != nil || begun == n {
		return err
	}
	return ctx.Err()
}
