package breakdown

// What work at a saw takes, in seconds; common practice, no source.
const (
	settingTime  = 90  // fence or stop set, and a test cut measured
	guideTime    = 120 // a guide measured, laid and clamped
	cutTime      = 20
	takeUpTime   = 15 // a board fetched, or turned, and laid against the fence
	withHelpTime = 60 // more, where it takes two people
)

// Seconds are what a cut takes after the one before it, on all its boards.
func (k Cut) Seconds(before Cut) int {
	each := cutTime
	if k.Kind == HandHeld {
		each += guideTime
	}
	if k.Count > 1 || k.Workpiece.Name != before.Workpiece.Name || k.Stage != before.Stage {
		each += takeUpTime
	}
	if k.NeedsHelper {
		each += withHelpTime
	}
	whole := k.Count * each
	if k.SettingChanged {
		whole += settingTime
	}
	return whole
}

// Seconds are what all cuts take, in their order.
func Seconds(cuts []Cut) (n int) {
	before := Cut{}
	for _, c := range cuts {
		n += c.Seconds(before)
		before = c
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
