// Package mutate spoils files that the program reads as people, editors, spreadsheets and disks do, and
// watches a reader take them. Only tests import it.
//
// A [Format] has ways to spoil a text that know its structure: keys, columns, pairs of lines, values.
// All of them also lose, double, swap and cut lines and blocks of lines, and change letters and the
// encoding. [Format.Spoil] gives the same text for the same number at every run.
package mutate

import (
	"math/rand/v2"
	"regexp"
	"slices"
)

// Format is the structure of a file.
type Format struct {
	ways []way
	odd  []string // what stands where another value is expected
}

// way spoils a text.
type way func(s *spoiler, text string) string

// spoiler is what a way has to choose from.
type spoiler struct {
	*rand.Rand
	format  *Format
	samples []Sample
}

// maxWays is how many ways a text is spoiled at most: with more, readers see the first one alone.
const maxWays = 4

// The formats of files that the program reads. Lines has no structure but lines.
var (
	YAML  = Format{ways: slices.Concat(ofLines, ofBlocks, ofLetters, ofTokens, ofEntries, ofEntries, ofEntries), odd: oddYAML}
	CSV   = Format{ways: slices.Concat(ofLines, ofLetters, ofTables), odd: oddCells}
	DXF   = Format{ways: slices.Concat(ofLines, ofLetters, ofPairs, ofPairs), odd: oddTags}
	JSON  = Format{ways: slices.Concat(ofBlocks, ofLetters, ofJSON, ofValues, ofValues, ofValues), odd: oddJSON}
	Lines = Format{ways: slices.Concat(ofLines, ofLetters, ofTokens), odd: oddWords}
)

// Sample is a file as it should be.
type Sample struct{ Name, Text string }

// manyBoxes are counts of thousands: building those takes its time, as it should, and no fault shows in it.
var manyBoxes = regexp.MustCompile(`(?i)(\b(?:count|spares): *)\d{3,5}\b`)

// Spoil gives a spoiled copy of one of some samples: the same one for the same number.
func (f *Format) Spoil(number int, samples []Sample) Sample {
	s := &spoiler{rand.New(rand.NewPCG(uint64(number), 20261126)), f, samples}
	out := one(s, samples)
	for range 1 + s.IntN(1+s.IntN(maxWays)) { // mostly one
		out.Text = one(s, f.ways)(s, out.Text)
	}
	out.Text = manyBoxes.ReplaceAllString(out.Text, "${1}99")
	return out
}

// one is one of some.
func one[T any](s *spoiler, list []T) T { return list[s.IntN(len(list))] }
