package dxftest

import (
	"errors"
	"fmt"
	"strconv"

	"drawerwright/export/dxf/dxfread"
)

// Rule is a rule that a file can break. Compare with [errors.Is].
type Rule string

// Error gives the rule in words.
func (r Rule) Error() string { return string(r) }

// The rules of [Strict].
const (
	RuleTag         Rule = "a value fits its group code"
	RuleSection     Rule = "the sections of the version stand in order, each once"
	RuleEOF         Rule = "EOF ends the file"
	RuleVersion     Rule = "the version is AC1009 or AC1015"
	RuleHeader      Rule = "the header has the variables of its version, each once"
	RuleUnit        Rule = "the unit is stated, and the same wherever it is"
	RuleExtents     Rule = "the extents hold the geometry and no more"
	RuleTable       Rule = "the tables of the version are there, each with records of its kind"
	RuleTableCount  Rule = "a table states how many records it has"
	RuleRecord      Rule = "the records that every file has are there, and names are unique"
	RuleLayerName   Rule = "a layer name has capitals, digits, '_' and '-' and is not too long"
	RuleColor       Rule = "a layer's color is 1 to 255"
	RuleLayer       Rule = "what is drawn lies on a layer of the table"
	RuleLinetype    Rule = "a line type that is named is in the table"
	RuleHandle      Rule = "every object has a handle of its own"
	RuleSeed        Rule = "the handle seed is beyond every handle"
	RuleOwner       Rule = "every object names its owner"
	RulePointer     Rule = "a handle that is referred to is there, and of the right kind"
	RuleDictionary  Rule = "the dictionaries of the version are there, the root first"
	RuleSubclass    Rule = "an object has the subclass markers of its kind"
	RuleKind        Rule = "only what the version knows is drawn"
	RuleVertexCount Rule = "a polyline states how many vertices it has"
	RuleFlag        Rule = "a polyline's flag is 0 or 1"
	RuleClosed      Rule = "a polyline is closed by its flag, and has room inside if it is"
	RuleEdge        Rule = "an edge has a length"
	RuleRadius      Rule = "a radius is more than 0"
	RulePlane       Rule = "everything lies level, at z = 0 and without thickness unless heights are asked for, and has no width"
	RuleSequence    Rule = "the vertices of a POLYLINE follow it and end with SEQEND"
	RuleRead        Rule = "the project's own reader takes the file"
)

// Fault is one broken rule.
type Fault struct {
	Rule   Rule
	Line   int // counted from 1; 0 where no line is at fault
	Detail string
}

// Error names the line, what is there and the rule.
func (f *Fault) Error() string {
	return "dxf line " + strconv.Itoa(f.Line) + ": " + f.Detail + ": broken rule: " + string(f.Rule)
}

// Unwrap gives the rule.
func (f *Fault) Unwrap() error { return f.Rule }

// checker gathers the faults of one file.
type checker struct {
	r12      bool
	raised   bool // things may lie at other heights than 0
	tags     []Tag
	sections []section
	rest     []record
	comments []string
	version  string           // $ACADVER
	header   map[string][]Tag // the values of each variable
	layers   []Layer
	drawn    []dxfread.Entity
	unread   bool // dxfread turns the file away, so that drawn is not what the file draws
	tables   map[string]table
	faults   []error
}

// maxFaults is how many faults of one file are reported.
const maxFaults = 50

func (c *checker) fault(rule Rule, line int, format string, args ...any) {
	if len(c.faults) < maxFaults {
		c.faults = append(c.faults, &Fault{rule, line, fmt.Sprintf(format, args...)})
	}
}

// Strict holds a file to every rule of this package and gives all faults that it
// finds, joined, the first 50 of them: each a [*Fault]. The error of a file that
// is not made of tags is [ErrTags].
func Strict(data []byte) error { return judge(data, false) }

// Raised is Strict for a file whose entities may lie level at other heights than 0, with
// thickness.
func Raised(data []byte) error { return judge(data, true) }

func judge(data []byte, raised bool) error {
	tags, err := readAll(data)
	if err != nil {
		return err
	}
	c := &checker{raised: raised, tags: tags, tables: make(map[string]table)}
	c.sections, c.comments, c.rest = sections(tags)
	_, c.header = variables(find(c.sections, "HEADER"))
	if v := c.header["$ACADVER"]; len(v) > 0 {
		c.version = v[0].Value
	}
	c.layers = layersOf(c.sections)
	c.r12 = c.version == "AC1009"
	if !c.r12 && c.version != "AC1015" {
		c.fault(RuleVersion, 0, "$ACADVER %q", c.version)
	}
	c.read(data)
	c.values()
	c.order()
	c.checkHeader()
	c.checkTables()
	c.checkEntities()
	c.checkHandles()
	return errors.Join(c.faults...)
}

// read reads what is drawn. Only a file that can be read is judged by its shapes
// and extents.
func (c *checker) read(data []byte) {
	f, err := dxfread.Parse(data)
	if err != nil {
		c.unread = true
		c.fault(RuleRead, 0, "%v", err)
		return
	}
	c.drawn = f.Entities
}
