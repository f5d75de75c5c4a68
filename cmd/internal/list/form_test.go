package list

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"drawerwright/cmd/internal/mutate"
	"drawerwright/geom"
)

// formFields are those of two drawers.
var formFields = map[string][]Field{
	"=wide, oak": {{"=wide, oak", "width of a dado", "6.35", "6.29", "6.44", 6.35, 5},
		{"=wide, oak", "recess (proud below 0)", "0.00", "-0.25", "0.25", 0, 5}},
	"tray": {{"tray", "diagonal one", "679.41", "678.42", "680.41", 679.41, 67}},
}

// fieldsOf are those of a drawer.
func fieldsOf(drawer string) ([]Field, bool) {
	f, known := formFields[drawer]
	return f, known
}

// readForm reads a form in millimeters.
func readForm(text string) ([]Filled, error) {
	return ReadForm("f.csv", strings.NewReader(text), geom.Millimeter, fieldsOf)
}

const formHead = "drawer,what,right,least,most,reading\n"

// TestForm: what is written into an empty form is read back, each with its row; lines without a reading are left out.
func TestForm(t *testing.T) {
	empty := string(WriteForm(append(formFields["=wide, oak"], formFields["tray"]...)))
	const want = "drawer,what,right,least,most,reading\r\n\"'=wide, oak\",width of a dado,6.35,6.29,6.44,\r\n" +
		"\"'=wide, oak\",recess (proud below 0),0.00,-0.25,0.25,\r\ntray,diagonal one,679.41,678.42,680.41,\r\n"
	if empty != want {
		t.Fatalf("%q", empty)
	}
	filled := strings.NewReplacer("0.25,\r", "0.25,-0.31\r", "680.41,\r", "680.41,26 3/4 in\r").Replace(empty)
	got, err := readForm(filled)
	if want := []Filled{{"=wide, oak", 1, -0.31}, {"tray", 0, 679.45}}; err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v %v", got, err)
	}
	// A spreadsheet drops zeros and adds empty lines, a person drops columns and writes marks.
	for _, text := range []string{"what,reading,drawer,right\ndiagonal one,679,tray,679.410\n",
		"drawer,what,reading\ntray,diagonal one,679\n,,\n",
		"drawer,what,reading\ntray,diagonal one,26.7322834646\"\n"} {
		if got, err := readForm(text); err != nil || len(got) != 1 || math.Abs(got[0].MM-679) > 1e-5 {
			t.Errorf("%q: %+v %v", text, got, err)
		}
	}
}

// TestFormMistakes: each mistake is named with its line, its column, its field, what stands there and what to write;
// written so, the line is read.
func TestFormMistakes(t *testing.T) {
	const before = "tray,diagonal one,679.41,678.42,680.41,679\n"
	const right = "\"=wide, oak\",width of a dado,6.35,6.29,6.44,6.4"
	for wrong, want := range map[string][2]string{
		"wide,width of a dado,6.35,6.29,6.44,6.4":               {`column 1, drawer: "wide" is no drawer of the job`, "as the job has it"},
		"\"=wide, oak\",width,6.35,6.29,6.44,6.4":               {`column 2, what: "width" is not read on a box`, "as a new form has it"},
		"\"=wide, oak\",width of a dado,6.30,6.29,6.44,6.4":     {`column 3, right: "6.30" is not what the job has now, "6.35"`, "write the form anew"},
		"\"=wide, oak\",width of a dado,6.35,6.2,6.44,6.4":      {`column 4, least: "6.2" is not what the job has now, "6.29"`, "write the form anew"},
		"\"=wide, oak\",width of a dado,6.35,6.29,x,6.4":        {`column 5, most: "x" is not what the job has now, "6.44"`, "write the form anew"},
		"\"=wide, oak\",width of a dado,6.35,6.29,6.44,\"6,4\"": {`column 6, reading: "6,4" for the width of a dado has a comma`, "as 6.35"},
		"\"=wide, oak\",width of a dado,6.35,6.29,6.44,wide":    {`column 6, reading: "wide" for the width of a dado is no length`, "as 6.35 or 6.35 mm"},
		"\"=wide, oak\",width of a dado,6.35,6.29,6.4,":         {`column 5, most: "6.4" is not what the job has now, "6.44"`, "a reading goes into the last column"},
		"\"=wide, oak\",width of a dado,6.35,6.29,6.44,64":      {`column 6, reading: "64" for the width of a dado is too far from "6.35"`, "decimal point"},
		"\"=wide, oak\",width of a dado,6.35,6.29,6.44,6,4":     {"the line has 7 values under 6 column headings", "decimal points"},
		"tray,diagonal one,679.41,678.42,680.41,678":            {`column 2, what: "diagonal one" stands in line 2 too`, "delete one of the two"},
	} {
		_, err := readForm(formHead + before + wrong + "\n")
		var p Problem
		if !errors.As(err, &p) || p.Line != 3 || !strings.Contains(err.Error(), want[0]) ||
			!strings.Contains(err.Error(), want[1]) {
			t.Errorf("%q: %v", wrong, err)
		}
	}
	if _, err := readForm(formHead + before + right + "\n"); err != nil {
		t.Error(err)
	}
	for text, want := range map[string]string{formHead: "no reading is filled in", "drawer,what\n": "no column reading"} {
		if _, err := readForm(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// spoiledForms are forms as shops may have filled them in.
var spoiledForms = []mutate.Sample{
	{Name: "as written", Text: strings.ReplaceAll(formHead, "\n", "\r\n") +
		"\"'=wide, oak\",width of a dado,6.35,6.29,6.44,6.4\r\n\"'=wide, oak\",recess (proud below 0),0.00,-0.25,0.25,-0.1\r\ntray,diagonal one,679.41,678.42,680.41,679\r\n"},
	{Name: "by hand", Text: "reading,what,drawer\n1/4 in,width of a dado,\"=wide, oak\"\n,recess (proud below 0),\"=wide, oak\"\n26 3/4\",diagonal one,tray\n"},
}

// readableForm reads a form, and what it holds once more as it would be written.
func readableForm(text string) error {
	got, err := readForm(text)
	if err != nil {
		return placed(text, err)
	}
	var again strings.Builder
	again.WriteString("drawer,what,reading\n")
	for _, one := range got {
		f := formFields[one.Drawer][one.Field]
		fmt.Fprintf(&again, "%q,%q,%.6f\n", one.Drawer, f.What, one.MM) // nanometers
	}
	if back, err := readForm(again.String()); err != nil || !reflect.DeepEqual(got, back) {
		return fmt.Errorf("%+v was read again as %+v: %w", got, back, err)
	}
	return nil
}

// TestSpoiledForms: a spoiled form is read, or refused with the lines of what is wrong.
func TestSpoiledForms(t *testing.T) {
	mutate.CSV.Each(t, spoiledForms, func(spoiled mutate.Sample) error { return readableForm(spoiled.Text) })
}

// FuzzForm: whatever a form holds, it is read or refused with a line.
func FuzzForm(f *testing.F) {
	for _, s := range spoiledForms {
		f.Add(s.Text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if err := readableForm(text); err != nil {
			t.Fatal(err)
		}
	})
}
