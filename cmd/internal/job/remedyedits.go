package job

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// WaysOf are ways out of a problem of a drawer: its remedies, as far as an entry of the file brings
// them about, and other ways. A board of another thickness is one that the file has.
func (j *Job) WaysOf(drawer int, remedies []geom.Remedy, others []Way) (list []WayOut) {
	for _, r := range remedies {
		var edits []Edit
		for _, c := range r.Changes {
			more := j.changeEdits(drawer, c)
			if more == nil {
				edits = nil
				break
			}
			edits = append(edits, more...)
		}
		if len(edits) > 0 {
			list = append(list, wayOf(edits))
		}
	}
	for _, w := range others {
		if len(w.Edits) > 0 {
			list = append(list, wayOf(w.Edits))
		}
	}
	return list
}

// WaysOfEdits is the way out that writes entries; none without any.
func WaysOfEdits(edits []Edit) []WayOut {
	if len(edits) == 0 {
		return nil
	}
	return []WayOut{wayOf(edits)}
}

// changeEdits write one change of a remedy; nil where no entry brings it about.
func (j *Job) changeEdits(drawer int, c geom.Change) []Edit {
	d := j.Drawers[drawer]
	one := func(value string, keys ...string) []Edit {
		return []Edit{{Path: j.DrawerPath(drawer, keys...), Value: value}}
	}
	switch s := c.Setting; s {
	case joinery.SettingOutside:
		if d.Planned {
			return nil // the opening is as it was measured
		}
		size := map[string]float64{"width": d.Width, "height": d.Height, "depth": d.Depth}
		size[c.Key] = choice(c, d.Cutter.Kind, j.Units)
		var parts []string
		for _, k := range []string{"width", "height", "depth"} {
			parts = append(parts, geom.LengthOf(size[k]).Number(j.Units))
		}
		return one(strings.Join(parts, " x "), string(s))
	case joinery.SettingSides, joinery.SettingBoxFront, joinery.SettingBack, joinery.SettingBottom:
		if board := j.boardOf(c); board != "" {
			return one(writeKey(board), string(s))
		}
		return nil
	case joinery.SettingCutter, joinery.SettingGrooveCutter:
		return j.cutterEdits(drawer, c)
	case joinery.FieldDividers:
		item := strconv.Itoa(c.Item)
		if c.Key == "height" {
			return one(j.text(d, c), string(s), item, c.Key)
		}
		if c.Count > 0 {
			return one(strconv.Itoa(c.Count), string(s), item, c.Key)
		}
		if c.Key == joinery.KeyAt {
			return one("["+j.text(d, c)+"]", string(s), item, c.Key)
		}
		if board := j.boardOf(c); board != "" {
			return one(writeKey(board), string(s), item, "stock")
		}
		return nil
	case joinery.FieldInsert:
		return one(j.text(d, c), string(s), cmp.Or(c.Key, joinery.KeyWallClearance))
	case joinery.FieldPull:
		return one(j.text(d, c), string(s), c.Key)
	case joinery.SettingJoint, joinery.SettingBackJoint, joinery.SettingFasteners,
		joinery.SettingBackSetback, joinery.SettingFingerWidth:
		return one(j.text(d, c), string(s))
	}
	if slices.ContainsFunc(joineryKeys, func(k key) bool { return k.name == string(c.Setting) }) && c.Key == "" {
		return one(j.text(d, c), "joinery", string(c.Setting))
	}
	return nil
}

// text is a change as the file has it.
func (j *Job) text(d Drawer, c geom.Change) string {
	if c.Word != "" {
		return c.Word
	}
	return geom.LengthOf(choice(c, d.Cutter.Kind, j.Units)).Text(j.Units)
}

// choice is a length of a change's range, in mm: a width that is sold, the roundest of the middle half, for what is set
// to an end comes out wrong as often as right, or an end where the range is finer than any step.
func choice(c geom.Change, kind joinery.CutterKind, u geom.Unit) float64 {
	ends := c.Ends()
	if len(ends) < 2 {
		return ends[0]
	}
	middle, quarter := (c.Min+c.Max)/2, (c.Max-c.Min)/4
	least, most := c.Min, c.Max
	if kind == joinery.Saw { // a stack is shimmed to any width
		least, most = middle-quarter, middle+quarter
	}
	if bit, sold := joinery.BitIn(least, most); sold && c.Setting == joinery.SettingCutter {
		return bit
	}
	for _, step := range roundSteps(u) {
		if v := math.Round(middle/step) * step; math.Abs(v-middle) <= quarter {
			return v
		}
	}
	return ends[0]
}

// roundSteps are the steps in which a shop sets, in mm, coarse ones first.
func roundSteps(u geom.Unit) []float64 {
	if u == geom.Inch {
		return []float64{geom.InchMM / 16, geom.InchMM / 64, geom.InchMM / 1000}
	}
	return []float64{0.5, 0.1, 0.01}
}

// boardOf is the stock of the file whose boards all are in a range of thicknesses, nearest its
// middle; empty where there is none.
func (j *Job) boardOf(c geom.Change) (name string) {
	least, middle := math.Inf(1), (c.Min+c.Max)/2
	if math.IsInf(c.Max, 1) {
		middle = c.Min
	}
	for _, s := range j.Stocks {
		t := s.Thickness
		if of := j.Sheets.Of[s.Name].LotOf; of != "" && of != s.Name {
			continue // the file does not know it
		}
		if apart := math.Abs(t.Mean - middle); t.Min >= c.Min && t.Max <= c.Max && apart < least {
			name, least = s.Name, apart
		}
	}
	return name
}

// cutterEdits give a drawer another cutter: in the cutter of the file where that is the only drawer,
// else in one of its own. Of several bits nothing says which it is.
func (j *Job) cutterEdits(drawer int, c geom.Change) []Edit {
	d := j.Drawers[drawer]
	e, only := j.CutterEdit(drawer, j.text(j.Drawers[drawer], c))
	if c.Setting == joinery.SettingGrooveCutter {
		e, only = j.GrooveCutterEdit(drawer, j.text(j.Drawers[drawer], c))
	}
	alone := !slices.ContainsFunc(j.Drawers, func(o Drawer) bool { return o.entry != d.entry })
	switch {
	case !only:
		return nil
	case d.ownCutter || alone:
		return []Edit{e}
	}
	file := j.cutter()
	if file == "" {
		return nil
	}
	own := j.DrawerPath(drawer, "cutter")
	return []Edit{{Path: own, Value: file}, {Path: below(own, e.Path[len(e.Path)-1]), Value: e.Value}}
}

func (j *Job) cutterText() string {
	cutter := Outlined([]byte(strings.Join(j.src.lines, "\n"))).Root.Of("cutter")
	if cutter == nil {
		return ""
	}
	return cutter.flow()
}
