package main

import (
	"encoding/csv"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
)

// TestShelfUsed: offcuts are cut up before sheets, and only when it is asked for they are
// taken off the shelf and what is left is put there.
func TestShelfUsed(t *testing.T) {
	shelf := filepath.Join(t.TempDir(), "offcuts.csv")
	const before = "stock,name,length,width\nbirch,long,1600,700\noak,other,900,900\n"
	if err := os.WriteFile(shelf, []byte(before), 0o600); err != nil {
		t.Fatal(err)
	}
	const job = "../../samples/bench-drawers.yaml"
	status, out, errs := call(t, "", "sheets", job, "--shelf", shelf)
	if status != 0 || !strings.Contains(out, "1 offcut of 1600.00 x 700.00 mm") {
		t.Fatalf("%d, %s%s", status, out, errs)
	}
	if now, _ := os.ReadFile(shelf); string(now) != before {
		t.Fatalf("the shelf is %q", now)
	}
	if status, _, errs = call(t, "", "build", job, "-o", filepath.Join(t.TempDir(), "out"), "--shelf", shelf); status != 0 {
		t.Fatal(errs)
	}
	status, _, errs = call(t, "", "sheets", job, "--shelf", shelf, "--put-back")
	if status != 0 || !strings.Contains(errs, "1 offcut taken") {
		t.Fatalf("%d, %s", status, errs)
	}
	now, _ := os.ReadFile(shelf)
	if s := string(now); strings.Contains(s, "long") || !strings.Contains(s, "oak,other,900 mm,900 mm") ||
		!strings.Contains(s, "birch,Bench drawers birch 2-1,") || !strings.Contains(s, "hardboard,Bench drawers hardboard 1-1,") {
		t.Errorf("the shelf is %s", s)
	}
	if info, err := os.Stat(shelf); err != nil || info.Mode().Perm() != 0o600 && filepath.Separator == '/' {
		t.Errorf("%v %v", info.Mode(), err)
	}
	if files, _ := os.ReadDir(filepath.Dir(shelf)); len(files) != 1 {
		t.Errorf("beside the shelf: %v", files)
	}
	if filepath.Separator == '/' { // a device is not replaced
		if status, _, errs = call(t, "", "sheets", job, "--shelf", "/dev/null", "--put-back"); status != 1 || !strings.Contains(errs, "no plain file") {
			t.Errorf("%d, %s", status, errs)
		}
	}
	// A shelf that is not there yet is made, but not read.
	other := filepath.Join(t.TempDir(), "new.csv")
	if status, _, errs = call(t, "", "sheets", job, "--shelf", other, "--put-back"); status != 0 {
		t.Fatal(errs)
	}
	if _, err := os.Stat(other); err != nil {
		t.Error(err)
	}
	for _, args := range [][]string{{"sheets", job, "--shelf", other + "x"}, {"sheets", job, "--put-back"}, {"build", job, "--shelf", other + "x"}} {
		if status, _, errs = call(t, "", args...); status == 0 {
			t.Errorf("%v: %s", args, errs)
		}
	}
	if err := os.WriteFile(shelf, []byte("stock,name,length,width\nbirch,a,x,700\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if status, _, errs = call(t, "", "sheets", job, "--shelf", shelf); status != 1 || !strings.Contains(errs, "offcuts.csv:2: the length \"x\" is no length") {
		t.Errorf("%d, %s", status, errs)
	}
}

// TestUnplaced: a piece that no sheet holds is named wherever a layout goes to.
func TestUnplaced(t *testing.T) {
	const list = "kind,name,length,width,count\nsheet,ply,1000,600,\npart,small,300,200,7\npart,wide top,1200,900,1\n"
	for _, flag := range []string{"--all", "--csv", "--json"} {
		code, out, errs := call(t, list, "layout", "-", flag)
		outside := flag == "--csv" // beside the table
		if code != 1 || strings.Contains(out, "wide top") == outside || strings.Contains(errs, "wide top") != outside {
			t.Errorf("%s: %d, %s%s", flag, code, out, errs)
		}
	}
}

// TestUnplacedWhy: pieces that a larger sheet would hold, more sheets, or a smaller set.
func TestUnplacedWhy(t *testing.T) {
	const head = "kind,name,length,width,count,set\nsheet,ply,1000,500,2,\n"
	for list, want := range map[string]string{
		"part,a,1100,100,1,\n": "larger than what the trims leave of any sheet",
		"part,a,900,400,3,\n":  "there are no more sheets",
		"part,a,400,200,1,x\npart,b,400,200,1,x\npart,c,400,200,1,x\n": "it fits alone, but no sheet holds its set side by side",
		"part,a,900,200,2,x\npart,b,900,200,2,x\npart,c,900,300,1,\n":  "there are no more sheets",
	} {
		code, out, errs := call(t, head+list, "layout", "-", "--all")
		if code != 1 || !strings.Contains(strings.Join(strings.Fields(out), " "), want) {
			t.Errorf("%s: %d, %s%s", list, code, out, errs)
		}
	}
}

// TestSheetFolders: sheets and lists are written as drawings, pictures and tables.
func TestSheetFolders(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	const list = "kind,name,length,width,count\nsheet,ply,1000,600,\npart,a b,300,200,7\npart,\U0001F600 =x,100,80,1\n"
	for range 2 { // a second time over the first
		if status, _, errs := call(t, list, "layout", "-", "-o", dir, "--png"); status != 0 {
			t.Fatal(errs)
		}
	}
	for _, name := range []string{"sheets.pdf", "router/sheets/list-1.inside.dxf", "sheets/list-1.svg", "sheets/list-1.png", "tables/layout.csv", "tables/cuts.csv"} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
	status, out, _ := call(t, list, "layout", "-", "--csv")
	if rows := strings.Count(out, ",part,a b,"); status != 0 || rows != 7 {
		t.Errorf("%d rows of 7 in\n%s", rows, out)
	}
	if status, _, _ := call(t, list, "layout", "-", "--csv", "--json"); status != 2 {
		t.Error("csv and json together")
	}
}

// TestNoFormulas: no name of a list, a shelf or a stock comes out as a formula of a spreadsheet, and
// a shelf that was put back has its names still.
func TestNoFormulas(t *testing.T) {
	const list = "kind,name,length,width,count\nsheet,=ply,1000,600,\n" +
		"part,\"=HYPERLINK(\"\"x\"\")\",300,200,2\npart,@SUM(A1),100,80,1\npart,-x,100,80,1\npart,+x,100,80,1\n"
	_, laid, errs := call(t, list, "layout", "-", "--csv")
	if !strings.Contains(laid, `,"'=HYPERLINK(""x"")",`) || !strings.Contains(laid, ",'@SUM(A1),") {
		t.Fatal(laid, errs)
	}
	shelf := filepath.Join(t.TempDir(), "offcuts.csv")
	const kept = "stock,name,length,width,batch\r\nbirch,'=old,300 mm,20 mm,'+b\r\n"
	if err := os.WriteFile(shelf, []byte(kept), 0o600); err != nil {
		t.Fatal(err)
	}
	const job = "../../samples/bench-drawers.yaml"
	if code, _, errs := call(t, "", "sheets", job, "--shelf", shelf, "--put-back"); code != 0 {
		t.Fatal(errs)
	}
	put, err := os.ReadFile(shelf)
	if err != nil || !strings.Contains(string(put), "birch,'=old,300 mm,20 mm,'+b\r\n") {
		t.Errorf("%v: %s", err, put)
	}
	for _, text := range []string{laid, string(put)} {
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, cell := range slices.Concat(rows...) {
			if strings.ContainsAny(cell[:min(1, len(cell))], "=+-@") {
				t.Errorf("a cell is a formula: %q", cell)
			}
		}
	}
}

// TestShelfChangedMeanwhile: a shelf that is no more what a layout was made with is not written over:
// its offcuts may have gone into another layout.
func TestShelfChangedMeanwhile(t *testing.T) {
	shelf := filepath.Join(t.TempDir(), "offcuts.csv")
	const other = "stock,name,length,width\r\nbirch,other,500 mm,400 mm\r\n"
	for _, before := range []string{"", "stock,name,length,width\nbirch,long,1600,700\n"} {
		os.Remove(shelf)
		if before != "" { // else there is none yet
			if err := os.WriteFile(shelf, []byte(before), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		h := shelved{path: shelf, put: true}
		if _, err := h.read(geom.Millimeter); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(shelf, []byte(other), 0o600); err != nil {
			t.Fatal(err)
		}
		err := h.putBack(sheets.Plan{}, streams{err: io.Discard})
		if err == nil || !strings.Contains(err.Error(), "nothing is put back: another program has changed") {
			t.Errorf("%q: %v", before, err)
		}
		if now, _ := os.ReadFile(shelf); string(now) != other {
			t.Errorf("%q: the shelf is %s", before, now)
		}
	}
}
