package reference

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
)

// EntriesMarkdown explains entries of the job file, titles at a level.
func EntriesMarkdown(entries []job.Entry, level int) string {
	var parts []string
	for _, e := range entries {
		parts = append(parts, Entry(e).Markdown(level))
	}
	return strings.Join(parts, "\n")
}

// TopicMarkdown is a topic with its title at a level; that of the report has all its fields.
func TopicMarkdown(name string, level int) string {
	text := Topic(name).Markdown(level)
	if name == "report" {
		text += reportInWhole(level + 1)
	}
	return text
}

// Markdown is the whole reference: the entries of the job file, the commands, and all topics.
func Markdown(commands Doc) string {
	parts := []string{"# Reference of drawerwright\n", "## The job file\n", EntriesMarkdown(job.Entries(), 3),
		commands.Markdown(2)}
	for _, t := range Topics {
		parts = append(parts, TopicMarkdown(t, 2))
	}
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "" }), "\n")
}
