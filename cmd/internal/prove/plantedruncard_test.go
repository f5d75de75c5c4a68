package prove_test

import "drawerwright/cmd/internal/record"

// plantedRunCards are of what the report says at the machine.
var plantedRunCards = map[string]planted{
	"a pin of the run card elsewhere":       runCard(func(r *record.Run) { r.Faces[0].Pins[0].X -= 10 }),
	"a pin of the run card of another size": runCard(func(r *record.Run) { r.Faces[0].Pins[1].Diameter += 1 }),
	"a pin of the run card lost":            runCard(func(r *record.Run) { r.Faces[0].Pins = r.Faces[0].Pins[1:] }),
	"another depth to set on the run card":  runCard(func(r *record.Run) { r.Faces[0].Steps[0].Set -= 1 }),
	"another depth on the run card":         runCard(func(r *record.Run) { r.Faces[1].Steps[0].Depth += 0.1 }),
	"another tool on the run card":          runCard(func(r *record.Run) { r.Faces[0].Steps[0].Tool = 7 }),
	"another bit on the run card":           runCard(func(r *record.Run) { r.Faces[1].Steps[1].Bit = "other" }),
	"another diameter on the run card":      runCard(func(r *record.Run) { r.Faces[1].Steps[1].Diameter *= 2 }),
	"a change of bit on the run card":       runCard(func(r *record.Run) { r.Faces[1].Steps[1].BitChange = !r.Faces[1].Steps[1].BitChange }),
	"steps of the run card turned round": runCard(func(r *record.Run) {
		s := r.Faces[1].Steps
		s[0], s[len(s)-1] = s[len(s)-1], s[0]
	}),
	"a step of the run card lost":   runCard(func(r *record.Run) { r.Faces[1].Steps = r.Faces[1].Steps[1:] }),
	"another layer on the run card": runCard(func(r *record.Run) { r.Faces[0].Steps[0].Layer += "X" }),
	"fewer cuts on the run card":    runCard(func(r *record.Run) { r.Faces[1].Steps[0].Cuts-- }),
	"a pass on the run card":        runCard(func(r *record.Run) { r.Faces[1].Steps[0].Passes++ }),
	"a pass depth on the run card": runCard(func(r *record.Run) {
		s := &r.Faces[1].Steps[0]
		s.Passes, s.PassDepth = 1, s.Depth/2
	}),
	"another chip load on the run card": runCard(func(r *record.Run) { r.Faces[1].Steps[0].ChipLoad += 0.1 }),
	"no through on the run card":        runCard(func(r *record.Run) { r.Faces[1].Steps[len(r.Faces[1].Steps)-1].Through = false }),
	"another face on the run card":      runCard(func(r *record.Run) { r.Faces[0].Face = "inside" }),
	"a face of the run card lost":       runCard(func(r *record.Run) { r.Faces = r.Faces[:1] }),
	"no run card":                       {code: "run-card", at: "report.json", edit: onSheet(func(s *record.LaidSheet) { s.Run = nil })},
}

func runCard(harm func(*record.Run)) planted {
	return planted{code: "run-card", at: "report.json", edit: onSheet(func(s *record.LaidSheet) { harm(s.Run) })}
}
