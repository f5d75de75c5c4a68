package record

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// Refused are cuts that one machine cannot make for one of its limits.
type Refused struct {
	Machine joinery.CutterKind
	Cuts    []string // their names, each once
	Drawers []string
	Why     string // what is needed and what there is, of the cut that is furthest beyond the limit
	Instead string // what makes all of them
}

// refusedOf are the cuts of drawers that no setting of their machines makes, in order of appearance.
func refusedOf(drawers []batch.Drawer, u geom.Unit) (list []Refused) {
	type limit struct {
		machine joinery.CutterKind
		of      setup.Limit
	}
	var order []limit
	worst := make(map[limit]setup.Step)
	for _, d := range drawers {
		for _, s := range d.Refused {
			at := limit{d.Setup.Cutter.Kind, s.Refused.Limit}
			i := slices.Index(order, at)
			if i < 0 {
				i = len(order)
				order, list = append(order, at), append(list, Refused{Machine: at.machine})
				worst[at] = setup.Step{Refused: s.Refused, Alternatives: s.Alternatives}
			}
			r, w := &list[i], worst[at]
			if name := s.Name(); !slices.Contains(r.Cuts, name) {
				r.Cuts = append(r.Cuts, name)
			}
			if n := len(r.Drawers); n == 0 || r.Drawers[n-1] != d.Spec.Name {
				r.Drawers = append(r.Drawers, d.Spec.Name)
			}
			if s.Refused.Further(*w.Refused) {
				w.Refused = s.Refused
			}
			w.Alternatives = slices.DeleteFunc(slices.Clone(w.Alternatives),
				func(a setup.Alternative) bool { return !slices.Contains(s.Alternatives, a) })
			worst[at] = w
		}
	}
	for i, at := range order {
		list[i].Why, list[i].Instead = worst[at].Refused.Fact().In(u), job.InsteadText(worst[at], at.machine, u)
	}
	return list
}

// Text names the cuts and says why they are none of this machine.
func (r Refused) Text() string { return words.And(r.Cuts) + ": " + r.Why }

// CannotCut is the verdict on cuts of drawers that no setting of their machines makes; empty where there are none.
func CannotCut(drawers []batch.Drawer, u geom.Unit) string {
	list := refusedOf(drawers, u)
	if len(list) == 0 {
		return ""
	}
	first := list[0]
	said := fmt.Sprintf("%s: this %s cannot cut the %s of %s: %s; %s.", CannotBeCut, first.Machine.Machine(),
		words.And(first.Cuts), words.Some(first.Drawers), first.Why, first.Instead)
	if n := len(list) - 1; n > 0 {
		said += fmt.Sprintf(" Other cuts are beyond %s: see the warnings.",
			words.Count(n, "other limit", "other limits"))
	}
	return said
}

// against are the verdicts on boxes that are right by themselves and do not serve: a sentence a kind, of the first box.
func against(b batch.Batch) (said []string) {
	count, first := make(map[geom.Code]int), make(map[geom.Code]string)
	var order []geom.Code
	for _, d := range b.Drawers {
		for _, p := range d.Against {
			if count[p.Code]++; count[p.Code] == 1 {
				word := Overloaded
				if p.Code == batch.CodeBottomBehind {
					word = MayNotFit
				}
				order = append(order, p.Code)
				first[p.Code] = fmt.Sprintf("%s: %s: %s; %s", word, d.Spec.Name, p.Fact.In(b.Units), p.Ask.In(b.Units))
			}
		}
	}
	for _, code := range order {
		others := ""
		if n := count[code] - 1; n > 0 {
			others = "; so with " + words.Count(n, "other drawer", "other drawers")
		}
		said = append(said, first[code]+others+".")
	}
	return said
}
