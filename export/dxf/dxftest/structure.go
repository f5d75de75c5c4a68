package dxftest

import (
	"math"
	"slices"
	"strings"
)

// values checks each value by its group code.
func (c *checker) values() {
	for _, t := range c.tags {
		if detail := t.wrong(); detail != "" {
			c.fault(RuleTag, t.Line, "group %d, %q: %s", t.Code, t.Value, detail)
		}
		if t.Code < 0 || t.Code > 1071 {
			c.fault(RuleTag, t.Line, "group %d does not exist", t.Code)
		}
		if c.r12 && (t.Code == 100 || t.Code == 330) {
			c.fault(RuleKind, t.Line, "group %d came after R12", t.Code)
		}
	}
}

// order checks which sections there are, where they end, and that EOF follows.
func (c *checker) order() {
	want := []string{"HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"}
	if c.r12 {
		want = []string{"HEADER", "TABLES", "BLOCKS", "ENTITIES"}
	}
	var got []string
	for _, s := range c.sections {
		got = append(got, s.name)
		if s.name != "HEADER" && len(s.head) > 0 {
			c.fault(RuleSection, s.line, "groups at the head of section %s", s.name)
		}
	}
	if !slices.Equal(got, want) {
		c.fault(RuleSection, 0, "sections %v", got)
	}
	opened := false
	for _, t := range c.tags {
		if t.Code != 0 || t.Value != "SECTION" && t.Value != "ENDSEC" {
			continue
		}
		if opens := t.Value == "SECTION"; opens == opened {
			c.fault(RuleSection, t.Line, "%s where none belongs", t.Value)
		}
		opened = t.Value == "SECTION"
	}
	if opened {
		c.fault(RuleSection, 0, "the last section does not end")
	}
	if len(c.rest) != 1 || c.rest[0].kind != "EOF" || len(c.rest[0].tags) > 0 {
		c.fault(RuleEOF, 0, "%d groups 0 outside of sections", len(c.rest))
	}
	if n := len(c.tags); n == 0 || c.tags[n-1].Code != 0 || c.tags[n-1].Value != "EOF" {
		c.fault(RuleEOF, 0, "the last tag is another")
	}
}

// checkHeader checks the variables, the unit and the extents.
func (c *checker) checkHeader() {
	s := find(c.sections, "HEADER")
	names, values := variables(s)
	seen := make(map[string]bool)
	for _, name := range names {
		if seen[name] {
			c.fault(RuleHeader, s.line, "%s stands twice", name)
		}
		seen[name] = true
		if len(values[name]) == 0 {
			c.fault(RuleHeader, s.line, "%s has no value", name)
		}
	}
	if len(names) == 0 || names[0] != "$ACADVER" {
		c.fault(RuleHeader, s.line, "$ACADVER does not stand first")
	}
	for _, name := range []string{"$EXTMIN", "$EXTMAX", "$LIMMIN", "$LIMMAX", "$LUNITS", "$CLAYER"} {
		if !seen[name] {
			c.fault(RuleHeader, s.line, "%s is missing", name)
		}
	}
	for _, name := range []string{"$HANDSEED", "$INSUNITS", "$MEASUREMENT"} {
		if seen[name] == c.r12 {
			c.fault(RuleHeader, s.line, "%s: there %t in %s", name, seen[name], c.version)
		}
	}
	if v := values["$CLAYER"]; len(v) > 0 && !c.hasLayer(v[0].Value) {
		c.fault(RuleLayer, v[0].Line, "$CLAYER %q", v[0].Value)
	}
	c.unit(values)
	c.extents(values)
}

// unit checks that whatever states the unit states the same one.
func (c *checker) unit(values map[string][]Tag) {
	said := commentUnit(c.comments)
	if said == "" {
		c.fault(RuleUnit, 0, "no comment names the unit")
	}
	if c.r12 {
		return
	}
	number := func(name string) int {
		if v := values[name]; len(v) > 0 {
			return v[0].int()
		}
		return -1
	}
	insunits, measurement := number("$INSUNITS"), number("$MEASUREMENT")
	switch {
	case insunits == 4 && measurement == 1 && said == "mm":
	case insunits == 1 && measurement == 0 && said == "in":
	default:
		c.fault(RuleUnit, 0, "$INSUNITS %d, $MEASUREMENT %d, comment %q", insunits, measurement, said)
	}
}

// extentsTolerance is how far the extents may be off, in drawing units: half a
// millionth for the rounding of each vertex, of its bulge over a short chord,
// and of the extents themselves, and the same once more.
const extentsTolerance = 2e-6

// farAway is the least magnitude of the bounds that stand for nothing.
const farAway = 1e20

func (c *checker) extents(values map[string][]Tag) {
	axes := func(name string) (x, y float64) {
		v := values[name]
		if len(v) < 2 {
			return math.NaN(), math.NaN()
		}
		return v[0].float(), v[1].float()
	}
	minX, minY := axes("$EXTMIN")
	maxX, maxY := axes("$EXTMAX")
	want := Extents(c.drawn)
	if len(c.drawn) == 0 {
		want = [4]float64{farAway, farAway, -farAway, -farAway}
	}
	for i, got := range [4]float64{minX, minY, maxX, maxY} {
		if !c.unread && !(math.Abs(got-want[i]) <= extentsTolerance) {
			c.fault(RuleExtents, 0, "%s: %v, the geometry has %v",
				[4]string{"least x", "least y", "most x", "most y"}[i], got, want[i])
		}
	}
	c.heights(values)
	lowX, lowY := axes("$LIMMIN")
	highX, highY := axes("$LIMMAX")
	if !(lowX <= highX && lowY <= highY) {
		c.fault(RuleExtents, 0, "limits from %v, %v to %v, %v", lowX, lowY, highX, highY)
	}
}

// heights checks how far down and up the extents say that the drawing reaches.
func (c *checker) heights(values map[string][]Tag) {
	if c.unread || len(c.drawn) == 0 {
		return
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, e := range c.drawn {
		low = min(low, e.Low, e.Low+e.Thickness)
		high = max(high, e.High, e.High+e.Thickness)
	}
	for i, want := range []float64{low, high} {
		name := [2]string{"$EXTMIN", "$EXTMAX"}[i]
		if v := values[name]; len(v) < 3 || !(math.Abs(v[2].float()-want) <= extentsTolerance) {
			c.fault(RuleExtents, 0, "the z of %s is not %v, as the geometry has it", name, want)
		}
	}
}

// commentUnit reads the unit from the comment that states it.
func commentUnit(comments []string) string {
	for _, c := range comments {
		switch strings.TrimSpace(c) {
		case "Units: millimeters":
			return "mm"
		case "Units: inches":
			return "in"
		}
	}
	return ""
}
