package sweep

import (
	"testing"

	"drawerwright/geom"
)

// BenchmarkPocket sets the closed form of a rectangle beside the way of
// everything else, for the same rectangle and for what is met less often.
func BenchmarkPocket(b *testing.B) {
	rectangle := geom.Rectangle(10, 20, 510, 26.35)
	run := func(name string, l geom.Loop, r float64, f func(geom.Loop, float64) ([]geom.Loop, error)) {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if loops, err := f(l, r); err != nil || len(loops) == 0 {
					b.Fatal(loops, err)
				}
			}
		})
	}
	run("rectangle", rectangle, 3, Pocket)
	run("rectangle, generally", rectangle, 3, pocket)
	run("rectangle turned", turned(rectangle, 1), 3, Pocket)
	run("reliefs", relieved(100, 50, 5), 4, Pocket)
	run("reliefs as the bit", relieved(100, 50, 5), 5, Pocket)
	run("L", ell(), 3, Pocket)
	run("necks", bells(5), 3, Pocket)
	run("island", teeth(5, 0.7), 5, Pocket)
}
