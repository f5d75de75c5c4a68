package mutate

import (
	"regexp"
	"strings"
)

// deep is how many brackets stand within each other: a hundred times what readers take.
const deep = 3_000

// nested is a value in brackets.
func nested(open, inner, shut string) string {
	return strings.Repeat(open, deep) + inner + strings.Repeat(shut, deep)
}

// oddNumbers are the ends of what numbers can be, and past them.
var oddNumbers = []string{"0", "-0", "-1", "0.001", "0.5", "1", "2", "3", "40", "100", "999", "1000", "100000", "2147483648", "9223372036854775808", "1e308", "-1e308", "1e-308",
	"1e400", "NaN", "-Inf", strings.Repeat("9", longest)}

// oddPaths lead out of a folder, or to what is no file.
var oddPaths = []string{"../report.json", "../../../../../../etc/passwd", "/etc/passwd", "/dev/zero", "/proc/self/mem", ".", "..", "", "CON", "aux.txt", `..\..\x`, `C:\x`, "a/../../b",
	"file:///etc/passwd", "link", "a\x00b"}

// oddWords stand for values of any format.
var oddWords = append(append([]string{"x", "true", "mm", "in", "none", strings.Repeat("x", longest)}, oddNumbers...), oddPaths...)

var oddYAML = append([]string{"null", "~", ".nan", ".inf", "[]", "{}", "[1, 2, 3]", "{a: b}", "&a", "*a", "!!binary x", "|", ">", "? a", "<<: *a", "&a [*a]", "- -", "---", "...", "%YAML 9.0",
	"'", `"`, "#", "@", "`", "a: b: c", "0x10", "0o17", "1_000", "2026-01-01", "yes", "12 mm", "1/2 in", "1/0", "3/4", "1 1/2", "-1/2", "12,5", "12.5 in", "400 x 100 x 300", "1x1x1", "0 x 0 x 0",
	"9999 x 9999 x 9999", "40 kg", "100 lb", "5'", "50%", nested("[", "1", "]"), nested("{a: ", "1", "}"), nested("- ", "1", ""), nested("[", "1", "")}, oddWords...)

var (
	token = regexp.MustCompile(`[^\s,:\[\]{}]+`)
	value = regexp.MustCompile(`[^\n:,\[\]{}]*[^\s:,\[\]{}]`)
	key   = regexp.MustCompile(`[\w-]+:`)
	entry = regexp.MustCompile(`[\w-]+: [^,{}\[\]\n]+`)
	digit = regexp.MustCompile(`\d[\d.]*`)
)

// ofEntries leave a file that a reader takes, mostly: what is worked out of it has to stand it.
var ofEntries = []way{
	func(s *spoiler, text string) string { return s.replace(text, digit, s.of(digit)) },
	func(s *spoiler, text string) string { return s.replace(text, digit, one(s, oddNumbers)) },
	func(s *spoiler, text string) string { // what another sample has under the same key
		at := s.place(text)
		found := entry.FindStringIndex(text[at:])
		if found == nil {
			return text
		}
		from, to := at+found[0], at+found[1]
		name, _, _ := strings.Cut(text[from:to], ": ")
		other := one(s, s.samples).Text
		if n := strings.Index(other, name+": "); n >= 0 {
			return text[:from] + entry.FindString(other[n:]) + text[to:]
		}
		return text
	},
}

// ofTokens spoil words, values and keys.
var ofTokens = []way{
	func(s *spoiler, text string) string { return s.replace(text, value, one(s, s.format.odd)) },
	func(s *spoiler, text string) string { return s.replace(text, value, s.of(value)) },
	func(s *spoiler, text string) string { return s.replace(text, token, one(s, s.format.odd)) },
	func(s *spoiler, text string) string { return s.replace(text, token, s.of(token)) },
	func(s *spoiler, text string) string { return s.replace(text, key, s.of(key)) },
	func(s *spoiler, text string) string { // further in, or out
		from, _ := line(text, s.place(text))
		if s.IntN(2) == 0 && strings.HasPrefix(text[from:], " ") {
			return text[:from] + text[from+1:]
		}
		return text[:from] + one(s, []string{" ", "  ", "\t", "- ", "    "}) + text[from:]
	},
}

// replace puts something in the place of what an expression finds behind some place, or else before it.
func (s *spoiler) replace(text string, what *regexp.Regexp, by string) string {
	for _, from := range []int{s.place(text), 0} {
		if at := what.FindStringIndex(text[from:]); at != nil {
			return text[:from+at[0]] + by + text[from+at[1]:]
		}
	}
	return text
}

// of finds something in one of the samples.
func (s *spoiler) of(what *regexp.Regexp) string {
	text := one(s, s.samples).Text
	return what.FindString(text[s.place(text):])
}
