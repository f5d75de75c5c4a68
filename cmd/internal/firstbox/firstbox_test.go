package firstbox

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/load"
	"drawerwright/geom/fit"
	"drawerwright/geom/testcut"
)

// batchOf works a sample out.
func batchOf(t testing.TB, file string) batch.Batch {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	l := load.Parse(t.Context(), file, bytes.NewReader(text), load.Beside(file))
	l.WorkOut(t.Context())
	if l.Failed() {
		t.Fatal(l.Problems)
	}
	return l.Batch
}

// samples are the job files that come with the program.
func samples(t testing.TB) []string {
	list, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(list) < 10 {
		t.Fatal(list, err)
	}
	return append(list, "../../../samples/log/sewing-box.yaml")
}

// formsOf are the forms of the first box of each setting.
func formsOf(b batch.Batch) (list []Form) {
	for _, at := range First(b) {
		list = append(list, Of(b, at))
	}
	return list
}

// filled is an empty form with what is right of each row in it.
func filled(t *testing.T, empty []byte) string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(empty)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	for i, r := range rows {
		if i > 0 {
			r[5] = r[2]
		}
		w.Write(r)
	}
	w.Flush()
	return out.String()
}

// TestRightBoxes: of every sample the form of each setting comes back as it was written; with what is right of each row
// read, the box is right, nothing is to be done, and a log takes it as it is.
func TestRightBoxes(t *testing.T) {
	rows := 0
	for _, file := range samples(t) {
		b := batchOf(t, file)
		forms := formsOf(b)
		records, err := Read(b, "f.csv", strings.NewReader(filled(t, Empty(forms))))
		if err != nil || len(records) != len(forms) {
			t.Errorf("%s: %d of %d forms: %v", file, len(records), len(forms), err)
			continue
		}
		for i, r := range records {
			rows += len(r.Rows)
			if r.Drawer != forms[i].Drawer() || r.Verdict != Right || r.Adjust != nil || len(r.Do) > 0 {
				t.Errorf("%s, %s: %s %+v", file, r.Drawer, r.Verdict, r.Do)
			}
			cuts, why := r.logged(time.Date(2026, 3, 2, 0, 0, 0, 0, time.UTC))
			taken := 0
			for _, row := range forms[i].Rows {
				if row.kind == testcut.Slot && forms[i].model.Grooves() && forms[i].drawer.Setup.GroovePasses > 1 {
					continue // its width is that of two settings of the fence
				}
				if slices.Contains([]testcut.Kind{testcut.Slot, testcut.Edge, testcut.Depth, testcut.FrontLength}, row.kind) {
					taken++
				}
			}
			if len(cuts) != taken || (why == "") != (taken > 0) {
				t.Errorf("%s, %s: %d cuts of %d: %s", file, r.Drawer, len(cuts), taken, why)
			}
			for _, c := range cuts {
				if c.Moved || math.Abs(c.Off()) > 0.011 { // half a step of a sheet in inches
					t.Errorf("%s, %s: %+v", file, r.Drawer, c)
				}
			}
		}
	}
	if rows < 400 {
		t.Errorf("only %d rows", rows)
	}
}

// TestJudgedAtItsLimits: each row of every sample is right at both of its limits as they are printed, and out a tenth
// of a step beyond; what is out has something to do, and what is left to read is told.
func TestJudgedAtItsLimits(t *testing.T) {
	for _, file := range samples(t) {
		b := batchOf(t, file)
		for _, f := range formsOf(b) {
			for i, row := range f.Rows {
				step := b.Units.Step() / 10
				for mm, want := range map[float64]string{row.Min.MM(): Right, row.Max.MM(): Right,
					row.Min.MM() - step: "under", row.Max.MM() + step: "over"} {
					r := f.Judge(b, []Reading{{i, mm}})
					verdict := Open
					if want != Right {
						verdict = Out
					}
					if got := r.Rows[i].Verdict; got != want || r.Verdict != verdict {
						t.Errorf("%s, %s, %s of %g: %s, %s", file, f.Drawer(), row.What, mm, got, r.Verdict)
					}
					if (r.Adjust == nil && len(r.Do) == 0) != (verdict == Open) {
						t.Errorf("%s, %s, %s of %g: %v", file, f.Drawer(), row.What, mm, r.Do)
					}
				}
			}
		}
	}
}

