package dxfread_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/dxf/dxfread"
)

// Every broken rule is reported by name, with its line and what is there.
func TestMalformed(t *testing.T) {
	circle := "0 CIRCLE|8 A|10 1|20 2|40 4" // lines 5 to 14
	for _, c := range []struct {
		name, text string
		rule       error
		line       int
		found      string
	}{
		{"not a group code", "0\nSECTION\nx\ny\n", dxfread.ErrTags, 3, `"x"`},
		{"a fraction for a group code", "0\nSECTION\n2.5\ny\n", dxfread.ErrTags, 3, `"2.5"`},
		{"a blank line", "0\nSECTION\n\n2\nENTITIES\n", dxfread.ErrTags, 3, `""`},
		{"a huge group code", "0\nSECTION\n12345\ny\n", dxfread.ErrTags, 3, `"12345"`},
		{"a huge negative group code", "0\nSECTION\n-10000\ny\n", dxfread.ErrTags, 3, `"-10000"`},
		{"half a pair", "0\nSECTION\n2\n", dxfread.ErrTags, 4, "group code 2 without a value"},
		{"half a line", "0\nSECTION\n2", dxfread.ErrTags, 4, "group code 2 without a value"},
		{"a long line", "0\nSECTION\n" + strings.Repeat("#", 200) + "\ny\n", dxfread.ErrTags, 3, strings.Repeat("#", 64) + `"...`},
		{"what a terminal obeys", "0\nSECTION\n\x1b[2J\ny\n", dxfread.ErrTags, 3, `"\x1b[2J"`},
		{"binary", "123456789012345678\r\n\x1a\x00\x00\x00SECTION\x00", dxfread.ErrTags, 1, "a binary DXF"},

		{"a word for a coordinate", tags(head + "0 CIRCLE|8 A|10 one|20 2|40 4" + tail), dxfread.ErrNumber, 10, `group 10, a number, is "one"`},
		{"nothing for a coordinate", tags(head + "0 CIRCLE|8 A|10 |20 2|40 4" + tail), dxfread.ErrNumber, 10, `""`},
		{"no finite number", tags(head + "0 LWPOLYLINE|8 A|10 1|20 nan" + tail), dxfread.ErrNumber, 12, `"nan"`},
		{"an infinite bulge", tags(head + "0 LWPOLYLINE|8 A|10 1|20 1|42 Inf" + tail), dxfread.ErrNumber, 14, `"Inf"`},
		{"a number beyond all", tags(head + "0 CIRCLE|8 A|10 1e999|20 2|40 4" + tail), dxfread.ErrNumber, 10, `"1e999"`},
		{"a comma", tags(head + "0 CIRCLE|8 A|10 1,5|20 2|40 4" + tail), dxfread.ErrNumber, 10, `"1,5"`},
		{"hexadecimal", tags(head + "0 CIRCLE|8 A|10 0x1p4|20 2|40 4" + tail), dxfread.ErrNumber, 10, `"0x1p4"`},
		{"a vertex", tags(head + "0 POLYLINE|8 A|0 VERTEX|10 1|20 -|0 SEQEND" + tail), dxfread.ErrNumber, 14, `"-"`},
		{"a flag", tags(head + "0 LWPOLYLINE|8 A|70 1.0" + tail), dxfread.ErrNumber, 10, `group 70, a whole number, is "1.0"`},
		{"a count", tags(head + "0 LWPOLYLINE|8 A|90 99999999999999999999" + tail), dxfread.ErrNumber, 10, "99999"},
		{"the unit", tags("0 SECTION|2 HEADER|9 $INSUNITS|70 mm|0 ENDSEC|" + head + circle + tail), dxfread.ErrNumber, 8, `"mm"`},
		{"an arc beyond all numbers", tags(head + "0 ARC|8 A|10 1e308|20 0|40 1e308|50 0|51 9" + tail), dxfread.ErrNumber, 5, "ARC"},
		{"an arc beyond all numbers upward", tags(head + "0 ARC|8 A|10 0|20 1e308|40 1e308|50 90|51 91" + tail), dxfread.ErrNumber, 5, "ARC"},
		{"thickness beyond all numbers", tags(head + circle + "|30 1e308|39 1e308" + tail), dxfread.ErrNumber, 5, "CIRCLE"},

		{"empty", "", dxfread.ErrSections, 1, "without EOF"},
		{"white space", " \r\n\n", dxfread.ErrSections, 1, "without EOF"},
		{"no section", tags("0 EOF"), dxfread.ErrSections, 1, "no ENTITIES"},
		{"no ENTITIES", tags("999 note|0 SECTION|2 BLOCKS|0 ENDSEC|0 EOF"), dxfread.ErrSections, 9, "no ENTITIES"},
		{"two ENTITIES", tags(head + circle + "|0 ENDSEC|0 SECTION|2 ENTITIES" + tail), dxfread.ErrSections, 20, "second ENTITIES"},
		{"no EOF", tags(head + circle + "|0 ENDSEC"), dxfread.ErrSections, 17, "without EOF"},
		{"cut off", tags(head + circle), dxfread.ErrSections, 15, "without EOF"},
		{"no ENDSEC before EOF", tags(head + circle + "|0 EOF"), dxfread.ErrSections, 15, `EOF before the ENDSEC of section "ENTITIES"`},
		{"no ENDSEC before SECTION", tags("0 SECTION|2 HEADER|9 $X|1 y|" + head + tail), dxfread.ErrSections, 9, `SECTION before the ENDSEC of section "HEADER"`},
		{"no ENDSEC of TABLES", tags("0 SECTION|2 TABLES|0 TABLE|2 LAYER|0 EOF"), dxfread.ErrSections, 9, `section "TABLES"`},
		{"no ENDSEC of another", tags("0 SECTION|2 OBJECTS|0 DICTIONARY|0 EOF"), dxfread.ErrSections, 7, `section "OBJECTS"`},
		{"a section without a name", tags("0 SECTION|0 CIRCLE"), dxfread.ErrSections, 3, "CIRCLE"},
		{"an entity outside", tags(circle), dxfread.ErrSections, 1, "CIRCLE"},
		{"a group outside", tags("0 SECTION|2 ENTITIES|0 ENDSEC|8 A|0 EOF"), dxfread.ErrSections, 7, `group 8, "A"`},
		{"SECTION in another group", tags("8 SECTION|2 ENTITIES" + tail), dxfread.ErrSections, 1, `group 8, "SECTION"`},
		{"EOF in another group", tags("0 SECTION|2 ENTITIES|0 ENDSEC|8 EOF"), dxfread.ErrSections, 7, `group 8, "EOF"`},
		{"a second file behind the first", tags(head+circle+tail) + tags("0 SECTION"), dxfread.ErrSections, 19, "9 bytes after EOF"},

		{"a circle without a radius", tags(head + "0 CIRCLE|8 A|10 1|20 2" + tail), dxfread.ErrIncomplete, 5, "CIRCLE without group 40"},
		{"a circle without a center", tags(head + "0 CIRCLE|8 A|20 2|40 2" + tail), dxfread.ErrIncomplete, 5, "CIRCLE without group 10"},
		{"a line without an end", tags(head + "0 LINE|8 A|10 1|20 2|11 3" + tail), dxfread.ErrIncomplete, 5, "LINE without group 21"},
		{"an arc without an angle", tags(head + "0 ARC|8 A|10 1|20 2|40 3|50 4" + tail), dxfread.ErrIncomplete, 5, "ARC without group 51"},
		{"two x", tags(head + "0 LWPOLYLINE|8 A|10 1|10 2|20 3" + tail), dxfread.ErrIncomplete, 11, "group 10"},
		{"two y", tags(head + "0 LWPOLYLINE|8 A|10 1|20 2|20 3" + tail), dxfread.ErrIncomplete, 13, "group 20"},
		{"a last x", tags(head + "0 LWPOLYLINE|8 A|10 1|20 2|10 3" + tail), dxfread.ErrIncomplete, 5, "last vertex"},
		{"a bulge of nothing", tags(head + "0 LWPOLYLINE|8 A|42 1|10 1|20 2" + tail), dxfread.ErrIncomplete, 9, "group 42"},
		{"a vertex of the one before", tags(head + "0 LWPOLYLINE|8 A|10 1|20 2|0 LWPOLYLINE|42 1" + tail), dxfread.ErrIncomplete, 15, "group 42"},
		{"a vertex too few", tags(head + "0 LWPOLYLINE|8 A|90 2|10 1|20 2" + tail), dxfread.ErrIncomplete, 5, "states 2 vertices and has 1"},
		{"a vertex too many", tags(head + "0 LWPOLYLINE|8 A|90 0|10 1|20 2" + tail), dxfread.ErrIncomplete, 5, "states 0 vertices and has 1"},
		{"no SEQEND before another", tags(head + "0 POLYLINE|8 A|0 VERTEX|10 1|20 2|" + circle + tail), dxfread.ErrIncomplete, 15, `"CIRCLE" before the SEQEND of the POLYLINE in line 5`},
		{"no SEQEND before ENDSEC", tags(head + "0 POLYLINE|8 A|0 VERTEX|10 1|20 2" + tail), dxfread.ErrIncomplete, 15, `"ENDSEC"`},
		{"a POLYLINE cut off", tags(head + "0 POLYLINE|8 A|0 VERTEX|10 1|20 2"), dxfread.ErrSections, 15, "without EOF"},
		{"a vertex without y", tags(head + "0 POLYLINE|8 A|0 VERTEX|10 1|0 SEQEND" + tail), dxfread.ErrIncomplete, 9, "VERTEX"},
		{"a vertex without x", tags(head + "0 POLYLINE|8 A|0 VERTEX|20 1|0 SEQEND" + tail), dxfread.ErrIncomplete, 9, "VERTEX"},
		{"a lone vertex", tags(head + "0 VERTEX|10 1|20 2" + tail), dxfread.ErrIncomplete, 5, "VERTEX without"},
		{"a lone SEQEND", tags(head + circle + "|0 SEQEND" + tail), dxfread.ErrIncomplete, 15, "SEQEND without"},
		{"an entity without a type", tags(head + "0 |8 A" + tail), dxfread.ErrIncomplete, 6, "group 0"},
		{"a layer without a name", tags("0 SECTION|2 TABLES|0 TABLE|2 LAYER|0 LAYER|62 1|0 ENDTAB|0 ENDSEC|" + head + tail), dxfread.ErrIncomplete, 9, "LAYER"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, err := dxfread.Parse([]byte(c.text))
			var e *dxfread.Error
			if f != nil || !errors.As(err, &e) || !errors.Is(err, c.rule) {
				t.Fatalf("%+v, %v; want the rule %q", f, err, c.rule)
			}
			if e.Line != c.line || !strings.Contains(e.Found, c.found) {
				t.Errorf("%v\nwant line %d, %s", err, c.line, c.found)
			}
			if want := fmt.Sprintf("dxf line %d: ", c.line); !strings.HasPrefix(err.Error(), want) || len(err.Error()) > 400 {
				t.Errorf("%q", err.Error())
			}
		})
	}
}

// A file that is cut anywhere is an error, but where only the last end of line
// is missing.
func TestCutAnywhere(t *testing.T) {
	for _, v := range []dxf.Version{dxf.R2000, dxf.R12} {
		sound := large(t, v, 12)
		for n := range len(sound) - 1 {
			_, err := dxfread.Parse(sound[:n])
			if !errors.Is(err, dxfread.ErrTags) && !errors.Is(err, dxfread.ErrSections) && !errors.Is(err, dxfread.ErrNumber) && !errors.Is(err, dxfread.ErrIncomplete) {
				t.Fatalf("version %d, cut at byte %d: %v", v, n, err)
			}
		}
	}
}
