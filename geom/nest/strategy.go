package nest

// Strategy is a part of the search or of its bounds that a measurement can leave out, to see what it adds.
type Strategy string

// Strategies are all of them.
var Strategies = []Strategy{learning, fromBelow, trying, mending, diving, squeezing, rounding, repacking, again,
	growing, aside, unevenly, strips, thresholds, counting, steps, means, bars, programs, groups}

const (
	learning   Strategy = "learning"   // values of pieces learn from sheets that came out badly
	fromBelow  Strategy = "from-below" // free sheets are filled without regard to cuts too
	trying     Strategy = "trying"     // of the strips that look best on a sheet, some are tried
	mending    Strategy = "mending"    // some sheets at a time are laid anew
	diving     Strategy = "diving"     // linear programs in the search
	squeezing  Strategy = "squeezing"  // what two sheets hold is laid on one by beams
	rounding   Strategy = "rounding"   // from the ways to fill a sheet that the bound met
	repacking  Strategy = "repacking"  // for a sheet less
	again      Strategy = "again"      // rounding from what repacking met, and repacking once more
	growing    Strategy = "growing"    // in repacking, the weight of what stays over
	aside      Strategy = "aside"      // in repacking, from the left as well as from below
	unevenly   Strategy = "unevenly"   // in repacking, values by chance
	strips     Strategy = "strips"     // in repacking, strip by strip as well as piece by piece
	thresholds Strategy = "thresholds" // dual feasible functions that leave small lengths out
	counting   Strategy = "counting"   // those that count how often a length goes in
	steps      Strategy = "steps"      // those that round
	means      Strategy = "means"      // the mean of both ways on a square sheet
	bars       Strategy = "bars"       // the bound by bars
	programs   Strategy = "programs"   // the bound over all guillotine fillings
	groups     Strategy = "groups"     // the bound over groups
)

// uses reports whether a strategy is not left out.
func (t *task) uses(s Strategy) bool { return t.without != s }
