package report

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
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

// plates prints the templates of a job.
func plates(out *bytes.Buffer, r Report, u geom.Unit) {
	if len(r.Templates) == 0 {
		return
	}
	var rows [][]string
	for _, t := range r.Templates {
		rows = append(rows, []string{t.Name, fmt.Sprint(t.Count), caliper(t.Size[0], u), caliper(t.Size[1], u),
			words.Some(t.Parts)})
	}
	fmt.Fprintf(out, "templates of %s, in the folder templates; a DXF of each as drawn", r.Templates[0].Stock)
	if k := r.Templates[0].Kerf; k > 0 {
		fmt.Fprintf(out, " and with a kerf of %s %s made up for", caliper(k, u), u)
	}
	fmt.Fprintln(out)
	table(out, []string{"plate", ">pieces", ">length " + u.String(), ">width " + u.String(), "serves"}, rows)
	fmt.Fprintln(out)
}
