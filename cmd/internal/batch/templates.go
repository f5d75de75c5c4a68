package batch

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
	"drawerwright/export/template"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Templates are the marking templates of a batch, in pieces that fit the bed.
type Templates struct {
	job.Templates
	Plates []TemplatePlate
	Prints []template.Plate // whole: paper needs no bed
}

// TemplatePlate is a plate as drawn and, where a kerf is known, made up for it. Files
// are relative to the output folder.
type TemplatePlate struct {
	Drawn, Made       template.Cut
	DrawnDXF, MadeDXF string
	DrawnSVG, MadeSVG string
}

// TemplatesPDF prints those that are of use on paper, at their true size.
const TemplatesPDF = filing.Templates + "as-drawn.pdf"

// templates lays out what a job asks for. What they cannot do is said with the
// first of the drawers.
func (b *Batch) templates(j *job.Job) (problems []Problem) {
	if j.Templates == nil || len(b.Drawers) == 0 || j.Templates.Thickness <= 0 {
		return nil // without a stock, of which the job's problems tell
	}
	t := *j.Templates
	number := func(mm float64) string { return geom.LengthOf(mm).Number(b.Units) }
	plates, wrong := b.plates(b.templateOptions(t))
	out := &Templates{Templates: t}
	said := make(map[string]bool)
	say := func(d geom.Diagnosis, format string, args ...any) {
		d.Fact = geom.Sentencef("template "+format, args...)
		d.Subject = geom.Subject{Setting: "templates"}
		if fact := d.Fact.In(b.Units); !said[fact] {
			said[fact] = true
			problems = append(problems, Problem{Diagnosis: d, also: d.Ask})
		}
	}
	for _, d := range wrong {
		say(d, "%s: %s", d.Subject.Part, d.Fact)
	}
	taken := make(map[string]bool)
	for _, plate := range plates {
		plate.Unit = b.Units
		if plate.OfUseOnPaper() {
			out.Prints = append(out.Prints, plate)
		}
		for _, p := range plate.Split() {
			name := p.Name
			for n := 2; taken[p.Name]; n++ {
				p.Name = fmt.Sprintf("%s-%d", name, n)
			}
			taken[p.Name] = true
			one := TemplatePlate{Drawn: p.Made(0), Made: p.Made(t.Kerf)}
			file := filing.Templates + p.Name
			one.DrawnDXF, one.DrawnSVG = file+".as-drawn.dxf", file+".as-drawn.svg"
			if t.Kerf > 0 {
				file = fmt.Sprintf("%s.kerf-%s%s", file,
					strings.ReplaceAll(geom.LengthOf(t.Kerf).Fixed(b.Units), ".", "-"), b.Units)
				one.MadeDXF, one.MadeSVG = file+".dxf", file+".svg"
			}
			for _, f := range one.Made.Found {
				say(f.Diagnosis, "%s: %s, at %s, %s", p.Name, f.Fact, number(f.At.X), number(f.At.Y))
			}
			out.Plates = append(out.Plates, one)
		}
	}
	for _, p := range out.Prints {
		if b := p.Outline.Bounds(); t.RollWidth > 0 && !paper.RollHolds(b.Width(), b.Height(), t.RollWidth, p.Unit) {
			say(geom.Diagnosis{Code: "template", Level: geom.LevelNote, Ask: geom.Sentencef("a wider `roll-width`")},
				"%s, %s by %s, is too wide for a roll of %s: it is printed on sheets",
				p.Name, number(b.Width()), number(b.Height()), number(t.RollWidth))
		}
	}
	b.Templates = out
	return problems
}

// templateOptions are what a job says of its templates.
func (b *Batch) templateOptions(t job.Templates) template.Options {
	o := template.Options{Job: b.Title, Thickness: t.Thickness, MinBridge: t.Kerf, Mark: t.SlotWidth, Bed: t.Bed,
		Pin: t.PinDiameter, Unit: b.Units}
	o.Dowel, _ = words.Drill(t.PinDiameter, b.Units)
	if t.Register == job.RegisterLip {
		o.Register = template.Lip
	}
	return o
}

