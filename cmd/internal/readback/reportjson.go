package readback

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"reflect"
	"strings"
)

// reported is what is read of report.json, with its own words.
type reported struct {
	Job, Units, Code, Date string
	Answer                 struct{ Text string }
	Stocks                 []struct {
		Stock    string
		Mean     float64
		Readings []float64
	}
	Kinds   int
	Drawers []struct {
		Name            string
		Count           int
		Machine         string
		Outside, Inside struct{ Width, Height, Depth float64 }
		Parts           []string
		Summary         string
		Weight          float64 `json:"weight_kg"`
		Load            float64 `json:"load_kg"`
		Rating          float64 `json:"rating_kg"`
		Sag             *struct{ Simple, Clamped, Limit float64 }
		Bores           []struct {
			Part            string
			Diameter, Depth float64
			FromOutside     float64 `json:"from_outside"`
			Heights         []float64
			Lengths         []float64
		}
	}
	Parts []struct {
		Name, Drawer, Role, Stock, Grain string
		Quantity, Spares                 int
		Length, Width, Thickness         float64
		Operations                       []operation
		Placements                       []placed
		Files                            struct{ Inside, Outside string }
	}
	CutList []struct {
		Number                      int
		Parts                       []string
		Stock, Grain, Cuts, Banding string
		Quantity, Spares            int
		Length, Width, Thickness    float64
	} `json:"cut_list"`
	Lumber []struct {
		Parts []struct {
			Parts                    []string
			Number, Quantity, Boards int
			Length, Width            float64
		}
	}
	Setups []struct {
		CutterWidth   float64 `json:"cutter_width"`
		FenceDistance float64 `json:"fence_distance"`
		CutterHeight  float64 `json:"cutter_height"`
		Drawers       []string
	}
	Fit      func(fitted) // there are so many that each is taken as it is read
	Sheets   []laidStock
	Material []struct {
		Stock  string
		Pieces int
		Area   float64
		Cost   float64
	}
	Buy []struct {
		Kind, Name, Unit string
		Quantity, Cost   float64
	}
	Cabinets []struct {
		Name, Slide string
		Opening     struct{ Width, Height, Depth float64 }
		OutOfSquare float64 `json:"out_of_square"`
		Packing     float64
		SlideLength float64 `json:"slide_length"`
		BoxWidth    float64 `json:"box_width"`
		WidthFrom   []struct {
			Of    string
			Times int
			Each  float64
		} `json:"width_from"`
		Rows []struct {
			Drawer         string
			FrontHeight    float64 `json:"front_height"`
			FrontBottom    float64 `json:"front_bottom"`
			BoxBottom      float64 `json:"box_bottom"`
			ClearanceAbove float64 `json:"clearance_above"`
			ClearanceBelow float64 `json:"clearance_below"`
			SlideLine      float64 `json:"slide_line"`
			Over           *struct{ Now, Dampest, Driest float64 }
		}
		Strips []struct {
			Part, Drawer                        string
			Quantity                            int
			Length, Width, Height, Bottom, From float64
		}
		Spacers []struct {
			Length  float64
			Drawers []string
		}
		Files []string
	}
	Warnings []warned
}

// fitted is a measure in report.json and in fit --json.
type fitted struct {
	Drawer, Name, Verdict, State string
	Nominal                      float64
	Limits, Likely               [2]float64
	WorstCase                    [2]float64 `json:"worst_case"`
	Of1000                       string     `json:"of_1000"`
}

// said is the verdict as people read it: of what is set right and comes out wrong in some boxes, that it
// may come out so.
func (f fitted) said() string {
	switch {
	case f.State != "doubt":
		return f.Verdict
	case f.Verdict == "does not go in":
		return "may not go in"
	}
	return "may come out " + f.Verdict
}

func reportJSON(r *reading, text string) { r.report(strings.NewReader(text)) }

