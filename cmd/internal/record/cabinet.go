package record

import (
	"drawerwright/cmd/internal/batch"
)

// Cabinet is an opening with the drawers that share it.
type Cabinet struct {
	Name        string   `json:"name"`
	Opening     Size     `json:"opening"` // as it counts: the smallest readings
	OutOfSquare float64  `json:"out_of_square"`
	Packing     float64  `json:"packing,omitempty"` // of the cabinet's sides, level with its frame
	Shim        float64  `json:"shim,omitempty"`    // at each side, between the slides and the cabinet
	Slide       string   `json:"slide"`
	SlideLength float64  `json:"slide_length"`
	Rows        []Row    `json:"rows"` // from the top down
	Spacers     []Spacer `json:"spacers"`
	Holes       int      `json:"holes"` // in each side
	Files       []string `json:"files,omitempty"`
	Preview     string   `json:"preview,omitempty"` // its boxes as they stand in it
}

// Row is one drawer in its opening. Heights are over the lower edge of the opening.
type Row struct {
	Drawer      string  `json:"drawer"`
	FrontHeight float64 `json:"front_height"`
	FrontBottom float64 `json:"front_bottom"`
	BoxBottom   float64 `json:"box_bottom"`
	Above       float64 `json:"above"` // what the box keeps free
	Below       float64 `json:"below"`
	Line        float64 `json:"line"` // of the slide's screws
}

// Spacer is a block on which a slide rests while it is screwed on.
type Spacer struct {
	Length  float64  `json:"length"`
	Drawers []string `json:"drawers"`
}

// Alike is openings that differ by so little that boxes of one size serve them.
type Alike struct {
	Openings []string  `json:"openings"`
	Made     bool      `json:"made"`  // the job asks for it, and the boxes are of that size
	Width    float64   `json:"width"` // of the opening for which the boxes are, or would be, made
	Depth    float64   `json:"depth"`
	Rows     int       `json:"rows"`  // how many have boxes of one height too
	Shims    []float64 `json:"shims"` // at the left and at the right side, for each opening
}

func cabinets(b batch.Batch, n func(float64) float64) []Cabinet {
	list := []Cabinet{}
	for _, bank := range b.Banks {
		p := bank.Plan
		c := Cabinet{Name: bank.Name, Opening: Size{n(p.Opening.Width), n(p.Opening.Height), n(p.Opening.Depth)},
			OutOfSquare: n(p.OutOfSquare), Packing: n(p.Packing), Shim: n(p.Shim),
			Slide: p.Slide.Name, SlideLength: n(p.SlideLength), Rows: []Row{}, Spacers: []Spacer{}, Holes: len(p.Holes)}
		name := func(row int) string { return b.Drawers[bank.Drawers[row]].Spec.Name }
		if len(p.Rows) > 0 {
			c.Preview = bank.Preview()
		}
		for i, r := range p.Rows {
			c.Rows = append(c.Rows,
				Row{name(i), n(r.FrontHeight), n(r.FrontBottom), n(r.BoxBottom), n(r.Above), n(r.Below), n(r.Line)})
		}
		for _, s := range p.Spacers {
			one := Spacer{Length: n(s.Length)}
			for _, row := range s.Rows {
				one.Drawers = append(one.Drawers, name(row))
			}
			c.Spacers = append(c.Spacers, one)
		}
		if bank.Files.Left != "" {
			c.Files = []string{bank.Files.Left, bank.Files.Right, bank.Files.SVG}
		}
		list = append(list, c)
	}
	return list
}

func alikes(b batch.Batch, n func(float64) float64) []Alike {
	list := []Alike{}
	for _, a := range b.Alike {
		one := Alike{Openings: a.Names, Made: a.Made, Width: n(a.Shared.Width), Depth: n(a.Shared.Depth),
			Rows: a.Shared.Rows}
		for _, c := range a.Shared.Common {
			one.Shims = append(one.Shims, n(c.Shim))
		}
		list = append(list, one)
	}
	return list
}
