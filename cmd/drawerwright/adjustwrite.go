package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/present"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"
)

// write writes a copy of the job file with what the readings tell, and notes in out what is in
// it and what check will say of it that it did not say of the job.
func (t *trialCut) write(from string, a *adjusting, l loaded, advice testcut.Advice, out *present.Adjustment) error {
	edits, err := t.edits(l.Job, advice, a.keep)
	if err != nil {
		return err
	}
	patched, err := edited(from, edits)
	if err != nil {
		return err
	}
	copied := load.Read(a.write, bytes.NewReader(patched), load.Beside(a.write))
	if i := slices.IndexFunc(copied.Problems, job.Problem.IsError); i >= 0 {
		p := copied.Problems[i]
		return fmt.Errorf("nothing is written: with these values the job could not be built: %s; %s", p.Message, p.Hint)
	}
	if err := writeNew(a.write, patched); err != nil {
		return err
	}
	out.Written = append(out.Written, "file: "+a.write)
	for _, e := range edits {
		out.Written = append(out.Written, strings.Join(e.Path, " > ")+": "+e.Value)
	}
	out.Warns = newWarnings(l.Problems, copied.Problems)
	return nil
}

// newWarnings are those of a kind of which there are more now.
func newWarnings(before, now job.Problems) (list []string) {
	count := func(list job.Problems, c job.Code) (n int) {
		for _, p := range list {
			if p.Code == c && p.Level == geom.LevelWarning {
				n++
			}
		}
		return n
	}
	for _, p := range now {
		if p.Level == geom.LevelWarning && count(now, p.Code) > count(before, p.Code) {
			list = append(list, p.Message+"; "+p.Hint)
		}
	}
	return list
}

// next says what to do after an answer: with the file that was written, if one was.
func (a *adjusting) next(args []string, out present.Adjustment) string {
	job, text := args[0], ""
	if a.write != "" {
		job, text = a.write, "Written: "+a.write+", for the parts not yet cut. "
	}
	var more, given []string
	for _, w := range out.Measure {
		more = append(more, w.Reading+"=...")
	}
	for _, r := range args[1:] {
		given = append(given, plain(r))
	}
	switch {
	case len(more) > 0:
		return text + fmt.Sprintf("Next: measure, and drawerwright adjust %s %s %s", plain(job),
			strings.Join(given, " "), strings.Join(more, " "))
	case len(out.Warns) > 0:
		return text + fmt.Sprintf("Next: mend what check warns of (see below), in %s", plain(job))
	case a.write != "":
		return text + "Next: drawerwright check " + plain(job)
	case slices.ContainsFunc(out.Moves, func(m present.MoveRow) bool { return m.Action == string(testcut.Make) }):
		return "Next: move, cut another test piece, and give adjust its readings."
	}
	return ""
}

// fenceField is the entry that the fence's distance on the test cut is: of grooves at a
// height of their own, that.
func (t *trialCut) fenceField() geom.Setting {
	if t.drawer.Spec.Joint != joinery.DadoRabbet && t.drawer.Setup.GrooveFence > 0 {
		return joinery.SettingBottomHeight
	}
	return joinery.SettingFenceDistance
}

// fenceDistance is what the job has for it now, in mm.
func (t *trialCut) fenceDistance() float64 {
	if t.fenceField() == joinery.SettingBottomHeight {
		return t.drawer.Setup.GrooveFence
	}
	return t.drawer.Setup.FenceDistance
}

// edits put the measured values into a job file. With keep they hold the settings as
// they really are, nothing moved.
func (t *trialCut) edits(j *job.Job, a testcut.Advice, keep bool) ([]job.Edit, error) {
	if len(a.Conflicts) > 0 {
		return nil, fmt.Errorf("nothing is written: %s contradict each other", strings.Join(a.Conflicts, ", "))
	}
	measured := t.measured(j, a)
	list := append(measured, t.set(j, a, keep, len(measured) > 0)...)
	if len(list) == 0 {
		return nil, errors.New("nothing is written: the readings settle nothing that a job holds")
	}
	return list, nil
}

// number is a length as a job file takes it.
func (t *trialCut) number(mm float64) string {
	u := t.batch.Units
	return geom.LengthOf(mm).Decimal(u) + " " + u.String()
}

// measured are the edits of the cutter and of the stocks.
func (t *trialCut) measured(j *job.Job, a testcut.Advice) (edits []job.Edit) {
	kinds := make(map[testcut.Kind]bool)
	for _, r := range a.Residuals {
		if !r.Rejected {
			kinds[r.Kind] = true
		}
	}
	if kinds[testcut.Slot] || kinds[testcut.Clearance] || kinds[testcut.Coupon] || kinds[testcut.Tooth] {
		edit := j.CutterEdit
		if t.cut.Grooves() {
			edit = j.GrooveCutterEdit
		}
		if e, ok := edit(t.at, t.number(a.Cutter.Value)); ok {
			edits = append(edits, e)
		}
	}
	if kinds[testcut.Sides] {
		edits = append(edits, t.stockEdit(t.drawer.Spec.Sides, a.Side.Value))
	}
	if kinds[testcut.Front] && (t.drawer.Spec.Front.Name != t.drawer.Spec.Sides.Name || !kinds[testcut.Sides]) {
		edits = append(edits, t.stockEdit(t.drawer.Spec.Front, a.Front.Value))
	}
	return edits
}

// stockEdit sets the thickness of a stock, which keeps the spread of its readings, about
// what it measures now.
func (t *trialCut) stockEdit(s joinery.Stock, now float64) job.Edit {
	value := t.number(now)
	if half := (s.Thickness.Max - s.Thickness.Min) / 2; half > 0 {
		value = "[" + t.number(now-half) + ", " + t.number(now+half) + "]"
	}
	return job.Edit{Path: []string{"stock", s.Name, "thickness"}, Value: value}
}

// set are the edits of the settings. What is left is written as it is, what is moved as it
// should be then. A fence of which it is not known yet where it stands has a place where it
// belongs, once the cutter or a board is known better: that is written with them, so that the
// copy is a job of which all parts belong together.
func (t *trialCut) set(j *job.Job, a testcut.Advice, keep, measured bool) (edits []job.Edit) {
	k := t.cut.Unmoved(a.Estimate)
	fence, height := 0.0, 0.0
	for _, m := range a.Moves {
		left := keep || m.Action == testcut.Leave
		known := left || m.Action == testcut.Make
		switch {
		case m.Setting == testcut.Fence && left:
			fence = k.FenceDistance
		case m.Setting == testcut.Fence && (known || measured):
			fence = m.To
		case m.Setting == testcut.Height && left:
			height = k.CutterHeight
		case m.Setting == testcut.Height && known:
			height = m.To
		}
	}
	for _, s := range []struct {
		field    geom.Setting
		value    float64
		unedited float64
	}{{t.fenceField(), fence, t.fenceDistance()}, {joinery.SettingCutterHeight, height, t.drawer.Setup.CutterHeight}} {
		if s.value > 0 && t.number(s.value) != t.number(s.unedited) {
			edits = append(edits, j.SettingEdit(t.at, s.field, t.number(s.value)))
		}
	}
	if t.fits > 0 && t.drawer.Setup.Cutter.Kind.MadeToFit() {
		edits = append(edits, j.SettingEdit(t.at, joinery.SettingDadoClearance, t.number(max(0, t.clearanceWanted()))))
	}
	return edits
}

// edited is a job file with edits.
func edited(from string, edits []job.Edit) ([]byte, error) {
	file, err := os.ReadFile(from)
	if err != nil {
		return nil, err
	}
	return job.Patch(file, edits...)
}
