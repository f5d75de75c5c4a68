package record

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// Sheets are the layouts of a job's parts on sheets.
type Sheets struct {
	Tool   string       `json:"tool"`
	Job    string       `json:"job"`
	Units  string       `json:"units"`
	Stocks []SheetStock `json:"stocks"`
}

// Unit is that of the numbers in JSON.
func (s Sheets) Unit() geom.Unit { return UnitOf(s.Units) }

// SheetStock is the parts of one stock on its sheets.
type SheetStock struct {
	Stock          string            `json:"stock"`
	Method         string            `json:"method"`
	Stages         int               `json:"stages"`                    // 0 for any number
	FirstCuts      string            `json:"first_cuts,omitempty"`      // rip or crosscut, where that is asked for
	FirstMore      int               `json:"first_cuts_more,omitempty"` // sheets than without that
	FirstMoreCost  float64           `json:"first_cuts_cost,omitempty"`
	Kerf           Length            `json:"kerf"`
	Trim           Length            `json:"trim"`
	EndTrim        Length            `json:"end_trim"`           // at the ends, where registration holes may be
	Flipped        bool              `json:"flipped"`            // sheets are cut on both faces
	Routed         bool              `json:"routed"`             // a router cuts them, and no saw
	RipCapacity    Length            `json:"rip_capacity"`       // how far the fence of the saw opens that cuts them
	SledCapacity   Length            `json:"sled_capacity"`      // the longest crosscut that its sled takes
	MaxStop        Length            `json:"max_stop"`           // how far from the blade the stop on it is clamped
	Undersize      [2]Length         `json:"undersize"`          // by how much sheets may be shorter and narrower than their sizes
	KeepOut        []Box             `json:"keep_out,omitempty"` // areas that nothing is cut in, as sheets lie at first
	FlipOn         *FlipRegistration `json:"flip_on,omitempty"`
	Grained        bool              `json:"grained,omitempty"`      // it has a grain
	GrainAcross    bool              `json:"grain_across,omitempty"` // the grain runs along the second number of a sheet's size
	Pieces         int               `json:"pieces"`
	Count          int               `json:"count"`     // of sheets, without offcuts
	MinSheets      int               `json:"min_count"` // no layout does with less
	Optimal        bool              `json:"optimal"`
	Summary        string            `json:"summary"`
	Yield          float64           `json:"yield"` // part of the sheets' area that is pieces
	Cost           float64           `json:"cost"`
	Completed      bool              `json:"completed"` // the search ended by itself
	Sizes          []SheetSize       `json:"sizes"`
	Measured       []MeasuredSheet   `json:"measured,omitempty"` // the sheets that are cut, in order
	Sheets         []LaidSheet       `json:"sheets"`             // different ones
	Unplaced       []Shortfall       `json:"unplaced"`           // pieces that no sheet holds
	Cuts           []SawCut          `json:"cuts"`               // in order, for saws
	SettingChanges int               `json:"setting_changes"`    // how often the fence or stop is set for them
	SawMinutes     int               `json:"saw_minutes"`        // that they take, by usual times
	Choices        []SheetChoice     `json:"choices,omitempty"`
}

// SheetChoice is a layout that can be cut, by what is preferred.
type SheetChoice struct {
	Prefer   []string  `json:"prefer"`
	Taken    bool      `json:"taken,omitempty"`
	Sheets   int       `json:"sheets"`
	Settings int       `json:"settings"`
	Cost     float64   `json:"cost,omitempty"`
	Cuts     int       `json:"cuts"`
	Turns    int       `json:"turns"`
	Stages   int       `json:"stages"`
	Minutes  int       `json:"minutes"`
	Offcut   [2]Length `json:"offcut"` // the largest
}

// SheetSize is a size of sheet and how many are used.
type SheetSize struct {
	Name   string  `json:"name"`
	Length Length  `json:"length"`
	Width  Length  `json:"width"`
	Offcut bool    `json:"offcut"`
	Batch  string  `json:"batch,omitempty"`
	Price  float64 `json:"price,omitempty"`
	Used   int     `json:"used"`
}

// MeasuredSheet is a sheet by its number in the order of the readings.
type MeasuredSheet struct {
	Number    int    `json:"number"`
	Thickness Length `json:"thickness"`
}

// UsedSizes are the sizes of sheets that are used.
func UsedSizes(k SheetStock) []SheetSize {
	return slices.DeleteFunc(slices.Clone(k.Sizes), func(z SheetSize) bool { return z.Used == 0 })
}

// GrainAlong is the side of a sheet along which its grain runs; false where it has none, and where both are as long: by
// the order of the two, which the trade does not agree on, nobody can tell.
func (k SheetStock) GrainAlong(z SheetSize) (side Length, ok bool) {
	return z.Length, k.Grained && z.Length != z.Width
}

// AsWritten is the size of a sheet as the job and the trade write it. Offcuts are listed along the grain.
func (k SheetStock) AsWritten(z SheetSize) [2]Length {
	if k.GrainAcross && !z.Offcut {
		return [2]Length{z.Width, z.Length}
	}
	return [2]Length{z.Length, z.Width}
}

