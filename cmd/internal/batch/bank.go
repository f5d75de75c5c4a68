package batch

import (
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/job"
	"drawerwright/export/cabinet"
	"drawerwright/geom/opening"
	"drawerwright/geom/supplies"
)

// Bank is an opening with its drawers, and where their slides stand.
type Bank struct {
	job.Bank
	Folder string // its name, safe for every file system
	Files  BankFiles
	Side   cabinet.Side
}

// BankFiles are relative to the output folder; empty where no slide stands on the
// cabinet's sides.
type BankFiles struct{ Left, Right, SVG string }

// SharedSize is openings that one size of box would serve.
type SharedSize struct {
	job.SharedSize
	Names []string // of the banks
}

// Preview is the file that shows the bank's boxes as they stand.
func (b Bank) Preview() string { return filing.CabinetScene(b.Folder) }

// banks takes the banks of a job, and what is said of openings that are nearly the same.
func (b *Batch) banks(j *job.Job) {
	for _, bank := range j.Banks {
		out := Bank{Bank: bank, Folder: job.FileName(bank.Name), Side: sideOf(j, bank)}
		if len(out.Side.Lines) > 0 {
			name := filing.Cabinet + out.Folder
			out.Files = BankFiles{name + ".left.dxf", name + ".right.dxf", name + ".svg"}
		}
		b.Banks = append(b.Banks, out)
	}
	for _, a := range j.SharedSizes {
		out := SharedSize{SharedSize: a}
		for _, i := range a.Banks {
			out.Names = append(out.Names, j.Banks[i].Name)
		}
		b.SharedSizes = append(b.SharedSizes, out)
	}
}

// sideOf is the cabinet's left side with its slide lines.
func sideOf(j *job.Job, bank job.Bank) cabinet.Side {
	p := bank.Plan
	s := cabinet.Side{Name: bank.Name, Height: p.Opening.Height, Depth: p.Opening.Depth, Shim: p.Shim, Holes: p.Holes, Diameter: p.Slide.HoleDiameter(), HoleDepth: opening.HoleDepth}
	if p.Slide.Height == 0 {
		return s
	}
	for i, r := range p.Rows {
		s.Lines = append(s.Lines, cabinet.Line{Name: j.Drawers[bank.Drawers[i]].Name, At: r.Line})
	}
	for _, strip := range p.Strips {
		if at := strip.Line(); strip.Part == opening.Kicker && at < p.Opening.Height {
			s.Lines = append(s.Lines, cabinet.Line{Name: "kicker of " + j.Drawers[bank.Drawers[strip.Row]].Name, At: at})
		}
	}
	return s
}

// band gives parts their edge banding where their stock has one.
func (d *Drawer) band(bandings []job.Banding) {
	for i := range d.Parts {
		p := &d.Parts[i]
		for _, b := range bandings {
			if b.Stock == p.Stock.Name {
				p.Banding, p.BandingThickness, p.BandingPrice = supplies.BandedEdge(*p.Part), b.Thickness, b.Price
			}
		}
	}
}
