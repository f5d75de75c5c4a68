package record

import (
	"drawerwright/cmd/internal/batch"
)

// Template is a plate to cut, with its files: as drawn, and with the kerf made up for
// where the stock has one.
type Template struct {
	Name  string     `json:"name"`
	Title string     `json:"title"`
	Count int        `json:"count"`
	Parts []string   `json:"parts"` // that it serves
	Stock string     `json:"stock"`
	Size  [2]float64 `json:"size"`
	// Origin is where the lower left corner of the part lies on it that it marks, as one
	// looks at the face; of a piece it may lie beyond.
	Origin [2]float64 `json:"origin"`
	Kerf   float64    `json:"kerf"`
	Notes  []string   `json:"notes"`
	Files  []string   `json:"files"`
}

func templates(b batch.Batch, n func(float64) float64) []Template {
	list := []Template{}
	if b.Templates == nil {
		return list
	}
	for _, p := range b.Templates.Plates {
		size := p.Drawn.Outline.Bounds()
		one := Template{Name: p.Drawn.Name, Title: p.Drawn.Title, Count: p.Drawn.Count, Parts: p.Drawn.Parts,
			Stock: b.Templates.Stock,
			Size:  [2]float64{n(size.Max.X), n(size.Max.Y)}, Origin: [2]float64{n(p.Drawn.Origin.X),
				n(p.Drawn.Origin.Y)}, Kerf: n(b.Templates.Kerf), Notes: append([]string{}, p.Drawn.Notes...), Files: []string{p.DrawnDXF, p.DrawnSVG, batch.TemplatesPDF}}
		if p.MadeDXF != "" {
			one.Files = append(one.Files, p.MadeDXF, p.MadeSVG)
		}
		list = append(list, one)
	}
	return list
}
