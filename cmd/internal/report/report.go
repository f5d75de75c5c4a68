// Package report writes what was computed for a job: report.json and the cut
// list parts.csv for programs, parts.txt for people.
package report

import (
	"bytes"
	"encoding/json"
	"math"

	"drawerwright/cmd/internal/batch"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Format is the number of report.json's layout; it changes when a reader would
// have to.
const Format = 2

// Report is report.json. Lengths are numbers in Units, rounded to a
// nanometre or a billionth of an inch.
type Report struct {
	Tool     string     `json:"tool"`
	Format   int        `json:"format"`
	Job      string     `json:"job"`
	Units    string     `json:"units"`
	DXF      DXF        `json:"dxf"`
	Router   Router     `json:"router"`
	Stocks   []Readings `json:"stocks"`
	Drawers  []Drawer   `json:"drawers"`
	Parts    []Part     `json:"parts"`
	Layers   []Layer    `json:"layers"`
	Faces    []Faces    `json:"faces"`
	Fit      []Fit      `json:"fit"`
	Proof    []Proof    `json:"proof"` // empty where a build was told not to prove its files
	Setups   []Setup    `json:"setups"`
	Sheets   [0]Sheet   `json:"sheets"`
	Material []Stock    `json:"material"`
	Warnings []Warning  `json:"warnings"`
}

// Size is a box's outside or clear inside.
type Size struct {
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	Depth  float64 `json:"depth"`
}

// Drawer names the parts of one kind of drawer.
type Drawer struct {
	Name    string   `json:"name"`
	Count   int      `json:"count"`
	Machine string   `json:"machine"`
	Outside Size     `json:"outside"`
	Inside  Size     `json:"inside"`
	Parts   []string `json:"parts"`
}

// Part is one panel and how often it is cut.
type Part struct {
	Name       string      `json:"name"`
	Drawer     string      `json:"drawer"`
	Role       string      `json:"role"`
	Quantity   int         `json:"quantity"`
	Length     float64     `json:"length"`
	Width      float64     `json:"width"`
	Thickness  float64     `json:"thickness"`
	Stock      string      `json:"stock"`
	Grain      string      `json:"grain"`
	Operations []Operation `json:"operations"`
	Stands     []Stand     `json:"stands"`
	Files      Files       `json:"files"`
}

// Stand is a place of a panel in its box: where its origin is, and the directions
// in which its x and y run.
type Stand struct {
	Origin [3]float64 `json:"origin"`
	X      [3]float64 `json:"x"`
	Y      [3]float64 `json:"y"`
}

// Operation is a pocket. Its outline's corners are x, y, in panel coordinates
// whichever the face, with the bulge of the side that follows as a third number
// where that side is an arc.
type Operation struct {
	Kind    string      `json:"kind"`
	Face    string      `json:"face"`
	Depth   float64     `json:"depth"`
	Outline [][]float64 `json:"outline"`
}

// Files are relative to the folder; a face that is not cut has none.
type Files struct {
	Inside  string `json:"inside,omitempty"`
	Outside string `json:"outside,omitempty"`
	STL     string `json:"stl"`
}

// Fit is one measure of a finished joint: nominal, and the range that the
// caliper readings allow. Limit holds the least and the greatest that are right.
type Fit struct {
	Drawer  string     `json:"drawer"`
	Check   string     `json:"check"` // tongue-play, recess, lap, bottom-play, bottom-flush, outside-width, outside-depth
	Part    string     `json:"part"`  // empty for the whole box
	Words   string     `json:"words"` // the check, for people
	Nominal float64    `json:"nominal"`
	Min     float64    `json:"min"`
	Max     float64    `json:"max"`
	Limit   [2]float64 `json:"limit"`
	Verdict string     `json:"verdict"`
}

// Setup is one fence distance and one cutter height, and the drawers that it serves.
type Setup struct {
	Machine       string   `json:"machine"`
	CutterWidth   float64  `json:"cutter_width"`
	FenceDistance float64  `json:"fence_distance"`
	CutterHeight  float64  `json:"cutter_height"`
	DadoHeight    float64  `json:"dado_height"`   // with glue-room; 0 where it is cutter_height
	RabbetPasses  int      `json:"rabbet_passes"` // over the widest rabbet
	LastFence     float64  `json:"last_fence"`    // of those passes
	BottomFence   float64  `json:"bottom_fence"`  // for the rabbets of a flush bottom; 0 where there are none
	Drawers       []string `json:"drawers"`
}

// Sheet is a laid-out sheet. Parts are not laid out yet, so a report has none.
type Sheet struct{}

// Stock is the board that the parts take of one stock, without kerf and waste.
type Stock struct {
	Stock  string  `json:"stock"`
	Pieces int     `json:"pieces"`
	Area   float64 `json:"area"` // square metres or square feet
	// AtLeast is how many sheets the area alone asks for, 0 when the job does
	// not give the sheet's size; a layout may need more. Cost is theirs.
	AtLeast int     `json:"at_least"`
	Cost    float64 `json:"cost"`
}

// Warning is a problem that does not stop the build.
type Warning struct {
	Code    string `json:"code"`
	Drawer  string `json:"drawer"`
	Part    string `json:"part"`
	Message string `json:"message"`
}

// Make fills a report from a batch and the warnings found on the way.
func Make(b batch.Batch, warnings []Warning) Report {
	r := Report{
		Tool: "drawerwright", Format: Format, Job: b.Title, Units: b.Units.String(),
		// Never null, so that readers need not ask.
		DXF: drawn(b), Router: routed(b), Stocks: readings(b), Layers: []Layer{}, Faces: []Faces{}, Proof: []Proof{},
		Drawers: []Drawer{}, Parts: []Part{}, Fit: []Fit{}, Setups: setups(b), Material: Material(b), Warnings: append([]Warning{}, warnings...),
	}
	n := func(mm float64) float64 { return number(mm, b.Units) }
	size := func(s joinery.Size) Size { return Size{n(s.Width), n(s.Height), n(s.Depth)} }
	for _, d := range b.Drawers {
		listed := Drawer{Name: d.Spec.Name, Count: d.Spec.Count, Machine: string(d.Spec.Cutter.Kind), Outside: size(d.Outside), Inside: size(d.Inside), Parts: []string{}}
		for _, p := range d.Parts {
			listed.Parts = append(listed.Parts, p.Name)
			r.Parts = append(r.Parts, part(p, n))
			r.Layers = append(r.Layers, layers(p, n)...)
			r.Faces = append(r.Faces, faces(d, p, b.Units))
		}
		r.Drawers = append(r.Drawers, listed)
		for _, c := range d.Fit {
			r.Fit = append(r.Fit, Fit{d.Spec.Name, c.Code, string(c.Part), c.Name, n(c.Nominal), n(c.Min), n(c.Max), [2]float64{n(c.Least), n(c.Most)}, string(c.Verdict)})
		}
	}
	return r
}

func part(p batch.Part, n func(float64) float64) Part {
	out := Part{
		Name: p.Name, Drawer: p.Drawer, Role: string(p.Role), Quantity: p.Quantity,
		Length: n(p.Panel.Length()), Width: n(p.Panel.Width()), Thickness: n(p.Panel.Thickness),
		Stock: p.Stock.Name, Grain: string(p.Stock.Grain), Operations: []Operation{},
		Files: Files{p.File(geom.Inside), p.File(geom.Outside), p.STL},
	}
	for _, s := range p.Stands {
		at := func(v geom.Vec3) [3]float64 { return [3]float64{n(v.X), n(v.Y), n(v.Z)} }
		unit := func(v geom.Vec3) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }
		out.Stands = append(out.Stands, Stand{at(s.Origin), unit(s.X), unit(s.Y)})
	}
	for _, k := range p.Panel.Pockets {
		op := Operation{Kind: k.Kind.String(), Face: k.Face.String(), Depth: n(math.Min(k.Depth, p.Panel.Thickness))}
		for _, v := range k.Outline {
			corner := []float64{n(v.X), n(v.Y)}
			if v.Bulge != 0 {
				corner = append(corner, math.Round(v.Bulge*bulgeSteps)/bulgeSteps)
			}
			op.Outline = append(op.Outline, corner)
		}
		out.Operations = append(out.Operations, op)
	}
	return out
}

