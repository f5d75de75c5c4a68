package outside

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// fed is a page for setups.mjs.
type fed struct {
	Name    string   `json:"name"`
	Page    string   `json:"page"`
	Printed string   `json:"printed"` // the words of its packet, without spaces
	Fenced  bool     `json:"fenced"`  // a saw or a router table cuts its boxes
	Checks  []string `json:"checks"`
}

// TestSetups: in Chromium every cut of the boxes' parts at a saw or a router table is shown, step by step, with
// the words, figures and cautions that the packet prints; the part goes over the cutter, or is there at once where
// no motion is wanted; axe-core finds nothing serious. Where a router follows its drawings there is nothing to
// choose. The page of a bank stays as small as that of a routed one.
func TestSetups(t *testing.T) {
	t.Parallel()
	page := func(name, text string, fenced bool, checks ...string) fed {
		dir, _ := build(t, text)
		return fed{name, filepath.Join(dir, "boxes.html"), packetWords(t, dir), fenced, append(checks, "setups")}
	}
	bench := textOf(t, "../../samples/bench-drawers.yaml")
	sawn := strings.Replace(bankOfTwelve, "kind: router, diameter: 5, reach: 22", "kind: saw, width: 6.2", 1)
	bank, rows := build(t, sawn)
	info, err := os.Stat(filepath.Join(bank, "boxes.html"))
	if err != nil || info.Size() > maxBank || len(rows.Drawers) != 12 {
		t.Errorf("the page of %d sawn drawers: %v, %d bytes, at most %d", len(rows.Drawers), err, info.Size(), maxBank)
	}
	for _, c := range setups(t,
		page("bench", bench, true, "moves", "calm", "phone"),
		page("router table", strings.Replace(bench, "kind: saw", "kind: router-table", 1), true),
		page("print room", textOf(t, "../../samples/print-room.yaml"), true),
		page("router", textOf(t, "../../samples/router-boxes.yaml"), false)) {
		for _, f := range c.Faults {
			t.Errorf("%s, %s: %s", c.Page, c.Check, f)
		}
		t.Logf("%s, %s: %s", c.Page, c.Check, c.Facts)
	}
}

// TestSetupsComparator: the checks see a figure that is another, a caution that is lost, a part that is not cut,
// and a cut that is not drawn.
func TestSetupsComparator(t *testing.T) {
	t.Parallel()
	dir, _ := build(t, textOf(t, "../../samples/bench-drawers.yaml"))
	var list []fed
	for name, change := range map[string][2]string{
		"figure":  {`["fence","6.10 mm"]`, `["fence","6.20 mm"]`},
		"caution": {"...setting.cautions, ...cut.cautions]", "...cut.cautions]"},
		"uncut":   {"mesh: feed.after", "mesh: feed.before"},
		"unseen":  {"drawFeed(this);", ";"},
	} {
		file := spoiled(t, dir, name, change[0], change[1])
		list = append(list, fed{name, file, packetWords(t, dir), true, []string{"setups"}})
	}
	for _, c := range setups(t, list...) {
		if len(c.Faults) == 0 {
			t.Errorf("%s: nothing is found", c.Page)
		}
	}
}

// setups makes the checks of pages.
func setups(t *testing.T, pages ...fed) []checked {
	t.Helper()
	list := lookedAt[checked](t, "setups.mjs", pages)
	asked := 0
	for _, p := range pages {
		asked += len(p.Checks)
	}
	if len(list) != asked {
		t.Errorf("%d checks ran, not %d", len(list), asked)
	}
	return list
}
