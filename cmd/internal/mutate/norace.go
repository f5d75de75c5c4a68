//go:build !race

package job

const underRace = false
