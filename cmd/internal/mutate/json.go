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
	jsonKey   = regexp.MustCompile(`"[\w-]*":`)
)

// ofJSON spoil values and keys.
var ofJSON = []way{
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, one(s, s.format.odd)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, one(s, s.format.odd)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, one(s, oddNumbers)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonValue, s.of(jsonValue)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonKey, s.of(jsonKey)) },
	func(s *spoiler, text string) string { return s.replace(text, jsonKey, "") },
}