// report reads one as it comes.
func (r *reading) report(from io.Reader) {
	j := reported{Fit: func(f fitted) { r.fit(f.Drawer, f) }}
	if err := decodeLists(json.NewDecoder(from), reflect.ValueOf(&j).Elem()); err != nil {
		r.fail("%v", err)
	}
	if j.Code != "" { // that of an old program has none
		r.words("total", "job", "code", j.Code)
	}
	if j.Answer.Text != "" { // and of a job without drawers
		r.words("total", "job", "answer", j.Answer.Text)
	}
	if j.Date != "" {
		r.words("total", "job", "date", j.Date)
	}
	boxes, pieces := r.reportedDrawers(j), r.reportedParts(j)
	r.reportedGroups(j)
	for _, p := range j.Parts {
		for _, file := range []string{p.Files.Inside, p.Files.Outside} {
			if file != "" {
				r.count("drawing", file, "pieces", p.Quantity)
			}
		}
		cuts, holes := 0, 0
		for _, o := range p.Operations {
			if o.hole() {
				holes++
				r.cut(fmt.Sprintf("%s %d", p.Name, holes), o, p.Length, p.Thickness)
			} else {
				cuts++
				r.cut(p.Name+" "+letters(cuts), o, p.Length, p.Thickness)
			}
		}
	}
	r.count("total", "job", "boxes", boxes)
	r.count("total", "job", "kinds", j.Kinds)
	r.count("total", "job", "pieces", pieces)
	for _, s := range j.Setups {
		for _, d := range s.Drawers {
			r.exact("corner", d, "cutter", s.CutterWidth)
			r.exact("corner", d, "fence", s.FenceDistance)
			r.exact("corner", d, "height", s.CutterHeight)
		}
	}
	for _, m := range j.Material {
		r.count("stock", m.Stock, "pieces", m.Pieces)
		r.add("stock", m.Stock, "area", fmt.Sprint(m.Area), 1e-4)
	}
	r.reportedBuy(j)
	for _, k := range j.Sheets {
		r.laid(k)
	}
	r.rows(j)
	r.reportedPilots(j)
	r.remarks(listed(j.Warnings))
}

// reportedDrawers takes each drawer, and counts the boxes.
func (r *reading) reportedDrawers(j reported) (boxes int) {
	for _, d := range j.Drawers {
		boxes += d.Count
		r.count("box", d.Name, "count", d.Count)
		r.words("box", d.Name, "machine", d.Machine)
		r.words("verdict", d.Name, "said", d.Summary)
		r.box(d.Name, "outside", d.Outside.Width, d.Outside.Height, d.Outside.Depth)
		r.box(d.Name, "inside", d.Inside.Width, d.Inside.Height, d.Inside.Depth)
		if d.Weight > 0 {
			r.weight(d.Name, "empty", d.Weight)
			if d.Load > 0 {
				r.weight(d.Name, "loaded", d.Weight+d.Load)
			}
		}
		if d.Rating > 0 && (d.Weight > 0 || d.Sag != nil) { // else the list has no line for it
			r.weight(d.Name, "slides carry", d.Rating)
		}
		if d.Sag != nil {
			r.exact("sag", d.Name, "clamped", d.Sag.Clamped)
			r.exact("sag", d.Name, "simple", d.Sag.Simple)
			r.exact("sag", d.Name, "limit", d.Sag.Limit)
		}
		for _, b := range d.Bores {
			of := d.Name + " " + b.Part
			r.exact("bore", of, "diameter", b.Diameter)
			r.exact("bore", of, "depth", b.Depth)
			r.exact("bore", of, "from outside", b.FromOutside)
			for i, h := range b.Heights {
				r.exact("bore", of, fmt.Sprint("height ", i+1), h)
			}
			for i, n := range b.Lengths {
				r.exact("bore", of, fmt.Sprint("length ", i+1), n)
			}
		}
	}
	return boxes
}

