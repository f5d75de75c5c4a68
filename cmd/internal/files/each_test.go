package files

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"testing"
)

// Everything is done once, whatever the number of processors.
func TestEachDoesAll(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		done := make([]int, n)
		if err := Each(t.Context(), n, func() func(int) error {
			return func(i int) error { done[i]++; return nil }
		}); err != nil {
			t.Fatal(err)
		}
		for i, times := range done {
			if times != 1 {
				t.Errorf("%d of %d was done %d times", i, n, times)
			}
		}
	}
}

// The first in order is named, though the second fails while the first is at work.
func TestEachNamesTheFirst(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(2))
	failed := make(chan struct{})
	begun := make([]bool, 100)
	err := Each(t.Context(), len(begun), func() func(int) error {
		return func(i int) error {
			begun[i] = true
			switch i {
			case 0:
				<-failed
			case 1:
				defer close(failed)
			}
			return fmt.Errorf("thing %d", i)
		}
	})
	if err == nil || err.Error() != "thing 0" {
		t.Errorf("%v", err)
	}
	if begun[99] {
		t.Error("the last was begun after the first had failed")
	}
}

// A context that ends stops the work, and is the error.
func TestEachStops(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	begun := make([]bool, 100)
	err := Each(ctx, len(begun), func() func(int) error {
		return func(i int) error {
			begun[i] = true
			stop()
			return nil
		}
	})
	if !errors.Is(err, context.Canceled) || begun[99] {
		t.Errorf("%v; the last was begun: %t", err, begun[99])
	}
	if err := Each(ctx, 3, func() func(int) error { return func(int) error { return nil } }); !errors.Is(err, context.Canceled) {
		t.Errorf("after the context's end: %v", err)
	}
}
