package geomtest

import "os"

// Depth is the environment variable that .ci/nightly sets to "all": tests that count their
// cases then try every one of them.
const Depth = "DRAWERWRIGHT_TESTS"

// All reports whether every case is to be tried.
func All() bool { return os.Getenv(Depth) == "all" }

// Cases is how many cases a test tries: a few where a developer waits, all of them by night.
func Cases(few, all int) int {
	if All() {
		return all
	}
	return few
}
