package fit

import (
	"math"
	"math/rand/v2"
	"runtime"
	"sync"

	"drawerwright/geom"

	"golang.org/x/sync/errgroup"
)

// Distribution is what draws of a measure gave.
type Distribution struct {
	Mean, Sigma float64
	// Common is what all but 0.27 % of the draws are between, as many beyond either
	// end: to a thousandth of the worst case's width.
	Common geom.Interval
	// Within is the part of the draws that keep the limits, 0 to 1.
	Within float64
}

const (
	// chunk is how many draws are made from one seed: the work that is shared out,
	// so that it is the same on any number of processors.
	chunk = 1 << 11
	// block is how many boxes get their errors at once, source by source: few enough
	// for a processor's nearest cache, which all sources of a chunk are not.
	block = 16
	// bins of the histogram of a measure, over its worst case.
	bins = 1000
	// beyond is the part of the draws beyond either end of Common: what a normal
	// spread has beyond three standard deviations.
	beyond = 0.00135
)

// tally gathers the draws of one measure.
type tally struct {
	n, within    int
	sum, squares float64 // of the distance from the nominal value
	bins         []int32
	wrong        []uint64 // of a chunk: a bit a box
}

// SampleBoxes draws n boxes at random, of which each has its own error from every source,
// and reports what the measures do, and which part of the boxes keeps all limits at once.
// All share the sources of the first. Limits are those of each measure. The same seed
// gives the same draws.
func SampleBoxes(stacks []Stack, limits []geom.Interval, n int, seed uint64) (list []Distribution, right float64) {
	if len(stacks) == 0 || n <= 0 {
		return nil, 0
	}
	drawn, keys, rest := make([]drawnMeasure, len(stacks)), make([]string, len(stacks)), []int(nil)
	for i := range stacks {
		known := false
		keys[i] = keyOf(stacks[i], limits[i], n, seed)
		if drawn[i], known = keptMeasure(keys[i]); !known {
			rest = append(rest, i)
		}
	}
	if len(rest) > 0 {
		w := drawing{seed: seed}
		for _, i := range rest {
			w.stacks, w.limits = append(w.stacks, stacks[i]), append(w.limits, limits[i])
			w.worst = append(w.worst, stacks[i].Result())
		}
		for k, d := range w.draw(n) {
			drawn[rest[k]] = d
			keep(keys[rest[k]], d)
		}
	}
	for _, d := range drawn {
		list = append(list, d.Distribution)
	}
	return list, float64(rightIn(drawn, n)) / float64(n)
}

// draw draws n boxes, chunk by chunk on all processors.
func (w drawing) draw(n int) []drawnMeasure {
	w.used = usedBy(w.stacks)
	chunks := make([]drawnChunk, (n+chunk-1)/chunk)
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range chunks {
		g.Go(func() error {
			chunks[i] = w.chunk(min(chunk, n-i*chunk), uint64(i))
			return nil
		})
	}
	_ = g.Wait() // no call gives an error
	list := make([]drawnMeasure, len(w.stacks))
	total := tally{bins: make([]int32, bins)}
	for i := range list {
		total = tally{bins: total.bins}
		clear(total.bins)
		for _, c := range chunks { // in their order, so that sums are the same
			t := c.measures[i]
			total.n, total.within = total.n+t.n, total.within+t.within
			total.sum, total.squares = total.sum+t.sum, total.squares+t.squares
			for b, k := range t.bins {
				total.bins[b] += k
			}
		}
		list[i].Distribution = total.drawn(w.worst[i])
		if total.within < n {
			for _, c := range chunks {
				list[i].wrong = append(list[i].wrong, c.measures[i].wrong...)
			}
		}
	}
	for _, c := range chunks {
		slabs.Put(c.slab)
	}
	return list
}

// drawnChunk is what the boxes of one chunk measure.
type drawnChunk struct {
	measures []tally
	slab     *[]int32 // of all histograms
}

// slabs are the rooms of histograms: every drawer of a job asks for the same.
var slabs = sync.Pool{New: func() any { return new([]int32) }}

// slab is room for n histograms, empty.
func slab(n int) *[]int32 {
	s := slabs.Get().(*[]int32)
	if cap(*s) < n*bins {
		*s = make([]int32, n*bins)
	}
	*s = (*s)[:n*bins]
	clear(*s)
	return s
}

// drawing is what all chunks share.
type drawing struct {
	stacks []Stack
	limits []geom.Interval // of each measure
	worst  []Result
	used   []int // sources that some measure looks at
	seed   uint64
}

func (w drawing) chunk(n int, part uint64) drawnChunk {
	stacks, limits, worst := w.stacks, w.limits, w.worst
	random := deviates(stacks[0].Sources, w.used, n, w.seed, part)
	spreads := make([]spread, len(w.used))
	for i, k := range w.used {
		spreads[i] = stacks[0].Sources[k].spread()
	}
	list := make([]tally, len(stacks))
	spans := make([]span, len(stacks))
	room := slab(len(stacks))
	for i, w := range worst {
		list[i].n, list[i].bins, list[i].wrong = n, (*room)[i*bins:(i+1)*bins], make([]uint64, (n+wordBits-1)/wordBits)
		spans[i] = span{nominal: w.Nominal, from: w.Worst.Min, low: limits[i].Min, high: limits[i].Max}
		if width := w.Worst.Max - w.Worst.Min; width > 0 {
			spans[i].scale = bins / width
		}
	}
	off, values := make([]lanes, len(stacks[0].Sources)), new(lanes)
	for from := 0; from < n; from += block {
		boxes := min(block, n-from)
		for i, k := range w.used {
			to, by := &off[k], spreads[i]
			for j, z := range random[i][from : from+boxes] {
				to[j] = float64(by.times*z) + by.plus
			}
		}
		for i := range stacks {
			stacks[i].lanes(off, values)
			list[i].wrong[from/wordBits] |= list[i].add(values[:boxes], spans[i]) << (from % wordBits)
		}
	}
	return drawnChunk{list, room}
}

