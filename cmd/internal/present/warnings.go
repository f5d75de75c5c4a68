package present

import (
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Gathered are warnings, or notes, in their order as lines of text, those that say the same of
// several drawers in one.
func Gathered(list []record.Warning, level geom.Level) (lines []string) {
	said := make(map[string][]string) // the drawers of a message
	var order []string
	for _, w := range list {
		if w.Level != level.String() {
			continue
		}
		if said[w.Message] == nil {
			order = append(order, w.Message)
		}
		said[w.Message] = append(said[w.Message], w.Drawer)
	}
	for _, message := range order {
		if names := words.Some(said[message]); names != "" {
			message = names + ": " + message
		}
		lines = append(lines, message)
	}
	return lines
}
