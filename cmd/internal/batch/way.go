package batch

import (
	"context"
	"maps"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/advice"
	"drawerwright/geom/joinery"
)

// Problem is a diagnosis of one drawer, by its place in the file.
type Problem struct {
	Drawer int
	// OfJob is set where it is not about that drawer more than about others: no drawer is named.
	OfJob bool
	geom.Diagnosis
	// Ways are entries of the job file that end it, beside the remedies.
	Ways []Way
	also geom.Sentence // stands after remedies and ways: what only a person can do
}

// Shown is the problem in the job file, in its words and its unit.
func (p Problem) Shown(j *job.Job) job.Problem {
	var others []string
	for _, w := range p.Ways {
		others = append(others, w.Text)
	}
	if len(p.Remedies)+len(p.Ways) > 0 && !p.also.IsEmpty() {
		others = append(others, p.also.In(j.Units))
	}
	shown := j.Problem(p.Drawer, p.Diagnosis, others...)
	ways := make([]job.Way, len(p.Ways))
	for i, w := range p.Ways {
		ways[i] = w.Way
	}
	shown.Ways = j.WaysOf(p.Drawer, p.Remedies, ways)
	if p.Reread != "" {
		shown.Ways = slices.Insert(shown.Ways, 0, job.WayToRead(p.Reread))
	}
	return shown
}

// Way is what may end a problem: a remedy of the drawer's spec, or entries of the job file. As in
// the package joinery a check proposes, and what is kept has been tried.
type Way struct {
	Remedy geom.Remedy
	job.Way
	Load float64 // kg in the drawer, that an edit writes
}

// families are entries of the job file, those of a list alike.
func families(lists ...[]job.Way) (ways [][]Way) {
	for _, list := range lists {
		family := make([]Way, len(list))
		for i, w := range list {
			family[i] = Way{Way: w}
		}
		ways = append(ways, family)
	}
	return ways
}

// proposal is a diagnosis with what may end it.
type proposal struct {
	geom.Diagnosis
	ways [][]Way // of those that are alike, the first that holds
	also geom.Sentence
}

// plain are proposals that propose nothing.
func plain(list []geom.Diagnosis) (out []proposal) {
	for _, p := range list {
		out = append(out, proposal{Diagnosis: p})
	}
	return out
}

// maxTrials is how many changes are tried for a job: a file with mistakes without number
// has no more hints than a person reads.
const maxTrials = 48

// adviser tries what proposals name. Trials of the same change are one.
type adviser struct {
	job      *job.Job
	known    *advice.Memory
	warnings map[string]int           // of the job's file, once they are known
	before   map[about]int            // what was said of the drawers
	tried    map[string]map[about]int // what is said with a change; nil where the file has mistakes then
}

// about tells diagnoses of a job apart.
type about struct {
	drawer int
	geom.Topic
}

// advised are all proposals with what holds of them.
func advised(j *job.Job, how manner, found [][]proposal) (problems []Problem) {
	a := &adviser{job: j, known: how.known, before: make(map[about]int), tried: make(map[string]map[about]int)}
	for i, list := range found {
		for _, p := range list {
			a.before[about{i, p.Topic()}]++
		}
	}
	for i, list := range found {
		for _, p := range list {
			if how.ctx.Err() != nil {
				return problems
			}
			problems = append(problems, a.advise(i, p))
		}
	}
	return problems
}

// advise keeps of a proposal what ends it and brings nothing else.
func (a *adviser) advise(drawer int, p proposal) Problem {
	out := Problem{Drawer: drawer, Diagnosis: p.Diagnosis, also: p.also}
	for _, family := range p.ways {
		i := slices.IndexFunc(family, func(w Way) bool { return a.holds(out, w) })
		if i < 0 {
			continue
		}
		if w := family[i]; len(w.Edits) > 0 {
			out.Ways = append(out.Ways, w)
		} else {
			out.Remedies = append(out.Remedies, w.Remedy)
		}
	}
	return out
}

// holds reports whether a change ends a problem and brings no other.
func (a *adviser) holds(p Problem, w Way) bool {
	at := about{p.Drawer, p.Topic()}
	for _, lengths := range w.Remedy.Ends() {
		now, judged := a.said(p.Drawer, w, lengths)
		if !judged || now[at] >= a.before[at] {
			return false
		}
		for at, n := range now {
			if n > a.before[at] {
				return false
			}
		}
	}
	return true
}

