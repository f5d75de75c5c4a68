package breakdown

// setDevices says of each cut whether its fence or stop is set for it, and which cut before had the same setting.
//
// One saw has the fence and the sled in turn. A fence beside a sled would trap what is crosscut between itself and
// the blade, so it is moved or taken away for every crosscut, of clean-up cuts on the sled too, and is set anew
// after it. The stop is clamped to the sled: it stays where it is while the sled is off the saw, and clean-up cuts
// on the sled do without it. Saws that are taken to the board leave both alone (common practice, no source).
func setDevices(cuts []Cut) {
	var set [SledCut + 1]int64 // what the fence and the stop stand at; 0 where that is not set or taken away
	before := make(map[setTo]int)
	for i := range cuts {
		c := &cuts[i]
		if c.Kind == SledCut {
			set[FenceCut] = 0
		}
		if c.Kind == HandHeld || c.Trim && c.Kind == SledCut {
			continue
		}
		at := setTo{c.Kind, c.Setting}
		if c.SettingChanged = set[c.Kind] != c.Setting; c.SettingChanged {
			c.SetAs = before[at]
		}
		set[c.Kind], before[at] = c.Setting, i+1
	}
}

// setTo is a setting of a device: the fence or the stop.
type setTo struct {
	of Kind
	to int64
}

// Moves is how often the fence or stop is set.
func Moves(cuts []Cut) (n int) {
	for _, c := range cuts {
		if c.SettingChanged {
			n++
		}
	}
	return n
}

// Changes is how often the sled takes the place of the fence, or the fence that of the sled.
func Changes(cuts []Cut) (n int) {
	at := HandHeld
	for _, c := range cuts {
		if c.Kind == HandHeld {
			continue
		}
		if at != HandHeld && at != c.Kind {
			n++
		}
		at = c.Kind
	}
	return n
}

// Unset is how many pieces get a size at no fence and no stop: those that are what is left of a board, and those that
// come off along a guide.
func Unset(cuts []Cut) (n int) {
	for _, c := range cuts {
		if c.Remainder.Piece && !c.Trim || c.Kind == HandHeld && c.Yields.Piece {
			n += c.Count
		}
	}
	return n
}

// Settings is how often fence, stop or guide is set for cuts. A guide for a clean-up cut is laid by eye.
func Settings(cuts []Cut) int {
	n := Moves(cuts)
	for _, c := range cuts {
		if c.Kind == HandHeld && !c.Trim {
			n++
		}
	}
	return n
}
