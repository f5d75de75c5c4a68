package dxfread_test

import (
	"strings"
	"testing"

	"drawerwright/export/dxf/dxfread"
)

// tags gives the text of pairs that are separated by bars, each a group code and
// its value behind a blank: "0 LINE|8 CUT".
func tags(pairs string) string {
	var b strings.Builder
	for pair := range strings.SplitSeq(pairs, "|") {
		code, value, _ := strings.Cut(pair, " ")
		b.WriteString(code + "\n" + value + "\n")
	}
	return b.String()
}

// The head and the tail around entities. The first entity begins in line 5.
const (
	head = "0 SECTION|2 ENTITIES|"
	tail = "|0 ENDSEC|0 EOF"
)

func parse(t *testing.T, text string) *dxfread.File {
	t.Helper()
	f, err := dxfread.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// one reads the only entity there is.
func one(t *testing.T, entity string) dxfread.Entity {
	t.Helper()
	f := parse(t, tags(head+entity+tail))
	if len(f.Entities) != 1 {
		t.Fatalf("%d entities, want 1: %+v", len(f.Entities), f.Entities)
	}
	return f.Entities[0]
}
