package record

import (
	"drawerwright/cmd/internal/batch"
)

// Template is a plate to cut, with its files: as drawn, and with the kerf made up for
// where the stock has one.
type Template struct {
	Name  string    `json:"name"`
	Title string    `json:"title"`
	Count int       `json:"count"`
	Parts []string  `json:"parts"` // that it serves
	Stock string    `json:"stock"`
	Size  [2]Length `json:"size"`
	// Origin is where the lower left corner of the part lies on it that it marks, as one
	// looks at the face; of a piece it may lie beyond.
	Origin [2]Length `json:"origin"`
	Kerf   Length    `json:"kerf"`
	Notes  []string  `json:"notes"`
	Files  []string  `json:"files"`
}

func templates(b batch.Batch) []Template {
	list := []Template{}
	if b.Templates == nil {
		return list
	}
	for _, p := range b.Templates.Plates {
		size := p.Drawn.Outline.Bounds()
		one := Template{Name: p.Drawn.Name, Title: p.Drawn.Title, Count: p.Drawn.Count, Parts: p.Drawn.Parts,
			Stock: b.Templates.Stock,
			Size:  [2]Length{Length(size.Max.X), Length(size.Max.Y)}, Origin: [2]Length{Length(p.Drawn.Origin.X),
				Length(p.Drawn.Origin.Y)}, Kerf: Length(b.Templates.Kerf), Notes: append([]string{}, p.Drawn.Notes...),
			Files: []string{p.DrawnDXF, p.DrawnSVG}}
		if p.Drawn.OfUseOnPaper() {
			one.Files = append(one.Files, batch.TemplatesPDF)
		}
		if p.MadeDXF != "" {
			one.Files = append(one.Files, p.MadeDXF, p.MadeSVG)
		}
		list = append(list, one)
	}
	return list
}
