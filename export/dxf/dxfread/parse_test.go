package dxfread_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawerwright/export/dxf/dxfread"
)

// whole is a file with all that is read, and with what is passed over.
const whole = "999 Units: inches|" +
	"0 SECTION|2 HEADER|9 $ACADVER|1 AC1009|9 $MENU|1 none|9 $EXTMIN|10 1.0|20 2.0|9 $CLAYER|8 0|0 ENDSEC|" +
	"0 SECTION|2 TABLES|0 TABLE|2 LTYPE|70 1|0 LTYPE|2 CONTINUOUS|0 ENDTAB|" +
	"0 TABLE|2 LAYER|70 2|0 LAYER|2 0|70 0|0 LAYER|2 CUT|62 5|6 CONTINUOUS|0 STYLE|2 LOST|0 ENDTAB|0 LAYER|2 STRAY|" +
	"0 TABLE|2 STYLE|0 STYLE|2 STANDARD|0 LAYER|2 NONE|0 ENDTAB|0 ENDSEC|" +
	"0 SECTION|2 BLOCKS|0 BLOCK|8 0|2 B|0 CIRCLE|8 CUT|10 x|0 ENDBLK|0 ENDSEC|" +
	"0 SECTION|2 ENTITIES|" +
	"0 POLYLINE|8 CUT|66 1|10 0.0|20 0.0|30 0.0|70 1|999 in between|" +
	"0 VERTEX|8 CUT|10 1.5|20 -2|42 0.25|0 VERTEX|8 CUT|10 3|20 4E1|0 SEQEND|8 CUT|" +
	"0 INSERT|8 CUT|2 B|10 x|66 1|0 ATTRIB|8 0|1 text|0 SEQEND|8 0|" +
	"0 CIRCLE|8 CUT|10 7|20 8|40 9|" +
	"0 ENDSEC|0 SECTION|2 OBJECTS|0 LINE|8 CUT|0 ENDSEC|0 EOF"

var wholeFile = &dxfread.File{
	Version:  "AC1009",
	Unit:     dxfread.Inch,
	Comments: []string{"Units: inches", "in between"},
	Layers:   []string{"0", "CUT"},
	Entities: []dxfread.Entity{
		{Type: "POLYLINE", Layer: "CUT", Closed: true, Vertices: []dxfread.Vertex{{X: 1.5, Y: -2, Bulge: 0.25}, {X: 3, Y: 40}}, Line: 113},
		{Type: "INSERT", Layer: "CUT", Line: 151},
		{Type: "CIRCLE", Layer: "CUT", Closed: true, X: 7, Y: 8, Radius: 9, Line: 171},
	},
}

// The file above is read as what it draws, however its lines end and are
// indented, and with small letters where the format has capitals.
func TestParse(t *testing.T) {
	text := tags(whole)
	indented := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	for i := 0; i < len(indented); i += 2 {
		indented[i] = strings.Repeat(" ", max(3-len(indented[i]), 0)) + indented[i]
	}
	small := text
	for _, word := range []string{"SECTION", "HEADER", "$ACADVER", "ENDSEC", "TABLES", "TABLE", "ENDTAB", "LAYER", "ENTITIES", "POLYLINE", "VERTEX", "SEQEND", "INSERT", "ATTRIB", "CIRCLE", "EOF"} {
		small = strings.ReplaceAll(small, "\n"+word+"\n", "\n"+strings.ToLower(word)+"\n")
	}
	if strings.Contains(small, "ENDSEC") {
		t.Fatal("not in small letters")
	}
	for name, text := range map[string]string{
		"plain":                 text,
		"windows":               strings.ReplaceAll(text, "\n", "\r\n"),
		"indented":              strings.Join(indented, "\n"),
		"small letters":         small,
		"blanks behind codes":   strings.ReplaceAll(strings.ReplaceAll(text, "8\nCUT", "8 \nCUT "), "10\n", "\t10\t\n"),
		"byte order mark":       "\ufeff" + text,
		"no end of line":        strings.TrimSuffix(text, "\n"),
		"end of file character": text + "\x1a",
		"empty lines":           text + "\r\n \n",
	} {
		got, err := dxfread.Parse([]byte(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if !reflect.DeepEqual(got, wholeFile) {
			t.Errorf("%s:\n%+v\nwant\n%+v", name, got, wholeFile)
		}
	}
}

// $INSUNITS names the unit (1 in, 4 mm); where it is missing or 0, the first
// comment that does.
func TestUnit(t *testing.T) {
	for _, c := range []struct {
		insunits, comments string
		want               dxfread.Unit
	}{
		{"1", "", dxfread.Inch},
		{"     4", "", dxfread.Millimeter},
		{"4", "999 Units: inches|", dxfread.Millimeter},
		{"0", "999 Units: inches|", dxfread.Inch},
		{"6", "999 Units: inches|", dxfread.Unknown}, // meters
		{"", "999 Units: millimeters |999 Units: inches|", dxfread.Millimeter},
		{"", "999 units|999 Units: feet|", dxfread.Unknown},
		{"", "", dxfread.Unknown},
	} {
		header := "0 SECTION|2 HEADER|9 $ACADVER|1 AC1015|"
		if c.insunits != "" {
			header += "9 $INSUNITS|70 " + c.insunits + "|9 $OTHER|70 3|"
		}
		f := parse(t, tags(c.comments+header+"0 ENDSEC|0 SECTION|2 ENTITIES"+tail))
		if f.Unit != c.want || f.Version != "AC1015" {
			t.Errorf("%q, %q: %v in version %q, want %v", c.insunits, c.comments, f.Unit, f.Version, c.want)
		}
	}
	if f := parse(t, tags("0 SECTION|2 ENTITIES"+tail)); f.Version != "" || f.Unit != dxfread.Unknown {
		t.Errorf("without a header: %+v", f)
	}
}

func TestUnitString(t *testing.T) {
	got := []string{dxfread.Unknown.String(), dxfread.Millimeter.String(), dxfread.Inch.String(), dxfread.Unit(9).String()}
	if want := []string{"unknown", "millimeter", "inch", "unknown"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// What is read does not change with the bytes that it was read from.
func TestCopies(t *testing.T) {
	data := []byte(tags(whole))
	f := parse(t, string(data))
	got, err := dxfread.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	for i := range data {
		data[i] = '#'
	}
	if !reflect.DeepEqual(got, f) {
		t.Errorf("%+v", got)
	}
}
