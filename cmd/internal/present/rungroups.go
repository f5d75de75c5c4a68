package present

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// RunGroup is steps that follow each other with one bit at one speed and feed: what is set, and a row for each.
type RunGroup struct {
	Set string
	Table
}

// RunGroups are the steps of one face by the bit and what is set for it, with passes and minutes where there are any.
func RunGroups(f record.RunFace, u geom.Unit) (list []RunGroup) {
	if len(f.Steps) == 0 {
		return nil
	}
	heads := []Column{Numbers("step"), Words("layer"), In(setHeading(f.Steps[0].From), u.String())}
	passes := slices.ContainsFunc(f.Steps, func(s record.RunStep) bool { return s.Passes > 0 })
	minutes := slices.ContainsFunc(f.Steps, func(s record.RunStep) bool { return s.Minutes > 0 })
	if passes {
		heads = append(heads, Numbers("passes"))
	}
	if minutes {
		heads = append(heads, Numbers("minutes"))
	}
	for i, s := range f.Steps {
		set := setForRun(s, u)
		if i == 0 || s.BitChange || !slices.Equal(set, setForRun(f.Steps[i-1], u)) {
			bit := []string{"bit " + bitOfStep(s, u)}
			if !s.BitChange {
				bit = append(bit, staysIn)
			}
			said := upper(strings.Join(append(bit, set...), ", "))
			list = append(list, RunGroup{Set: said, Table: NewTable(heads...)})
		}
		row := []string{fmt.Sprint(i + 1), s.Layer, setInTable(s.ToSet, s.Through, u)}
		if passes {
			row = append(row, said(s.Passes > 0, fmt.Sprint(s.Passes)))
		}
		if minutes {
			row = append(row, said(s.Minutes > 0, fmt.Sprintf("%.1f", s.Minutes)))
		}
		list[len(list)-1].Add(row...)
	}
	return list
}

// staysIn is said of a bit that is not changed for the first step of a table.
const staysIn = "stays in"

// said is a text where there is something to say, else a dash.
func said(is bool, text string) string {
	if !is {
		return "-"
	}
	return text
}

// setForRun is what is set for a step; what the job does not say is left out.
func setForRun(s record.RunStep, u geom.Unit) (list []string) {
	if s.Speed > 0 {
		list = append(list, fmt.Sprintf("%.0f rpm", s.Speed))
	}
	if s.Feed > 0 {
		list = append(list, fmt.Sprintf("feed %s %s/min", feed(s.Feed, u), u))
	}
	if s.Plunge > 0 {
		list = append(list, fmt.Sprintf("plunge %s %s/min", feed(s.Plunge, u), u))
	}
	if s.ChipLoad > 0 {
		list = append(list, fmt.Sprintf("chip load %s %s", chipLoad(s.ChipLoad, u), u))
	}
	return list
}