// reportedParts takes each part, and counts the pieces.
func (r *reading) reportedParts(j reported) (pieces int) {
	for _, p := range j.Parts {
		pieces += p.Quantity
		r.count("part", p.Name, "quantity", p.Quantity)
		for measure, v := range map[string]string{"drawer": p.Drawer, "role": p.Role, "stock": p.Stock,
			"grain": p.Grain} {
			r.words("part", p.Name, measure, v)
		}
		for measure, v := range map[string]float64{"length": p.Length, "width": p.Width, "thickness": p.Thickness} {
			r.exact("part", p.Name, measure, v)
		}
	}
	return pieces
}

// reportedGroups takes the cut list.
func (r *reading) reportedGroups(j reported) {
	for _, l := range j.Lumber {
		for _, p := range l.Parts {
			r.rough(p.Parts[0], fmt.Sprint(p.Number), fmt.Sprint(p.Quantity), fmt.Sprint(p.Boards))
			r.exact("rough", p.Parts[0], "length", p.Length)
			r.exact("rough", p.Parts[0], "width", p.Width)
		}
	}
	for _, g := range j.CutList {
		first := g.Parts[0]
		r.words("group", first, "parts", strings.Join(g.Parts, ", "))
		r.count("group", first, "number", g.Number)
		r.count("group", first, "pieces", g.Quantity)
		r.count("group", first, "spares", g.Spares)
		for measure, v := range map[string]string{"cuts": g.Cuts, "grain": g.Grain, "banding": g.Banding} {
			r.words("group", first, measure, v)
		}
		for _, name := range g.Parts {
			r.words("part", name, "stock", g.Stock)
			for measure, v := range map[string]float64{"length": g.Length, "width": g.Width, "thickness": g.Thickness} {
				r.exact("part", name, measure, v)
			}
		}
	}
}

// reportedBuy takes what to buy, with the sum of what is priced.
func (r *reading) reportedBuy(j reported) {
	total := 0.0
	for _, x := range j.Buy {
		name := x.Kind + " " + x.Name
		r.words("buy", name, "quantity", fmt.Sprint(x.Quantity))
		r.words("buy", name, "unit", x.Unit)
		if total += x.Cost; x.Cost > 0 {
			r.money("buy", name, "cost", fmt.Sprint(x.Cost))
		}
	}
	if total > 0 {
		r.money("total", "job", "cost", fmt.Sprint(math.Round(total*100)/100))
	}
}

// operation is a cut into a part; its corners are x, y, and the bulge of an arc.
type operation struct {
	Kind, Face string
	Depth      float64
	Outline    [][]float64
}

// hole reports whether it is round: two half circles.
func (o operation) hole() bool {
	return len(o.Outline) == 2 && len(o.Outline[0]) > 2 && len(o.Outline[1]) > 2
}

// letters are those of the n-th cut that is no hole: a, b, ... z, aa.
func letters(n int) (name string) {
	for ; n > 0; n = (n - 1) / 26 {
		name = string(rune('a'+(n-1)%26)) + name
	}
	return name
}

// cut adds a cut, with its place as it is seen on its own face: of a hole the center. That of
// another outline with arcs is not known here.
func (r *reading) cut(of string, o operation, length, thickness float64) {
	r.words("cut", of, "kind", o.Kind)
	r.words("cut", of, "face", o.Face)
	if o.Depth >= thickness {
		r.words("cut", of, "depth", "through")
	} else {
		r.exact("cut", of, "depth", o.Depth)
	}
	low, high := []float64{math.Inf(1), math.Inf(1)}, []float64{math.Inf(-1), math.Inf(-1)}
	round := false
	for _, v := range o.Outline {
		round = round || len(v) > 2
		for k := range low {
			low[k], high[k] = math.Min(low[k], v[k]), math.Max(high[k], v[k])
		}
	}
	if round && !o.hole() {
		return
	}
	if o.Face == "outside" && !o.hole() {
		r.exact("cut", of, "left, seen through", low[0])
		r.exact("cut", of, "right, seen through", high[0])
	}
	if o.Face == "outside" {
		low[0], high[0] = length-high[0], length-low[0]
	}
	if o.hole() {
		r.exact("cut", of, "center from the left", (low[0]+high[0])/2)
		r.exact("cut", of, "center from below", (low[1]+high[1])/2)
		r.exact("cut", of, "diameter", math.Hypot(high[0]-low[0], high[1]-low[1]))
		return
	}
	r.exact("cut", of, "left", low[0])
	r.exact("cut", of, "right", high[0])
	r.exact("cut", of, "lower", low[1])
	r.exact("cut", of, "upper", high[1])
}

