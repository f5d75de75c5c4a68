package present

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/shoplog"
	"drawerwright/geom/testcut"
)

// LogLines say what a job takes from the shop's log: how the odds change, and what drifts.
func LogLines(l *record.Learned) (list []string) {
	if l == nil {
		return nil
	}
	if l.Asked && len(l.Drawers) == 0 {
		list = append(list, fmt.Sprintf("The log %s has fewer than %d cuts of each quantity: what was stated counts.",
			l.File, fit.EnoughCuts))
	}
	for _, d := range l.Drawers {
		list = append(list, logOdds(l, d))
	}
	return append(list, DriftLines(l)...)
}

// DriftLines say which quantities of a log drift.
func DriftLines(l *record.Learned) (list []string) {
	for _, q := range l.Quantities {
		if q.Drift != "" {
			list = append(list, fmt.Sprintf("%s: %s. Look at the machine, or measure again; by chance a chart says so "+
				"about once in 60 cuts.", logName(q), q.Drift))
		}
	}
	return list
}

// NotLogged says why the readings of a test cut add nothing to a log; empty where they add some cuts.
func NotLogged(a testcut.Advice, cuts []shoplog.Cut) string {
	switch {
	case len(a.Conflicts) > 0:
		return "Nothing is added to the log: readings contradict each other."
	case len(cuts) == 0:
		return "Nothing is added to the log: it takes slot, edge, depth and front-length."
	case a.Open():
		return "Nothing is added to the log yet: it takes a test cut once all is measured that is asked for here."
	}
	return ""
}

// logName names a quantity with its machine and cutter.
func logName(q record.Quantity) string {
	return strings.TrimSpace(q.Machine+" "+q.Cutter) + ", " + q.What
}

// logOdds says how the odds of drawers change by the log.
func logOdds(l *record.Learned, d record.LearnedOdds) string {
	before, after, low, high := d.Odds[0], d.Odds[1], d.Odds[2], d.Odds[3]
	said := fmt.Sprintf("By the log %s, %s of 1,000 boxes of %s come out right; by what was stated, %s", l.File,
		after.Spoken(), words.Some(d.Drawers), before.Spoken())
	open := fmt.Sprintf("%s to %s", low.Spoken(), high.Spoken())
	if low.Of1000() == high.Of1000() {
		open = low.Spoken()
	}
	return fmt.Sprintf("%s. It rests on %s; nine shops of ten with such cuts have %s. Sizes follow the "+
		"log too: finish a run with the packet that it was begun with.", said,
		words.Count(logCuts(l), "cut", "cuts"), open)
}

// logCuts is how many cuts the odds rest on: those of quantities that have enough.
func logCuts(l *record.Learned) (n int) {
	for _, q := range l.Quantities {
		if q.Bias != nil {
			n += q.Cuts
		}
	}
	return n
}

// LogTable is what a log has of each quantity.
func LogTable(l *record.Learned, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Words("machine and quantity"), Numbers("cuts"), In("on average", unit), In("between", unit),
		In("either way", unit), In("between", unit), In("stated", unit), In("counts", unit), Words("drift"))
	t.UnitOnce = true
	for _, q := range l.Quantities {
		about := [4]string{}
		if q.Bias != nil {
			about = [4]string{signed(q.Bias.Value, u), signed(q.Bias.Min, u) + " to " + signed(q.Bias.Max, u),
				caliper(q.Spread.Value, u), caliper(q.Spread.Min, u) + " to " + caliper(q.Spread.Max, u)}
		} else {
			about[1] = fmt.Sprintf("needs %d cuts", fit.EnoughCuts)
		}
		drift := "none"
		if q.Drift != "" {
			drift = "yes"
		}
		t.Add(logName(q), fmt.Sprint(q.Cuts), about[0], about[1], about[2], about[3],
			caliper(q.Stated, u), caliper(q.By, u), drift)
	}
	return t
}

// signed is a length with its sign.
func signed(v record.Length, u geom.Unit) string {
	text := caliper(record.Length(math.Abs(v.MM())), u)
	switch {
	case strings.Trim(text, "0.") == "":
		return text
	case v < 0:
		return "-" + text
	}
	return "+" + text
}

// PrintLog prints what a log shows.
func PrintLog(out *Printed, l *record.Learned, u geom.Unit) {
	if l == nil || len(l.Quantities) == 0 {
		return
	}
	fmt.Fprintf(out, "\nwhat the log %s shows; between: for nine shops of ten; either way: three standard deviations\n",
		l.File)
	LogTable(l, u).Print(out, "")
}
