package dxf

import (
	"errors"
	"io"
	"math"
	"testing"
)

// limited takes some bytes and then fails, or silently takes fewer.
type limited struct {
	room   int
	err    error
	blocks []int
}

func (w *limited) Write(b []byte) (int, error) {
	w.blocks = append(w.blocks, len(b))
	if len(b) > w.room {
		n := w.room
		w.room = 0
		return n, w.err
	}
	w.room -= len(b)
	return len(b), nil
}

func TestFailingWriter(t *testing.T) {
	full := errors.New("disk full")
	for _, v := range []Version{R2000, R12} {
		d := benchDrawing(t, v, 3000)
		size := len(written(t, d))
		for _, room := range []int{0, 1, 1000, blockSize - 1, blockSize, blockSize + 1, 3*blockSize + 7, size - 1} {
			for want, given := range map[error]error{full: full, io.ErrShortWrite: nil} {
				w := &limited{room: room, err: given}
				n, err := d.WriteTo(w)
				if !errors.Is(err, want) || n != int64(room) {
					t.Errorf("version %d, room for %d: %d written, %v", v, room, n, err)
				}
				if calls := room/blockSize + 1; len(w.blocks) != calls {
					t.Errorf("version %d, room for %d: %d calls, want %d", v, room, len(w.blocks), calls)
				}
			}
		}
		w := &limited{room: size}
		if n, err := d.WriteTo(w); err != nil || n != int64(size) {
			t.Errorf("version %d: %d of %d written, %v", v, n, size, err)
		}
		for i, n := range w.blocks[:len(w.blocks)-1] {
			if n != blockSize {
				t.Errorf("version %d: block %d has %d bytes", v, i, n)
			}
		}
	}
}

// Ten times the vertices take no more allocations to write, and drawing them
// takes no more than the slices' growth: one each time that they double.
func TestAllocations(t *testing.T) {
	for _, v := range []Version{R2000, R12} {
		allocs := func(polylines int) float64 {
			d := benchDrawing(t, v, polylines)
			return testing.AllocsPerRun(5, func() {
				if _, err := d.WriteTo(io.Discard); err != nil {
					t.Fatal(err)
				}
			})
		}
		if few, many := allocs(1000), allocs(10_000); many > few {
			t.Errorf("version %d: %v allocations for 1,000 polylines, %v for 10,000", v, few, many)
		}
	}
	draw := func(polylines int) float64 {
		return testing.AllocsPerRun(5, func() { benchDrawing(t, R2000, polylines) })
	}
	few, many := draw(1000), draw(10_000)
	// Two slices, and two allocations a doubling under the race detector.
	if growth := 2 * 2 * math.Ceil(math.Log2(10)); many-few > growth {
		t.Errorf("drawing: %v allocations for 1,000 polylines, %v for 10,000", few, many)
	}
}
