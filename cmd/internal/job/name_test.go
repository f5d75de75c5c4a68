package job

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom/joinery"
)

func TestFileName(t *testing.T) {
	for name, want := range map[string]string{
		"bench-wide": "bench-wide", "Left": "left", "Bench  (wide)": "bench-wide", "top_1.2+": "top-1-2",
		"Tür groß": "tur-gross", "Çekmece Şık": "cekmece-sik", "Łódź": "lodz", "Smørbrød": "smorbrod", "naïve Œuvre": "naive-oeuvre",
		"cafe\u0301s": "cafes", "cafés": "cafes", "抽屉": "unnamed", "抽屉 2": "2", "": "unnamed", "../..": "unnamed",
		"CON": "con-x", "nul": "nul-x", "Com1": "com1-x", "lpt9.": "lpt9-x", "con 1": "con-1", "console": "console",
		"İstanbul": "istanbul", "K": "k", // the Kelvin sign becomes a k in lower case
	} {
		if got := FileName(name); got != want {
			t.Errorf("%q gives %q, want %q", name, got, want)
		}
	}
}

func TestFileNameIsSafe(t *testing.T) {
	safe := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		file := FileName(name)
		if !safe.MatchString(file) {
			t.Fatalf("%q gives %q", name, file)
		}
		if again := FileName(file); again != file {
			t.Fatalf("%q gives %q, and that %q", name, file, again)
		}
	})
}

func TestNameFault(t *testing.T) {
	for _, name := range []string{"a", "7", "bench-wide", "Bench (wide) 1.5+_", "抽屉", "ящик", "हिन्दी", "cafe\u0301", strings.Repeat("é", 40)} {
		if fault := nameFault(name); fault != "" {
			t.Errorf("%q %s", name, fault)
		}
	}
	for _, name := range []string{"", " a", "-a", ".", "..", "../a", "a/b", `a\b`, "a:b", "a*", "a\n", "a\x00", "a\u202e", "\u0301a", "a\ufe0f", "a\u3164", "a\u200d", "a ", "a\u00a0b", strings.Repeat("é", 41), "a\ufffd"} {
		if nameFault(name) == "" {
			t.Errorf("%q passes", name)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"sides", "front", "back", "bottom", "fence-distance", "x", strings.Repeat("a", 40)}
	for word, want := range map[string]string{
		"side": "sides", "Sides": "sides", "isdes": "sides", "frnot": "front", "botom": "bottom", "fence_distance": "fence-distance",
		"fencedistance": "fence-distance", "width": "", "bk": "", "bitter": "", "y": "x", strings.Repeat("a", 41): "", "": "x",
	} {
		if got := nearest(word, known); got != want {
			t.Errorf("%q is near %q, want %q", word, got, want)
		}
	}
}

// TestSharing: a word that is no slip of the finger names the keys that share a part with it.
func TestSharing(t *testing.T) {
	names := func(keys []key) (list []string) {
		for _, k := range keys {
			list = append(list, k.name)
		}
		return list
	}
	for _, c := range []struct {
		keys       []key
		word, want string
	}{
		{drawerKeys, "front", "did you mean `box-front`, `front-gap` or `drawer-front`?"},
		{drawerKeys, "setback", "did you mean `back-setback`?"},
		{joineryKeys, "dado-play", "did you mean `dado-clearance`?"},
		{joineryKeys, "glue_room", "did you mean `glue-space`?"},
		{routerKeys, "Skin", "did you mean `onion-skin`?"},
		{stockKeys, "banding", "did you mean `edge-banding`?"},
		{limitKeys, "most-tongue-play", "did you mean `min-tongue-clearance` or `max-tongue-clearance`?"},
		{limitsOfMachine(joinery.Saw), "most-height", "did you mean `max-height`?"},
		{slideKeys, "behind", "did you mean `clearance-behind`?"},
		{limitsOfMachine(joinery.Saw), "fence-reach", "write `max-height`"}, // one part of four is another thing
		{joineryKeys, "bottom", "did you mean `bottom-fit`, `bottom-height`, `bottom-clearance` or `bottom-clearance-depth`?"},
		{slideKeys, "room-clearance", "write `kind`"}, // in too many
		{dividerKeys, "-", "write `direction`"},
	} {
		if got := DidYouMean(c.word, names(c.keys)); !strings.HasPrefix(got, c.want) {
			t.Errorf("%s: %s", c.word, got)
		}
	}
}

func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"abc", "", 3}, {"abc", "abc", 0}, {"abc", "acb", 1}, {"abc", "axc", 1}, {"kitten", "sitting", 3}, {"ca", "abc", 3}} {
		if got := slips([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("%q to %q takes %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

// TestLettersOnPaper: letters that paper lacks are told of once, where they stand first, in a title or any name.
func TestLettersOnPaper(t *testing.T) {
	for text, want := range map[string]string{
		"job: Bench 抽\n": "1:6 '抽'",
		"stock: {抽屉: {thickness: [12, 12]}, 屉: {thickness: [12, 12]}}\n": "1:9 '抽'",
		"slides: {抽: {kind: side-mount, clearance: 12.7}}\n":             "1:10 '抽'",
		"job: CON\U0001f600\n":                 "1:6 U+1F600",
		"drawers: [{name: Щука}, {name: 抽}]\n": "1:32 '抽'",
	} {
		_, problems := Read("j.yaml", strings.NewReader(text+"units: mm\n"))
		var told []string
		for _, p := range problems {
			if p.Code == CodeLetters {
				_, letter, _ := strings.Cut(p.Message, "have no ")
				told = append(told, fmt.Sprintf("%d:%d %s", p.Line, p.Column, strings.Fields(letter)[0]))
			}
		}
		if len(told) != 1 || told[0] != want+":" {
			t.Errorf("%s: %q", text, told)
		}
	}
}
