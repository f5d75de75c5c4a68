package batch

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// unchecked says once for each stock that bottoms of it are not checked under their loads,
// because the job does not say how stiff it is, and once for all drawers that slides are
// checked without the boxes' own weight. It asks the job alone, so that it says the same
// whatever else is wrong with a drawer.
func unchecked(j *job.Job) (problems []Problem) {
	told := make(map[string]bool)
	var light []string // stocks of unknown density
	first := -1
	for i, d := range j.Drawers {
		if d.Load == 0 {
			continue
		}
		if s := d.Spec.Bottom; s.Stiffness == 0 && !told[s.Name] {
			told[s.Name] = true
			problems = append(problems, Problem{Drawer: i, Diagnosis: geom.Diagnosis{
				Code: "load-unchecked", Level: geom.LevelWarning, Subject: geom.Subject{Setting: fieldLoad, Part: string(joinery.Bottom)},
				Fact: geom.Sentencef("the bottom was not checked under its load: the stiffness of %s is not known", s.Name),
				Ask:  geom.Sentencef("write its `material:`, as plywood, mdf or hardboard, or its `stiffness:` into the stock %s", s.Name),
			}})
		}
		if plan, _ := slideOf(j, i); plan == nil || plan.Slide.Load == 0 {
			continue
		}
		for _, s := range stocksOf(d.Spec) {
			if s.Density == 0 && !slices.Contains(light, s.Name) {
				light = append(light, s.Name)
				if first < 0 {
					first = i
				}
			}
		}
	}
	if first >= 0 {
		problems = append(problems, Problem{Drawer: first, Diagnosis: geom.Diagnosis{
			Code: "weight-unknown", Level: geom.LevelWarning, Subject: geom.Subject{Setting: fieldLoad},
			Fact: geom.Sentencef("its slides were checked for the load without the weight of the box: the density of %s is not known", strings.Join(light, ", ")),
			Ask:  geom.Sentencef("write the `material:` or the `density:` of each of these stocks"),
		}})
	}
	return problems
}

// stocksOf are those of a drawer's parts.
func stocksOf(s joinery.Spec) []joinery.Stock {
	list := []joinery.Stock{s.Sides, s.Front, s.Back, s.Bottom}
	for _, d := range s.Dividers {
		list = append(list, d.Stock)
	}
	if s.Insert != nil {
		list = append(list, s.Insert.Stock)
	}
	if s.DrawerFront != nil {
		list = append(list, s.DrawerFront.Stock)
	}
	return list
}
