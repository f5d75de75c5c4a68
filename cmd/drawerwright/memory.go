package main

import (
	"os"
	"runtime/debug"
)

// limitMemory has garbage collected where a command comes to its limit of memory, or the heap grows by so many
// percent over what is in use, and gives what ends that. A limit of the environment stays.
func limitMemory(drawers, grows int) (restore func()) {
	const program, drawer = 64 << 20, 36 << 10 // some 26 kB of a drawer are in use; the rest spares collections
	if os.Getenv("GOMEMLIMIT") != "" {
		return func() {}
	}
	limit, percent := debug.SetMemoryLimit(program+drawer*int64(drawers)), debug.SetGCPercent(grows)
	return func() {
		debug.SetMemoryLimit(limit)
		debug.SetGCPercent(percent)
	}
}

// pageMemory limits the memory of a page by the most drawers that a text has had; restore ends that. A page waits for
// the person more than the person for it, so it has less room for garbage than a build.
func pageMemory() (sized func(drawers int), restore func()) {
	const program, drawer, least, usual, many = 40 << 20, 30 << 10, 64 << 20, 100, 200
	if os.Getenv("GOMEMLIMIT") != "" {
		return func(int) {}, func() {}
	}
	limit, percent, most := debug.SetMemoryLimit(least), debug.SetGCPercent(usual), 0
	sized = func(drawers int) {
		if most = max(most, drawers); most >= many {
			debug.SetMemoryLimit(max(least, program+drawer*int64(most)))
			debug.SetGCPercent(packing)
		}
	}
	return sized, func() {
		debug.SetMemoryLimit(limit)
		debug.SetGCPercent(percent)
	}
}

// By how many percent the heap may grow over what is in use, short of the limit: while drawers are worked out, so that
// what stays of them stands close together, for what lies between it is lost to all else; and after.
const packing, fewCollections = 25, 400
