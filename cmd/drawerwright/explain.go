package main

import (
	"io"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/reference"

	"github.com/spf13/cobra"
)

func newExplain(s streams) *cobra.Command {
	var markdown bool
	c := &cobra.Command{
		Use:   "explain [PATH]",
		Short: "Explain an entry of the job file, or list all of them",
		Long: `explain says all about an entry of the job file: what it means, what is written
for it, in which unit and range, what holds without it and why, and an example.
PATH may leave out what is not needed to tell the entry from others: bottom-fit
is enough. Without PATH all entries are listed. With --markdown and no PATH it
prints the whole reference: entries, commands and topics. explain messages lists
every kind of message that there can be about a job, and what to do.`,
		Example: `  $ drawerwright explain
  $ drawerwright explain router.tabs
  $ drawerwright explain messages
  $ drawerwright explain --markdown > reference.md`,
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return append(entryPaths(), messagesTopic), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			text := reference.Tree()
			switch {
			case len(args) == 0 && markdown:
				text = reference.Markdown(commandsOf(c.Root()))
			case len(args) == 1 && args[0] == messagesTopic:
				text = reference.Topic(messagesTopic).Text()
				if markdown {
					text = reference.TopicMarkdown(messagesTopic, 1)
				}
			case len(args) == 1:
				entries, err := job.Explained(args[0])
				if err != nil {
					return toldError{err}
				}
				text = entriesText(args[0], entries, markdown)
			}
			_, err := io.WriteString(s.out, text)
			return done(err)
		},
	}
	c.Flags().BoolVar(&markdown, "markdown", false, "print Markdown")
	return c
}

// messagesTopic is the topic that explain gives too: it is about the job file.
const messagesTopic = "messages"

// entriesText explains the entry that was asked for, or says which of several it may be.
func entriesText(asked string, entries []job.Entry, markdown bool) string {
	switch {
	case markdown:
		return reference.EntriesMarkdown(entries, 1)
	case len(entries) == 1:
		return reference.Entry(entries[0]).Text()
	}
	return reference.Choose(asked, entries).Text()
}

func entryPaths() (list []string) {
	for _, e := range job.Entries() {
		list = append(list, e.Path)
	}
	return list
}
