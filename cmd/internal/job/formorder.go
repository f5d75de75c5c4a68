package job

import "slices"

// shownFirst are the entries that most jobs need, in the order in which a form asks for them, by
// their section; it folds the others of the section away. A section that is not here has nothing to
// fold away.
var shownFirst = map[string][]string{
	"":         {"job", "units", "drawers", "stock", "cutter", "openings"},
	"drawers":  {"name", "count", "outside", "opening", "rows", "sides", "bottom", "slide", "joint"},
	"stock":    {"thickness", "sheet", "grain", "price", "material"},
	"cutter":   {"kind", "width", "diameter", "bits"},
	"openings": {"width", "height", "depth", "cabinet", "fronts"},
	"slides":   {"kind", "lengths", "load"},
}

// firstIn is the place, from 1, that an entry has among those that a form asks for first; 0 for one
// that it folds away. Sections without any that are folded away keep their order.
func firstIn(section, name string, at int) int {
	list, any := shownFirst[section]
	if !any {
		return at + 1
	}
	return slices.Index(list, name) + 1
}
