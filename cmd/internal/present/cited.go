package present

import (
	"fmt"
	"slices"
)

// sources are the public texts behind the cautions, which name them by their place, from 1.
var sources = []string{
	"29 CFR 1910.213, woodworking machinery requirements (USA)",
	"OSHA Woodworking eTool, table saws (USA)",
	"HSE Information Sheet WIS16, circular saw benches: safe working practices (UK)",
	"HSE Information Sheet WIS22, CNC routers (UK)",
	"HSE, wood dust: controlling the risks (UK)",
}

// cite gives the sheet the sources that its cautions name and no others, numbered from 1 in their order.
func (s *SetupSheet) cite() {
	named := make(map[int]bool)
	s.eachCaution(func(c *Caution) { named[c.Source] = true })
	number := make(map[int]int)
	s.Sources = []string{}
	for i, source := range sources {
		if named[i+1] {
			s.Sources = append(s.Sources, source)
			number[i+1] = len(s.Sources)
		}
	}
	s.eachCaution(func(c *Caution) { c.Source = number[c.Source] })
}

// eachCaution goes through the cautions of a sheet, which are its own from then on.
func (s *SetupSheet) eachCaution(do func(*Caution)) {
	each := func(list *[]Caution) {
		*list = slices.Clone(*list)
		for i := range *list {
			do(&(*list)[i])
		}
	}
	cuts := func(list []CutStep) {
		for i := range list {
			each(&list[i].Cautions)
		}
	}
	each(&s.General)
	for i := range s.Machines {
		m := &s.Machines[i]
		each(&m.Cautions)
		for k := range m.Settings {
			each(&m.Settings[k].Cautions)
			cuts(m.Settings[k].Cuts)
		}
		cuts(m.Separate)
	}
}

// Cited is a caution with the number of its source.
func (c Caution) Cited() string {
	if c.Source > 0 {
		return fmt.Sprintf("%s [%d]", c.Text, c.Source)
	}
	return c.Text
}
