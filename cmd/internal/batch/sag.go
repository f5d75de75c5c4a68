package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/advice"
	"drawerwright/geom/joinery"
	"drawerwright/geom/strength"
)

// sag works out how far the bottom sags under an even load, and judges it.
func (d *Drawer) sag(j *job.Job, drawer int, load float64) []proposal {
	s := &d.Strength
	if s.Bottom = strength.BottomOf(d.Drawer, load); !s.SagsTooMuch() {
		return nil
	}
	p := proposal{Diagnosis: geom.Diagnosis{
		Code: "sag", Level: geom.LevelWarning, Subject: geom.Subject{Setting: joinery.SettingBottom, Part: string(joinery.Bottom)},
		Fact: geom.Sentencef("under %s, spread evenly, the bottom sags by %s (%s if its edges were clamped; the truth is between), "+
			"and if the load stays for years by up to %s; %s is a two-hundredth of its span",
			words.Kilograms(load), geom.Caliper(s.Sag.Simple), geom.Caliper(s.Sag.Clamped), geom.Caliper(s.Lasting), geom.Caliper(s.SagLimit)),
		Measured: geom.Caliper(s.Sag.Simple), Limit: geom.Caliper(s.SagLimit),
		Ask: geom.Sentencef("less load, or a strip that is glued under the middle of the bottom"),
	}}
	if s.Enough > 0 {
		var thicker []Way
		for _, r := range advice.ThickerBottom(d.Spec, s.Enough) {
			thicker = append(thicker, Way{Remedy: r})
		}
		p.ways = [][]Way{thicker}
	}
	p.ways = append(p.ways, lessLoad(j, drawer, s.MaxLoad(load)))
	return []proposal{p}
}