// TestRowsAreNamedOnce: in no form do two rows have one name, none is out of its own limits, and both ends of a box are
// read.
func TestRowsAreNamedOnce(t *testing.T) {
	for _, file := range samples(t) {
		for _, f := range formsOf(batchOf(t, file)) {
			var names []string
			for _, r := range f.Rows {
				names = append(names, r.What)
				if r.Side(r.Target.MM()) != 0 {
					t.Errorf("%s, %s: %s is out of its limits as drawn", file, f.Drawer(), r.What)
				}
			}
			for _, want := range []string{"width front", "width back", "depth left", "depth right", "height", "diagonal one",
				"diagonal other", apart} {
				if !slices.Contains(names, want) {
					t.Errorf("%s, %s: no %s", file, f.Drawer(), want)
				}
			}
			slices.Sort(names)
			if n := len(slices.Compact(slices.Clone(names))); n < len(names) {
				t.Errorf("%s, %s: %v", file, f.Drawer(), names)
			}
		}
	}
}

// TestWoodLeftIsDepth: where a setup sheet has the wood left under a cut, 0.3 mm less of it is a cut 0.3 mm deeper.
func TestWoodLeftIsDepth(t *testing.T) {
	found := false
	for _, file := range samples(t) {
		b := batchOf(t, file)
		for _, f := range formsOf(b) {
			for i, row := range f.Rows {
				if row.kind != testcut.Depth || !row.left {
					continue
				}
				found = true
				meant, _ := f.model.Plausible(testcut.Reading{Kind: testcut.Depth})
				got := f.ofCut([]Reading{{i, row.Target.MM() - 0.3}})
				if len(got) != 1 || math.Abs(got[0].Value-meant-0.3) > 1e-9 {
					t.Errorf("%s: %+v of %g", file, got, meant)
				}
			}
		}
	}
	if !found {
		t.Error("no sample has such a row")
	}
}

// TestDiagonals: how far they are apart follows from both, whatever was written of it; what is crooked is squared
// before width and depth are looked at. The bench box has diagonals of the root of 460 x 460 + 500 x 500, 679.41 mm.
func TestDiagonals(t *testing.T) {
	b := batchOf(t, "../../../samples/bench-drawers.yaml")
	f := Of(b, 0)
	var across []int
	for i, r := range f.Rows {
		if r.box == fit.Diagonal {
			across = append(across, i)
		}
	}
	if len(across) != 3 || f.Rows[across[0]].Target.MM() != 679.41 {
		t.Fatal(across)
	}
	for _, c := range []struct {
		one, other, written float64
		want                string
	}{{679.4, 679.4, 5, ""}, {680.3, 679.2, 0, "clamp across the longer"}, {682, 681.9, 0, "follow from width and depth"}} {
		r := f.Judge(b, []Reading{{across[0], c.one}, {across[2], c.written}, {across[1], c.other}})
		if got := r.Rows[across[2]].Reading.MM(); math.Abs(got-math.Abs(c.one-c.other)) > 1e-9 {
			t.Errorf("%+v: %g apart", c, got)
		}
		if said := strings.Join(r.Do, "\n"); (said == "") != (c.want == "") || !strings.Contains(said, c.want) {
			t.Errorf("%+v: %q", c, said)
		}
	}
}

// TestPartlyRead: a log takes no box of which something is still to be read.
func TestPartlyRead(t *testing.T) {
	b := batchOf(t, "../../../samples/bench-drawers.yaml")
	r := Of(b, 1).Judge(b, []Reading{{0, 6.35}, {1, 6.1}})
	cuts, why := r.logged(time.Time{})
	if r.Verdict != Open || cuts != nil || !strings.Contains(why, "once all of it is read") {
		t.Errorf("%s: %v %s", r.Verdict, cuts, why)
	}
	if said := r.Head().Text; said != "First box of bench-narrow: nothing is out of its limits so far; of 23 "+
		"readings these are still to be taken: depth of a dado, thickness of a tongue, length of a tongue, "+
		"width of a groove and 17 more." {
		t.Error(said)
	}
}

