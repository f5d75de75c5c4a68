// Package record is what was computed for a job, as report.json has it: the types of the
// file, how a batch with its layouts fills them, and how they are written and read back.
// Tables and sentences for people are made of it by package present.
package record

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Format is the number of report.json's layout; it changes when a reader would
// have to.
const Format = 6

// Report is report.json. Lengths are in millimeters here and numbers in Units there, rounded to
// a nanometer or a billionth of an inch.
type Report struct {
	Tool    string     `json:"tool"`
	Format  int        `json:"format"`
	Job     string     `json:"job"`
	Code    string     `json:"code"`
	Date    string     `json:"date,omitempty"` // that build was given
	Units   string     `json:"units"`
	Answer  Answer     `json:"answer"`
	DXF     DXF        `json:"dxf"`
	Router  Router     `json:"router"`
	Stocks  []Readings `json:"stocks"`
	Drawers []Drawer   `json:"drawers"`
	Kinds   int        `json:"kinds"` // of drawers: those whose boxes are alike in every part are one
	Parts   []Part     `json:"parts"`
	// CutList has the same parts as they are cut, Blanks what some of those are made of.
	CutList []CutGroup `json:"cut_list"`
	Blanks  []Blank    `json:"blanks,omitempty"`
	// Lumber has the rough boards of parts of solid wood.
	Lumber []Lumber `json:"lumber,omitempty"`
	Layers []Layer  `json:"layers"`
	// IdleBits are bits of the job that cut nothing.
	IdleBits    []Bit        `json:"idle_bits,omitempty"`
	Faces       []Faces      `json:"faces"`
	Fit         []Fit        `json:"fit"`
	Proof       []Proof      `json:"proof"`             // empty where a build does not prove its files
	Checked     []Checked    `json:"checked,omitempty"` // what else was read back
	Setups      []Setup      `json:"setups"`
	Sheets      []SheetStock `json:"sheets"`
	Material    []Stock      `json:"material"`
	Buy         []Buy        `json:"buy"`
	Cabinets    []Cabinet    `json:"cabinets"`
	SharedSizes []SharedSize `json:"alike"`
	// Templates are the plates that the job asks for.
	Templates []Template `json:"templates"`
	Warnings  []Warning  `json:"warnings"`
}

// PreviewMilled is said of drawers whose solids are milled.
const PreviewMilled = job.PreviewMilled

// Size is a box's outside or clear inside.
type Size struct {
	Width  Length `json:"width"`
	Height Length `json:"height"`
	Depth  Length `json:"depth"`
}

// Drawer names the parts of one kind of drawer.
type Drawer struct {
	Name    string `json:"name"`
	Count   int    `json:"count"`
	Machine string `json:"machine"`
	// Verdict is that on the drawer, Odds the part of its boxes that keep all limits at
	// once, Summary both in words.
	Verdict string   `json:"verdict"`
	Odds    float64  `json:"odds"`
	Summary string   `json:"summary"`
	Outside Size     `json:"outside"`
	Lip     *Lip     `json:"lip,omitempty"`
	Inside  Size     `json:"inside"`
	Parts   []string `json:"parts"`
	// Weight is the empty box's in kg, 0 where a stock's density is not known; Load
	// what will lie in it, Rating what its slides are rated for.
	Weight float64 `json:"weight_kg,omitempty"`
	Load   float64 `json:"load_kg,omitempty"`
	Rating float64 `json:"rating_kg,omitempty"`
	Sag    *Sag    `json:"sag,omitempty"`
	// BottomOut is by how much a bottom that was slid in stands out behind when it has swollen.
	BottomOut Length `json:"bottom_out,omitempty"`
	// SlidInSolid reports whether its bottom is of solid wood and slid in from behind.
	SlideInSolid bool   `json:"slide_in_solid,omitempty"`
	Bores        []Bore `json:"bores,omitempty"`
	// MaxOpen is how far a shoulder, or another joint meant to be closed, may stay open.
	MaxOpen Length `json:"max_open"`
	// LooseDividers are those that are lifted out, as the proof names them: by number
	// in the order of the parts and their stands.
	LooseDividers []string `json:"loose_dividers,omitempty"`
	// Folders are those that hang on dividers, two by two.
	Folders []Folders `json:"folders,omitempty"`
	// Preview says what its solids show: milled, what the bits leave by the drawings; as it is
	// designed where it is empty.
	Preview string `json:"preview,omitempty"`
	// Pictures and Solids are files of the whole box, relative to the folder.
	Pictures []string `json:"pictures"`
	Solids   []string `json:"solids"`
	// Step is the assembled box as exact solids, where the job asks for it.
	Step string `json:"step,omitempty"`
}

