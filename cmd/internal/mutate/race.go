//go:build race

package mutate

// UnderRace reports whether the race detector is on, which takes time and memory of its own.
const UnderRace = true
