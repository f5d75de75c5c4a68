package job

import (
	"math"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// TestHintsInWords: each kind of change in the words of a job file and its unit, and what
// stands where there is no remedy.
func TestHintsInWords(t *testing.T) {
	in := func(n float64) float64 { return n * geom.InchMM }
	saw := joinery.Spec{Units: geom.Millimeter, Cutter: joinery.Cutter{Kind: joinery.Saw}}
	inches := joinery.Spec{Units: geom.Inch, Cutter: joinery.Cutter{Kind: joinery.Saw}}
	router := joinery.Spec{Units: geom.Millimeter, Cutter: joinery.Cutter{Kind: joinery.Router}}
	hand := joinery.Spec{Units: geom.Millimeter, Cutter: joinery.Cutter{Kind: joinery.Hand}}
	one := func(c geom.Change) geom.Remedy { return geom.Remedy{Changes: []geom.Change{c}} }
	higher := one(geom.Change{Setting: joinery.SettingOutside, Key: "height", Min: 22.46, Max: math.Inf(1)})
	ask := geom.Sentencef("sort boards that differ by %s", geom.Millimeters(1))
	for want, c := range map[string]struct {
		diagnosis geom.Diagnosis
		spec      joinery.Spec
		others    []string
	}{
		"make the height 22.46 mm or more":                                         {geom.Diagnosis{Remedies: []geom.Remedy{higher}, Ask: ask}, saw, nil},
		"take sides of 12 mm or less":                                              {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.SettingSides, Max: 12})}}, saw, nil},
		"take a bottom of 5.75 mm to 6.32 mm":                                      {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.SettingBottom, Min: 5.75, Max: 6.32})}}, saw, nil},
		"write at: 3 for divider 2":                                                {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.FieldDividers, Key: "at", Item: 1, Count: 3})}}, saw, nil},
		"write a height of 50 mm for divider 1":                                    {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.FieldDividers, Key: "height", Min: 50, Max: 50})}}, saw, nil},
		"take a board of 6 mm for divider 1":                                       {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.FieldDividers, Min: 6, Max: 6})}}, saw, nil},
		"write width: 90 mm for the pull":                                          {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.FieldPull, Key: "width", Min: 90, Max: 90})}}, saw, nil},
		"set the dado stack by its shims to 0.248 in, within 0.245 in to 0.250 in": {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.SettingCutter, Min: in(0.245), Max: in(0.25)})}}, inches, nil},
		"take a blade of 3 mm or less":                                             {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.SettingCutter, Max: 3})}}, saw, nil},
		"take a bit of 7 mm to 9 mm, such as 8 mm":                                 {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.SettingCutter, Min: 7, Max: 9})}}, router, nil},
		"take a plow iron of 5 mm":                                                 {geom.Diagnosis{Remedies: []geom.Remedy{one(geom.Change{Setting: joinery.SettingCutter, Min: 5, Max: 5})}}, hand, nil},

		"write `joinery: {bottom-fit: slide-in}`": {geom.Diagnosis{Remedies: []geom.Remedy{
			one(geom.Change{Setting: joinery.SettingBottomFit, Word: "slide-in"})}}, saw, nil},
		"write `joinery: {bottom-height: ...}` with 9 mm or more": {geom.Diagnosis{Remedies: []geom.Remedy{
			one(geom.Change{Setting: joinery.SettingBottomHeight, Min: 9, Max: math.Inf(1)})}}, saw, nil},
		"write `joinery: {bottom-clearance: 2.7 mm}`, within 2.48 mm to 2.93 mm": {geom.Diagnosis{Remedies: []geom.Remedy{
			one(geom.Change{Setting: joinery.SettingBottomClearance, Min: 2.48, Max: 2.93})}}, saw, nil},
		"write `joinery: {bottom-clearance: 2 mm}`": {geom.Diagnosis{Remedies: []geom.Remedy{
			one(geom.Change{Setting: joinery.SettingBottomClearance, Min: 2, Max: 2})}}, saw, nil},

		"make the height 22.46 mm or more, make the height 22.46 mm or more and write `joinery: {bottom-fit: flush}`; but then the lid sticks; and it rattles": {geom.Diagnosis{Remedies: []geom.Remedy{{
			Changes: append(append([]geom.Change{}, higher.With(higher).Changes...), geom.Change{Setting: joinery.SettingBottomFit, Word: "flush"}),
			Then:    []geom.Diagnosis{{Fact: geom.Sentencef("the lid sticks")}, {Fact: geom.Sentencef("it rattles")}},
		}}}, saw, nil},
		"make the height 22.46 mm or more; or less load; or a strip": {geom.Diagnosis{Remedies: []geom.Remedy{higher}, Ask: ask}, saw, []string{"less load", "a strip"}},
		"make the height 22.46 mm or more: then all are right":       {geom.Diagnosis{Eases: []geom.Remedy{{Changes: higher.Changes, Result: geom.Sentencef("all are right")}}, Ask: ask}, saw, nil},
		"sort boards that differ by 1 mm":                            {geom.Diagnosis{Ask: ask}, saw, nil},
	} {
		if got := Hint(c.diagnosis, c.spec, c.others...); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestChoice: what is proposed of a range is round and in its middle half; a bit, one that is sold.
func TestChoice(t *testing.T) {
	cut := func(least, most float64) geom.Change {
		return geom.Change{Setting: joinery.SettingCutter, Min: least, Max: most}
	}
	for _, c := range []struct {
		change geom.Change
		kind   joinery.CutterKind
		unit   geom.Unit
		want   float64
	}{
		{cut(6.2, 6.5), joinery.Saw, geom.Millimeter, 6.35},  // sold, and in the middle half; 6.5 is an end
		{cut(6.34, 6.54), joinery.Saw, geom.Millimeter, 6.4}, // 6.35 is nearly an end
		{cut(6.45, 7.25), joinery.Saw, geom.Millimeter, 7},
		{cut(6.21, 6.23), joinery.Saw, geom.Millimeter, 6.22},
		{cut(6.3, 6.5), joinery.Router, geom.Millimeter, 6.35},
		{cut(0.24*geom.InchMM, 0.26*geom.InchMM), joinery.Saw, geom.Inch, 0.25 * geom.InchMM},
		{cut(0.245*geom.InchMM, 0.25*geom.InchMM), joinery.Saw, geom.Inch, 0.248 * geom.InchMM}, // 1/4 in is an end
	} {
		if got := choice(c.change, c.kind, c.unit); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("of %g to %g: %g, want %g", c.change.Min, c.change.Max, got, c.want)
		}
	}
}
