package list

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"drawerwright/geom"
	"drawerwright/geom/nest"
)

const head = "kind,name,length,width,count,price,turn\n"

func TestRead(t *testing.T) {
	got, err := Read("l.csv", strings.NewReader("\ufeffName , LENGTH,width,kind,count,price,turn\n"+
		"\"side, left\",500,140,,12,,\n top , 19 5/8 in,100 mm,part,,,YES\nbirch,2440,1220,sheet,,58.5,\nold,900,600,offcut,2,,\n"), geom.Millimeter)
	if err != nil {
		t.Fatal(err)
	}
	const mm = 1_000_000
	pieces := []nest.Piece{{Name: "side, left", Length: 500 * mm, Width: 140 * mm, Count: 12}, {Name: "top", Length: 498_475_000, Width: 100 * mm, Count: 1, MayRotate: true}} // 19.625 x 25.4
	sheets := []nest.Sheet{{Name: "birch", Length: 2440 * mm, Width: 1220 * mm, Price: 58.5}, {Name: "old", Length: 900 * mm, Width: 600 * mm, Count: 2, Offcut: true}}
	for i, p := range pieces {
		if i >= len(got.Pieces) || got.Pieces[i] != p {
			t.Errorf("got %+v, want %+v", got.Pieces, p)
		}
	}
	for i, s := range sheets {
		if i >= len(got.Sheets) || got.Sheets[i] != s {
			t.Errorf("got %+v, want %+v", got.Sheets, s)
		}
	}
}

// TestNamesPrint: a name that would lose letters, or move what stands behind it, is refused; a shelf would not get it
// back.
func TestNamesPrint(t *testing.T) {
	for name, want := range map[string]string{
		"a\r\nb": "U+000A", "a\tb": "U+0009", "b\u202ec": "U+202E", "s\u200f": "U+200F", "l\u2028m": "U+2028",
		"b\xe9ch": "is not UTF-8 text",
	} {
		text := "name,length,width,kind,batch\nside,5,4,,\ns,100,100,sheet,\"" + name + "\"\n"
		_, err := Read("l.csv", strings.NewReader(text), geom.Millimeter)
		if err == nil || !strings.Contains(err.Error(), "l.csv:3: the name") || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", name, err)
		}
	}
}

func TestReadRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"":                             "l.csv:1: there is no sheet",
		"name,length\n":                "l.csv:1: there is no column width",
		"name,length,width,color\n":    `l.csv:1: "color" is no column heading`,
		"name,length,width\na,1,2,5\n": "l.csv:2: the line has 4 values under 3 column headings",
		"name,length,width\n" + strings.Repeat("x", 101) + ",1,2\n": "has 101 characters",
		"name;length;width\n":                               "l.csv:1: the column headings have semicolons",
		head + "part,a,500,140,1,5,\n":                      `l.csv:2: the part has a price, "5"`,
		head + "sheet,a,500,140,1,5,no\n":                   `l.csv:2: the "sheet" has "no" for turn`,
		head + "sheet,a,500,140,0,,\npart,b,1,1,,,\n":       "l.csv:2: the sheet has a count of 0",
		head + "offcut,a,500,140,00,,\npart,b,1,1,,,\n":     "l.csv:2: the offcut has a count of 0",
		head + "part,a,500,140,0,,\n":                       "l.csv:2: the part has a count of 0",
		head + "part,a,5,4,600000,,\npart,b,5,4,600000,,\n": "l.csv:3: the list has over 1000000 parts",
		"name,length,width,name\n":                          `l.csv:1: "name" stands twice`,
		head + "part,a,500,140,1,,\n":                       "there is no sheet to cut from",
		head + "sheet,a,500,140,1,,\n":                      "there are no parts",
		head + "part,a,0,140,1,,\n":                         `l.csv:2: the length "0" is out of range`,
		head + "part,a,500,x,1,,\n":                         `l.csv:2: the width "x" is no length`,
		head + "part,a,500,140,-1,,\n":                      `l.csv:2: the count "-1" is out of range`,
		head + "part,a,500,140,1.5,,\n":                     `l.csv:2: the count "1.5" is out of range`,
		head + "sheet,a,500,140,,NaN,\n":                    `l.csv:2: the price "NaN" is out of range`,
		head + "part,a,500,140,1,,perhaps\n":                `l.csv:2: turn "perhaps" is neither yes nor no`,
		head + "leaf,a,500,140,1,,\n":                       `l.csv:2: "leaf" is no kind`,
		head + "\n\npart,\"a\nb\",1,1\npart,c,x,1":          `l.csv:6: the length "x" is no length`,
		head + "part,\"a,1,1\n\npart,b,1,1\n":               "l.csv:2: the quotes that open in this line are not closed, or more follows than a comma, up to line 4",
		head + "part,a\"b,1,1\n":                            "l.csv:2: the quotes near character 7 stand within a value",
		head + "part,a,0.004,140,1,,\n":                     `l.csv:2: the length "0.004" is out of range`,
		head + "part,a,\x1b[31m,140\n":                      `the length "\x1b[31m" is no length`,
	} {
		_, err := Read("l.csv", strings.NewReader(text), geom.Millimeter)
		var p Problem
		if err == nil || !strings.Contains(err.Error(), want) || !errors.As(err, &p) || p.Ask.IsEmpty() {
			t.Errorf("%q: %v", text, err)
		}
	}
	if _, err := Read("l.csv", strings.NewReader(head+strings.Repeat("leaf,a,500,140,1,,\n", 1000)),
		geom.Millimeter); strings.Count(err.Error(), "is no kind") != maxProblems {
		t.Errorf("%d problems", strings.Count(err.Error(), "is no kind"))
	}
}

// FuzzRead: whatever a list holds, it is read or refused with a line, and what is read
// may be laid out.
func FuzzRead(f *testing.F) {
	f.Add(head + "part,a,500,140,2,,yes\nsheet,s,1000,1000,,3,\n")
	f.Add("name,length,width\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		if err := readable(text); err != nil {
			t.Fatal(err)
		}
	})
}

// readable reads a list and says what is wrong with what came of it.
func readable(text string) error {
	l, err := Read("l.csv", strings.NewReader(text), geom.Inch)
	if err != nil {
		return placed(text, err)
	}
	for _, s := range l.Sheets {
		if s.Length <= 0 || s.Width <= 0 || s.Count < 0 || !(s.Price >= 0) {
			return fmt.Errorf("%+v", s)
		}
	}
	for _, p := range l.Pieces {
		if p.Length <= 0 || p.Width <= 0 || p.Count < 0 {
			return fmt.Errorf("%+v", p)
		}
	}
	return nil
}

// placed reports whether all problems of a file have a line of it, and print.
func placed(text string, err error) error {
	all, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return fmt.Errorf("no list of problems: %w", err)
	}
	for _, one := range all.Unwrap() {
		var p Problem
		if !errors.As(one, &p) || p.Line < 1 || p.Line > strings.Count(text, "\n")+1 || p.Ask.IsEmpty() {
			return fmt.Errorf("no line, or no way out: %w", one)
		}
		said := one.Error()
		odd := strings.ContainsFunc(said, func(c rune) bool { return c != '\n' && !unicode.IsPrint(c) })
		if odd || !utf8.ValidString(said) || len(said) > 1000 {
			return fmt.Errorf("%q does not print", said)
		}
	}
	return nil
}