// plates are all, whole, with what cannot be had of them.
func (b *Batch) plates(o template.Options) ([]template.Plate, []geom.Diagnosis) {
	plates, found := b.panelPlates(o)
	plates = append(plates, b.sticks(o)...)
	for i, g := range b.settings() {
		c := cornerOf(g)
		c.Name = fmt.Sprintf("setting-%d", i+1)
		plates = append(plates, template.Gauge(c, o))
		if g[0].Spec.Cutter.Kind != joinery.Router { // which follows its drawings: neither fence nor height is set
			plates = append(plates, template.Blocks(c, b.Spacers, o)...)
		}
	}
	return plates, found
}

// sticks are the plates from which the slides of cabinets are marked.
func (b *Batch) sticks(o template.Options) (plates []template.Plate) {
	for _, bank := range b.Banks {
		if s := bank.Side; len(s.Lines) > 0 {
			side := template.Side{Name: s.Name, Height: s.Height, Holes: s.Holes}
			for _, l := range s.Lines {
				side.Lines = append(side.Lines, template.Line{Name: l.Name, At: l.At})
			}
			p := template.Stick(side, o)
			p.Name = "stick-" + job.FileName(s.Name)
			plates = append(plates, p)
		}
	}
	return plates
}

// panelPlates are those that mark parts; drawer fronts are drilled through theirs.
func (b *Batch) panelPlates(o template.Options) (plates []template.Plate, found []geom.Diagnosis) {
	var marked, drilled []template.Panel
	for _, d := range b.Drawers {
		for _, p := range d.Parts {
			one := template.Panel{Name: p.Name, Panel: p.Panel, Stock: p.Stock.Name, Thickness: geom.LengthOf(p.Panel.Thickness).Text(b.Units)}
			one.End, one.OtherEnd = ends(p.Part)
			if one.Stop = strings.ToLower(one.End); serves(p.Part) {
				one.Stop += ", the back end of a right one"
			}
			if p.Role == joinery.DrawerFrontRole {
				drilled = append(drilled, one)
			} else {
				marked = append(marked, one)
			}
		}
	}
	plates, found = template.Panels(marked, o)
	o.FullHoles = true
	more, wrong := template.Panels(drilled, o)
	return append(plates, more...), append(found, wrong...)
}

// serves tells a side that serves left and right alike.
func serves(p *joinery.Part) bool { return p.Role == joinery.Side && p.Label == "" }

// ends are what the left and the right end of a part are, seen from its inside. A left
// side runs from the front to the back, a right one the other way; where both are the
// same part its ends are alike.
func ends(p *joinery.Part) (left, right string) {
	switch {
	case serves(p):
		return "FRONT END OF A LEFT SIDE", "FRONT END OF A RIGHT SIDE"
	case p.Role == joinery.Side && p.Label == "right":
		return "BACK END", "FRONT END"
	case p.Role == joinery.Side:
		return "FRONT END", "BACK END"
	case p.Role == joinery.Front || p.Role == joinery.Back:
		return "SIDE END", "SIDE END"
	}
	return "LEFT END", "RIGHT END"
}

// settings are the drawers of each different setting of fence and height.
func (b *Batch) settings() [][]Drawer {
	set := slices.DeleteFunc(slices.Clone(b.Drawers), func(d Drawer) bool {
		return d.Setup.FenceDistance <= 0 || d.Setup.CutterHeight <= 0
	})
	return BySetting(set)
}

// cornerOf is what drawers of one setup are set and gauged by, with the limits of their
// setup sheet.
func cornerOf(group []Drawer) template.Corner {
	d := group[0]
	c := template.Corner{Fence: d.Setup.FenceDistance, Height: d.Setup.CutterHeight, Cutter: d.Setup.Cutter.Width, Deep: d.Setup.CutterHeight}
	if d.Setup.DadoHeight > 0 {
		c.Deep = d.Setup.DadoHeight
	}
	limits := CaliperLimits(group)
	if r, found := limits.CutDepth(); found {
		c.Deep, c.Depths = r.Target, [2]float64{r.Min, r.Max}
	}
	if least, most, found := limits.Tongue(d.Spec); found {
		c.Tongue = [2]float64{least, most}
	}
	return c
}
