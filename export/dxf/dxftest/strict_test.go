package dxftest_test

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxftest"
)

// file is a sound file with a polyline of each kind and a circle.
func file(t *testing.T, v dxf.Version) string {
	t.Helper()
	d := dxf.Drawing{Version: v}
	cut, line := d.Layer("CUT", 1), d.Layer("LINE", 2)
	d.Polyline(cut, dxf.Closed, []dxf.Vertex{{X: 0, Y: 0}, {X: 10, Y: 0, Bulge: 1}, {X: 10, Y: 8}, {X: 0, Y: 8}})
	d.Polyline(line, dxf.Open, []dxf.Vertex{{X: 1, Y: 1}, {X: 2, Y: 3}, {X: 3, Y: 3}})
	d.Circle(cut, 5, 5, 1.5)
	var out bytes.Buffer
	if _, err := d.WriteTo(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// An edit plants one fault. Its pattern must be in the file, and what is there
// gives way to the replacement, at the first place only.
type edit struct {
	name, pattern, with string
	rule                dxftest.Rule
}

func (e edit) plant(t *testing.T, file string) string {
	t.Helper()
	at := regexp.MustCompile(e.pattern).FindStringSubmatchIndex(file)
	if at == nil {
		t.Fatalf("%q is not in the file", e.pattern)
	}
	with := regexp.MustCompile(e.pattern).ExpandString(nil, e.with, file, at)
	return file[:at[0]] + string(with) + file[at[1]:]
}

// Faults of either version.
var common = []edit{
	{"version", `\$ACADVER\n1\n\w+`, "$$ACADVER\n1\nAC1027", dxftest.RuleVersion},
	{"order of sections", `(?s)(0\nSECTION\n2\nBLOCKS\n.*?ENDSEC\n)(0\nSECTION\n2\nENTITIES\n.*?ENDSEC\n)`, "$2$1", dxftest.RuleSection},
	{"no ENDSEC", `0\nENDSEC\n0\nSECTION\n2\nBLOCKS`, "0\nSECTION\n2\nBLOCKS", dxftest.RuleSection},
	{"two ENDSEC", `0\nENDSEC\n`, "0\nENDSEC\n0\nENDSEC\n", dxftest.RuleSection},
	{"no EOF", `0\nEOF\n$`, "", dxftest.RuleEOF},
	{"after EOF", `0\nEOF\n$`, "0\nEOF\n999\nmore\n", dxftest.RuleEOF},
	{"extents", `\$EXTMAX\n10\n[0-9.]+`, "$$EXTMAX\n10\n10.0", dxftest.RuleExtents},
	{"most height", `(\$EXTMAX\n10\n.*\n20\n.*\n30\n)0\.0`, "${1}1.0", dxftest.RuleExtents},
	{"least extent", `\$EXTMIN\n10\n[0-9.]+`, "$$EXTMIN\n10\n-1.0", dxftest.RuleExtents},
	{"limits", `\$LIMMAX\n10\n[0-9.]+`, "$$LIMMAX\n10\n-9.0", dxftest.RuleExtents},
	{"no limits", `9\n\$LIMMIN\n10\n.*\n20\n.*\n`, "", dxftest.RuleHeader},
	{"a variable twice", `9\n\$LUNITS\n70\n2\n`, "$0$0", dxftest.RuleHeader},
	{"no unit in a comment", `999\nUnits.*\n`, "", dxftest.RuleUnit},
	{"not a number", `\n10\n10\.0\n`, "\n10\nnan\n", dxftest.RuleTag},
	{"negative zero", `\n20\n8\.0\n`, "\n20\n-0.0\n", dxftest.RuleTag},
	{"no decimal point", `\n20\n8\.0\n`, "\n20\n8\n", dxftest.RuleTag},
	{"bulge of 0", `42\n1\.0\n`, "42\n0.0\n", dxftest.RuleTag},
	{"a fraction for a flag", `\n70\n1\n`, "\n70\n1.5\n", dxftest.RuleTag},
	{"an umlaut", `Units: millimeters`, "Units: millimeters ü", dxftest.RuleTag},
	{"x without y", `(10\n10\.0\n)20\n8\.0\n`, "$1", dxftest.RuleTag},
	{"layers counted short", `(2\nLAYER\n(?:5\n.*\n330\n.*\n100\n.*\n)?70\n)3`, "${1}2", dxftest.RuleTableCount},
	{"no layer table", `(?s)0\nTABLE\n2\nLAYER\n.*?ENDTAB\n`, "", dxftest.RuleLayer},
	{"no layer 0", `(?s)0\nLAYER\n([^Y]*?)2\n0\n`, "0\nLAYER\n${1}2\nZERO\n", dxftest.RuleRecord},
	{"a layer twice", `2\nLINE\n`, "2\nCUT\n", dxftest.RuleRecord},
	{"no view table", `(?s)0\nTABLE\n2\nVIEW\n.*?ENDTAB\n`, "", dxftest.RuleTable},
	{"an unknown table", `0\nTABLE\n2\nVIEW\n`, "0\nTABLE\n2\nVIEWS\n", dxftest.RuleTable},
	{"a table that does not end", `0\nENDTAB\n`, "", dxftest.RuleTable},
	{"a record in the wrong table", `0\nSTYLE\n`, "0\nAPPID\n", dxftest.RuleTable},
	{"a record outside of tables", `(0\nENDTAB\n)(0\nTABLE\n2\nLTYPE)`, "${1}0\nLTYPE\n2\nX\n$2", dxftest.RuleTable},
	{"no style", `(?i)2\nStandard\n70`, "2\nOTHER\n70", dxftest.RuleRecord},
	{"layer of small letters", `2\nCUT\n`, "2\nCut\n", dxftest.RuleLayerName},
	{"color 0", `62\n1\n`, "62\n0\n", dxftest.RuleColor},
	{"layer switched off", `62\n1\n`, "62\n-1\n", dxftest.RuleColor},
	{"an undefined layer", `(0\n(?:LW)?POLYLINE\n(?:5\n.*\n330\n.*\n100\n.*\n)?8\n)CUT`, "${1}OTHER", dxftest.RuleLayer},
	{"a circle's layer", `(0\nCIRCLE\n(?:5\n.*\n330\n.*\n100\n.*\n)?8\n)CUT`, "${1}CUT2", dxftest.RuleLayer},
	{"the current layer", `\$CLAYER\n8\n0`, "$$CLAYER\n8\nNONE", dxftest.RuleLayer},
	{"a layer's line type", `6\n(?i)continuous\n(0|370)\n`, "6\nDASHED\n$1\n", dxftest.RuleLinetype},
	{"an entity's line type", `(0\nCIRCLE\n(?:.*\n)*?8\nCUT\n)`, "${1}6\nDASHED\n", dxftest.RuleLinetype},
	{"radius 0", `40\n1\.5\n`, "40\n0.0\n", dxftest.RuleRadius},
	{"a circle without a radius", `40\n1\.5\n`, "", dxftest.RuleRead},
	{"a line", `0\nCIRCLE\n`, "0\nLINE\n", dxftest.RuleKind},
	{"a raised circle", `30\n0\.0\n40\n1\.5`, "30\n2.0\n40\n1.5", dxftest.RulePlane},
	{"flag 129", `(?s)(POLYLINE.*?\n70\n)1\n`, "${1}129\n", dxftest.RuleFlag},
	{"an edge without length", `10\n10\.0\n20\n8\.0\n`, "10\n10.0\n20\n0.0\n", dxftest.RuleEdge},
	{"closed onto its first vertex", `(10\n0\.0\n20\n)8\.0`, "${1}0.0", dxftest.RuleEdge},
	{"an open loop", `10\n3\.0\n20\n3\.0`, "10\n1.0\n20\n1.0", dxftest.RuleClosed},
}

// Faults of R2000.
var r2000 = []edit{
	{"no seed", `9\n\$HANDSEED\n5\n.*\n`, "", dxftest.RuleHeader},
	{"low seed", `\$HANDSEED\n5\n.*\n`, "$$HANDSEED\n5\n2\n", dxftest.RuleSeed},
	{"seed of the last", `(?s)(\$HANDSEED\n5\n)\w+(.*CIRCLE\n5\n)(\w+)`, "${1}${3}${2}${3}", dxftest.RuleSeed},
	{"no $INSUNITS", `9\n\$INSUNITS\n70\n4\n`, "", dxftest.RuleHeader},
	{"inches in $INSUNITS", `\$INSUNITS\n70\n4`, "$$INSUNITS\n70\n1", dxftest.RuleUnit},
	{"inches in $MEASUREMENT", `\$MEASUREMENT\n70\n1`, "$$MEASUREMENT\n70\n0", dxftest.RuleUnit},
	{"inches in the comment", `Units: millimeters`, "Units: inches", dxftest.RuleUnit},
	{"vertex count", `90\n4\n70\n1`, "90\n3\n70\n1", dxftest.RuleVertexCount},
	{"an open one of 3 flagged closed, of 2", `90\n3\n70\n0\n43\n0\.0\n10\n1\.0\n20\n1\.0\n`, "90\n2\n70\n1\n43\n0.0\n", dxftest.RuleClosed},
	{"one vertex", `90\n3\n70\n0\n43\n0\.0\n10\n1\.0\n20\n1\.0\n10\n2\.0\n20\n3\.0\n`, "90\n1\n70\n0\n43\n0.0\n", dxftest.RuleVertexCount},
	{"width", `70\n1\n43\n0\.0`, "70\n1\n43\n1.0", dxftest.RulePlane},
	{"a handle twice", `(?s)(LWPOLYLINE\n5\n)(\w+)(.*?CIRCLE\n5\n)\w+`, "${1}${2}${3}${2}", dxftest.RuleHandle},
	{"an entity's handle as a table's", `(CIRCLE\n5\n)\w+`, "${1}1", dxftest.RuleHandle},
	{"no handle", `CIRCLE\n5\n\w+\n`, "CIRCLE\n", dxftest.RuleHandle},
	{"handle 0", `(CIRCLE\n5\n)\w+`, "${1}0", dxftest.RuleHandle},
	{"handle of small letters", `(LAYER\n5\n)\w+`, "${1}2f", dxftest.RuleTag},
	{"dimension style with group 5", `105\n`, "5\n", dxftest.RuleHandle},
	{"no owner", `(CIRCLE\n5\n\w+\n)330\n\w+\n`, "$1", dxftest.RuleOwner},
	{"an owner that is not there", `(CIRCLE\n5\n\w+\n330\n)\w+`, "${1}FFFF", dxftest.RuleOwner},
	{"an entity owned by a table", `(CIRCLE\n5\n\w+\n330\n)\w+`, "${1}1", dxftest.RuleOwner},
	{"a layer owned by another table", `(LAYER\n5\n\w+\n330\n)3`, "${1}2", dxftest.RuleOwner},
	{"a table with an owner", `(TABLE\n2\nUCS\n5\n\w+\n330\n)0`, "${1}1", dxftest.RuleOwner},
	{"a block owned by the wrong record", `(ENDBLK\n5\n\w+\n330\n)\w+`, "${1}1", dxftest.RuleOwner},
	{"the root owned", `(2\nOBJECTS\n0\nDICTIONARY\n5\n\w+\n330\n)0`, "${1}1", dxftest.RuleOwner},
	{"a layout that the dictionary leaves out", `3\nLayout1\n350\n\w+\n`, "", dxftest.RuleOwner},
	{"a dictionary entry to nothing", `(3\nACAD_COLOR\n350\n)\w+`, "${1}EEEE", dxftest.RulePointer},
	{"a plot style that is none", `(390\n)\w+`, "${1}1", dxftest.RulePointer},
	{"a block record without its layout", `(\*Paper_Space\n340\n)\w+`, "${1}1", dxftest.RulePointer},
	{"no group dictionary", `3\nACAD_GROUP\n350\n\w+\n`, "", dxftest.RuleDictionary},
	{"no standard mline", `(3\n)Standard(\n350)`, "${1}Other${2}", dxftest.RuleDictionary},
	{"a name twice", `3\nACAD_COLOR\n`, "3\nACAD_GROUP\n", dxftest.RuleDictionary},
	{"the root not first", `(2\nOBJECTS\n)(0\nDICTIONARY\n)`, "${1}0\nACDBPLACEHOLDER\n5\n2\n330\n0\n$2", dxftest.RuleDictionary},
	{"no AcDbEntity", `100\nAcDbEntity\n8\nCUT\n`, "8\nCUT\n", dxftest.RuleSubclass},
	{"wrong class", `AcDbPolyline`, "AcDb2dPolyline", dxftest.RuleSubclass},
	{"no AcDbSymbolTable", `100\nAcDbSymbolTable\n`, "", dxftest.RuleSubclass},
	{"a layer's class", `AcDbLayerTableRecord`, "AcDbLayer", dxftest.RuleSubclass},
	{"a layout's class", `100\nAcDbPlotSettings\n`, "", dxftest.RuleSubclass},
	{"an old polyline", `LWPOLYLINE`, "POLYLINE", dxftest.RuleKind},
	{"an unknown object", `0\nMLINESTYLE`, "0\nSUN", dxftest.RuleKind},
	{"no block", `(?s)0\nBLOCK\n.*?0\nENDBLK\n.*?(0\nBLOCK)`, "$1", dxftest.RuleRecord},
	{"no line type ByLayer", `2\nByLayer\n`, "2\nOther\n", dxftest.RuleRecord},
	{"no classes", `(?s)0\nSECTION\n2\nCLASSES\n.*?ENDSEC\n`, "", dxftest.RuleSection},
	{"no objects", `(?s)0\nSECTION\n2\nOBJECTS\n.*?ENDSEC\n`, "", dxftest.RuleDictionary},
}

// Faults of R12.
var r12 = []edit{
	{"a variable of later", `9\n\$LUNITS`, "9\n$$INSUNITS\n70\n4\n9\n$$LUNITS", dxftest.RuleHeader},
	{"no SEQEND", `0\nSEQEND\n8\nCUT\n`, "", dxftest.RuleSequence},
	{"no SEQEND at the end", `(?s)0\nSEQEND\n8\nLINE\n0\nCIRCLE\n.*?0\nENDSEC`, "0\nENDSEC", dxftest.RuleSequence},
	{"a vertex too many", `0\nCIRCLE\n`, "0\nVERTEX\n8\nCUT\n10\n0.0\n20\n0.0\n0\nCIRCLE\n", dxftest.RuleSequence},
	{"no 66", `66\n1\n`, "", dxftest.RuleSequence},
	{"a vertex on another layer", `VERTEX\n8\nCUT`, "VERTEX\n8\nLINE", dxftest.RuleLayer},
	{"a lightweight polyline", `0\nCIRCLE\n`, "0\nLWPOLYLINE\n", dxftest.RuleKind},
	{"a subclass marker", `0\nCIRCLE\n`, "0\nCIRCLE\n100\nAcDbCircle\n", dxftest.RuleKind},
	{"an owner", `0\nCIRCLE\n`, "0\nCIRCLE\n330\n1\n", dxftest.RuleKind},
	{"a raised vertex", `(0\nVERTEX\n8\nCUT\n10\n.*\n20\n.*\n30\n)0\.0`, "${1}1.0", dxftest.RulePlane},
	{"a handle twice", `(0\nCIRCLE\n)((?:.*\n)*?)(0\nENDSEC)`, "${1}5\n1A\n${2}${1}5\n1A\n${2}${3}", dxftest.RuleHandle},
	{"a section of later", `0\nEOF\n`, "0\nSECTION\n2\nOBJECTS\n0\nENDSEC\n0\nEOF\n", dxftest.RuleSection},
	{"a table of later", `0\nTABLE\n2\nVIEW\n`, "0\nTABLE\n2\nBLOCK_RECORD\n", dxftest.RuleTable},
}

// Every planted fault is found and named by its rule.
func TestPlantedFaults(t *testing.T) {
	for version, edits := range map[dxf.Version][]edit{dxf.R2000: append(r2000, common...), dxf.R12: append(r12, common...)} {
		sound := file(t, version)
		if err := dxftest.Strict([]byte(sound)); err != nil {
			t.Fatalf("version %d: %v", version, err)
		}
		for _, e := range edits {
			t.Run(fmt.Sprintf("version %d/%s", version, e.name), func(t *testing.T) {
				err := dxftest.Strict([]byte(e.plant(t, sound)))
				if !errors.Is(err, e.rule) {
					t.Errorf("got %v\nwant the rule %q", err, e.rule)
				}
			})
		}
	}
}

// Where heights are asked for, a polyline still has one.
func TestRaised(t *testing.T) {
	sound := file(t, dxf.R12)
	sloped := edit{"", `(0\nVERTEX\n8\nCUT\n10\n.*\n20\n.*\n30\n)0\.0`, "${1}-1.0", dxftest.RulePlane}
	if err := dxftest.Raised([]byte(sloped.plant(t, sound))); !errors.Is(err, sloped.rule) {
		t.Errorf("got %v, want the rule %q", err, sloped.rule)
	}
	thick := edit{"", `(0\nCIRCLE\n8\nCUT\n)`, "${1}39\n1.0\n", ""}
	if err := dxftest.Raised([]byte(thick.plant(t, sound))); !errors.Is(err, dxftest.RuleExtents) || errors.Is(err, dxftest.RulePlane) {
		t.Errorf("a thick circle, which the extents do not hold: %v", err)
	}
}

// Names of 31 characters are the longest in R12, of 255 in R2000.
func TestLongNames(t *testing.T) {
	for version, longest := range map[dxf.Version]int{dxf.R12: 31, dxf.R2000: 255} {
		sound := file(t, version)
		name := strings.Repeat("A", longest)
		if err := dxftest.Strict([]byte(strings.ReplaceAll(sound, "\nLINE\n", "\n"+name+"\n"))); err != nil {
			t.Errorf("version %d, %d characters: %v", version, longest, err)
		}
		err := dxftest.Strict([]byte(strings.ReplaceAll(sound, "\nLINE\n", "\n"+name+"A\n")))
		if !errors.Is(err, dxftest.RuleLayerName) {
			t.Errorf("version %d, %d characters: %v", version, longest+1, err)
		}
	}
}

// Strict takes any bytes without a panic, and cut files are never sound.
func TestBrokenInput(t *testing.T) {
	for _, version := range []dxf.Version{dxf.R2000, dxf.R12} {
		sound := file(t, version)
		for n := 0; n < len(sound)-1; n++ {
			if dxftest.Strict([]byte(sound[:n])) == nil {
				t.Fatalf("version %d: sound when cut at byte %d", version, n)
			}
		}
	}
	for _, s := range []string{"", "0", "0\n", "x\ny\n", "0\nEOF\n", "0\nSECTION\n", "10\n1.0\n", "0\nSECTION\n2\nOBJECTS\n0\nENDSEC\n0\nEOF\n"} {
		if dxftest.Strict([]byte(s)) == nil {
			t.Errorf("%q passed", s)
		}
	}
	if err := dxftest.Strict([]byte("x\ny\n")); !errors.Is(err, dxftest.ErrTags) {
		t.Errorf("not tags: %v", err)
	}
}

func FuzzStrict(f *testing.F) {
	f.Add([]byte("0\nSECTION\n2\nENTITIES\n0\nVERTEX\n10\n1\n0\nENDSEC\n0\nEOF\n"))
	f.Add([]byte("0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1015\n0\nENDSEC\n0\nSECTION\n2\nOBJECTS\n0\nDICTIONARY\n5\n1\n330\n0\n0\nENDSEC\n0\nEOF\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		_ = dxftest.Strict(data)
	})
}
