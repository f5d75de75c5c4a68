package reference

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/words"
)

// message is one that the program printed of a fixture in testdata/messages, as its code's sample.
type message struct {
	Code    string `json:"code"`
	Level   string `json:"level"`             // error, warning or note
	Command string `json:"command,omitempty"` // that prints it, where it is not about a job file
	Message string `json:"message"`
	Hint    string `json:"hint,omitempty"`
}

// messagesTable is written by TestMessages with -update: to print the samples anew takes seconds.
//
//go:embed messages.json
var messagesTable []byte

// messages are the samples of all codes, in the order of the codes.
func messages() (list []message) {
	if err := json.Unmarshal(messagesTable, &list); err != nil {
		panic(fmt.Sprintf("messages.json: %v", err)) // it is part of the program
	}
	return list
}

// messageItems lists the samples below what their level means.
func messageItems() (d Doc) {
	all := messages()
	for _, l := range []struct{ level, one, several, means string }{
		{"error", "error", "errors", "The job cannot be built."},
		{"warning", "warning", "warnings", "It can be made, and may come out wrong or hurt."},
		{"note", "note", "notes", "More work, or a thing to know; nothing comes out wrong."},
	} {
		var items Doc
		for _, m := range all {
			if m.Level == l.level {
				items = append(items, Block{Kind: Item, Term: m.Code, Text: m.text()})
			}
		}
		head := words.Count(len(items), l.one, l.several)
		d = append(d, Block{Kind: Heading, Text: strings.ToUpper(head[:1]) + head[1:]},
			Block{Kind: Paragraph, Text: l.means})
		d = append(d, items...)
	}
	return d
}

// text is the message, and what to do.
func (m message) text() string {
	text := m.Message + "."
	if m.Command != "" {
		text = "`drawerwright " + m.Command + "`: " + text
	}
	if m.Hint != "" {
		text += " **hint:** " + m.Hint + "."
	}
	return text
}
