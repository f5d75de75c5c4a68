package record

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/geom/opening"
)

// Cabinet is an opening with the drawers that share it.
type Cabinet struct {
	Name        string   `json:"name"`
	Opening     Size     `json:"opening"` // as it counts: the smallest readings
	OutOfSquare Length   `json:"out_of_square"`
	Packing     Length   `json:"packing,omitempty"` // of the cabinet's sides, level with its frame
	Shim        Length   `json:"shim,omitempty"`    // at each side, between the slides and the cabinet
	Fronts      string   `json:"fronts"`            // how drawer fronts stand to it; none where the boxes show
	Slide       string   `json:"slide"`
	SlideLength Length   `json:"slide_length"`
	BoxWidth    Length   `json:"box_width,omitempty"`  // of all its boxes
	WidthFrom   []Term   `json:"width_from,omitempty"` // whose sum that is
	Rows        []Row    `json:"rows"`                 // from the top down
	Spacers     []Spacer `json:"spacers"`
	Holes       int      `json:"holes"`            // in each side
	Strips      []Strip  `json:"strips,omitempty"` // of wooden runners
	Slots       []Length `json:"slots,omitempty"`  // of the screws of a runner: how much longer than a screw is thick
	Files       []string `json:"files,omitempty"`
	Preview     string   `json:"preview,omitempty"` // its boxes as they stand in it
}

// Row is one drawer in its opening. Heights are over the lower edge of the opening.
type Row struct {
	Drawer         string `json:"drawer"`
	FrontHeight    Length `json:"front_height"`
	FrontBottom    Length `json:"front_bottom"`
	BoxBottom      Length `json:"box_bottom"`
	ClearanceAbove Length `json:"clearance_above"` // what the box keeps free
	ClearanceBelow Length `json:"clearance_below"`
	SlideLine      Length `json:"slide_line"` // of the slide's screws
	// What is free over a box on wooden runners, whose sides move, up to what it tips against.
	Over *Seasons `json:"over,omitempty"`
}

// Seasons are a clearance as it is made, and in the dampest and the driest air.
type Seasons struct {
	Now     Length `json:"now"`
	Dampest Length `json:"dampest"`
	Driest  Length `json:"driest"`
}

// Strip is a pair of strips of wood for a drawer on wooden runners.
type Strip struct {
	Part     string `json:"part"`
	Drawer   string `json:"drawer"`
	Quantity int    `json:"quantity"`
	Length   Length `json:"length"`
	Width    Length `json:"width"`
	Height   Length `json:"height"`
	Bottom   Length `json:"bottom"` // its lower edge over the opening's
	From     Length `json:"from"`   // behind the cabinet's front edge
}

// Line is something that is screwed to the side of a cabinet, by the height of its middle.
type Line struct {
	Name string
	At   Length
}

// Lines are where slides and kickers come on the sides of a cabinet.
func (c Cabinet) Lines() (list []Line) {
	for _, r := range c.Rows {
		list = append(list, Line{r.Drawer, r.SlideLine})
	}
	for _, s := range c.Strips {
		if at := s.Bottom + s.Height/2; s.Part == string(opening.Kicker) && at < c.Opening.Height {
			list = append(list, Line{"kicker of " + s.Drawer, at})
		}
	}
	return list
}

// Term is a part of a sum: a length so many times, taken off where that is below 0.
type Term struct {
	Of    string `json:"of"`
	Times int    `json:"times"`
	Each  Length `json:"each"`
}

// Spacer is a block on which a slide rests while it is screwed on.
type Spacer struct {
	Length  Length   `json:"length"`
	Drawers []string `json:"drawers"`
}

// SharedSize is openings that differ by so little that boxes of one size serve them.
type SharedSize struct {
	Openings []string `json:"openings"`
	Made     bool     `json:"made"`  // the job asks for it, and the boxes are of that size
	Width    Length   `json:"width"` // of the opening for which the boxes are, or would be, made
	Depth    Length   `json:"depth"`
	Rows     int      `json:"rows"`  // how many have boxes of one height too
	Shims    []Length `json:"shims"` // at the left and at the right side, for each opening
}

func cabinets(b batch.Batch) []Cabinet {
	list := []Cabinet{}
	for _, bank := range b.Banks {
		list = append(list, CabinetOf(b, bank))
	}
	return list
}

// CabinetOf is an opening of a batch.
func CabinetOf(b batch.Batch, bank batch.Bank) Cabinet {
	p := bank.Plan
	c := Cabinet{Name: bank.Name, Opening: Size{Length(p.Opening.Width), Length(p.Opening.Height),
		Length(p.Opening.Depth)},
		OutOfSquare: Length(p.OutOfSquare), Packing: Length(p.Packing), Shim: Length(p.Shim),
		Fronts: string(bank.Opening.Fronts), Slide: p.Slide.Name, SlideLength: Length(p.SlideLength),
		Rows: []Row{}, Spacers: []Spacer{}, Holes: len(p.Holes)}
	name := func(row int) string { return b.Drawers[bank.Drawers[row]].Spec.Name }
	if len(p.Rows) > 0 {
		c.Preview, c.BoxWidth = bank.Preview(), Length(p.Rows[0].Box.Width)
		for _, t := range p.BoxWidth {
			c.WidthFrom = append(c.WidthFrom, Term{t.Of, t.Times, Length(t.Each)})
		}
	}
	for i, r := range p.Rows {
		row := Row{name(i), Length(r.FrontHeight), Length(r.FrontBottom), Length(r.BoxBottom), Length(r.Above), Length(r.Below),
			Length(r.Line), nil}
		if r.Over.Dampest != r.Over.Driest {
			row.Over = &Seasons{Length(r.Over.Now), Length(r.Over.Dampest), Length(r.Over.Driest)}
		}
		c.Rows = append(c.Rows, row)
	}
	for _, s := range p.Strips {
		c.Strips = append(c.Strips, Strip{string(s.Part), name(s.Row), s.Pieces(), Length(s.Length), Length(s.Width),
			Length(s.High),
			Length(s.Bottom), Length(s.From)})
	}
	for _, s := range p.Slots {
		c.Slots = append(c.Slots, Length(s))
	}
	for _, s := range p.Spacers {
		one := Spacer{Length: Length(s.Length)}
		for _, row := range s.Rows {
			one.Drawers = append(one.Drawers, name(row))
		}
		c.Spacers = append(c.Spacers, one)
	}
	if bank.Files.Left != "" {
		c.Files = []string{bank.Files.Left, bank.Files.Right, bank.Files.SVG}
	}
	return c
}

func sharedSizes(b batch.Batch) []SharedSize {
	list := []SharedSize{}
	for _, a := range b.SharedSizes {
		one := SharedSize{Openings: a.Names, Made: a.Made, Width: Length(a.Shared.Width), Depth: Length(a.Shared.Depth),
			Rows: a.Shared.Rows}
		for _, c := range a.Shared.Common {
			one.Shims = append(one.Shims, Length(c.Shim))
		}
		list = append(list, one)
	}
	return list
}
