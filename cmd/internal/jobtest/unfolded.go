package jobtest

import "strings"

// Unfolded is the text of parts.txt with the lines whole that it folds, to look for sentences in.
func Unfolded(text []byte) string { return strings.ReplaceAll(string(text), "\n        ", " ") }
