package present

import (
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Remark is a warning or a note as a line of text, and what would end it, in the words of the job file.
type Remark struct{ Text, Hint string }

// Remarks are warnings, or notes, in their order, those that say the same of several drawers in one.
func Remarks(list []record.Warning, level geom.Level) (remarks []Remark) {
	said := make(map[string][]string) // the drawers of a message
	var order []record.Warning
	for _, w := range list {
		if w.Level != level.String() {
			continue
		}
		if said[w.Message] == nil {
			order = append(order, w)
		}
		said[w.Message] = append(said[w.Message], w.Drawer)
	}
	for _, w := range order {
		text := w.Message
		if names := words.Some(said[w.Message]); names != "" {
			text = names + ": " + text
		}
		remarks = append(remarks, Remark{Text: text, Hint: w.Hint})
	}
	return remarks
}

// Gathered are the texts of [Remarks].
func Gathered(list []record.Warning, level geom.Level) (lines []string) {
	for _, r := range Remarks(list, level) {
		lines = append(lines, r.Text)
	}
	return lines
}

// OnPaper is a hint for paper: what it would write into the job file stands in quotes as it is written there, for the
// job would refuse other words.
func OnPaper(hint string) string { return strings.ReplaceAll(hint, "`", `"`) }