// bulgeSteps rounds bulges to 9 decimals, as the DXF files do: over a chord of
// 4 m that moves an arc by 2 nanometres.
const bulgeSteps = 1e9

// setups gathers the drawers that one setting serves, in order of appearance.
func setups(b batch.Batch) []Setup {
	list := []Setup{}
	at := make(map[joinery.Setup]int)
	for _, d := range b.Drawers {
		i, known := at[d.Setup]
		if !known {
			i = len(list)
			at[d.Setup] = i
			n := func(mm float64) float64 { return number(mm, b.Units) }
			list = append(list, Setup{
				Machine: string(d.Setup.Cutter.Kind), CutterWidth: n(d.Setup.Cutter.Width), FenceDistance: n(d.Setup.FenceDistance),
				CutterHeight: n(d.Setup.CutterHeight), DadoHeight: n(d.Setup.DadoHeight), RabbetPasses: d.Setup.RabbetPasses, LastFence: n(d.Setup.LastFence), BottomFence: n(d.Setup.BottomFence),
			})
		}
		list[i].Drawers = append(list[i].Drawers, d.Spec.Name)
	}
	return list
}

// number converts and rounds, so that the last bits of a computation never show.
func number(mm float64, u geom.Unit) float64 {
	steps := 1e6
	if u == geom.Inch {
		steps = 1e9
	}
	return math.Round(mm/u.MM()*steps)/steps + 0 // no negative zero
}

// JSON gives any of the package's values as indented text that ends in a newline.
func JSON(v any) ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