// TestOneSettingIsMovedOnce: the fence of the bench job makes dados and grooves, 6.10 mm from end and edge; what one
// reading asks of it must not put out another, nor be asked twice.
func TestOneSettingIsMovedOnce(t *testing.T) {
	b := batchOf(t, "../../../samples/bench-drawers.yaml")
	f := Of(b, 0)
	at := func(what fit.ReadingKind) int {
		return slices.IndexFunc(f.Rows, func(r Row) bool { return r.What == string(what) })
	}
	dado, tongue, groove := at(fit.DadoPlace), at(fit.TongueThick), at(fit.GroovePlace)
	for want, readings := range map[string][]Reading{
		"from the lower edge to a groove: 6.30, right is 5.98 to 6.22: fence closer, by 0.2 mm.": {{groove, 6.3}},
		// 6.20 - 0.14 is 6.06, and 6.05 to 6.21 is right of a dado.
		"from the lower edge to a groove: 6.24, right is 5.98 to 6.22: fence closer, by 0.14 mm.": {
			{groove, 6.24}, {dado, 6.2}},
		"from the lower edge to a groove: 6.30, right is 5.98 to 6.22; moved for it, from the end to a dado would be out: " +
			"set the machine to its figures anew, and cut another test piece.": {{groove, 6.3}, {dado, 6.1}},
		"from the lower edge to a groove: 6.30, right is 5.98 to 6.22; the same setting moves it: " +
			"read it again after that.": {{groove, 6.3}, {dado, 6.3}, {tongue, 6.3}},
	} {
		r := f.Judge(b, readings)
		if len(r.Do) != 1 || r.Do[0] != want || (r.Adjust != nil) != (len(readings) == 3) {
			t.Errorf("%q, not %q", r.Do, want)
		}
	}
}

// TestOneVerdict: a box of which something is out of its limits is told what to do about that, and never to leave it,
// whatever
// the test cut by itself would be told: here the cutter of an inch job is too low, and box fronts stand proud.
func TestOneVerdict(t *testing.T) {
	b := batchOf(t, "../../../samples/inch-chest.yaml")
	f := Of(b, 0)
	read := func(inches map[string]float64) Record {
		var readings []Reading
		for i, row := range f.Rows {
			mm := row.Target.MM()
			if v, given := inches[row.What]; given {
				mm = v * 25.4
			}
			readings = append(readings, Reading{i, mm})
		}
		return f.Judge(b, readings)
	}
	low := read(map[string]float64{"depth of a dado": 0.226, "length of a tongue": 0.227, "depth of a groove": 0.226,
		"width of a dado": 0.252, "box front recess at the side ends (proud below 0)": -1.0 / 64})
	said := low.ToDo(b.Units)
	for _, want := range []string{"the cutter cuts 1/4 in wide", "recess at the side ends (proud below 0), -0.016 in, does not",
		"depth of a dado: 0.226, right is 0.230 to 0.243: cutter higher, by 0.008 in.",
		"length of a tongue: 0.227, right is 0.230 to 0.238; the same setting moves it"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
	wide := read(map[string]float64{"width front": 17.72, "width back": 17.72})
	if all := strings.Join(wide.Do, ""); wide.Adjust != nil || all != notHome {
		t.Errorf("%v %q", wide.Adjust, all)
	}
	for _, r := range []Record{low, wide} {
		if all := strings.ToLower(r.ToDo(b.Units)); r.Verdict != Out || strings.Contains(all, "leave it") ||
			strings.Contains(all, "leave the") {
			t.Errorf("%s: %s", r.Verdict, all)
		}
	}
}

// TestPartIsRightByItsBox: a side 0.3 mm over the limits of the parts, which leave room for what else may be off, is
// right where the depth of the box is at both sides; where that is not read, it is to be.
func TestPartIsRightByItsBox(t *testing.T) {
	b := batchOf(t, "../../../samples/bench-drawers.yaml")
	f := Of(b, 0)
	at := func(what string) int { return slices.IndexFunc(f.Rows, func(r Row) bool { return r.What == what }) }
	side, left, right := at("length of the sides"), at("depth left"), at("depth right")
	for _, c := range []struct {
		left, right   float64
		verdict, said string
	}{
		{500.4, 500.4, "right, as the box is", ""},
		{500.4, 0, "over", "length of the sides: 500.40, right is 499.57 to 500.20; measure the box: where that is right " +
			"there, so is this."},
		{500.4, 500.6, "over", "length of the sides: 500.40, right is 499.57 to 500.20: cut shorter, by 0.4 mm."},
	} {
		readings := []Reading{{side, 500.4}, {left, c.left}}
		if c.right > 0 {
			readings = append(readings, Reading{right, c.right})
		}
		r := f.Judge(b, readings)
		if said := strings.Join(r.Do, "\n"); r.Rows[side].Verdict != c.verdict || !strings.HasPrefix(said, c.said) ||
			c.said == "" && (said != "" || r.Verdict != Open) {
			t.Errorf("%+v: %s, %q", c, r.Rows[side].Verdict, said)
		}
	}
}
