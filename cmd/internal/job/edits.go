package job

import (
	"slices"
	"strconv"

	"drawerwright/geom/joinery"
)

// CutterEdit sets the width of the cutter, or the diameter of the only bit, that a
// drawer is cut with: its own or the file's; grooves says of the cutter that makes its
// grooves alone. With several bits there is none: a reading does not tell which of them cut.
func (j *Job) CutterEdit(drawer int, grooves bool, value string) (Edit, bool) {
	d := j.Drawers[drawer]
	path := d.cutterAt
	if grooves && path != nil {
		path = append(slices.Clone(path[:len(path)-1]), "groove-cutter")
	}
	return Edit{Path: path, Value: value}, path != nil
}

// SettingEdit sets an entry of joinery for a drawer: its own where it has one, else
// the file's.
func (j *Job) SettingEdit(drawer int, f joinery.Field, value string) Edit {
	d := j.Drawers[drawer]
	path := []string{"joinery", string(f)}
	if slices.Contains(d.ownSettings, f) {
		path = append([]string{"drawers", strconv.Itoa(d.entry)}, path...)
	}
	return Edit{Path: path, Value: value}
}
