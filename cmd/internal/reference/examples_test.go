package reference

import (
	"bytes"
	"context"
	"io"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/sheets"
)

// jobs are what fragments of the texts are put into.
var jobs = func() (list []string) {
	const stocks = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24]}
  hardboard: {thickness: 5.9}
  thin: {thickness: 3.1}
`
	const box = `drawers:
  - name: bench
    outside: 460 x 140 x 500
    sides: birch
    bottom: hardboard
`
	const shared = `openings:
  base: {width: 564, height: 702, depth: 545, cabinet: frameless, fronts: overlay}
slides:
  quiet: {kind: side-mount}
drawers:
  - name: bench
    opening: base
    slide: quiet
    rows: 4
    sides: birch
    drawer-front: {stock: birch}
    bottom: hardboard
`
	const router, bits, saw = "cutter: {kind: router, diameter: 6}\n",
		"cutter: {kind: router, bits: {large: {diameter: 10, tool: 1}, small: {diameter: 3, tool: 2}}}\n",
		"cutter: {kind: saw, width: 6.2}\n"
	sheets := strings.NewReplacer("12.24]", "12.24], sheet: 1525 x 1525, material: birch-plywood").Replace(stocks)
	return []string{stocks + saw + box, stocks + saw + "log: shop.csv\n" + box, stocks + router + box, stocks + bits + box, stocks + router + shared,
		sheets + router + box, stocks + router + "router: {tabs: {width: 6}}\n" + box,
		stocks + router + strings.Replace(shared, "overlay", "inset", 1),
		stocks + router + strings.Replace(shared, "side-mount", "wooden-runner", 1)}
}()

// beside are files that the texts name.
func beside(name string) (io.ReadCloser, error) {
	if name == "shop.csv" {
		return io.NopCloser(strings.NewReader("date,machine,cutter,what,aimed,measured,units,then\n")), nil
	}
	return io.NopCloser(strings.NewReader("units: mm\nslides:\n  soft: {kind: undermount}\n")), nil
}

// merged is a job with what a fragment says in the place of what it said. Lists but that of
// drawers are replaced whole.
func merged(base, over *job.Node, key string) *job.Node {
	switch {
	case len(over.Entries) > 0:
		out := &job.Node{Entries: slices.Clone(base.Entries)}
		for _, e := range over.Entries {
			i := slices.IndexFunc(out.Entries, func(b job.NodeEntry) bool { return b.Key == e.Key })
			if i < 0 {
				out.Entries = append(out.Entries, e)
			} else {
				out.Entries[i].Value = merged(out.Entries[i].Value, e.Value, e.Key)
			}
		}
		return out
	case len(over.Items) > 0 && key == "drawers":
		out := &job.Node{Items: slices.Clone(over.Items)}
		for i := range min(len(over.Items), len(base.Items)) {
			out.Items[i] = merged(base.Items[i], over.Items[i], "")
		}
		return out
	}
	return over
}

// flow is a value on one line.
func flow(n *job.Node) string {
	var parts []string
	for _, e := range n.Entries {
		parts = append(parts, e.Key+": "+flow(e.Value))
	}
	if len(parts) > 0 {
		return "{" + strings.Join(parts, ", ") + "}"
	}
	for _, item := range n.Items {
		parts = append(parts, flow(item))
	}
	if len(parts) > 0 {
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return `'` + n.Text + `'`
}

// builds says why a fragment makes no job in any of jobs, in the one in which it comes
// furthest; nothing where it does.
func builds(fragment string) string {
	o := job.Outlined([]byte(fragment))
	if !o.Sound {
		return "no YAML of a job"
	}
	if _, problems := job.Read("", strings.NewReader(fragment), job.Files(beside)); !problems.Failed() {
		return built([]byte(fragment))
	}
	why := ""
	for _, base := range jobs {
		said := built([]byte(flow(merged(job.Outlined([]byte(base)).Root, o.Root, ""))))
		if said == "" {
			return ""
		}
		why += "\n\t" + said
	}
	return why
}

// built says what stops a job.
func built(text []byte) string {
	read, problems := job.Read("job.yaml", bytes.NewReader(text), job.Files(beside))
	if problems.Failed() || read == nil {
		return problems[0].Message
	}
	l := load.Read("job.yaml", bytes.NewReader(text), beside)
	l.Lay(context.Background(), nil, sheets.Search{})
	if l.Failed() {
		return l.Problems[0].Message
	}
	return ""
}

// TestExamplesOfEntriesBuild: the example of every entry, as it is printed, is taken by a job
// that builds.
func TestExamplesOfEntriesBuild(t *testing.T) {
	for _, e := range job.Entries() {
		if why := builds(e.Example); why != "" {
			t.Errorf("%s:\n%s%s", e.Path, e.Example, why)
		}
	}
}
