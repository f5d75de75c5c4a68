package fit

import (
	"encoding/binary"
	"math"
	"math/bits"
	"sync"

	"drawerwright/geom"
)

// drawnMeasure is what the draws of a measure gave.
type drawnMeasure struct {
	Distribution
	wrong []uint64 // a bit a box: it does not keep the limits; nil where all do
}

// wordBits is how many boxes have their bits in one word; a chunk has whole words.
const wordBits = 64

// rightIn is how many of n boxes keep the limits of all measures.
func rightIn(list []drawnMeasure, n int) int {
	right := n
	for w := range (n + wordBits - 1) / wordBits {
		wrong := uint64(0)
		for _, d := range list {
			if d.wrong != nil {
				wrong |= d.wrong[w]
			}
		}
		right -= bits.OnesCount64(wrong)
	}
	return right
}

// keptMeasures are the measures that were drawn for verdicts. Every drawer of a job draws the same errors, so
// that boxes of other sizes have the same tongues, dados and grooves: of 1,000 drawers from one shop,
// five of six measures are drawn once. What is there is what would be drawn, to the last bit.
var keptMeasures struct {
	sync.Mutex
	by map[string]drawnMeasure
}

// keptMost bounds what is kept, some 2 MB: a page is open all day, and a job of many drawers has little room.
const keptMost = 1024

// keyOf is all that the draws of a measure depend on; empty for one that is not kept. A source of which the law has
// terms that cancel out moves the last bits where another measure has it drawn: that one is not kept either.
func keyOf(s Stack, limits geom.Interval, n int, seed uint64) string {
	if s.together == nil || n != Samples || seed != Seed || len(s.together.movers()) != len(s.Terms) {
		return ""
	}
	key := appendNumbers(nil, limits.Min, limits.Max, float64(len(s.Terms)))
	for _, t := range s.Terms {
		from := s.Sources[t.Source]
		if from.Shape == Learned { // that of one shop
			return ""
		}
		key = appendNumbers(key, float64(t.Source), from.Minus, from.Plus, float64(from.Shape))
	}
	return string(s.together.appendTo(key))
}

// appendNumbers adds the bits of numbers to a key.
func appendNumbers(key []byte, list ...float64) []byte {
	for _, v := range list {
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(v))
	}
	return key
}

// keptMeasure is what is known of a key.
func keptMeasure(key string) (d drawnMeasure, known bool) {
	if key == "" {
		return d, false
	}
	keptMeasures.Lock()
	defer keptMeasures.Unlock()
	d, known = keptMeasures.by[key]
	return d, known
}

// keep notes what a measure gave.
func keep(key string, d drawnMeasure) {
	if key == "" {
		return
	}
	keptMeasures.Lock()
	defer keptMeasures.Unlock()
	if keptMeasures.by == nil || len(keptMeasures.by) >= keptMost {
		keptMeasures.by = make(map[string]drawnMeasure)
	}
	keptMeasures.by[key] = d
}
