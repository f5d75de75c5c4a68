package mutate

import (
	"regexp"
	"strconv"
)

// oddJSON are values of all types, and what is none.
var oddJSON = func() []string {
	list := []string{"null", "true", "[]", "{}", "[null]", `{"":0}`, "[[]]", "[0]", `"` + `\ud800` + `"`, `"\u202e"`, "'x'", ",", ":", "[", "}", `"`, "//", "01", "1.", "-",
		nested("[", "1", "]"), nested(`{"a":`, "1", "}"), nested("[", "1", "")}
	for _, word := range oddWords {
		list = append(list, strconv.Quote(word))
	}
	return append(list, oddNumbers...)
}()

var (
	jsonValue = regexp.MustCompile(`"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*|true|false|null`)
	jsonText  = regexp.MustCompile(`: "(?:[^"\\]|\\.)*"`)
	jsonPoint = regexp.MustCompile(`-?\d+\.\d+`)
	jsonWhole = regexp.MustCompile(`: \d+\b`)
	jsonKey   = regexp.MustCompile(`"[\w-]*":`)
)

// ofValues leave what a reader takes, mostly: values of the same kind.
var ofValues = []way{
	func(s *spoiler, text string) string { return s.replace(text, jsonText, s.of(jsonText)) },
	func(s *spoiler, text string) string {
		return s.replace(text, jsonText, ": "+strconv.Quote(one(s, oddWords)))
	},
	func(s *spoiler, text string) string { return s.replace(text, jsonPoint, s.of(jsonPoint)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonPoint, one(s, oddNumbers)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonWhole, s.of(jsonWhole)) },
	func(s *spoiler, text string) string {
		return s.replace(text, jsonWhole, one(s, []string{": -1", ": 0", ": 1", ": 1000000"}))
	},
}

// ofJSON spoil values and keys.
var ofJSON = []way{
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, one(s, s.format.odd)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, one(s, s.format.odd)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, one(s, oddNumbers)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, s.of(jsonValue)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonKey, s.of(jsonKey)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonKey, "") },
}
