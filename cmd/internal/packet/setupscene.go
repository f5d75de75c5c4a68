package packet

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
	"drawerwright/preview/scene"
)

// withoutGuards is said of every picture of a setting.
const withoutGuards = "Guard, featherboards, miter gauge, backing board and stops are left out of the picture, so " +
	"that the cut is seen; at the machine they are in place."

// Settings are those of the machines with a fence, with the words and figures of their cards, and how the parts of a
// scene are fed at them; the solids that this takes come to the scene. Settings of which the scene has no part are left
// out. Errors are those of its solids.
func Settings(b batch.Batch, s *scene.Scene) (list []scene.Setting, err error) {
	work := record.Ungauged(b)
	bench := scene.NewWorkbench(s)
	for i, machine := range present.SetupsOf(work).Machines {
		kind := joinery.CutterKind(machine.Machine)
		if !kind.Fenced() {
			continue
		}
		step := 0
		for k, of := range work.Machines[i].Plan.Settings {
			one := settingOf(machine, k, b.Units)
			one.Cutter, one.Height = of.Cutter, of.Height
			for j, c := range of.Cuts {
				step++
				cut := cutOf(machine.Settings[k].Cuts[j], step, b.Units)
				if cut.Feeds, err = bench.Cut(of, c, kind); err != nil {
					return nil, err
				}
				for n := range cut.Feeds {
					cut.Feeds[n].Edge = edgeOf(cut.Feeds[n].Edges, c.End)
				}
				if len(cut.Feeds) > 0 {
					one.Cuts = append(one.Cuts, cut)
				}
			}
			if len(one.Cuts) > 0 {
				list = append(list, one)
			}
		}
	}
	return list, nil
}

// settingOf are the words of a setting's card.
func settingOf(c present.Machine, at int, u geom.Unit) scene.Setting {
	s := c.Settings[at]
	out := scene.Setting{Name: fmt.Sprintf("%s, setting %d", upper(joinery.CutterKind(c.Machine).Machine()), at+1),
		Heading: upper(strings.ToLower(s.Heading(at+1, c.Machine, u))) + "."}
	for _, f := range s.Figures(c.Machine, u) {
		name := f.Name
		if f.Of != "" {
			name += " for " + f.Of
		}
		out.Figures = append(out.Figures, scene.SetFigure{Name: name, Value: f.Value + f.Words})
	}
	said := []string{s.Buried(c.Machine), s.SpacersText(u)}
	if len(s.Steps) > 1 {
		said = append(said, s.Raised(u)+" The picture has the last of them.")
	}
	out.Notes = spoken(append(said, withoutGuards)...)
	out.Cautions = textsOf(s.Cautions)
	return out
}

// cutOf are the words of a cut on its card.
func cutOf(c present.CutStep, number int, u geom.Unit) scene.SetCut {
	fences := ""
	if len(c.Passes) > 1 {
		fences = c.Fences(u)
	}
	return scene.SetCut{Number: number, Text: c.How(u) + ".", Parts: c.PartsText, Notes: spoken(fences, c.Note),
		Cautions: textsOf(c.Cautions)}
}

// spoken are the texts that say something.
func spoken(list ...string) []string {
	return slices.DeleteFunc(list, func(s string) bool { return s == "" })
}

func textsOf(list []present.Caution) (texts []string) {
	for _, c := range list {
		texts = append(texts, c.Text)
	}
	return texts
}

// edgeOf names the edge that a part is fed with: by its place where it has no name.
func edgeOf(e setup.Edges, end setup.End) string {
	switch {
	case end != "" && (e.Left || e.Right):
		return string(end)
	case e.Left:
		return "left end"
	case e.Right:
		return "right end"
	case e.Lower:
		return "lower edge"
	}
	return "upper edge"
}
