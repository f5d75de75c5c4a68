package joinery

import (
	"fmt"
	"math"
	"strings"

	"drawerwright/geom"
)

// fact is that of a diagnosis in millimeters.
func fact(d geom.Diagnosis) string { return d.Fact.In(geom.Millimeter) }

// advice is what a diagnosis has of remedies, else of what is asked, in millimeters.
func advice(d geom.Diagnosis) string {
	if len(d.Remedies) == 0 {
		return d.Ask.In(geom.Millimeter)
	}
	ways := make([]string, len(d.Remedies))
	for i, r := range d.Remedies {
		ways[i] = remedy(r)
	}
	return strings.Join(ways, "; or ")
}

// remedy is the data of a remedy: its settings, each with its range in millimeters or its word.
func remedy(r geom.Remedy) string {
	var list []string
	for _, c := range r.Changes {
		value := fmt.Sprintf("%g to %g", c.Min, c.Max)
		switch {
		case c.Word != "":
			value = c.Word
		case c.Count > 0:
			value = fmt.Sprint(c.Count, " pieces")
		case c.Min == c.Max:
			value = fmt.Sprint(c.Min)
		case math.IsInf(c.Max, 1):
			value = fmt.Sprint(c.Min, " or more")
		case c.Min == 0:
			value = fmt.Sprint(c.Max, " or less")
		}
		list = append(list, strings.Join(strings.Fields(fmt.Sprint(string(c.Setting), " ", c.Key, " ", value)), " "))
	}
	return strings.Join(list, " and ")
}
