package present

import (
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom/fit"
)

// Basis says once what verdicts rest on.
var Basis = fmt.Sprintf("Verdicts are on boards and machine off as they usually are: %d random boxes of each drawer; likely is what all but 0.27 %% of them are.", fit.Samples)

// readingsOf says by what the range of a thickness is known.
func readingsOf(b record.Board) string {
	if b.Assumed == "" {
		return "measured"
	}
	return "one reading; " + b.Assumed + " says between what boards are"
}
