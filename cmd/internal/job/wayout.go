package job

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom"
)

// WayOut is a way out of a problem: steps that are made together, or a field in which a person writes
// what nobody else knows; and what is written on the button.
type WayOut struct {
	Label string   `json:"label"`
	Steps []Step   `json:"steps,omitempty"`
	Lead  []string `json:"lead,omitempty"` // the path of that field
}

// WayToRead is the way out of what more readings of a stock end.
func WayToRead(stock string) WayOut {
	return WayOut{Label: "Measure " + stock + " again", Lead: []string{"stock", stock, "thickness"}}
}

// maxWays is how many ways out of one problem are offered: of more, a person reads the hint.
const maxWays = 4

// wayOf is a way out that writes entries.
func wayOf(edits []Edit) WayOut {
	var out WayOut
	var labels []string
	for _, e := range edits {
		out.Steps = append(out.Steps, Step{DoWrite, e.Path, e.Value})
		labels = append(labels, called(e.Path)+": "+strings.Trim(e.Value, "{}"))
	}
	out.Label = strings.Join(labels, "; ")
	return out
}

// Together are the ways out that two problems have alike, each with the steps of both.
func Together(a, b []WayOut) (both []WayOut) {
	for _, w := range a {
		i := slices.IndexFunc(b, func(o WayOut) bool { return o.Label == w.Label })
		if i < 0 {
			continue
		}
		w.Steps = slices.Clone(w.Steps)
		for _, s := range b[i].Steps {
			if !slices.ContainsFunc(w.Steps, s.same) {
				w.Steps = append(w.Steps, s)
			}
		}
		both = append(both, w)
	}
	return both
}

// called is what a shop calls the entry at a path: by its title, after those of the sections and
// the names around it, but not of the drawer.
func called(path []string) string {
	var list []string
	var above *key
	keys := jobKeys
	for i, step := range path {
		if above != nil && (above.form == formList || above.form == formNamed) { // its name or number
			if n, err := strconv.Atoi(step); err == nil && above.form == formList {
				step = fmt.Sprintf("%s %d", above.noun, n+1)
			}
			if above.name != "drawers" || i == len(path)-1 {
				list = append(list, step)
			}
			above = nil
			continue
		}
		k := slices.IndexFunc(keys, func(k key) bool { return k.name == step })
		if k < 0 {
			list = append(list, step)
			continue
		}
		section := ""
		if i > 0 {
			section = lastKey(path[:i])
		}
		if above, keys = &keys[k], keys[k].keys; i == len(path)-1 || above.form == formSection {
			list = append(list, titleOf(section, above.name))
		}
	}
	return strings.Join(list, ", ")
}

// FieldAt is what a shop calls the field at a path, of a drawer with its name; empty for the whole file.
func (o Outline) FieldAt(path []string) string {
	if len(path) < 2 || path[0] != "drawers" {
		return called(path)
	}
	name := o.Root.Of(path[:2]...).Of("name").textOf()
	if name == "" {
		name = called(path[:2])
	}
	if len(path) == 2 {
		return name
	}
	return name + ", " + called(path)
}

// lastKey is the section at the end of a path.
func lastKey(path []string) string {
	if k, _ := keyAt(path); k != nil {
		return k.name
	}
	if k, _ := keyAt(path[:len(path)-1]); k != nil {
		return k.name
	}
	return ""
}

// deletes is how hints begin that ask for an entry to go.
var deletes = regexp.MustCompile(`^delete (it|the entry)\b`)

// WaysOut are the ways out of a problem of this file, that a form offers beside what it says.
func (o Outline) WaysOut(p Problem) []WayOut {
	list := slices.Clone(p.Ways)
	path := o.PathOf(p)
	switch {
	case deletes.MatchString(p.Hint) && len(path) > 0 && p.Key == "":
		list = append(list, WayOut{Label: "Delete " + called(path), Steps: []Step{{DoRemove, path, ""}}})
	case p.Code == CodeUnknownKey && len(path) > 0:
		for _, name := range p.Instead[:min(len(p.Instead), maxWays)] {
			list = append(list, WayOut{Label: "Call it " + name, Steps: []Step{{DoRespell, path, name}}})
		}
	case p.Key != "":
		list = append(list, o.missing(path)...)
	default:
		for _, value := range o.nearestEnd(path, p.Instead) {
			list = append(list, wayOf([]Edit{{Path: path, Value: oneScalar(value)}}))
		}
	}
	if p.Code == CodeUnknownStock || p.Code == CodeUnknownName || p.Code == CodeMissingKey && p.Key == "" {
		list = append(list, o.makes(path)...)
	}
	return list[:min(len(list), maxWays)]
}

// missing are the values that a missing entry may have, where they are few.
func (o Outline) missing(path []string) (list []WayOut) {
	k, _ := keyAt(path)
	if k == nil {
		return nil
	}
	values := k.words
	switch k.form {
	case formStock:
		for _, e := range o.Root.Of("stock").entriesOf() {
			values = append(values, e.Key)
		}
	case formWord, formRef:
	default:
		return nil
	}
	for _, v := range values {
		list = append(list, wayOf([]Edit{{Path: path, Value: oneScalar(v)}}))
	}
	return list
}

// makes makes what a field names and the file does not have.
func (o Outline) makes(path []string) []WayOut {
	k, _ := keyAt(path)
	name := o.Root.Of(path...).textOf()
	if k == nil || k.form != formStock && k.form != formRef || nameFault(name) != "" {
		return nil
	}
	noun := k.name
	if k.form == formStock {
		noun = "stock"
	}
	return []WayOut{{Label: "Make the " + noun + " " + name, Steps: []Step{{DoMake, path, name}}}}
}

// nearestEnd are words to write instead of a value. Of the two ends of a range it is the one that
// is nearer to the number that stands there.
func (o Outline) nearestEnd(path []string, instead []string) []string {
	if len(path) == 0 {
		return nil
	}
	value, err := geom.ParseLength(o.Root.Of(path...).textOf(), geom.Millimeter)
	if len(instead) != 2 || err != nil {
		return instead
	}
	least, most := math.Inf(1), ""
	for _, end := range instead {
		l, err := geom.ParseLength(end, geom.Millimeter)
		if err != nil {
			return instead
		}
		if apart := math.Abs(l.MM() - value.MM()); apart < least {
			least, most = apart, end
		}
	}
	return []string{most}
}
