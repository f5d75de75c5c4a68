package geom

import (
	"math"
	"slices"
)

// Change is one setting written anew: a length from Min to Max, in millimetres and both
// ends included, or a word, or a number of pieces. Max is +Inf for a length or more, Min
// is 0 for one or less.
type Change struct {
	Setting  Setting
	Key      string // within the setting, as the width of a pull; empty for the setting itself
	Item     int    // of a list of settings, from 0
	Min, Max float64
	Word     string
	Count    int
}

// Remedy is a way to end a diagnosis: changes that are made together.
type Remedy struct {
	Changes []Change
	// Then is what it brings where every way brings something.
	Then []Diagnosis
}

// Ends are the lengths at both ends of the changes' ranges, each with each. An open
// range has one end.
func (r Remedy) Ends() [][]float64 {
	all := [][]float64{nil}
	for _, c := range r.Changes {
		var more [][]float64
		for _, before := range all {
			for _, v := range c.ends() {
				more = append(more, append(slices.Clone(before), v))
			}
		}
		all = more
	}
	return all
}

func (c Change) ends() []float64 {
	switch {
	case c.Min == c.Max, math.IsInf(c.Max, 1):
		return []float64{c.Min}
	case c.Min == 0:
		return []float64{c.Max}
	}
	return []float64{c.Min, c.Max}
}
