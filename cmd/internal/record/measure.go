package record

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"sync"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Length is one in millimeters; in JSON it is in the job's unit. Feeds are lengths a minute.
type Length float64

// MM is the length as geom computes with it.
func (l Length) MM() float64 { return float64(l) }

// In is the length as a number of a unit, as JSON has it: rounded to a nanometer or a billionth of
// an inch, so that the last bits of a computation never show.
func (l Length) In(u geom.Unit) float64 {
	steps := 1e6
	if u == geom.Inch {
		steps = 1e9
	}
	return rounded(l.MM()/u.MM(), steps)
}

// Area is one in square millimeters; in JSON it is in the unit in which board is sold.
type Area float64

// In is the area as a number of [words.Area], as JSON has it.
func (a Area) In(u geom.Unit) float64 {
	area, _ := words.Area(float64(a), u)
	return rounded(area, areaSteps)
}

// Vertex is one of an outline: its place, and the bulge of the side that follows where that
// side is an arc. In JSON it is a list of the two or three numbers.
type Vertex struct {
	X, Y  Length
	Bulge float64
}

// MarshalJSON has the bulge only where there is one.
func (c Vertex) MarshalJSON() ([]byte, error) {
	list := []float64{c.X.MM(), c.Y.MM(), c.Bulge}
	if c.Bulge == 0 {
		list = list[:2]
	}
	return json.Marshal(list)
}

// UnmarshalJSON takes two or three numbers.
func (c *Vertex) UnmarshalJSON(data []byte) error {
	var list []float64
	if err := json.Unmarshal(data, &list); err != nil || len(list) != 2 && len(list) != 3 {
		return &json.UnmarshalTypeError{Value: "what is not two or three numbers", Type: reflect.TypeFor[Vertex]()} // encoding/json adds of what entry
	}
	*c = Vertex{X: Length(list[0]), Y: Length(list[1])}
	if len(list) == 3 {
		c.Bulge = list[2]
	}
	return nil
}

// InUnits is a value as JSON has it: its lengths and areas are numbers of the unit that it names in
// its field Units. A value with lengths that has no such field is an error.
func InUnits(v any) (any, error) {
	if v == nil || !hasMeasures(reflect.TypeOf(v)) {
		return v, nil
	}
	from := reflect.ValueOf(v)
	if from.Kind() != reflect.Struct || !from.FieldByName("Units").IsValid() {
		return nil, fmt.Errorf("%T has lengths and does not say their unit", v)
	}
	to := reflect.New(from.Type()).Elem()
	numbersOf(UnitOf(from.FieldByName("Units").String())).copied(to, from)
	return to.Interface(), nil
}

// UnitOf is the unit that a file names; millimeters where it is none of the program's.
func UnitOf(name string) geom.Unit {
	u, err := geom.ParseUnit(name)
	if err != nil {
		return geom.Millimeter
	}
	return u
}

// Settle gives lengths and areas of a value the digits that JSON in a unit has: whatever is
// made of them prints the same before they are written and after they are read back.
func Settle[T any](v T, u geom.Unit) T {
	numbers, mm := numbersOf(u), millimetersOf(u)
	return eachMeasure(v, measures{
		length: func(v float64) float64 { return mm.length(numbers.length(v)) },
		area:   func(v float64) float64 { return mm.area(numbers.area(v)) },
	})
}

// numbersOf makes lengths and areas numbers of a unit, millimetersOf what they were.
func numbersOf(u geom.Unit) measures {
	return measures{
		length: func(mm float64) float64 { return Length(mm).In(u) },
		area:   func(mm2 float64) float64 { return Area(mm2).In(u) },
	}
}

func millimetersOf(u geom.Unit) measures {
	return measures{
		length: func(v float64) float64 { return v * u.MM() },
		area:   func(v float64) float64 { return words.SquareMM(v, u) },
	}
}

// areaSteps are those of areas: a square centimeter, or a ten thousandth of a square foot.
const areaSteps = 1e4

func rounded(v, steps float64) float64 { return math.Round(v*steps)/steps + 0 } // no negative zero

// Money rounds to hundredths.
func Money(v float64) float64 { return rounded(v, 100) }

// thousandth rounds a ratio.
func thousandth(v float64) float64 { return math.Round(v*1000) / 1000 }

// measures are what becomes of each length and each area.
type measures struct{ length, area func(float64) float64 }

// eachMeasure is a copy of a value in which each length and area is what becomes of it. Parts
// without any are shared with the original.
func eachMeasure[T any](v T, m measures) T {
	var out T
	m.copied(reflect.ValueOf(&out).Elem(), reflect.ValueOf(&v).Elem())
	return out
}

var (
	lengthType = reflect.TypeFor[Length]()
	areaType   = reflect.TypeFor[Area]()
	vertexType = reflect.TypeFor[Vertex]()
)

func (m measures) copied(to, from reflect.Value) {
	t := from.Type()
	switch {
	case t == lengthType:
		to.SetFloat(m.length(from.Float()))
		return
	case t == areaType:
		to.SetFloat(m.area(from.Float()))
		return
	}
	to.Set(from)
	if !hasMeasures(t) {
		return
	}
	switch t.Kind() {
	case reflect.Struct:
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() && hasMeasures(f.Type) {
				m.copied(to.Field(i), from.Field(i))
			}
		}
	case reflect.Array:
		for i := range from.Len() {
			m.copied(to.Index(i), from.Index(i))
		}
	case reflect.Slice:
		if !from.IsNil() {
			to.Set(reflect.MakeSlice(t, from.Len(), from.Len()))
			for i := range from.Len() {
				m.copied(to.Index(i), from.Index(i))
			}
		}
	case reflect.Pointer:
		if !from.IsNil() {
			to.Set(reflect.New(t.Elem()))
			m.copied(to.Elem(), from.Elem())
		}
	}
}

// known has the answers of hasMeasures.
var known sync.Map

// hasMeasures reports whether values of a type have lengths or areas. Maps and interfaces have none
// (TestNoLengthIsMissed).
func hasMeasures(t reflect.Type) bool {
	has, asked := known.Load(t)
	if !asked {
		has = reaches(t, make(map[reflect.Type]bool))
		known.Store(t, has)
	}
	return has.(bool)
}

// reaches is hasMeasures for a type inside of others.
func reaches(t reflect.Type, others map[reflect.Type]bool) bool {
	if t == lengthType || t == areaType {
		return true
	}
	if others[t] {
		return false
	}
	others[t] = true
	switch t.Kind() {
	case reflect.Array, reflect.Slice, reflect.Pointer:
		return reaches(t.Elem(), others)
	case reflect.Struct:
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() && reaches(f.Type, others) {
				return true
			}
		}
	}
	return false
}
