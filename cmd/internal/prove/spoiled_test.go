package prove_test

import (
	"errors"
	"fmt"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/mutate"
	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom/geomtest"
)

// smallHand is a job of each kind of file that those for a router have not, as short as can be.
const smallHand = "units: in\nstock: {a: {thickness: [0.5, 0.5], sheet: 60 x 60}}\ncutter: {kind: hand, width: 1/4}\n" +
	"openings: {o: {width: 16, height: 8, depth: 20, cabinet: frameless, fronts: none}}\n" +
	"drawers: [{name: d, opening: o, slide: side-mount, rows: 1, sides: a, bottom: a}]\n"

// spoilable are folders of each kind: every unit, version, machine and kind of file is in one of them.
func spoilable(t *testing.T) []*folder {
	list := []*folder{build(t, smallHand), build(t, jobOf(manyBits, "dxf: {version: R12}"))}
	if geomtest.All() {
		for _, name := range []string{"hand-cut.yaml", "inch-chest.yaml", "router-boxes.yaml"} {
			list = append(list, build(t, sample(t, name)))
		}
	}
	return list
}

// written are the files of a folder that are wanted, in order.
func (f *folder) written(want func(name string) bool) (list []mutate.Sample) {
	for _, name := range slices.Sorted(maps.Keys(f.files)) {
		if want(name) {
			list = append(list, mutate.Sample{Name: name, Text: string(f.files[name])})
		}
	}
	return list
}

// some is how many drawings and reports there are for one that is put into a box. By night all are, and of checks one
// of so many is made, four times as many as by day.
const some = 8

// with reads a folder in which one file is another.
func (f *folder) with(name, text string) prove.Read {
	return func(asked string) ([]byte, error) {
		if asked == name {
			return []byte(text), nil
		}
		return f.ReadFile(asked)
	}
}

// TestSpoiledDrawings: a spoiled drawing is read, or refused with the line; a box that has it goes together, or it is
// said what is wrong.
func TestSpoiledDrawings(t *testing.T) {
	base := build(t, jobOf(sameBit, ""))
	p, err := prove.New(record.Keep(base.report(t)))
	if err != nil {
		t.Fatal(err)
	}
	var drawings []mutate.Sample
	for _, f := range spoilable(t) {
		drawings = append(drawings, f.written(func(name string) bool { return path.Ext(name) == ".dxf" })...)
	}
	readable := 0
	mutate.DXF.Each(t, drawings, func(spoiled mutate.Sample) error {
		_, err := dxfread.Parse([]byte(spoiled.Text))
		var e *dxfread.Error
		if err != nil && (!errors.As(err, &e) || e.Line < 1 || e.Line > strings.Count(spoiled.Text, "\n")+2) {
			return fmt.Errorf("no line: %w", err)
		}
		if readable++; readable%some != 0 && !geomtest.All() {
			return nil
		}
		proof := p.Worker().Drawer(0, base.with(sideIn, spoiled.Text), prove.Options{Detail: true})
		for _, f := range proof.Faults {
			if f.Code == "unreadable" && f.Line < 1 {
				return fmt.Errorf("a fault without its line: %+v", f)
			}
		}
		return sensible(proof)
	})
}

// place is where a report cannot be read.
var place = regexp.MustCompile(`^line [1-9]\d*, column [1-9]\d*: |of "parts[.\w]*outline"$`)

// TestSpoiledReports: a spoiled report is refused with the place, or what it tells of is proven.
func TestSpoiledReports(t *testing.T) {
	folders := map[string]*folder{}
	var reports []mutate.Sample
	for i, f := range spoilable(t) {
		name := fmt.Sprint(i, " report.json")
		folders[name] = f
		reports = append(reports, mutate.Sample{Name: name, Text: string(f.files["report.json"])})
	}
	outcomes := map[string]int{}
	mutate.JSON.Each(t, reports, func(spoiled mutate.Sample) error {
		r, err := record.Read([]byte(spoiled.Text))
		if err != nil {
			if outcomes["no report"]++; !place.MatchString(err.Error()) {
				return fmt.Errorf("no place: %w", err)
			}
			return nil
		}
		p, err := prove.New(record.Keep(r))
		if err != nil {
			outcomes["refused"]++
			return nil
		}
		w, read := p.Worker(), folders[spoiled.Name].ReadFile
		outcomes["read"]++
		for i := range p.Checks() {
			if (i+outcomes["read"])%geomtest.Cases(4*some, some) == 0 {
				w.Check(i, read)
			}
		}
		if outcomes["read"]%some == 0 || geomtest.All() {
			return sensible(w.Drawer(outcomes["read"]/some%p.Drawers(), read, prove.Options{}))
		}
		return nil
	})
	t.Log(outcomes)
}

// TestSpoiledOthers: a spoiled file beside the drawings is as it was built, or it is named with what is wrong.
func TestSpoiledOthers(t *testing.T) {
	reads := map[string]func(text string) record.Checked{} // by the folder's place and the file
	var all []mutate.Sample
	for at, f := range spoilable(t) {
		p, err := prove.New(record.Keep(f.report(t)))
		if err != nil {
			t.Fatal(err)
		}
		w := p.Worker()
		for i := range p.Drawers() {
			w.Drawer(i, f.ReadFile, prove.Options{})
		}
		for i := range p.Checks() {
			w.Check(i, func(name string) ([]byte, error) {
				key := fmt.Sprint(at, " ", name)
				if _, known := reads[key]; !known && path.Ext(name) != ".dxf" {
					reads[key] = func(text string) record.Checked { return w.Check(i, f.with(name, text)) }
					all = append(all, mutate.Sample{Name: key, Text: string(f.files[name])})
				}
				return f.ReadFile(name)
			})
		}
	}
	faulty := 0
	mutate.Lines.Each(t, all, func(spoiled mutate.Sample) error {
		faults := reads[spoiled.Name](spoiled.Text).Faults
		for _, fault := range faults {
			if fault.Code == "" || fault.File == "" || fault.Message == "" {
				return fmt.Errorf("a fault without code, file or words: %+v", fault)
			}
		}
		faulty += min(1, len(faults))
		return nil
	})
	t.Logf("%d of them have a fault, of %d files", faulty, len(all))
}
