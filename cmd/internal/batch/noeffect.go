package batch

import (
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// withoutEffect notes the entries for a router that decide nothing in this job: who wrote them
// may count on what they do. Package mill knows what had a say ([mill.Use]).
func (b Batch) withoutEffect(j *job.Job) (problems []Problem) {
	used, first, turned, sawn := b.uses()
	if first < 0 {
		return nil // the reader refuses these entries
	}
	note := func(entry string, fact, ask string) {
		if j.Says(entry) {
			problems = append(problems, Problem{Drawer: first, OfJob: true, Diagnosis: geom.Diagnosis{
				Code: geom.Code(job.CodeNoEffect), Level: geom.LevelNote,
				Subject: geom.Subject{Setting: geom.Setting(entry)},
				Fact:    geom.Sentencef("%s", fact),
				Ask:     geom.Sentencef("%s", ask),
			}})
		}
	}
	say := func(entry string, why, ask string) {
		note(entry, entry[strings.LastIndexByte(entry, '.')+1:]+" has no effect in this job: "+why, ask)
	}
	const harmless = "leave it for other jobs, or delete it"
	for _, e := range []struct {
		setting geom.Setting
		fact    string
	}{
		{mill.SettingOvercut, "no cut leaves a part at its edge"},
		{mill.SettingSlots, "no slot is just as wide as its bit"},
		{mill.SettingRegister, "no part is turned over"},
		{mill.SettingTabs, "every part is small and held by its onion skin"},
		{mill.SettingOnionSkin, "no part is smaller than a square of " + geom.LengthOf(b.Router.SmallPart).Text(b.Units) +
			" on a side, or without room for tabs"},
	} {
		if !used[mill.Use{Setting: e.setting}] {
			say("router."+string(e.setting), e.fact, harmless)
		}
	}
	if !turned {
		for _, name := range []string{"flip-on", "pin-distance"} {
			say("sheets."+name, "no part is cut on both faces, so no sheet is turned over", harmless)
		}
	}
	if !sawn {
		for _, name := range []string{"prefer", "first-cuts", "times"} {
			say("sheets."+name, "no saw takes a sheet apart", harmless)
		}
	}
	b.reliefs(used, say)
	if some, why := b.unengraved(); b.Router.Engrave.Depth > 0 && why != "" {
		note("router.engrave", engraveFact(some, why), "give the router a narrower bit for it, leave it, or delete it")
	}
	return problems
}

// uses are what routers do in a job, the first drawer that one cuts, -1 for none, whether a part is turned over, and
// whether a saw cuts some.
func (b Batch) uses() (used map[mill.Use]bool, first int, turned, sawn bool) {
	used, first = make(map[mill.Use]bool), -1
	for i, d := range b.Drawers {
		for _, p := range d.Parts {
			if len(p.Bits) == 0 {
				sawn = true
				continue
			}
			if first < 0 {
				first = i
			}
			turned = turned || p.Work().TurnedOver()
			for _, u := range p.Work().Uses {
				used[u] = true
			}
		}
	}
	return used, first, turned, sawn
}

// engraveFact says of engraving that parts have no number; some is whether others have one.
func engraveFact(some bool, why string) string {
	if some {
		return "engrave puts no number on " + why
	}
	return "engrave has no effect in this job: no number on " + why
}

// unengraved names the parts that have no number, with the reason of each, where a job asks for numbers; some is
// whether others have one.
func (b Batch) unengraved() (some bool, why string) {
	var order []string
	parts := make(map[string][]string)
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			reason := "no router cuts it"
			if p.Engraved != nil {
				reason = p.Engraved.Room.In(b.Units)
			}
			if reason == "" {
				some = true
				continue
			}
			if parts[reason] == nil {
				order = append(order, reason)
			}
			parts[reason] = append(parts[reason], p.Name)
		}
	}
	for i, reason := range order {
		order[i] = words.Some(parts[reason]) + " (" + reason + ")"
	}
	return some, strings.Join(order, ", ")
}

// reliefs says which reliefs no corner asks for: all of them at once, else one by one.
func (b Batch) reliefs(used map[mill.Use]bool, say func(entry, fact, ask string)) {
	const entry, harmless = "router." + string(mill.SettingRelief), "leave it for other jobs, or delete it"
	any, others := false, false
	for _, operation := range mill.Relieved {
		asked := used[mill.Use{Setting: mill.SettingRelief, Operation: operation}]
		_, own := b.Router.Reliefs[operation]
		any, others = any || asked, others || asked && !own
	}
	if !any {
		say(entry, "the round corners that the bits leave are in the way of no part", harmless)
		return
	}
	for _, operation := range mill.Relieved {
		if !used[mill.Use{Setting: mill.SettingRelief, Operation: operation}] {
			say(entry+"."+operation, "the round corners that the bits leave there are in the way of no part", harmless)
		}
	}
	if !others {
		say(entry+"."+job.ReliefOthers, "the round corners that the bits leave elsewhere are in the way of no part",
			harmless)
	}
}
