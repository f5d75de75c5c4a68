package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

// The two ways in which a drawer gets its size.
const (
	BySize    = "size"    // it has the outside size of its box
	ByOpening = "opening" // it follows from an opening and a slide
)

// frontSizes are the entries of a drawer front that an opening gives.
var frontSizes = []string{"width", "height", "overhang-left", "overhang-below"}

// sizedBy is the way of a drawer that has an entry of its section; empty for both.
func sizedBy(section, name string) string {
	switch {
	case section == "drawers" && name == string(joinery.SettingOutside),
		section == string(joinery.FieldDrawerFront) && slices.Contains(frontSizes, name):
		return BySize
	case section == "drawers" && (name == ByOpening || slices.Contains(inOpening, name)):
		return ByOpening
	}
	return ""
}

// Sized gives a drawer its size in the other way, of the two: from an opening that the file has or
// a new one about its box, or by the outside size that its box has. What belongs to the way before
// goes. The texts are in the order in which they are to be tried.
func Sized(file []byte, files Option, by string, path ...string) ([][]byte, error) {
	m := newMaker(file, files)
	one := m.root.Of(path...)
	if len(path) != 2 || path[0] != "drawers" || one == nil {
		return nil, fmt.Errorf("there is no drawer at %s", quote(strings.Join(path, " > ")))
	}
	entry, _ := strconv.Atoi(path[1])
	switch by {
	case BySize:
		text, err := m.bySize(file, entry, path)
		return [][]byte{text}, err
	case ByOpening:
		return m.byOpening(file, entry, path)
	}
	return nil, fmt.Errorf("a drawer has no size by %s", quote(by))
}

// bySize writes the outside size of the first box of an entry.
func (m maker) bySize(file []byte, entry int, path []string) ([]byte, error) {
	one, size := m.root.Of(path...), m.size(m.sizeOf(entry))
	if d := m.drawer(entry); d != nil { // as it is, which may be no step of a rule
		size = m.exactSize(d.Width, d.Height, d.Depth)
	}
	outside := string(joinery.SettingOutside)
	text, err := instead(file, one, path, ByOpening, Edit{Path: below(path, outside), Value: size})
	for _, name := range inOpening {
		if err == nil && one.Of(name) != nil {
			text, err = Remove(text, below(path, name)...)
		}
	}
	front, d := one.Of(string(joinery.FieldDrawerFront)), m.drawer(entry)
	if err != nil || front == nil || d == nil || d.DrawerFront == nil {
		return text, err
	}
	f := d.DrawerFront
	for i, v := range []float64{f.Width, f.Height, f.OverhangLeft, f.OverhangBelow} {
		if err == nil {
			way := below(path, string(joinery.FieldDrawerFront), frontSizes[i])
			text, err = Patch(text, Edit{Path: way, Value: m.exact(v)})
		}
	}
	return text, err
}

// instead writes a value under another key in the place of an entry; at the end where there is
// none.
func instead(file []byte, one *Node, path []string, key string, e Edit) (text []byte, err error) {
	text = file
	if name := e.Path[len(e.Path)-1]; one.Of(key) != nil {
		if one.Of(name) != nil {
			text, err = Remove(text, below(path, key)...)
		} else {
			text, err = Respell(text, name, below(path, key)...)
		}
	}
	if err != nil {
		return nil, err
	}
	return Patch(text, e)
}

// byOpening puts a drawer into an opening.
func (m maker) byOpening(file []byte, entry int, path []string) ([][]byte, error) {
	one := m.root.Of(path...)
	var texts [][]byte
	put := func(file []byte, name string, slide opening.Kind) error {
		text, err := instead(file, one, path, string(joinery.SettingOutside),
			Edit{Path: below(path, ByOpening), Value: writeKey(name)})
		if err == nil && one.Of("slide") == nil {
			text, err = Patch(text, Edit{Path: below(path, "slide"), Value: string(slide)})
		}
		for _, name := range frontSizes {
			if way := below([]string{string(joinery.FieldDrawerFront)}, name); err == nil && one.Of(way...) != nil {
				text, err = Remove(text, below(path, way...)...)
			}
		}
		if err == nil {
			texts = append(texts, text)
		}
		return err
	}
	var failed error
	for i, e := range m.root.Of("openings").entriesOf() {
		for _, kind := range opening.Kinds[:2] {
			if i < maxStarts/2 {
				failed = put(file, e.Key, kind)
			}
		}
	}
	name := m.fresh("openings", ByOpening)
	for _, kind := range opening.Kinds {
		slide, _ := opening.BuiltIn(kind, m.units)
		for _, hole := range m.openings(m.sizeOf(entry), slide.Clearance, slide.ClearanceAbove+slide.ClearanceBelow) {
			text, err := Patch(file, Edit{Path: []string{"openings", name}, Value: hole})
			if failed = err; err == nil {
				failed = put(text, name, kind)
			}
		}
	}
	if len(texts) == 0 {
		return nil, failed
	}
	return texts, nil
}

// behindBox is the room behind a box that a new opening has, in mm: more than slides need.
const behindBox = 20

// openings are openings about a box with room at each side, and above and below it in all.
func (m maker) openings(box [3]float64, beside, above float64) (list []string) {
	for _, fronts := range []opening.Fronts{opening.NoFront, opening.Overlay, opening.Inset} {
		list = append(list, fmt.Sprintf("{width: %s, height: %s, depth: %s, cabinet: %s, fronts: %s}",
			m.length(box[0]+2*beside), m.length(box[1]+above), m.length(box[2]+behindBox), frameless, fronts))
	}
	return list
}

// Made makes a new stock, opening or slide for the field at a path, like the one that stands there
// if it does, and writes its name into the field.
func Made(file []byte, files Option, name string, path ...string) ([][]byte, error) {
	k, _ := keyAt(path)
	if k == nil || k.form != formStock && k.form != formRef {
		return nil, fmt.Errorf("%s names nothing that could be made", quote(strings.Join(path, " > ")))
	}
	m, section := newMaker(file, files), "stock"
	if k.form == formRef {
		section = k.name + "s"
	}
	if name = strings.TrimSpace(name); name == "" {
		name = m.fresh(section, strings.TrimSuffix(section, "s"))
	}
	if m.root.Of(section, name) != nil {
		return nil, fmt.Errorf("there is %s already: choose it from the list, or take another name", quote(name))
	}
	kind, _ := keyAt([]string{section})
	now := m.root.Of(path...).textOf()
	values := m.sections(kind, name, []string{section, name})
	if like := m.root.Of(section, now); now != "" && like != nil {
		values = slices.Insert(values, 0, like.flow())
	} else if section == "slides" && slices.Contains(k.words, now) {
		values = slices.Insert(values, 0, "{kind: "+now+"}")
	}
	return each(values, func(one string) ([]byte, error) {
		return Patch(file, Edit{Path: []string{section, name}, Value: one}, Edit{Path: path, Value: writeKey(name)})
	})
}

// fresh is a name that a section does not have yet.
func (m maker) fresh(section, stem string) string {
	name := stem
	for n := 2; m.root.Of(section, name) != nil; n++ {
		name = stem + " " + strconv.Itoa(n)
	}
	return name
}

func below(path []string, names ...string) []string { return append(slices.Clone(path), names...) }
