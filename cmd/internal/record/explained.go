package record

import (
	"reflect"
	"strings"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// Section is a level of report.json with its fields. Path leads to it: drawers.sag; it is
// empty for the file itself.
type Section struct {
	Path   string
	Fields []Field
}

// Field is one field, what its value looks like in JSON, and what it means. Fields of a
// type that came before are told there: As is that path.
type Field struct {
	Name, Type, Meaning string
	As                  string
}

// Explained are the levels of report.json, from its types, each before those in it.
func Explained() []Section {
	return explained(reflect.TypeFor[Report](), "", make(map[reflect.Type]string))
}

func explained(t reflect.Type, path string, told map[reflect.Type]string) []Section {
	told[t] = path
	here := Section{Path: path}
	var below []Section
	for _, f := range fieldsOf(t) {
		inner, kind := valueOf(f.Type)
		one := Field{Name: nameOf(f), Type: kind, Meaning: meanings[f.owner.Name()][nameOf(f)]}
		if inner.Kind() == reflect.Struct {
			way := strings.TrimPrefix(path+"."+one.Name, ".")
			if as, known := told[inner]; known {
				one.As = as
			} else {
				below = append(below, explained(inner, way, told)...)
			}
		}
		here.Fields = append(here.Fields, one)
	}
	return append([]Section{here}, below...)
}

// ownedField is a field with the type that declares it.
type ownedField struct {
	reflect.StructField
	owner reflect.Type
}

// fieldsOf are the fields of a type as JSON has them: those of embedded types among them.
func fieldsOf(t reflect.Type) (list []ownedField) {
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous {
			list = append(list, fieldsOf(f.Type)...)
		} else {
			list = append(list, ownedField{f, t})
		}
	}
	return list
}

func nameOf(f ownedField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}

// valueOf is what a field holds in the end, and what that looks like in JSON.
func valueOf(t reflect.Type) (inner reflect.Type, kind string) {
	if t == vertexType {
		return lengthType, "list of number"
	}
	switch t.Kind() {
	case reflect.Pointer:
		return valueOf(t.Elem())
	case reflect.Slice, reflect.Array:
		inner, kind = valueOf(t.Elem())
		return inner, "list of " + strings.TrimPrefix(kind, "one ")
	case reflect.Map:
		inner, kind = valueOf(t.Elem())
		return inner, "names with " + kind
	case reflect.Struct:
		return t, "fields"
	case reflect.String:
		return t, "text"
	case reflect.Bool:
		return t, "true or false"
	}
	return t, "number"
}

// Word is a word of the report, and what it means.
type Word struct{ Word, Meaning string }

// ProofVerdicts are the verdicts of a proof, from the best to the worst.
var ProofVerdicts = []Word{
	{Goes, "the drawings make a box within all limits, at the mean of the readings"},
	{GoesBut, "it goes together, and is tight, loose, proud or open: the remarks say by how much"},
	{GoesSome, "it does at the mean of the readings, but not with the boards that are named"},
	{GoesNot, "something is in the way, cut through or held by nothing; or a clearance or gap is over 1 mm"},
	{FilesFail, "a file is not what was built: its line, and what is wrong, are named"},
}

// FitVerdicts are the verdicts on a measure, and on a drawer. Where a measure may leave its
// limits both ways, two of them are joined by or.
var FitVerdicts = []Word{
	{string(joinery.GoesTogether), "the clearance is within its limits; of a drawer, every measure is"},
	{string(joinery.Tight), "less clearance than is right: glue is scraped off, or it has to be driven home"},
	{string(joinery.Loose), "more clearance than is right: the joint rattles or racks"},
	{string(joinery.WillNot), "as it is set no clearance is left, or less than none"},
	{string(joinery.IsFlush), "the faces are level, within the limit"},
	{string(joinery.Recessed), "it stands behind the other face"},
	{string(joinery.Proud), "it stands out before the other face"},
	{string(joinery.AsAsked), "the size is as asked, within the limit"},
	{string(joinery.Narrow), "the box is too narrow"},
	{string(joinery.Wide), "the box is too wide"},
	{string(joinery.Deep), "the box is too deep"},
	{string(joinery.Shallow), "the box is not deep enough"},
	{string(joinery.Open), "a joint that is meant to close stays open"},
	{string(joinery.Low), "the box is too low; of the bottom's groove, that it is too low in the sides; of a back over the bottom, that its upper edge is too low"},
	{string(joinery.High), "the box is too high; of the bottom's groove, that it is too high in the sides; of a back over the bottom, that its upper edge is too high"},
	{string(joinery.Short), "a diagonal is too short"},
	{string(joinery.Long), "a diagonal is too long"},
}

// Checks are the measures of joints and boxes.
var Checks = []Word{
	{string(joinery.CheckTongueClearance), "the clearance of a tongue in its dado"},
	{string(joinery.CheckBackClearance), "the clearance of a housed back in its dados"},
	{string(joinery.CheckFingerClearance), "the clearance of fingers in their notches"},
	{string(joinery.CheckDividerClearance), "the clearance of a divider in its dados"},
	{string(joinery.CheckGrooveClearance), "the clearance of the bottom in its groove, up and down"},
	{string(joinery.CheckBottomClearance), "the clearance of the bottom from side to side"},
	{string(joinery.CheckBottomClearanceDepth), "the clearance of the bottom from front to back"},
	{string(joinery.CheckInsertClearance), "the clearance of a loose insert from side to side"},
	{string(joinery.CheckInsertClearanceDepth), "the clearance of a loose insert from front to back"},
	{string(fit.BackOverBottom), "from a bottom that is slid in up to the back's lower edge, the back's upper edge level " +
		"with the sides; below 0 the bottom lifts the back"},
	{string(fit.GrooveStep), "how far the bottom's groove is higher in the sides than in box front and back"},
	{string(joinery.CheckBottomFlush), "a flush bottom over the lower edges; below 0 it hangs down"},
	{string(joinery.CheckRecess), "box front or back behind the ends of the sides, pushed outward; below 0 it is proud"},
	{string(fit.RecessInner), "the same, pushed inward"},
	{string(joinery.CheckLap), "the sides' faces behind the ends of box front or back; below 0 they are proud"},
	{string(fit.ShoulderGap), "what stays open at the shoulders; below 0 there is room at the tongue's end"},
	{string(joinery.CheckOutsideWidth), "the width of the box"},
	{string(joinery.CheckOutsideDepth), "the depth of the box"},
	{string(fit.OutsideHeight), "the height of the box"},
	{string(fit.Diagonal), "the diagonals of the box"},
	{string(fit.SlideClearance), "the width that the slide needs of the box, outside or inside"},
}
