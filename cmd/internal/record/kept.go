package record

import (
	"iter"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom/joinery"
)

// Kept is a report as it is kept while files are written and proven: the lists that grow most with the drawers
// stand packed in place of those of the Report.
type Kept struct {
	Report
	Parts  List[Part]
	Layers List[Layer]
	Faces  List[Faces]
	Fit    List[Fit]
	Proof  List[Proof]
	words  *vocabulary
	files  *places // of layers, by their files
	fits   *places // of measures, by their drawers
}

// Keep packs a report.
func Keep(r Report) Kept {
	k := Kept{Report: r, words: newVocabulary()}
	k.Report.Parts, k.Report.Layers, k.Report.Faces, k.Report.Fit, k.Report.Proof = nil, nil, nil, nil, nil
	k.Parts, k.Layers, k.Faces = listOf(k.words, r.Parts), listOf(k.words, r.Layers), listOf(k.words, r.Faces)
	k.Fit, k.Proof = listOf(k.words, r.Fit), listOf(k.words, r.Proof)
	k.find()
	return k
}

// find notes where the layers of each file and the measures of each drawer stand.
func (k *Kept) find() {
	k.files, k.fits = newPlaces(), newPlaces()
	for _, l := range k.Layers.All() {
		k.files.add(l.File)
	}
	for _, f := range k.Fit.All() {
		k.fits.add(f.Drawer)
	}
}

// Whole is the report with its lists unpacked.
func (k Kept) Whole() Report {
	r := k.Report
	r.Parts, r.Layers, r.Faces = k.Parts.Slice(), k.Layers.Slice(), k.Faces.Slice()
	r.Fit, r.Proof = k.Fit.Slice(), k.Proof.Slice()
	return r
}

// FitOf are the measures of a drawer.
func (k Kept) FitOf(drawer string) []Fit { return of(k.Fit, k.fits, drawer) }

// LayersOf are the lines of the legend of a file.
func (k Kept) LayersOf(file string) []Layer { return of(k.Layers, k.files, file) }

// Lists reports whether a drawing of a part has lines in the legend.
func (k Kept) Lists(file string) bool {
	_, known := k.files.of[file]
	return known
}

// ForRouter reports whether a router cuts any of its parts.
func (k Kept) ForRouter() bool {
	for file := range k.files.of {
		if filing.ForRouter(file) {
			return true
		}
	}
	return false
}

// Legend are the lines of all drawings, those of parts and then those of sheets.
func (k Kept) Legend() iter.Seq[Layer] {
	return func(yield func(Layer) bool) {
		for _, l := range k.Layers.All() {
			if !yield(l) {
				return
			}
		}
		for _, s := range k.Sheets {
			for _, laid := range s.Sheets {
				for _, l := range laid.Layers {
					if !yield(l) {
						return
					}
				}
			}
		}
	}
}

// HasPart reports whether it has a part such as is asked for.
func (k Kept) HasPart(such func(Part) bool) bool {
	for _, p := range k.Parts.All() {
		if such(p) {
			return true
		}
	}
	return false
}

// places are where the elements of each name stand in a list.
type places struct {
	of   map[string][2]int32 // the first and the last
	next []int32             // after each, of the same name; 0 after the last
}

func newPlaces() *places { return &places{of: make(map[string][2]int32)} }

// add is the next element of the list.
func (p *places) add(name string) {
	i := int32(len(p.next))
	p.next = append(p.next, 0)
	ends, known := p.of[name]
	if !known {
		ends[0] = i
	} else {
		p.next[ends[1]] = i
	}
	ends[1] = i
	p.of[name] = ends
}

// of are the elements of a name.
func of[T any](l List[T], p *places, name string) (list []T) {
	ends, known := p.of[name]
	if !known {
		return nil
	}
	for i := ends[0]; ; i = p.next[i] {
		if list = append(list, l.At(int(i))); i == ends[1] {
			return list
		}
	}
}

// Make fills a report from a batch, its layouts on sheets and the warnings found on the way.
func Make(b batch.Batch, p sheets.Plan, warnings []Warning) Report {
	return MakeKept(b, p, warnings).Whole()
}

// MakeKept is [Make] for a report that is kept: no list of it is there unpacked.
func MakeKept(b batch.Batch, p sheets.Plan, warnings []Warning) Kept {
	laid := SheetsOf(p).Stocks
	r := Report{
		Tool: "drawerwright", Format: Format, Job: b.Title, Code: b.Code, Units: b.Units.String(), Answer: VerdictOn(b).Answer(),
		// Never null, so that readers need not ask.
		DXF: drawn(b), Router: routed(b), Stocks: readings(b), Sheets: laid,
		Drawers: []Drawer{}, Kinds: len(b.Kinds()), Setups: Setups(b), Material: material(b, laid), Warnings: slices.Clone(warnings),
	}
	if r.Warnings == nil {
		r.Warnings = []Warning{}
	}
	r.CutList, r.Blanks = CutListOf(b)
	r.Lumber = lumberOf(b, r.CutList)
	r.Buy, r.Cabinets = toBuy(b, r.Material, laid, p, r.Lumber), cabinets(b)
	r.SharedSizes, r.Templates = sharedSizes(b), templates(b)
	w := newVocabulary()
	k := Kept{words: w, Parts: emptyList[Part](w), Layers: emptyList[Layer](w), Faces: emptyList[Faces](w),
		Fit: emptyList[Fit](w), Proof: emptyList[Proof](w)}
	used := make(map[Bit]bool)
	for _, d := range b.Drawers {
		listed := drawerOf(d, p.Looks)
		if b.Milled(d) {
			listed.Preview = PreviewMilled
		}
		for _, p := range d.Parts {
			listed.Parts = append(listed.Parts, p.Name)
			k.Parts.Append(Settle(part(p, b.Router.Engrave.Depth, b.Units), b.Units))
			k.Faces.Append(Settle(faces(d, p, b.Units), b.Units))
			for _, l := range layers(b, p) {
				used[l.Cutter()] = true
				k.Layers.Append(Settle(l, b.Units))
			}
		}
		r.Drawers = append(r.Drawers, listed)
		for _, m := range d.Outcome.Measures {
			k.Fit.Append(Settle(FitOf(d, m), b.Units))
		}
	}
	r.IdleBits = idleBits(b, laid, used)
	k.Report = Settle(r, b.Units)
	k.find()
	return k
}

// drawerOf names a drawer's parts and files, and says what it weighs and bears.
func drawerOf(d batch.Drawer, looks filing.Looks) Drawer {
	size := func(s joinery.Size) Size { return Size{Length(s.Width), Length(s.Height), Length(s.Depth)} }
	listed := Drawer{Name: d.Spec.Name, Count: d.Spec.Count, Machine: string(d.Spec.Cutter.Kind),
		Verdict: string(d.Outcome.Verdict), Odds: Odds(d.Outcome.Right), Summary: d.Outcome.String(),
		Outside: size(d.Outside), Lip: lipOf(d.Spec.Lip), Inside: size(d.Inside), Parts: []string{},
		LooseDividers: looseDividers(d),
		Folders:       foldersOf(d),
		MaxOpen:       Length(d.Spec.Limits.ShoulderGap)}
	listed.Pictures, listed.Solids, listed.Step = looks.Pictures(d.Folder), looks.Solids(d.Folder), d.Step
	strength(&listed, d)
	return listed
}
