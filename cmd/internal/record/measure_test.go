package record

import (
	"bytes"
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// filled is a value of a type with numbers in all of its fields, and two entries in each list.
func filled(t reflect.Type, next func(reflect.Type) float64) reflect.Value {
	v := reflect.New(t).Elem()
	switch t.Kind() {
	case reflect.Float64:
		v.SetFloat(next(t))
	case reflect.Pointer:
		v.Set(reflect.New(t.Elem()))
		v.Elem().Set(filled(t.Elem(), next))
	case reflect.Struct:
		for i := range t.NumField() {
			v.Field(i).Set(filled(t.Field(i).Type, next))
		}
	case reflect.Array:
		for i := range t.Len() {
			v.Index(i).Set(filled(t.Elem(), next))
		}
	case reflect.Slice:
		for range 2 {
			v.Set(reflect.Append(v, filled(t.Elem(), next)))
		}
	}
	return v
}

// TestSettledIsReadBack: a settled report is, to the last bit, what is read of the file that is
// written of it, and settling it again changes nothing.
func TestSettledIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")
		draw := rapid.Float64Range(-5000, 5000)
		r := filled(reflect.TypeFor[Report](), func(reflect.Type) float64 { return draw.Draw(t, "mm") }).Interface().(Report)
		r.Units = u.String()
		r = Settle(r, u)
		if again := Settle(r, u); !reflect.DeepEqual(r, again) {
			t.Fatal("settled twice it is another")
		}
		data, err := JSON(r)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Read(data)
		if err != nil || !reflect.DeepEqual(r, back) {
			t.Fatalf("not read back as it was: %v", err)
		}
	})
}

// TestEveryLengthIsConverted: where all lengths are 1 in, report.json in inches has no 25.4, and they
// are 1 in when it is read.
func TestEveryLengthIsConverted(t *testing.T) {
	inch := func(of reflect.Type) float64 {
		if of == lengthType {
			return geom.InchMM
		}
		return 0
	}
	r := filled(reflect.TypeFor[Report](), inch).Interface().(Report)
	r.Units = geom.Inch.String()
	data, err := JSON(r)
	if err != nil || bytes.Contains(data, []byte("25.4")) || bytes.Count(data, []byte(": 1")) < 200 {
		t.Errorf("%v, or a length that is no number of inches:\n%s", err, data)
	}
	if back, err := Read(data); err != nil || !reflect.DeepEqual(back, r) {
		t.Errorf("%v, or read back as another length", err)
	}
}

// TestNumbersOfJSON: 1 in is 25.4 mm exactly, 1 sq ft 144 x 25.4 x 25.4 = 92,903.04 mm2. Lengths
// are rounded to a nanometer or a billionth of an inch, areas to four decimals.
func TestNumbersOfJSON(t *testing.T) {
	for _, c := range []struct {
		unit         geom.Unit
		length, area float64
		want         string
	}{
		{geom.Millimeter, 12.34567891, 1_234_567, `{12.345679 1.2346}`},
		{geom.Inch, 25.4, 92903.04, `{1 1}`},
		{geom.Inch, 25.4 / 3, 92903.04 / 3, `{0.333333333 0.3333}`},
		{geom.Millimeter, math.Copysign(0, -1), 0, `{0 0}`},
	} {
		r := Report{Units: c.unit.String(), Drawers: []Drawer{{MaxOpen: Length(c.length)}},
			Material: []Stock{{Area: Area(c.area)}}}
		data, err := JSON(r)
		var got struct {
			Drawers []struct {
				Open json.Number `json:"max_open"`
			}
			Material []struct{ Area json.Number }
		}
		if err != nil || json.Unmarshal(data, &got) != nil {
			t.Fatal(err)
		}
		if text := "{" + got.Drawers[0].Open.String() + " " + got.Material[0].Area.String() + "}"; text != c.want {
			t.Errorf("%g mm, %g mm2 are %s in %s, want %s", c.length, c.area, text, c.unit, c.want)
		}
		if r.Drawers[0].MaxOpen != Length(c.length) {
			t.Errorf("writing it has changed the report")
		}
	}
}

// TestNoLengthIsMissed: conversion does not look into maps and interfaces, so they have none.
func TestNoLengthIsMissed(t *testing.T) {
	seen := make(map[reflect.Type]bool)
	var walk func(reflect.Type, bool)
	walk = func(of reflect.Type, hidden bool) {
		switch of.Kind() {
		case reflect.Map, reflect.Interface:
			hidden = true
		}
		if of == lengthType || of == areaType {
			if hidden {
				t.Errorf("%s is within a map", of)
			}
			return
		}
		switch of.Kind() {
		case reflect.Map, reflect.Slice, reflect.Array, reflect.Pointer:
			walk(of.Elem(), hidden)
		case reflect.Struct:
			if seen[of] {
				return
			}
			seen[of] = true
			for i := range of.NumField() {
				walk(of.Field(i).Type, hidden)
			}
		}
	}
	walk(reflect.TypeFor[Report](), false)
	walk(reflect.TypeFor[Sheets](), false)
	if !seen[vertexType] {
		t.Error("no outlines were seen")
	}
}

// TestUnitIsSaid: lengths are never written in a unit that nobody has said.
func TestUnitIsSaid(t *testing.T) {
	if data, err := JSON([]Size{{Width: 1}}); err == nil || !strings.Contains(err.Error(), "unit") {
		t.Errorf("%s, %v", data, err)
	}
	if data, err := JSON([]string{"a"}); err != nil || !bytes.Contains(data, []byte(`"a"`)) {
		t.Errorf("%s, %v", data, err)
	}
}

// TestVertices: two numbers, or three with the bulge of an arc.
func TestVertices(t *testing.T) {
	for text, want := range map[string]Vertex{`[1,2]`: {1, 2, 0}, `[1,2,0.5]`: {1, 2, 0.5}} {
		var v Vertex
		if err := json.Unmarshal([]byte(text), &v); err != nil || v != want {
			t.Errorf("%s is %v, %v", text, v, err)
		}
		if back, err := json.Marshal(v); err != nil || string(back) != text {
			t.Errorf("%v is %s, %v", v, back, err)
		}
	}
	for _, text := range []string{`[]`, `[1]`, `[1,2,3,4]`, `null`, `"x"`, `{"X":1}`} {
		if err := json.Unmarshal([]byte(text), new(Vertex)); err == nil {
			t.Errorf("%s is a corner", text)
		}
	}
}