// said is what is said of the drawers that a change concerns.
func (a *adviser) said(drawer int, w Way, lengths []float64) (now map[about]int, judged bool) {
	key := strings.Builder{}
	key.WriteString(strconv.Itoa(a.job.Drawers[drawer].Entry()))
	for i, c := range w.Remedy.Changes {
		key.WriteString("\x00" + string(c.Setting) + c.Key + strconv.Itoa(c.Item) + c.Word + strconv.FormatFloat(lengths[i], 'g', -1, 64))
	}
	for _, e := range w.Edits {
		key.WriteString("\x00" + strings.Join(e.Path, ">") + "=" + e.Value)
	}
	if now, done := a.tried[key.String()]; done || len(a.tried) >= maxTrials {
		return now, now != nil
	}
	var changed *job.Job
	only := a.job.Drawers[drawer].Entry()
	if len(w.Remedy.Changes) > 0 || w.Load > 0 {
		changed = a.followed(only, w, lengths)
	} else {
		if a.warnings == nil {
			_, a.warnings = a.edited(nil)
		}
		next, warnings := a.edited(w.Edits)
		for code, n := range warnings {
			if n > a.warnings[code] {
				next = nil
			}
		}
		if changed = next; slices.ContainsFunc(w.Edits, func(e job.Edit) bool { return e.Path[0] != "drawers" }) {
			only = everyEntry
		}
	}
	if changed != nil && len(changed.Drawers) == len(a.job.Drawers) {
		now = judge(changed, only, a.known)
	}
	a.tried[key.String()] = now
	return now, now != nil
}

// followed is the job with a change of an entry's drawers.
func (a *adviser) followed(entry int, w Way, lengths []float64) *job.Job {
	next := *a.job
	next.Drawers = slices.Clone(next.Drawers)
	next.Spreads = maps.Clone(next.Spreads)
	for i := range next.Drawers {
		d := &next.Drawers[i]
		if d.Entry() != entry {
			continue
		}
		was := d.Spec
		d.Spec = joinery.Follow(was, w.Remedy, lengths)
		next.Spreads[d.Bottom.Name] = a.job.Spreads[was.Bottom.Name] // another bottom is as even
		if w.Load > 0 {
			d.Load = w.Load
		}
	}
	return &next
}

// edited is the job as the file would read with edits, and how often each warning of
// reading it is there; nil where it has mistakes then.
func (a *adviser) edited(edits []job.Edit) (*job.Job, map[string]int) {
	next, problems := a.job.With(edits...)
	if next == nil || problems.Failed() {
		return nil, map[string]int{}
	}
	warnings := make(map[string]int)
	for _, p := range problems {
		warnings[string(p.Code)]++
	}
	return next, warnings
}

// everyEntry judges all drawers.
const everyEntry = -1

// judge is what is said of the drawers of an entry, or of all, without any advice.
func judge(j *job.Job, entry int, known *advice.Memory) map[about]int {
	how := manner{context.Background(), known, false}
	now := make(map[about]int)
	b := empty(j)
	eachEntry(j, func(from, to int) {
		if entry != everyEntry && j.Drawers[from].Entry() != entry {
			return
		}
		drawers, found := build(j, from, to, how)
		for i := range drawers {
			list := plain(found[i])
			if sound(found[i]) {
				list = append(list, b.judge(j, from+i, &drawers[i])...)
			}
			for _, p := range list {
				now[about{from + i, p.Topic()}]++
			}
		}
	})
	return now
}

// layOutRows is [joinery.BuildRows] without advice.
func layOutRows(rows []joinery.Spec) ([]joinery.Drawer, [][]geom.Diagnosis) {
	drawers, problems := make([]joinery.Drawer, len(rows)), make([][]geom.Diagnosis, len(rows))
	for i, s := range rows {
		drawers[i], problems[i], _ = joinery.LayOut(s)
	}
	return drawers, problems
}

func sound(problems []geom.Diagnosis) bool { return !geom.AnyError(problems) }
