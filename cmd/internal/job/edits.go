package job

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom"
)

// CutterEdit sets the width of the cutter, or the diameter of the only bit, that a
// drawer is cut with: its own or the file's. With several bits there is none: a reading
// does not say which of them cut.
func (j *Job) CutterEdit(drawer int, value string) (Edit, bool) {
	path := j.Drawers[drawer].cutterAt
	return Edit{Path: path, Value: value}, path != nil
}

// GrooveCutterEdit sets the width of the cutter that makes a drawer's grooves alone.
func (j *Job) GrooveCutterEdit(drawer int, value string) (Edit, bool) {
	e, ok := j.CutterEdit(drawer, value)
	if ok {
		e.Path = append(slices.Clone(e.Path[:len(e.Path)-1]), "groove-cutter")
	}
	return e, ok
}

// With is the job as its file reads with edits, and its problems. The job must have been
// read without errors.
func (j *Job) With(edits ...Edit) (*Job, Problems) {
	text, err := Patch([]byte(strings.Join(j.src.lines, "\n")+"\n"), edits...)
	if err != nil {
		return nil, nil
	}
	return Read(j.File, bytes.NewReader(text), Files(j.open), inLots(j.lots))
}

// DrawerPath leads to a key in the entry of a drawer.
func (j *Job) DrawerPath(drawer int, keys ...string) []string {
	return append([]string{"drawers", strconv.Itoa(j.Drawers[drawer].entry)}, keys...)
}

// CutterPath leads to a key of the cutter of a drawer, its own or the file's.
func (j *Job) CutterPath(drawer int, key string) []string {
	if j.Drawers[drawer].ownCutter {
		return j.DrawerPath(drawer, "cutter", key)
	}
	return []string{"cutter", key}
}

// SettingEdit sets an entry of joinery for a drawer: its own where it has one, else
// the file's.
func (j *Job) SettingEdit(drawer int, f geom.Setting, value string) Edit {
	d := j.Drawers[drawer]
	path := []string{"joinery", string(f)}
	if slices.Contains(d.ownSettings, f) {
		path = append([]string{"drawers", strconv.Itoa(d.entry)}, path...)
	}
	return Edit{Path: path, Value: value}
}

// LargerSheet adds a size of sheet to a stock, written as length x width.
func LargerSheet(stock, size string) Edit {
	return Edit{Path: []string{"stock", stock, "other-sheets", "larger"}, Value: "{sheet: " + size + "}"}
}

// SheetCount says how many sheets of a size a stock has; of its own size where that has no name.
func SheetCount(stock, size string, n int) Edit {
	path := []string{"stock", stock}
	if size != "" {
		path = append(path, "other-sheets", size)
	}
	return Edit{Path: append(path, "count"), Value: strconv.Itoa(n)}
}

// KeyEdit sets a key that a problem names, as section.key.
func KeyEdit(key, value string) Edit { return Edit{Path: strings.Split(key, "."), Value: value} }
