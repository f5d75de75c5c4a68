package page

import (
	"net/http"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/starter"
)

// answered are the answers of a card.
type answered struct {
	Units    string   `json:"units"`
	Measured string   `json:"measured"`
	Size     []string `json:"size"`
	Sides    string   `json:"sides"`
	Bottom   string   `json:"bottom"`
	Slide    string   `json:"slide"`
	Cutter   string   `json:"cutter"`
	Count    string   `json:"count"`
	Length   string   `json:"length"`
	Rows     string   `json:"rows"`
}

// answers are those of a starter.
func (g answered) answers() starter.Answers {
	a := starter.Answers{starter.Units: g.Units, starter.Measured: g.Measured,
		starter.Size: strings.Join(g.Size, " x "), starter.Sides: g.Sides, starter.Bottom: g.Bottom,
		starter.Slide: g.Slide, starter.Cutter: g.Cutter, starter.Count: g.Count, starter.SlideLength: g.Length,
		starter.Rows: g.Rows}
	if g.Measured == starter.Box {
		a[starter.Slide] = ""
	}
	a[starter.Machine] = a.Usual(starter.Machine) // a card does not ask for it
	if slices.ContainsFunc(g.Size, blank) {
		a[starter.Size] = ""
	}
	return a
}

// sizeNames are the fields of a size on a card.
var sizeNames = []string{"width", "height", "depth"}

// wrongSides are the fields of a size that are wrong, each tried beside usual ones; all of them where
// only the whole is wrong.
func (g answered) wrongSides() []string {
	usual, err := job.SplitSize(starter.Answers{starter.Units: g.Units, starter.Measured: g.Measured}.Filled()[starter.Size], 3)
	if err != nil || len(g.Size) != len(usual) {
		return sizeNames
	}
	var wrong []string
	for i, side := range g.Size {
		one := g
		one.Size = slices.Clone(usual)
		one.Size[i] = side
		if a := one.answers(); a.Wrong(starter.Size) != "" {
			wrong = append(wrong, sizeNames[i])
		}
	}
	if wrong == nil {
		return sizeNames
	}
	return wrong
}

// refusal says why answers give no job, the field that could end it, and the job that can be
// built all the same, if one can.
type refusal struct {
	Error string   `json:"error"`
	Field string   `json:"field"`
	Sides []string `json:"sides,omitempty"` // of a size, those fields that are wrong
	Text  string   `json:"text,omitempty"`
}

// cardFields are the fields of a card by what the starter calls them; others are none of a card.
var cardFields = map[starter.Field]string{starter.Units: "units", starter.Measured: "measured", starter.Size: "size",
	starter.Sides: "sides", starter.Bottom: "bottom", starter.Slide: "slide", starter.Cutter: "cutter",
	starter.Count: "count", starter.SlideLength: "length", starter.Rows: "rows"}

// slide answers with the length of slide that a card's answers take; empty where that is not known.
func (p *Page) slide(w http.ResponseWriter, r *http.Request) {
	var given answered
	if !read(w, r, &given) {
		return
	}
	reply(w, http.StatusOK, struct {
		Taken string `json:"taken"`
	}{given.answers().SlideTaken()})
}

// begin answers with the text of a job of what was measured.
func (p *Page) begin(w http.ResponseWriter, r *http.Request) {
	var given answered
	if !read(w, r, &given) {
		return
	}
	a := given.answers()
	for f := range starter.Fields {
		wrong := a.Wrong(f)
		if a[f] == "" && wrong != "" && f != starter.Count {
			wrong = "type what you measured; " + a.Usual(f) + " is only an example"
		}
		if wrong != "" {
			no := refusal{Error: wrong, Field: cardFields[f]}
			if f == starter.Size {
				no.Sides = given.wrongSides()
			}
			reply(w, http.StatusUnprocessableEntity, no)
			return
		}
	}
	text, wrong := starter.Make(a)
	if wrong != nil {
		reply(w, http.StatusUnprocessableEntity, refusal{Error: wrong.String(), Field: cardFields[wrong.Field], Text: text})
		return
	}
	reply(w, http.StatusOK, struct {
		Text string `json:"text"`
	}{text})
}