// Folders are hanging folders: from hook to hook, and what is below and above the rails.
type Folders struct {
	Rails [2]string `json:"rails"`
	Width Length    `json:"width"`
	Below Length    `json:"below"`
	Above Length    `json:"above"`
}

// Sag is of the bottom under its load: with simply supported and with clamped
// edges, between which the truth is. LongTerm is the greater of them when the load stays
// for years. Stress is in N/mm2. MinThickness is that with which a bottom of the same
// stock keeps the limit, 0 where none does.
type Sag struct {
	Simple        Length  `json:"simple"`
	Clamped       Length  `json:"clamped"`
	LongTerm      Length  `json:"long_term"`
	Limit         Length  `json:"limit"`
	MinThickness  Length  `json:"min_thickness"`
	StressSimple  float64 `json:"stress_simple"`
	StressClamped float64 `json:"stress_clamped"`
	// ThinPlate says that thin-plate theory holds: else the bottom sags less.
	ThinPlate bool `json:"thin_plate"`
}

// Bore are holes or mortises in both ends of a part, which no drawing shows.
type Bore struct {
	Part        string   `json:"part"`
	Diameter    Length   `json:"diameter"`
	Depth       Length   `json:"depth"`
	FromOutside Length   `json:"from_outside"`
	Heights     []Length `json:"heights"`
	Lengths     []Length `json:"lengths,omitempty"`
}

// Part is one panel and how often it is cut.
type Part struct {
	Name      string `json:"name"`
	Drawer    string `json:"drawer"`
	Role      string `json:"role"`
	Quantity  int    `json:"quantity"`
	Length    Length `json:"length"`
	Width     Length `json:"width"`
	Thickness Length `json:"thickness"`
	Stock     string `json:"stock"`
	Grain     string `json:"grain"`
	Label     string `json:"label,omitempty"` // tells parts of one role apart
	Spares    int    `json:"spares,omitempty"`
	// Outline has corners as operations have them. ReliefCorners are those into which
	// another part goes, by their index: a round bit clears them.
	Outline       []Vertex    `json:"outline"`
	ReliefCorners []int       `json:"relief_corners,omitempty"`
	Operations    []Operation `json:"operations"`
	Placements    []Placement `json:"placements"`
	Files         Files       `json:"files"`
	Engraved      *Engraved   `json:"engraved,omitempty"`
}

// Lip is how far a box front stands out beyond the box, left and right as seen from before.
type Lip struct {
	Left   Length `json:"left"`
	Right  Length `json:"right"`
	Top    Length `json:"top"`
	Bottom Length `json:"bottom"`
}

// Placement is the place of a panel in its box: where its origin is, and the directions
// in which its x and y run.
type Placement struct {
	Origin [3]Length  `json:"origin"`
	X      [3]float64 `json:"x"`
	Y      [3]float64 `json:"y"`
}

// Operation is a pocket. Its outline's corners are x, y, in panel coordinates
// whichever the face, with the bulge of the side that follows as a third number
// where that side is an arc.
type Operation struct {
	Kind    string   `json:"kind"`
	Face    string   `json:"face"`
	Depth   Length   `json:"depth"`
	Outline []Vertex `json:"outline"`
}

// Files are relative to the folder; a face that is not cut has none.
type Files struct {
	Inside  string `json:"inside,omitempty"`
	Outside string `json:"outside,omitempty"`
	STL     string `json:"stl"`
	Step    string `json:"step,omitempty"`
}