// box adds the three sides of a box.
func (r *reading) box(drawer, which string, sides ...float64) {
	for i, m := range []string{"width", "height", "depth"} {
		r.exact("box", drawer, which+" "+m, sides[i])
	}
}

// poundKG is the international pound (NIST SP 811, appendix B.8).
const poundKG = 0.45359237

// weight adds a weight in kg, as the job's unit has it.
func (r *reading) weight(drawer, measure string, kg float64) {
	unit := "kg"
	if r.unit == "in" {
		kg, unit = kg/poundKG, "lb"
	}
	r.add("weight", drawer, measure+" in "+unit, fmt.Sprint(kg), 1e-3) // a gram, or more than that in pounds
}

func (r *reading) fit(drawer string, f fitted) {
	of := drawer + ": " + shortOf(f.Name)
	r.exact("fit", of, "nominal", f.Nominal)
	r.words("fit", of, "verdict", f.said())
	r.words("fit", of, "right of 1,000", f.Of1000)
	for measure, v := range map[string][2]float64{"limit": f.Limits, "likely": f.Likely, "worst": f.WorstCase} {
		r.exact("fit", of, measure+" from", v[0])
		r.exact("fit", of, measure+" to", v[1])
	}
}

func (r *reading) rows(j reported) {
	for _, c := range j.Cabinets {
		r.exact("opening", c.Name, "width", c.Opening.Width)
		r.exact("opening", c.Name, "height", c.Opening.Height)
		r.exact("opening", c.Name, "depth", c.Opening.Depth)
		r.words("opening", c.Name, "slide", c.Slide)
		r.exact("opening", c.Name, "slide length", c.SlideLength)
		r.exact("opening", c.Name, "boxes wide", c.BoxWidth)
		for _, t := range c.WidthFrom {
			r.widthTerm(c.Name, t.Of, t.Times)
			r.exact("opening", c.Name, "width from "+t.Of, t.Each)
		}
		if c.Packing > 0 {
			r.exact("opening", c.Name, "packing", c.Packing)
		}
		for _, row := range c.Rows {
			r.words("row", row.Drawer, "opening", c.Name)
			r.exact("row", row.Drawer, "front height", row.FrontHeight)
			r.exact("row", row.Drawer, "front lower edge", row.FrontBottom)
			r.exact("row", row.Drawer, "box lower edge", row.BoxBottom)
			r.exact("row", row.Drawer, "free above", row.ClearanceAbove)
			r.exact("row", row.Drawer, "free below", row.ClearanceBelow)
			if len(c.Files) > 0 {
				r.exact("row", row.Drawer, "slide line", row.SlideLine)
			}
			if o := row.Over; o != nil {
				for i, v := range []float64{o.Now, o.Dampest, o.Driest} {
					r.exact("row", row.Drawer, seasonHeads[i], v)
				}
			}
		}
		for _, s := range c.Strips {
			of := s.Part + " of " + s.Drawer
			r.count("strip", of, stripHeads[0], s.Quantity)
			for i, v := range []float64{s.Length, s.Width, s.Height, s.Bottom, s.From} {
				r.exact("strip", of, stripHeads[1+i], v)
			}
		}
		for _, s := range c.Spacers {
			r.exact("spacer", strings.Join(s.Drawers, ", "), "length", s.Length)
		}
	}
}
