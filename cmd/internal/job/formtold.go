package job

import (
	"math"
	"regexp"
	"strings"

	"drawerwright/geom"
)

// Told is what a form tells of a key, its lengths in one unit.
type Told struct {
	Doc     string `json:"doc"`
	Default string `json:"default,omitempty"`
	Without string `json:"without,omitempty"` // what happens without it
	Why     string `json:"why,omitempty"`     // why that, or the default, is so
	Example string `json:"example,omitempty"` // a value, as it is typed into a field
}

// told is what a form of a job in a unit tells of the key at a path.
func (k *key) told(u geom.Unit, path []string) Told {
	in := func(text string) string { return FormText(inUnit(text, u), path) }
	return Told{Doc: in(k.said(k.spanIn(u), k.usual(u))), Default: inUnit(k.usual(u), u), Without: in(k.without),
		Why: in(k.why), Example: k.exampleIn(u)}
}

// inches is what a form of a job in inches tells of the key at a path; nil where that is nothing else.
func (k *key) inches(path []string) *Told {
	in := k.told(geom.Inch, path)
	if in == k.told(geom.Millimeter, path) {
		return nil
	}
	return &in
}

// Within a text: a length for jobs in mm with that for jobs in inches; lengths in mm, several of which
// may share the unit; a number that stands alone.
var (
	bothInText = regexp.MustCompile(`(\d[\d.]* mm),?(?: or)? with units: in (\d[\d ./]* in\b),?`)
	mmInText   = regexp.MustCompile(`((?:\d+(?:\.\d+)?(?: x | to | or ))*)(\d+(?:\.\d+)?) mm\b(/min)?`)
	inNumbers  = regexp.MustCompile(`\d+(?:\.\d+)?`)
)

// inUnit writes the lengths of a text of the key table as a job in a unit shows them.
func inUnit(text string, u geom.Unit) string {
	if u != geom.Inch {
		return bothInText.ReplaceAllString(text, "$1")
	}
	text = bothInText.ReplaceAllString(text, "$2")
	return mmInText.ReplaceAllStringFunc(text, func(lengths string) string {
		if strings.HasSuffix(lengths, "/min") { // a speed, for which both units may be written
			return lengths
		}
		return inNumbers.ReplaceAllStringFunc(strings.TrimSuffix(lengths, " mm"), func(number string) string {
			l, err := geom.ParseLength(number, geom.Millimeter)
			if err != nil { // as none of a table is
				return number
			}
			return l.Number(geom.Inch)
		}) + " in"
	})
}

// The steps in inches of examples, by what they stand for in mm: a caliper's and small ones have
// thousandths.
const (
	exampleSmall, exampleThin, exampleLarge    = 1.5, 10.0, 100.0
	thinSteps, exampleSteps, exampleLargeSteps = 32, 16, 2
)

// exampleIn is the example as it is typed into a field of a form: of a list without its brackets, its
// lengths as sizes that a job in the unit may have.
func (k *key) exampleIn(u geom.Unit) string {
	text := strings.TrimSuffix(strings.TrimPrefix(k.example, "["), "]")
	switch k.form {
	case formLength, formReadings, formLengths, formCells, formEdges, formSize:
	default:
		return inUnit(text, u)
	}
	if u != geom.Inch || strings.ContainsAny(text, "\"/") { // fractions are inches as they are
		return text
	}
	return inNumbers.ReplaceAllStringFunc(strings.ReplaceAll(text, " mm", ""), k.exampleInches)
}

// exampleInches is a number of an example, which is mm, in inches.
func (k *key) exampleInches(number string) string {
	l, err := geom.ParseLength(number, geom.Millimeter)
	if err != nil { // as none of a table is
		return number
	}
	steps := float64(exampleSteps)
	switch mm := l.MM(); {
	case k.form == formReadings && k.noun == "stock" || mm < exampleSmall: // a caliper's
		return l.Number(geom.Inch)
	case k.form == formCells && mm < exampleThin: // how many
		return number
	case mm >= exampleLarge && k.form != formReadings:
		steps = exampleLargeSteps
	case mm < exampleThin:
		steps = thinSteps
	}
	return geom.LengthOf(math.Round(l.MM()/geom.InchMM*steps) / steps * geom.InchMM).Number(geom.Inch)
}
