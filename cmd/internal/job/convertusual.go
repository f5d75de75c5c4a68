package job

import (
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// withUsual writes out what a job has as it is usual in its unit and what makes sizes, so that its
// boxes stay as they are in the other. The job has no mistake.
func withUsual(file []byte, before *Job) (out []byte, err error) {
	if file, err = withSlides(file, before); err != nil {
		return nil, err
	}
	w := writing{file: file, unit: before.Units}
	w.usual(joineryKeys, string(joinery.SettingBottomClearance), "joinery")
	for _, b := range before.Banks {
		entry := strconv.Itoa(before.Drawers[b.Drawers[0]].entry)
		if len(b.Drawers) > 1 {
			w.usual(rowKeys, "front-gap", "drawers", entry)
		}
		switch b.Opening.Fronts {
		case opening.Inset:
			w.usual(rowKeys, "reveal", "drawers", entry)
		case opening.Overlay:
			w.usual(rowKeys, "overlay", "drawers", entry)
		}
	}
	for _, d := range before.Drawers {
		if d.BackJoint == joinery.Housed {
			w.missing(geom.LengthOf(d.BackSetback).Text(before.Units), "drawers", strconv.Itoa(d.entry),
				string(joinery.SettingBackSetback))
		}
		if d.Insert != nil {
			for _, name := range []string{joinery.KeyContentsClearance, joinery.KeyWallClearance} {
				w.usual(insertKeys, name, "drawers", strconv.Itoa(d.entry), string(joinery.FieldInsert))
			}
		}
		if f := d.DrawerFront; f != nil && f.Handles > 0 && f.HandleDiameter == 0 { // a pull may just miss the hole
			hole := geom.LengthOf(joinery.HandleHole(before.Units)).Text(before.Units)
			w.missing(hole, "drawers", strconv.Itoa(d.entry), string(joinery.FieldDrawerFront), "handle-diameter")
		}
	}
	return w.file, w.err
}

// writing adds values to a file until one cannot be added.
type writing struct {
	file []byte
	unit geom.Unit // of the job before
	err  error
}

// usual writes the fallback of a key in the unit before, in the section at a path that lacks it.
func (w *writing) usual(keys []key, name string, section ...string) {
	k := &keys[slices.IndexFunc(keys, func(k key) bool { return k.name == name })]
	w.missing(k.usual(w.unit), append(slices.Clone(section), name)...)
}

// missing writes a value at a path where there is none.
func (w *writing) missing(value string, path ...string) {
	if w.err != nil {
		return
	}
	found, err := has(w.file, path...)
	if w.err = err; err == nil && !found {
		w.file, w.err = Patch(w.file, Edit{Path: path, Value: value})
	}
}

// withSlides writes the measures of slides out that a job has as they are usual in its unit.
func withSlides(file []byte, before *Job) (out []byte, err error) {
	w := writing{file: file, unit: before.Units}
	for _, b := range before.Banks {
		s := b.Plan.Slide
		own := s.Name
		if slices.Contains(opening.Kinds, opening.Kind(s.Name)) {
			own = usualIn[before.Units] + " " + s.Name
			w.missing("{kind: "+s.Name+"}", "slides", own)
			entry := strconv.Itoa(before.Drawers[b.Drawers[0]].entry)
			if w.err == nil {
				w.file, w.err = Patch(w.file, Edit{Path: []string{"drawers", entry, "slide"}, Value: own})
			}
		}
		if found, err := has(w.file, "slides", own); err == nil && !found {
			continue // it is that of a file that says its own unit
		}
		w.slide(own, s, lengthsOf(before, s.Name))
	}
	return w.file, w.err
}

// lengthsOf are the lengths of a slide in the openings of a job, those that are cut to length too.
func lengthsOf(before *Job, slide string) (list []float64) {
	for _, b := range before.Banks {
		switch s := b.Plan.Slide; {
		case s.Name != slide:
		case len(s.Lengths) > 0:
			return s.Lengths
		default:
			list = append(list, b.Plan.SlideLength)
		}
	}
	return list
}

// slide writes what a slide of the file leaves to its kind, where that differs between the units.
func (w *writing) slide(name string, s opening.Slide, lengths []float64) {
	mm, _ := opening.BuiltIn(s.Kind, geom.Millimeter)
	in, _ := opening.BuiltIn(s.Kind, geom.Inch)
	w.missing(lengthsText(lengths), "slides", name, "lengths")
	for _, l := range slideLengths {
		if *l.set(&mm) != *l.set(&in) && (s.Kind != opening.Wooden || l.name != screwLine) {
			w.missing(geom.LengthOf(*l.set(&s)).Text(w.unit), "slides", name, l.name)
		}
	}
	if mm.Load != in.Load {
		w.missing(words.Given(s.Load, w.unit), "slides", name, "load")
	}
}

// usualIn is what slides are called whose measures are usual in a unit.
var usualIn = map[geom.Unit]string{geom.Millimeter: "metric", geom.Inch: "inch"}

// has reports whether a file has a value at a path.
func has(file []byte, path ...string) (bool, error) {
	l, err := readLayout(file)
	if err != nil {
		return false, err
	}
	_, missing, err := l.follow(path)
	return err == nil && len(missing) == 0, nil
}

// lengthsText is a list of lengths in mm, each once, with their unit.
func lengthsText(list []float64) string {
	slices.Sort(list)
	var texts []string
	for _, v := range slices.Compact(list) {
		number := strconv.FormatFloat(geom.LengthOf(v).MM(), 'f', -1, 64)
		texts = append(texts, number+" mm")
	}
	return "[" + strings.Join(texts, ", ") + "]"
}
