package dxfread

import "strings"

// The codes of $INSUNITS that are read, and the one of no unit.
const (
	insunitsNone       = 0
	insunitsInch       = 1
	insunitsMillimeter = 4
)

// header reads the variables that are wanted, and gives the code of $INSUNITS.
// A variable's value follows its name.
func (r *reader) header() (insunits int) {
	variable := ""
	for r.nextGroup() {
		switch {
		case r.code == 9:
			variable = strings.ToUpper(string(trim(r.value)))
		case variable == "$ACADVER":
			r.file.Version = string(trim(r.value))
		case variable == "$INSUNITS":
			insunits = r.whole()
		}
	}
	for r.record("HEADER") != "" {
		r.passOver()
	}
	return insunits
}

// tables reads the names of the layer table.
func (r *reader) tables() {
	r.passOver()
	table := ""
	for {
		word, line := r.record("TABLES"), r.line
		if word == "" {
			return
		}
		var name []byte
		for r.nextGroup() {
			if r.code == 2 {
				name = trim(r.value)
			}
		}
		switch {
		case word == "TABLE":
			table = strings.ToUpper(string(name))
		case word == "ENDTAB":
			table = ""
		case word == "LAYER" && table == "LAYER" && len(name) == 0:
			r.failAt(ErrIncomplete, line, "LAYER without a name")
		case word == "LAYER" && table == "LAYER":
			r.file.Layers = append(r.file.Layers, r.layers.of(name))
		}
	}
}

// unitOf gives the unit by the code of $INSUNITS, or by the comments where that
// names none.
func unitOf(insunits int, comments []string) Unit {
	switch insunits {
	case insunitsInch:
		return Inch
	case insunitsMillimeter:
		return Millimeter
	case insunitsNone:
	default:
		return Unknown
	}
	for _, c := range comments {
		switch strings.TrimSpace(c) {
		case "Units: millimeters":
			return Millimeter
		case "Units: inches":
			return Inch
		}
	}
	return Unknown
}