// span is where the draws of a measure are looked for, in mm.
type span struct {
	nominal, low, high float64 // meant, and its limits
	from, scale        float64 // the least of the worst case, and how many bins a mm has
}

// add takes the values of some boxes of a block, and gives a bit for each of those that do not keep the limits.
func (t *tally) add(values []float64, in span) (wrong uint64) {
	sum, squares, within, list := t.sum, t.squares, t.within, (*[bins]int32)(t.bins) // what a processor keeps at hand
	for j, v := range values {
		d := v - in.nominal
		sum += d
		squares += float64(d * d)
		if v >= in.low && v <= in.high {
			within++
		} else {
			wrong |= 1 << j
		}
		list[min(max(int((v-in.from)*in.scale), 0), bins-1)]++
	}
	t.sum, t.squares, t.within = sum, squares, within
	return wrong
}

// lanes are a value of each box of a block.
type lanes [block]float64

// lanes are the measure of each box of a block, with what is off by source.
func (s Stack) lanes(off []lanes, v *lanes) {
	if s.together != nil {
		s.together.lanes(off, v)
		return
	}
	one := make([]float64, len(off))
	for j := range v {
		for k := range off {
			one[k] = off[k][j]
		}
		v[j] = s.Value(one)
	}
}

// usedBy lists the sources that some measure looks at, so that no others are drawn.
func usedBy(stacks []Stack) (list []int) {
	seen := make([]bool, len(stacks[0].Sources))
	for _, s := range stacks {
		for _, t := range s.Terms {
			seen[t.Source] = true
		}
	}
	for i, yes := range seen {
		if yes && stacks[0].Sources[i].half() > 0 {
			list = append(list, i)
		}
	}
	return list
}

// deviates are standard random numbers of sources, by their places: from 0 to 1 of a
// Uniform one, with a standard deviation of 1 of a Normal one. Each source has its own, so
// that a source that comes into use or goes out of it does not change what others draw,
// and two settings of a job are compared over the same boards and cuts.
func deviates(from []Source, used []int, n int, seed, part uint64) [][]float64 {
	list := make([][]float64, len(used))
	for i, k := range used {
		if from[k].Shape == Learned {
			list[i] = from[k].learned(n, seed, uint64(k), part)
			continue
		}
		key := deviateKey{k, from[k].Shape, n, seed, part}
		if kept, known := keptDeviates.Load(key); known {
			list[i] = kept.([]float64)
			continue
		}
		list[i] = from[k].Shape.deviates(n, rand.New(rand.NewPCG(seed^uint64(k+1)*streamStep, part)))
		if seed == Seed && k < sources && part < (Samples+chunk-1)/chunk { // every drawer draws these
			keptDeviates.Store(key, list[i])
		}
	}
	return list
}

// keptDeviates are those of the draws that every drawer gets: some 80 KB a source.
var keptDeviates sync.Map

type deviateKey struct {
	source     int
	shape      Shape
	n          int
	seed, part uint64
}

// streamStep sets the seeds of sources far apart: 2^64 over the golden ratio, odd.
const streamStep = 0x9e3779b97f4a7c15

func (s Shape) deviates(n int, random *rand.Rand) []float64 {
	list := make([]float64, 0, n)
	for len(list) < n {
		if s == Uniform {
			list = append(list, random.Float64())
		} else if z := random.NormFloat64(); math.Abs(z) <= normalLimit {
			list = append(list, z)
		}
	}
	return list
}

// spread is what deviates are multiplied by and added to for a source.
type spread struct{ times, plus float64 }

func (s Source) spread() spread {
	switch s.Shape {
	case Uniform:
		return spread{2 * s.half(), -s.Minus}
	case Learned:
		return spread{s.half(), s.middle()}
	}
	return spread{s.sigma(), s.middle()}
}

func (t tally) drawn(r Result) Distribution {
	n := float64(t.n)
	mean := t.sum / n
	d := Distribution{Mean: r.Nominal + mean, Sigma: math.Sqrt(max(0, t.squares/n-float64(mean*mean))), Within: float64(t.within) / n}
	step := (r.Worst.Max - r.Worst.Min) / bins
	cut := int32(math.Floor(beyond * n))
	low, high := 0, bins-1
	for seen := t.bins[0]; seen <= cut && low < bins-1; seen += t.bins[low] {
		low++
	}
	for seen := t.bins[high]; seen <= cut && high > 0; seen += t.bins[high] {
		high--
	}
	d.Common = geom.Interval{Min: r.Worst.Min + float64(step*float64(low)), Max: r.Worst.Min + float64(step*float64(high+1))}
	return d
}
