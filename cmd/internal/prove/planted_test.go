package prove_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/geomtest"
)

// plantMarks leaves the tabs to a program.
var plantMarks = strings.Replace(plantJob, "tabs: {}", "tabs: {as: marks}", 1)

// plantJob has a router's parts on sheets, cut on both faces and held by tabs, and a
// cabinet; plantTemplates has templates with their kerf made up for.
const plantJob = `job: Planted
units: mm
cad: step
stock:
  birch: {thickness: 12.2, sheet: 1500 x 1100, keep-out: [{at: 0 x 500, size: 15 x 40}]}
  ply: {thickness: 5.9, sheet: 1500 x 1100}
cutter: {kind: router, diameter: 3}
router: {tabs: {}, onion-skin: 0.3}
sheets: {trim: 25, kerf: 12}
dxf: {files: "{part}", version: VERSION}
openings: {base: {width: 520, height: 300, depth: 560, cabinet: frameless, fronts: overlay}}
drawers:
  - {name: base, opening: base, slide: side-mount, rows: 2, sides: birch, bottom: ply, joinery: {dado-clearance: 0.2}, drawer-front: {stock: birch}}
`

func plantTemplates(t testing.TB, version string) string {
	return strings.Replace(sample(t, "hand-cut.yaml"), "\ndrawers:", "\ndxf: {version: "+version+"}\ndrawers:", 1)
}

// planted is one thing that is done to what a build wrote, and what is to be said of it.
type planted struct {
	file  string                     // that is changed
	harm  func(*drawing) int         // gives the line of the fault, 0 for the whole file
	bytes func([]byte) ([]byte, int) // or of any file
	edit  func(*record.Report)       // or the report
	gone  bool                       // or the file is lost
	code  string                     // of the fault
	at    string                     // its file, if not the one that is changed
	part  string                     // that it is about, if it matters
}

// plants are all that are tried, by what is wrong, for each job.
func plants(t testing.TB, version string) map[string]map[string]planted {
	of := map[string]planted{}
	for _, some := range []map[string]planted{plantedSheets, plantedLayout, plantedCabinets, plantedSolids, plantedExact, plantedScenes, plantedTables, plantedRunCards, plantedLists, plantedBoxes, plantedPictures, plantedSaid, plantedCode} {
		for name, p := range some {
			if _, twice := of[name]; twice {
				t.Fatalf("%s is planted twice", name)
			}
			of[name] = p
		}
	}
	marked := maps.Clone(plantedTemplates)
	maps.Copy(marked, plantedMarked)
	maps.Copy(marked, plantedDesigned)
	return map[string]map[string]planted{
		strings.Replace(plantJob, "VERSION", version, 1):   of,
		strings.Replace(plantMarks, "VERSION", version, 1): plantedMarks,
		plantTemplates(t, version):                         marked,
		raisedJob(version):                                 plantedHeights,
		engravedJob(version):                               plantedEngraved,
		splitJob(version):                                  plantedSplit,
		familyJob(t, version):                              plantedFamily,
	}
}

// checked reads everything back, the parts of the drawers first.
func (f *folder) checked(t testing.TB) []record.Checked {
	t.Helper()
	p, err := prove.New(record.Keep(f.report(t)))
	if err != nil {
		t.Fatal(err)
	}
	w := p.Worker()
	var list []record.Checked
	for i := range p.Drawers() {
		list = append(list, record.Checked{Faults: w.Drawer(i, f.ReadFile, prove.Options{}).Faults})
	}
	for i := range p.Checks() {
		list = append(list, w.Check(i, f.ReadFile))
	}
	return list
}

// readers are the checks of a folder, and which of them read each of its files.
type readers struct {
	worker *prove.Worker
	of     map[string][]int // -1 for the proof of the drawers
}

// unharmedReaders reads a folder back in which nothing is wrong.
func unharmedReaders(t testing.TB, f *folder) readers {
	t.Helper()
	p, err := prove.New(record.Keep(f.report(t)))
	if err != nil {
		t.Fatal(err)
	}
	r := readers{p.Worker(), map[string][]int{}}
	noted := func(i int) prove.Read {
		return func(name string) ([]byte, error) {
			if list := r.of[name]; len(list) == 0 || list[len(list)-1] != i {
				r.of[name] = append(list, i)
			}
			return f.ReadFile(name)
		}
	}
	var faults []record.Fault
	for i := range p.Drawers() {
		faults = append(faults, r.worker.Drawer(i, noted(-1), prove.Options{}).Faults...)
	}
	for i := range p.Checks() {
		faults = append(faults, r.worker.Check(i, noted(i)).Faults...)
	}
	if len(faults) != 0 {
		t.Fatalf("without any: %+v", faults)
	}
	return r
}

// faults are those of a folder in which one file is another. Where a single check reads that
// file, and its report is as it was, all others say what they said: nothing. By night all are
// made once more.
func (r readers) faults(t testing.TB, f *folder, changed string) []record.Fault {
	t.Helper()
	if by := r.of[changed]; len(by) == 1 && by[0] >= 0 && !geomtest.All() {
		return r.worker.Check(by[0], f.ReadFile).Faults
	}
	return faultsOf(f.checked(t))
}

func faultsOf(list []record.Checked) (all []record.Fault) {
	for _, c := range list {
		all = append(all, c.Faults...)
	}
	return all
}

// TestPlanted: each is found and named, with its file and its line, in either version of
// the format; and the same files without it have none.
func TestPlanted(t *testing.T) {
	count := 0
	for _, version := range []string{"R2000", "R12"} {
		for job, list := range plants(t, version) {
			unharmed := unharmedReaders(t, build(t, job))
			for _, name := range slices.Sorted(maps.Keys(list)) {
				c := list[name]
				if version == "R12" && !strings.HasSuffix(c.file, ".dxf") && !geomtest.All() {
					continue // other files have no version, and the report no other one
				}
				t.Run(name+", "+version, func(t *testing.T) {
					f := build(t, job)
					line := 0
					switch {
					case c.gone:
						delete(f.files, c.file)
					case c.edit != nil:
						f.edit(t, c.edit)
					case f.files[c.file] == nil:
						t.Fatalf("there is no %s", c.file)
					case c.bytes != nil:
						f.files[c.file], line = c.bytes(f.files[c.file])
					default:
						d := drawn(t, f.files[c.file])
						line = c.harm(d)
						f.files[c.file] = d.data()
					}
					at := c.at
					if at == "" {
						at = c.file
					}
					all := unharmed.faults(t, f, c.file)
					if !slices.ContainsFunc(all, func(v record.Fault) bool {
						return v.Code == c.code && v.File == at && (line == 0 || v.Line == line || line < 0 && v.Page == -line) && (c.part == "" || v.Part == c.part) && v.Message != "" && v.Hint != ""
					}) {
						t.Errorf("%s on line %d of %s is not found: %+v", c.code, line, at, all)
					}
				})
				if version == "R2000" {
					count++
				}
			}
		}
	}
	t.Logf("%d faults are planted besides %d of the parts' drawings", count, len(faults()))
	if count < 260 {
		t.Errorf("%d faults are planted", count)
	}
}
