package job

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/cmd/internal/jobtest"
)

// said counts problems by place and code, or by code alone where places move.
func said(problems Problems, places bool) map[string]int {
	n := make(map[string]int)
	for _, p := range problems {
		k := string(p.Code)
		if places {
			k = fmt.Sprintf("%s:%d %s", p.File, p.Line, p.Code)
		}
		n[k]++
	}
	return n
}

var plainWord = regexp.MustCompile(`[a-z][a-z0-9-]+`)

// TestSuggestionsAreTaken makes a slip of the finger in a key or a word of a job file.
// Each text that a hint then names is taken where the slip was; the nearest one brings
// nothing that is not said of the file without the slip.
func TestSuggestionsAreTaken(t *testing.T) {
	texts := slices.Collect(maps.Values(goodFiles))
	slices.Sort(texts)
	for seed := range uint64(20) {
		texts = append(texts, jobtest.Text(seed))
	}
	taken := make(map[Code]int)
	rapid.Check(t, func(t *rapid.T) {
		text := strings.TrimPrefix(rapid.SampledFrom(texts).Draw(t, "text"), "\ufeff")
		_, sound := Read("job.yaml", strings.NewReader(text), Files(openTest))
		all := plainWord.FindAllStringIndex(text, -1)
		at := rapid.SampledFrom(all).Draw(t, "word")
		word := text[at[0]:at[1]]
		i := rapid.IntRange(0, len(word)-2).Draw(t, "letter")
		slip := map[int]string{0: word[:i] + word[i+1:], 1: word[:i] + word[i:i+1] + word[i:], 2: word[:i] + word[i+1:i+2] + word[i:i+1] + word[i+2:]}[rapid.IntRange(0, 2).Draw(t, "slip")]
		changed := text[:at[0]] + slip + text[at[1]:]
		_, problems := Read("job.yaml", strings.NewReader(changed), Files(openTest))
		before := said(problems, true)
		for _, p := range problems {
			if p.File != "job.yaml" {
				continue
			}
			for n, instead := range p.Instead {
				if !strings.Contains(p.Hint, instead) {
					t.Fatalf("%q does not say %q", p.Hint, instead)
				}
				mended, ok := replaced(changed, p, slip, instead)
				if !ok {
					continue
				}
				taken[p.Code]++
				_, after := Read("job.yaml", strings.NewReader(mended), Files(openTest))
				k := fmt.Sprintf("%s:%d %s", p.File, p.Line, p.Code)
				if said(after, true)[k] >= before[k] {
					t.Fatalf("%s\nis there with %q: %v", p, instead, after)
				}
				if n == 0 && instead == word && len(after) > len(sound) {
					t.Fatalf("%s\nleads with %q to %v", p, instead, after)
				}
			}
		}
	})
	for _, c := range []Code{CodeUnknownKey, CodeUnknownWord, CodeUnknownStock} {
		if taken[c] == 0 {
			t.Errorf("no suggestion for %s was tried", c)
		}
	}
}

// replaced writes something instead of a text that stands at the place of a problem.
func replaced(file string, p Problem, slip, instead string) (string, bool) {
	lines := strings.SplitAfter(file, "\n")
	line := []rune(lines[p.Line-1])
	rest := string(line[p.Column-1:])
	text, end := strings.TrimPrefix(rest, `"`), ",}]:\n#"
	if text != rest {
		end = `"`
	}
	n := strings.IndexAny(text, end)
	if n < 0 || !strings.Contains(text[:n], slip) {
		return "", false
	}
	n = len(strings.TrimRight(text[:n], " \t\r"))
	lines[p.Line-1] = string(line[:p.Column-1]) + rest[:len(rest)-len(text)] + instead + text[n:]
	return strings.Join(lines, ""), true
}

// TestHintsOfMistakes follows the hints of the table of mistakes: a text that is to be
// written instead is taken, and an entry that is to be deleted is missed by nobody.
func TestHintsOfMistakes(t *testing.T) {
	instead, deleted := 0, 0
	for _, m := range mistakes {
		text := m.file()
		_, problems := Read("job.yaml", strings.NewReader(text), Files(openTest))
		before := said(problems, false)
		for _, p := range problems {
			if p.File != "job.yaml" {
				continue
			}
			path := Outlined([]byte(text)).PathOf(p)
			ends := func(how string, whole bool, out []byte, err error) {
				if err != nil {
					return // the text has mistakes that keep it from being patched
				}
				_, after := Read("job.yaml", strings.NewReader(string(out)), Files(openTest))
				now, here := said(after, false), func(q Problem) bool { return q.Code == p.Code && q.Line == p.Line && q.Column == p.Column }
				if whole && now[string(p.Code)] >= before[string(p.Code)] || !whole && slices.ContainsFunc(after, here) {
					t.Errorf("%s: %s\nis there when %s: %v\n%s", m.name, p, how, after, out)
				}
				for k, n := range now {
					if n > before[k] && whole {
						t.Errorf("%s: %s\nwhen %s leads to %s: %v\n%s", m.name, p, how, k, after, out)
					}
				}
			}
			for _, word := range p.Instead {
				if p.Code == CodeUnknownKey {
					continue // that of a key is its own test
				}
				out, err := Patch([]byte(text), Edit{Path: path, Value: word})
				ends("it is "+word, false, out, err) // what follows from the value is said then
				instead++
			}
			if strings.HasPrefix(p.Hint, "delete it") {
				out, err := Remove([]byte(text), path...)
				ends("it is deleted", true, out, err)
				deleted++
			}
		}
	}
	if instead < 10 || deleted < 10 {
		t.Errorf("%d texts and %d deletions were tried", instead, deleted)
	}
}

// TestWhereAnEntryBelongs: of an entry that is none, the nearest is named, or the section that
// has it; not all that there are. Of a length that is nearly one it is said what is wrong.
func TestWhereAnEntryBelongs(t *testing.T) {
	for router, want := range map[string]string{
		"over-run: 2":           "did you mean `overcut`?",
		"reliefs: t-bone":       "did you mean `relief`?",
		"keep: 3":               "`keep-out` belongs below `stock:`",
		"bottom-fit: flush":     "`bottom-fit` belongs below `joinery:`",
		"onion-skin: 1 9/8 in":  "9/8 is not less than 1; write 2 1/8",
		"onion-skin: 1 8/8 in":  "8/8 is not less than 1; write 2",
		"onion-skin: 1/0 in":    "a fraction of 0 parts is no length",
		"onion-skin: thick":     `write it like 12.21, 12 mm, 1/2 in or 17 5/8"`,
		"onion-skin: 1' 2":      `write inches after the feet, as in 1' 5 5/8"`,
		"overcut: 2, zzzzz: no": "write `relief`, `exact-slots`",
	} {
		_, problems := Read("job.yaml", strings.NewReader("units: mm\nrouter: {"+router+"}\n"))
		if !slices.ContainsFunc(problems, func(p Problem) bool { return p.Line == 2 && strings.HasPrefix(p.Hint, want) }) {
			t.Errorf("%s: no hint %q: %+v", router, want, problems)
		}
	}
}
