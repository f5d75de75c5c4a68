package geom

import (
	"math"
	"slices"
)

// Change is one setting written anew: a length from Min to Max, in millimeters and both
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

// Remedy is a way to end a diagnosis: changes that are made together. Without changes it is
// none.
type Remedy struct {
	Changes []Change
	// Then is what it brings where every way brings something.
	Then []Diagnosis
	// Result is what it comes to, where that was forecast.
	Result Sentence
}

// Of names the key within the setting, and the item of a list.
func (r Remedy) Of(key string, item int) Remedy {
	r.Changes = slices.Clone(r.Changes)
	for i := range r.Changes {
		r.Changes[i].Key, r.Changes[i].Item = key, item
	}
	return r
}

// With is both remedies together; without one of them it is none.
func (r Remedy) With(o Remedy) Remedy {
	if len(r.Changes) == 0 || len(o.Changes) == 0 {
		return Remedy{}
	}
	return Remedy{Changes: append(slices.Clone(r.Changes), o.Changes...)}
}

// Includes reports whether a remedy writes all settings that another writes.
func (r Remedy) Includes(o Remedy) bool {
	for _, c := range o.Changes {
		if !slices.ContainsFunc(r.Changes, func(d Change) bool { return d.sameSetting(c) && d.Word == c.Word }) {
			return false
		}
	}
	return true
}

// Writes reports whether one of the changes is of a setting.
func (r Remedy) Writes(s Setting) bool {
	return slices.ContainsFunc(r.Changes, func(c Change) bool { return c.Setting == s })
}

// Repeats reports whether a setting is written twice.
func (r Remedy) Repeats() bool {
	for i, c := range r.Changes {
		if slices.ContainsFunc(r.Changes[:i], c.sameSetting) {
			return true
		}
	}
	return false
}

func (c Change) sameSetting(as Change) bool {
	return c.Setting == as.Setting && c.Key == as.Key && c.Item == as.Item
}

// Ends are the lengths at both ends of the changes' ranges, each with each. An open
// range has one end.
func (r Remedy) Ends() [][]float64 {
	all := [][]float64{nil}
	for _, c := range r.Changes {
		var more [][]float64
		for _, before := range all {
			for _, v := range c.Ends() {
				more = append(more, append(slices.Clone(before), v))
			}
		}
		all = more
	}
	return all
}

// Ends are the lengths at both ends of a change's range, or at the one that it has.
func (c Change) Ends() []float64 {
	switch {
	case c.Min == c.Max, math.IsInf(c.Max, 1):
		return []float64{c.Min}
	case c.Min == 0:
		return []float64{c.Max}
	}
	return []float64{c.Min, c.Max}
}
