package shoplog

import (
	"cmp"
	"slices"
	"time"
)

// Keep is which cuts of a log still count: a machine that was aligned, or a cutter that was sharpened, is another one.
type Keep struct {
	Days int // before the newest cut of the log; 0 for all
	Cuts int // the newest of each quantity; 0 for all
}

// Of are the cuts that tell of a quantity of a tool, the oldest first, and of one day in the order of the log.
func (k Keep) Of(log []Cut, t Tool, w What) []Cut {
	var list []Cut
	for _, c := range log {
		if c.What == w && c.Tool.Machine == t.Machine && (!w.ofCutter() || c.Tool.Cutter == t.Cutter) && !c.Moved {
			list = append(list, c)
		}
	}
	if k.Days > 0 {
		from := newest(log).AddDate(0, 0, -k.Days)
		list = slices.DeleteFunc(list, func(c Cut) bool { return c.Date.Before(from) })
	}
	slices.SortStableFunc(list, func(a, b Cut) int { return cmp.Compare(a.Date.Unix(), b.Date.Unix()) })
	if k.Cuts > 0 && len(list) > k.Cuts {
		list = list[len(list)-k.Cuts:]
	}
	return list
}

// ofCutter reports whether a quantity is that of one cutter, and not of its machine with any.
func (w What) ofCutter() bool { return w == Cutter || w == Again }

// newest is the last day of a log.
func newest(log []Cut) (day time.Time) {
	for _, c := range log {
		if c.Date.After(day) {
			day = c.Date
		}
	}
	return day
}
