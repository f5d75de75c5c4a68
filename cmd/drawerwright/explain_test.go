package main

import (
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/reference"
	"drawerwright/geom/joinery"
	"drawerwright/geom/testcut"

	"github.com/spf13/pflag"
)

// TestExplain: entries are found by their path, or by as much of it as tells them apart; a
// wrong one gets a suggestion.
func TestExplain(t *testing.T) {
	for args, c := range map[string]struct {
		code int
		said string
	}{
		"explain":                            {exitDone, "  tabs         width height spacing as"},
		"explain router.tabs":                {exitDone, "router.tabs\n\nBridges that hold a part"},
		"explain drawers.bottom-fit":         {exitDone, "drawers.joinery.bottom-fit\n"},
		"explain bottom-fit":                 {exitDone, "also in  drawers.joinery.bottom-fit"},
		"explain stock.birch.thickness":      {exitDone, "stock.thickness\n"},
		"explain stock.*.thickness":          {exitDone, "stock.thickness\n"},
		"explain drawers.0.joint":            {exitDone, "drawers.joint\n"},
		"explain drawers.0":                  {exitDone, "drawers\n"},
		"explain width":                      {exitDone, "cutter.width"},
		"explain router.tabz":                {exitUsage, "did you mean `router.tabs`?"},
		"explain stock.birch.thicknes":       {exitUsage, "did you mean `thickness`?"},
		"explain overhang":                   {exitDone, "drawers.drawer-front.overhang-left"},
		"explain knob":                       {exitDone, "drawers.drawer-front.handles\n"},
		"explain Dado":                       {exitDone, "entries have Dado in their name"},
		"help saw":                           {exitDone, "  safety "},
		"help dado":                          {exitDone, "drawerwright explain dado"},
		"help nonsense":                      {exitUsage, "there is no command or topic"},
		"explain nonsense":                   {exitUsage, "drawerwright explain lists all"},
		"explain .":                          {exitUsage, "no entry"},
		"explain router.tabs drawers":        {exitUsage, "at most 1"},
		"explain router.tabs --markdown":     {exitDone, "# router.tabs\n"},
		"explain messages":                   {exitDone, "  bit-reach "},
		"explain messages --markdown":        {exitDone, "- **bit-reach**: "},
		"help messages":                      {exitDone, "  bit-reach "},
		"explain --markdown":                 {exitDone, "# Reference of drawerwright\n"},
		"help joints":                        {exitDone, "  box-joint "},
		"help joints --markdown":             {exitDone, "# Joints: "},
		"help --markdown":                    {exitDone, "# Words: "},
		"help":                               {exitDone, "Commands:"},
		"help build":                         {exitDone, "Usage:\n  drawerwright build JOB"},
		"help build --markdown":              {exitDone, "# build\n"},
		"help sheets":                        {exitDone, "The command: drawerwright sheets --help."},
		"help jonts":                         {exitUsage, "did you mean `joints`?"},
		"help report drawers.sag":            {exitDone, "  clamped "},
		"help report drawers.sag --markdown": {exitDone, "# report.json: drawers.sag\n"},
		"help report drawers.sga":            {exitUsage, "did you mean `drawers.sag`?"},
		"help joints drawers":                {exitUsage, "help joints"},
		"help report --markdown":             {exitDone, "## report.json: proof.corners\n"},
	} {
		code, out, errs := call(t, "", strings.Fields(args)...)
		if code != c.code || !strings.Contains(out+errs, c.said) {
			t.Errorf("%s: exit %d, want %d with %q:\n%s%s", args, code, c.code, c.said, out, errs)
		}
		if strings.Contains(errs, "hint:") && !strings.Contains(errs, "at most 1") {
			t.Errorf("%s: a second hint beside what the message says: %s", args, errs)
		}
		reference := !strings.Contains(args, "--markdown") && !strings.HasPrefix(args, "help build") && args != "help"
		if code == exitDone && reference {
			for _, line := range strings.Split(out, "\n") {
				if n := utf8.RuneCountInString(line); n > 80 {
					t.Errorf("%s prints %d columns: %s", args, n, line)
				}
			}
		}
	}
}

// TestEveryReadingIsExplained that adjust takes, in its help and in the topic.
func TestEveryReadingIsExplained(t *testing.T) {
	terms := ""
	for _, b := range reference.Topic("test-cut") {
		terms += b.Term + ", "
	}
	help := newAdjust(streams{}).Long
	for _, k := range testcut.Kinds {
		name := string(k)
		if k == testcut.Coupon {
			name += "-N"
		}
		whole := regexp.MustCompile(`(^|[ \n])` + name + `[, ;]`)
		if !whole.MatchString(terms) || !whole.MatchString(help) {
			t.Errorf("%s is not explained", name)
		}
		words, said := present.WordsOf(k, joinery.DadoRabbet), false
		for _, b := range reference.Topic("test-cut") {
			said = said || b.Term == name && strings.HasPrefix(b.Text, words.What+" ("+words.With+")")
		}
		if !said && k != testcut.Tooth && k != testcut.Coupon {
			t.Errorf("the topic does not say of %s: %s (%s)", name, words.What, words.With)
		}
	}
}

// TestEveryCommandAndFlagIsExplained, in help and in the whole reference.
func TestEveryCommandAndFlagIsExplained(t *testing.T) {
	root := newRoot(streams{})
	for _, line := range strings.Split(root.Long, "\n") {
		if utf8.RuneCountInString(line) > reference.Columns {
			t.Errorf("the first help has a line of more than a terminal: %s", line)
		}
	}
	whole := reference.Markdown(commandsOf(root))
	for _, c := range root.Commands() {
		if len(c.Short) < 10 || !strings.Contains(whole, "\n### drawerwright "+c.Name()+"\n") {
			t.Errorf("%s is not explained", c.Name())
		}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			_, usage := pflag.UnquoteUsage(f)
			if len(f.Usage) < 10 || !strings.Contains(whole, "- **--"+f.Name) || !strings.Contains(whole, usage) {
				t.Errorf("%s --%s is explained as %q", c.Name(), f.Name, f.Usage)
			}
		})
	}
	if len(job.Entries()) < 200 {
		t.Errorf("%d entries", len(job.Entries()))
	}
}
