package prove_test

import (
	"regexp"

	"drawerwright/cmd/internal/record"
)

const (
	frontSTEP = "3d/base-1/base-1-box-front.step"
	boxSTEP   = "3d/base-1/assembled.step"
)

// rewritten replaces the first place of a file that fits a pattern.
func rewritten(pattern, by string) func([]byte) ([]byte, int) {
	find := regexp.MustCompile(pattern)
	return func(b []byte) ([]byte, int) {
		at := find.FindSubmatchIndex(b)
		if at == nil {
			return b, 0
		}
		out := append([]byte{}, b[:at[0]]...)
		return append(find.Expand(out, []byte(by), b, at), b[at[1]:]...), 0
	}
}

// plantedExact are harms to STEP files.
var plantedExact = map[string]planted{
	"an exact solid with a face lost":  {file: frontSTEP, code: "unreadable", bytes: rewritten(`(CLOSED_SHELL\('',\()#\d+,`, "$1")},
	"an exact solid with an edge back": {file: frontSTEP, code: "unreadable", bytes: rewritten(`(ORIENTED_EDGE\(.*),\.F\.\)`, "$1,.T.)")},
	"an exact solid of edges unknown":  {file: frontSTEP, code: "unreadable", bytes: rewritten(`(EDGE_LOOP\('',\()#\d+`, "$1#999999")},
	"an exact solid cut short":         {file: frontSTEP, code: "unreadable", bytes: short(30)},
	"an exact solid thicker":           {file: frontSTEP, code: "solid-volume", bytes: rewritten(`(CARTESIAN_POINT\('',\(0\.,0\.),12\.2\)`, "$1,12.3)")},
	"an exact solid of another name":   {file: frontSTEP, code: "solid-volume", bytes: rewritten(`(MANIFOLD_SOLID_BREP\(')base`, "${1}case")},
	"an exact solid lost":              {file: frontSTEP, code: "missing-file", gone: true},
	"an exact box lost":                {file: boxSTEP, code: "missing-file", gone: true},
	"an exact piece lost":              {file: boxSTEP, code: "box-count", bytes: rewritten(`#\d+=CONTEXT_DEPENDENT_SHAPE_REPRESENTATION.*\n`, "")},
	"an exact piece elsewhere": {file: boxSTEP, code: "box-parts",
		bytes: rewritten(`(ITEM_DEFINED_TRANSFORMATION\('','',)(#\d+),#\d+`, "$1$2,$2")},
	"an exact box of a report with parts away": {code: "box-parts", at: boxSTEP,
		edit: func(r *record.Report) { r.Parts[0].Placements[0].Origin[0] += 2 }},
}