// Setup is one fence distance and one cutter height, and the drawers that it serves.
type Setup struct {
	Machine       string   `json:"machine"`
	CutterWidth   Length   `json:"cutter_width"`
	FenceDistance Length   `json:"fence_distance"`
	CutterHeight  Length   `json:"cutter_height"`
	DadoHeight    Length   `json:"dado_height"`     // with glue-space; 0 where it is cutter_height
	RabbetPasses  int      `json:"rabbet_passes"`   // over the widest rabbet
	LastFence     Length   `json:"last_fence"`      // of those passes
	FlatTongues   bool     `json:"flat_tongues"`    // of fronts that lie flat: passes and last_fence are from their ends
	BottomFence   Length   `json:"bottom_fence"`    // for the rabbets of a bottom on a tongue that is stood on end; 0 where there are none
	BottomHeight  Length   `json:"bottom_height"`   // of the cutter for those of one that lies flat; 0 where there are none
	GrooveFence   Length   `json:"groove_fence"`    // of grooves at a height of their own; 0 where there are none
	GrooveCutter  Length   `json:"groove_cutter"`   // that makes the bottom's grooves to fit, one pass of it; 0 without one
	GrooveWidth   Length   `json:"groove_width"`    // of the grooves made so
	GrooveFences  []Length `json:"groove_fences"`   // of the passes over one of them
	FingerRow     int      `json:"finger_row"`      // of a box joint, from below, that is not as high as the others; 0 for none
	FingerHeight  Length   `json:"finger_height"`   // of that row
	BackFence     Length   `json:"back_fence"`      // of the dados for a housed back, from the rear end; 0 where there are none
	BackPasses    int      `json:"back_passes"`     // of a saw over one of these
	LastBackFence Length   `json:"last_back_fence"` // of those passes
	Drawers       []string `json:"drawers"`

	Cannot []string `json:"cannot_cut,omitempty"` // what the machine cannot make of these drawers, and why
}

// Stock is the board that the parts take of one stock, without kerf and waste.
type Stock struct {
	Stock  string `json:"stock"`
	Pieces int    `json:"pieces"`
	Area   Area   `json:"area"`
	// Sheets is how many the layout takes, offcuts not counted, 0 when the job does not
	// give the sheet's size. Cost is theirs.
	Sheets int     `json:"sheets"`
	Cost   float64 `json:"cost"`
}

// Warning is a problem that does not stop the build, or a note: what is more work alone.
type Warning struct {
	Code    string `json:"code"`
	Level   string `json:"level"` // warning or note
	Drawer  string `json:"drawer"`
	Part    string `json:"part"`
	Message string `json:"message"`
	// Hint is what would end it, in the words of the job file; may be empty.
	Hint string `json:"hint,omitempty"`
}

// Unit is that of the numbers of report.json.
func (r Report) Unit() geom.Unit { return UnitOf(r.Units) }

// looseDividers are the names of the dividers that are lifted out.
func looseDividers(d batch.Drawer) (names []string) {
	for i, entry := range dividerEntries(d) {
		if d.Spec.Dividers[entry].Loose {
			names = append(names, dividerName(i))
		}
	}
	return names
}

// foldersOf are the folders that hang in a drawer.
func foldersOf(d batch.Drawer) (list []Folders) {
	entries := dividerEntries(d)
	for i := 0; i < len(entries); i++ {
		if f := d.Spec.Dividers[entries[i]].Folders; f.Width > 0 {
			list = append(list, Folders{[2]string{dividerName(i), dividerName(i + 1)}, Length(f.Width), Length(f.Below),
				Length(f.Above)})
			i++
		}
	}
	return list
}

// dividerName is what the proof calls one of the dividers.
func dividerName(i int) string { return fmt.Sprintf("divider %d", i+1) }

// dividerEntries are the entries that the dividers of a drawer are of, one by one.
func dividerEntries(d batch.Drawer) (list []int) {
	entry := 0
	for _, p := range d.Parts {
		if p.Role == joinery.DividerRole {
			list = append(list, slices.Repeat([]int{entry}, len(p.Placements))...)
			entry++
		}
	}
	return list
}

// lipOf are the lips of a drawer's front; nil without.
func lipOf(p joinery.Lip) *Lip {
	if p == (joinery.Lip{}) {
		return nil
	}
	return &Lip{Length(p.Left), Length(p.Right), Length(p.Top), Length(p.Bottom)}
}

// StrengthOf is what a drawer weighs and bears, and nothing else of it.
func StrengthOf(d batch.Drawer) Drawer {
	out := Drawer{Name: d.Spec.Name}
	strength(&out, d)
	return out
}

