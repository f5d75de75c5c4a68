package job

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestFormText: a form calls entries by the titles of their fields, and names no key, no line and no file.
func TestFormText(t *testing.T) {
	drawer := []string{"drawers", "0"}
	for _, c := range []struct {
		path       []string
		text, want string
	}{
		{append(drawer, "fasteners"), "fasteners does nothing here: it is for a butt joint, and this is dado-rabbet",
			"Fasteners does nothing here: it is for a butt joint, and this is dado-rabbet"},
		{append(drawer, "fasteners"), "delete it, or write `joint: butt`", "clear it, or set Corner joint to butt"},
		{append(drawer, "bottom"), "write `cutter: {groove-cutter: 3.18 mm}` and write `joinery: {groove-clearance: 0.22 mm}`",
			"set Cutting tool, Cutter for the bottom's grooves to 3.18 mm and set Joinery, Clearance in the grooves to 0.22 mm"},
		{drawer, "write `outside: width x height x depth` there, or `opening:` and `slide:`",
			"fill in Outside size of the box there, or Opening and Slide"},
		{append(drawer, "rows"), "for drawers above each other in one opening write `rows:` instead, as in `rows: 3`",
			"for drawers above each other in one opening fill in Rows instead, as in Rows: 3"},
		{drawer, "write a bottom-height of 12 mm or more; or write joint: rabbet", "set Height of the bottom's groove to 12 mm or more; or set Corner joint to rabbet"},
		{drawer, "write `max-height: 60 mm` under machines: router-table", "set Highest cut to 60 mm under Limits of the machines, Router table"},
		{append(drawer, "joint"), "write `butt` or `rabbet`", "choose butt or rabbet"},
		{append(drawer, "load"), "write `kg` or `lb` after the number", "write kg or lb after the number"},
		{append(drawer, "outside"), "the width of outside has an unknown unit", "the width of Outside size of the box has an unknown unit"},
		{append(drawer, "sides"), "sides: the file has no stock \"brich\"", "Sides: the job has no stock \"brich\""},
		{[]string{"cutter", "width"}, "width is 3 mm", "Width of one pass is 3 mm"},
		{nil, "a plain sentence with box-joint in it", "a plain sentence with box-joint in it"},
	} {
		if got := FormText(c.text, c.path); got != c.want {
			t.Errorf("%q is %q, want %q", c.text, got, c.want)
		}
	}
}

// fileWords are what a form does not say of a field: marks of the file, and its keys with hyphens.
var fileWords = regexp.MustCompile("`|\\{[a-z]|\\bwrite [a-z-]+:")

// TestFormWordsOfMistakes: of no mistake that can be made in a form it says what to write into a file.
func TestFormWordsOfMistakes(t *testing.T) {
	hyphened := regexp.MustCompile(`[a-z]+(-[a-z]+)+`)
	tried := 0
	for _, c := range mistakes {
		text := c.to
		if c.from != "" {
			text = strings.Replace(base, c.from, c.to, 1)
		}
		_, problems := Read("", strings.NewReader(text))
		o := Outlined([]byte(text))
		for _, p := range problems {
			if slices.Contains(ofText, p.Code) || p.Code == CodeBadName {
				continue
			}
			message, hint := p.InForm(o.PathOf(p))
			for _, said := range []string{message, hint} {
				tried++
				if strings.Contains(said, "choose - ") { // a list without any is of a file
					continue
				}
				if fileWords.MatchString(said) {
					t.Errorf("%s: %q", c.name, said)
				}
				for _, word := range hyphened.FindAllString(said, -1) {
					if keyWords().titles[word] != "" && !isWord(word) && !strings.Contains(text, `"`+word) {
						t.Errorf("%s: the key %s in %q", c.name, word, said)
					}
				}
			}
		}
	}
	if tried < 100 {
		t.Errorf("only %d texts", tried)
	}
}
