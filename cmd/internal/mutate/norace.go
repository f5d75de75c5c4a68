//go:build !race

package mutate

// UnderRace reports whether the race detector is on.
const UnderRace = false
