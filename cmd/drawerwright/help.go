package main

import (
	"fmt"
	"io"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/reference"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

func newHelp(s streams) *cobra.Command {
	var markdown bool
	c := &cobra.Command{
		Use:   "help [COMMAND | TOPIC]",
		Short: "Explain a command or a topic",
		Long:  helpLong(),
		Example: `  $ drawerwright help joints
  $ drawerwright help build
  $ drawerwright help report drawers.sag
  $ drawerwright help --markdown > topics.md`,
		Args: cobra.MaximumNArgs(2),
		ValidArgsFunction: func(c *cobra.Command, _ []string, _ string) ([]string, cobra.ShellCompDirective) {
			return helped(c.Root()), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 && !markdown {
				return done(c.Root().Help())
			}
			if of := commandOf(c.Root(), args); of != nil && !markdown && reference.Topic(args[0]) == nil {
				of.InitDefaultHelpFlag()
				return done(of.Help())
			}
			text, err := helpText(c.Root(), args, markdown)
			if err != nil {
				return err
			}
			_, err = io.WriteString(s.out, text)
			return done(err)
		},
	}
	c.Flags().BoolVar(&markdown, "markdown", false, "print Markdown; without a name, all topics")
	return c
}

func helpLong() string {
	var b strings.Builder
	b.WriteString("help explains a command, or one of these topics:\n\n")
	for _, t := range reference.Topics {
		fmt.Fprintf(&b, "  %-10s %s\n", t, reference.About(t))
	}
	b.WriteString("\nhelp report PATH explains the fields of one level of report.json.")
	return b.String()
}

// helped are the names that help explains.
func helped(root *cobra.Command) []string {
	list := append([]string{}, reference.Topics...)
	for _, c := range root.Commands() {
		list = append(list, c.Name())
	}
	return list
}

// commandOf is the command that is named alone; nil where none is.
func commandOf(root *cobra.Command, args []string) *cobra.Command {
	for _, c := range root.Commands() {
		if len(args) == 1 && c.Name() == args[0] {
			return c
		}
	}
	return nil
}

// helpText is a topic, a level of the report, or a command as Markdown; all topics where
// nothing is named.
func helpText(root *cobra.Command, args []string, markdown bool) (string, error) {
	switch len(args) {
	case 0:
		var topics []string
		for _, t := range reference.Topics {
			topics = append(topics, reference.TopicMarkdown(t, 1))
		}
		return strings.Join(topics, "\n"), nil
	case 1:
		return topicText(root, args[0], markdown)
	}
	if args[0] != "report" {
		return "", toldError{fmt.Errorf("help takes one name here: write drawerwright help %s", args[0])}
	}
	d := reference.Level(args[1])
	switch {
	case d == nil:
		return "", toldError{fmt.Errorf("report.json has no level %q: %s", args[1],
			job.DidYouMean(args[1], reference.Levels()))}
	case markdown:
		return d.Markdown(1), nil
	}
	return d.Text(), nil
}

// topicText is a topic, and how to read of the command of its name; or a command as Markdown.
func topicText(root *cobra.Command, name string, markdown bool) (string, error) {
	topic, of := reference.Topic(name), commandOf(root, []string{name})
	switch {
	case topic == nil && of == nil:
		if said := reference.Mentioned(name); said != nil {
			return said.Text(), nil
		}
		return "", toldError{fmt.Errorf("there is no command or topic %q: %s", name, job.DidYouMean(name, helped(root)))}
	case topic == nil:
		return append(reference.Doc{{Kind: reference.Title, Text: name}}, commandDoc(of)...).Markdown(1), nil
	case markdown:
		return reference.TopicMarkdown(name, 1), nil
	case of != nil:
		topic = append(topic, reference.Block{Kind: reference.Paragraph,
			Text: fmt.Sprintf("The command: drawerwright %s --help.", name)})
	}
	return topic.Text(), nil
}

// commandsOf explains all commands with their flags.
func commandsOf(root *cobra.Command) reference.Doc {
	d := reference.Doc{{Kind: reference.Title, Text: "Commands"}}
	for _, c := range root.Commands() {
		d = append(d, reference.Block{Kind: reference.Heading, Text: "drawerwright " + c.Name()})
		d = append(d, commandDoc(c)...)
	}
	return d
}

func commandDoc(c *cobra.Command) reference.Doc {
	about := c.Long
	if about == "" {
		about = c.Short + "."
	}
	d := reference.Doc{{Kind: reference.Command, Text: c.UseLine() + "\n"}, {Kind: reference.Paragraph, Text: about}}
	c.LocalFlags().VisitAll(func(f *pflag.Flag) {
		value, usage := pflag.UnquoteUsage(f)
		term := strings.TrimSpace("--" + f.Name + " " + value)
		d = append(d, reference.Block{Kind: reference.Item, Term: term, Text: usage + "."})
	})
	return append(d, reference.Block{Kind: reference.Command, Text: c.Example + "\n"})
}