// strength fills in what a drawer weighs and bears, and its bores.
func strength(out *Drawer, d batch.Drawer) {
	s := d.Strength
	out.BottomOut = Length(d.BottomOut)
	out.SlideInSolid = d.Spec.BottomFit.SlidesIn() && d.Spec.Bottom.Solid
	out.Weight, out.Load, out.Rating = words.Grams(s.Empty), words.Grams(s.Load), s.Slide.Load
	if s.SagLimit > 0 {
		tenth := func(v float64) float64 { return math.Round(v*1000) / 1000 }
		out.Sag = &Sag{Length(s.Sag.Simple), Length(s.Sag.Clamped), Length(s.Lasting), Length(s.SagLimit), Length(s.Enough),
			tenth(s.Sag.StressSimple), tenth(s.Sag.StressClamped), s.Sag.Small}
	}
	for _, b := range d.Bores {
		one := Bore{Part: b.Part.String(), Diameter: Length(b.Diameter), Depth: Length(b.Depth),
			FromOutside: Length(b.FromOutside)}
		for _, h := range b.Heights {
			one.Heights = append(one.Heights, Length(h))
		}
		for _, n := range b.Lengths {
			one.Lengths = append(one.Lengths, Length(n))
		}
		out.Bores = append(out.Bores, one)
	}
}

func part(p batch.Part, engraving float64, u geom.Unit) Part {
	out := Part{
		Name: p.Name, Drawer: p.Drawer, Role: string(p.Role), Quantity: p.Quantity,
		Length: Length(p.Panel.Length()), Width: Length(p.Panel.Width()), Thickness: Length(p.Panel.Thickness),
		Stock: p.Stock.Name, Grain: string(p.Stock.Grain), Operations: []Operation{},
		Label: p.Label, Spares: p.Spares, Outline: corners(p.Panel.Outline),
		ReliefCorners: p.Panel.Outline.Marked(geom.Relief),
		Files:         Files{p.File(geom.Inside), p.File(geom.Outside), p.STL, p.Step}, Engraved: engraved(p, engraving, u),
	}
	for _, s := range p.Placements {
		at := func(v geom.Vec3) [3]Length { return [3]Length{Length(v.X), Length(v.Y), Length(v.Z)} }
		unit := func(v geom.Vec3) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }
		out.Placements = append(out.Placements, Placement{at(s.Origin), unit(s.X), unit(s.Y)})
	}
	for _, k := range p.Panel.Pockets {
		out.Operations = append(out.Operations, Operation{Kind: k.Kind.String(), Face: k.Face.String(),
			Depth: Length(math.Min(k.Depth, p.Panel.Thickness)), Outline: corners(k.Outline)})
	}
	return out
}

// corners are x, y of each, and the bulge of the side that follows where it is an arc.
func corners(l geom.Loop) []Vertex {
	list := make([]Vertex, 0, len(l))
	for _, v := range l {
		list = append(list, Vertex{Length(v.X), Length(v.Y), rounded(v.Bulge, bulgeSteps)})
	}
	return list
}

// bulgeSteps rounds bulges to 9 decimals, as the DXF files do: over a chord of
// 4 m that moves an arc by 2 nanometers.
const bulgeSteps = 1e9

// Setups gathers the drawers that one setting serves, in order of appearance.
func Setups(b batch.Batch) []Setup {
	list := []Setup{}
	for _, g := range batch.BySetting(b.Drawers) {
		s := g[0].Setup
		one := Setup{
			Machine: string(s.Cutter.Kind), CutterWidth: Length(s.Cutter.Width), FenceDistance: Length(s.FenceDistance),
			CutterHeight: Length(s.CutterHeight), DadoHeight: Length(s.DadoHeight), RabbetPasses: s.RabbetPasses,
			LastFence: Length(s.LastFence), FlatTongues: s.FlatTongues, BottomFence: Length(s.BottomFence),
			BottomHeight: Length(s.BottomHeight),
			GrooveFence:  Length(s.GrooveFence), GrooveCutter: Length(s.Cutter.Groove), GrooveWidth: Length(s.GrooveWidth),
			GrooveFences: []Length{}, FingerRow: s.FingerRow, FingerHeight: Length(s.FingerHeight),
			BackFence: Length(s.BackFence), BackPasses: s.BackPasses,
			LastBackFence: Length(s.LastBackFence),
		}
		if s.GroovePasses > 0 {
			for _, at := range s.GrooveFences() {
				one.GrooveFences = append(one.GrooveFences, Length(at))
			}
		}
		for _, d := range g {
			one.Drawers = append(one.Drawers, d.Spec.Name)
		}
		for _, r := range refusedOf(g, b.Units) {
			one.Cannot = append(one.Cannot, r.Text())
		}
		list = append(list, one)
	}
	return Settle(list, b.Units)
}