// LaidSheet is a way in which Count sheets are cut, the first of which is Number. Places
// are from its lower left corner.
type LaidSheet struct {
	Number     int              `json:"number"`
	Count      int              `json:"count"`
	Size       int              `json:"size"`
	Yield      float64          `json:"yield"`
	Weight     float64          `json:"weight_kg,omitempty"`
	Placements []SheetPlacement `json:"placements"`
	Offcuts    []Box            `json:"offcuts"`
	Files      []string         `json:"files,omitempty"`
	Layers     []Layer          `json:"layers,omitempty"` // the legend of its drawings
	Run        *Run             `json:"run,omitempty"`    // of a router
}

// Box is a rectangle of a sheet: its lower left corner and its size.
type Box struct {
	X      Length `json:"x"`
	Y      Length `json:"y"`
	Length Length `json:"length"`
	Width  Length `json:"width"`
}

// BoxOf is a rectangle in millimeters.
func BoxOf(r geom.Rect) Box {
	return Box{Length(r.Min.X), Length(r.Min.Y), Length(r.Width()), Length(r.Height())}
}

// SheetPlacement is a part on a sheet as it lies.
type SheetPlacement struct {
	Part string `json:"part"`
	// Also are the parts that it is on others of the sheets that are cut alike.
	Also []string `json:"also,omitempty"`
	Box
	Rotated bool   `json:"rotated"`
	Board   string `json:"board,omitempty"` // what the cuts call it
	Held    *Tie   `json:"held,omitempty"`  // by a router's drawings
}

// Names are those of the parts that it is on sheets that are cut alike.
func (p SheetPlacement) Names() []string { return append([]string{p.Part}, p.Also...) }

// SawCut is one cut on as many boards alike. Setting is what fence or stop keep beside
// the blade.
type SawCut struct {
	Stage          int    `json:"stage"`
	Kind           string `json:"kind"`            // hand-held, fence cut or sled cut
	Trim           bool   `json:"trim"`            // it straightens an edge
	Rough          bool   `json:"rough,omitempty"` // what it gives gets its size by a later cut
	Setting        Length `json:"setting"`         // of clean-up cuts other than along the fence, what they take off
	SettingChanged bool   `json:"setting_changed"` // fence or stop is set for it: it stood elsewhere or was taken away
	// SetAsCut is, where it is set again, the number from 1 of the last cut of the same setting.
	SetAsCut       int        `json:"set_as_cut,omitempty"`
	Count          int        `json:"count"`
	Workpiece      Workpiece  `json:"workpiece"`
	Yields         *Workpiece `json:"yields,omitempty"`
	Remainder      *Workpiece `json:"remainder,omitempty"`
	NeedsHelper    bool       `json:"needs_helper,omitempty"`      // the board is too heavy for one person
	TooSmallToHold bool       `json:"too_small_to_hold,omitempty"` // it is too small to be held by hand
}

// Workpiece is a board in hand.
type Workpiece struct {
	Name   string `json:"name"`
	Short  string `json:"short"` // with the number of its part in the cut list instead of the name
	Length Length `json:"length"`
	Width  Length `json:"width"`
	Piece  bool   `json:"piece,omitempty"`
	Offcut bool   `json:"offcut,omitempty"` // it is kept
	Waste  bool   `json:"waste,omitempty"`  // it is too small for that
	// Clean is what trims leave of an offcut.
	CleanSize *[2]Length `json:"clean_size,omitempty"`
}

// Pieces are parts of one name.
type Pieces struct {
	Part  string `json:"part"`
	Count int    `json:"count"`
}

// Shortfall is pieces without a sheet, and why.
type Shortfall struct {
	Pieces
	Reason string `json:"reason"`
}

func whyLeft(s *sheets.Stock, piece int) string {
	switch {
	case s.Fits(piece) && s.Pieces[piece].Match > 0:
		return "there are no more sheets of one batch: raise their count, or add sizes"
	case s.Fits(piece):
		return "there are no more sheets: raise their count, or add sizes"
	case s.FitsAlone(piece):
		return "it fits alone, but no sheet holds its set side by side: make the set smaller, or add a larger size"
	}
	return "larger than what the trims leave of any sheet, as its grain lets it lie"
}

// SheetsOf describes layouts.
func SheetsOf(p sheets.Plan) Sheets {
	out := Sheets{Tool: "drawerwright", Job: p.Title, Units: p.Units.String(), Stocks: []SheetStock{}}
	for i := range p.Stocks {
		out.Stocks = append(out.Stocks, sheetStock(&p.Stocks[i], p.Units, p.Looks))
	}
	return Settle(out, p.Units)
}

// saidOf is what may be said of a layout: "best possible" only where the bound is met.
func saidOf(l nest.Layout, left int, all []SheetSize) string {
	sizes, priced := 0, false
	for _, z := range all {
		if !z.Offcut {
			sizes, priced = sizes+1, priced || z.Price > 0
		}
	}
	switch {
	case left > 0:
		return fmt.Sprintf("%s without a sheet", words.Count(left, "piece", "pieces"))
	case l.Optimal():
		if sizes > 1 && !priced {
			return "best possible by the sheets' area, for they have no prices"
		}
		return "best possible"
	case l.LowerBound == 0:
		return "how far from best is not known"
	case sizes == 1:
		return fmt.Sprintf("at most %s from best", words.Count(l.Count-l.MinSheets, "sheet", "sheets"))
	}
	return fmt.Sprintf("at most %.1f %% over the best cost", 100*(l.Cost/l.LowerBound-1))
}
