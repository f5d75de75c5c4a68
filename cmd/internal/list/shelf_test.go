package list

import (
	"reflect"
	"strings"
	"testing"

	"drawerwright/geom"
)

func TestShelf(t *testing.T) {
	const text = "stock,name,length,width,batch\r\nbirch,offcut 1,610 mm,24 in,\r\nbirch,offcut 3,500,200,A\r\n"
	s, err := ReadShelf("s.csv", strings.NewReader(text), geom.Millimeter)
	if err != nil {
		t.Fatal(err)
	}
	want := []Offcut{{"birch", "offcut 1", 610_000_000, 609_600_000, ""}, {"birch", "offcut 3", 500_000_000, 200_000_000, "A"}}
	if !reflect.DeepEqual(s.Offcuts, want) {
		t.Fatalf("%+v", s.Offcuts)
	}
	after := s.After(want[:1], []Offcut{{Stock: "birch", Name: "offcut 3", Length: 300_000_000, Width: 100_000_000}, {Stock: "oak", Name: "new", Length: 1, Width: 1}})
	var names []string
	for _, o := range after.Offcuts {
		names = append(names, o.Stock+" "+o.Name)
	}
	if got := strings.Join(names, "; "); got != "birch offcut 3; birch offcut 3 (2); oak new" {
		t.Error(got)
	}
	again, err := ReadShelf("s.csv", strings.NewReader(string(s.CSV(geom.Inch))), geom.Millimeter)
	if err != nil || len(again.Offcuts) != 2 || again.Offcuts[0].Width != 609_600_000 {
		t.Errorf("%+v %v", again, err)
	}
	if empty, err := ReadShelf("s.csv", strings.NewReader(""), geom.Millimeter); err != nil || len(empty.Offcuts) != 0 {
		t.Errorf("an empty file: %v", err)
	}
}

func TestShelfMistakes(t *testing.T) {
	for text, want := range map[string]string{
		"name,length,width\na,1,2\n":                          "s.csv:1: there is no column stock",
		"stock,name,length,width\nbirch,,1,2\n":               "s.csv:2: the offcut has no stock or no name",
		"stock,name,length,width\nbirch,a,1,2\nbirch,a,3,4\n": "s.csv:3: the shelf has two offcuts of \"birch\" named \"a\"",
		"stock,name,length,width\nbirch,a,-1,2\n":             "s.csv:2: the length \"-1\" is",
		"stock,name,length,width,price\nbirch,a,1,2,3\n":      "s.csv:1: \"price\" is no column heading",
		"stock,name,length,width\nbirch,\"a,1,2\n":            "s.csv:2: ",
	} {
		if _, err := ReadShelf("s.csv", strings.NewReader(text),
			geom.Millimeter); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// A shelf that the program has written can be read again, however long the names of job and
// stock are, of which the offcut's is made.
func TestShelfTakesItsOwnNames(t *testing.T) {
	name := strings.Repeat("t", 60) + " " + strings.Repeat("s", maxName) + " 10000-12 (100)"
	text := "stock,name,length,width\n" + strings.Repeat("s", maxName) + "," + name + ",900 mm,900 mm\n"
	if s, err := ReadShelf("", strings.NewReader(text), geom.Millimeter); err != nil || s.Offcuts[0].Name != name {
		t.Error(err)
	}
}
