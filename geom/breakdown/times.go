package breakdown

// Times are what work at a saw takes, in seconds.
type Times struct {
	Setting int // of fence or stop, with a test cut that is measured
	Guide   int // measured, laid and clamped
	Cut     int
	Turn    int // of a board, or fetching it, and laying it against the fence
	Helper  int // more, where it takes two people
}

// UsualTimes are common practice, no source.
var UsualTimes = Times{Setting: 90, Guide: 120, Cut: 20, Turn: 15, Helper: 60}

// seconds are what a cut takes after the one before it, on all its boards.
func (t Times) seconds(before, k Cut) int {
	each := t.Cut
	if k.Kind == HandHeld {
		each += t.Guide
	}
	if k.Count > 1 || k.Workpiece.Name != before.Workpiece.Name || k.Stage != before.Stage {
		each += t.Turn
	}
	if k.NeedsHelper {
		each += t.Helper
	}
	whole := k.Count * each
	if k.SettingChanged {
		whole += t.Setting
	}
	return whole
}

// Seconds are what all cuts take, in their order.
func (t Times) Seconds(cuts []Cut) (n int) {
	before := Cut{}
	for _, c := range cuts {
		n += t.seconds(before, c)
		before = c
	}
	return n
}

// Turns are how often a board is turned: each stage is cut at a right angle to the one before.
func Turns(cuts []Cut) (n int) {
	type turned struct {
		board string
		stage int
	}
	seen := make(map[turned]bool)
	for _, c := range cuts {
		if at := (turned{c.Workpiece.Name, c.Stage}); c.Stage > 1 && !seen[at] {
			seen[at] = true
			n += c.Count
		}
	}
	return n
}

// Stages are those in which sheets are taken apart.
func Stages(cuts []Cut) (n int) {
	for _, c := range cuts {
		n = max(n, c.Stage)
	}
	return n
}
