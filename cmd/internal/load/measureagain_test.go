package load

import (
	"fmt"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
)

// readOnce is a job whose groove is right for the one reading of its bottom.
const readOnce = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24]}
  hardboard: {thickness: 5.92}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, count: 2, outside: 460 x 140 x 500, sides: birch, bottom: hardboard}
`

// TestReadingsComeFirst: where a standard says what boards are, as they were read once, the first thing
// that is advised is to read them again, before any cutter is bought; a button leads there. Readings that
// are all alike bring the odds that are promised.
func TestReadingsComeFirst(t *testing.T) {
	followed, beforeCutters := 0, 0
	for seed := uint64(0); seed < 24; seed++ {
		text := jobtest.Seeded(seed, jobtest.Want{}).Text
		if seed == 0 {
			text = readOnce
		}
		j, found, _, _ := said(t, text)
		if j == nil {
			continue
		}
		done := make(map[string]bool)
		for _, p := range found {
			if p.Reread == "" || done[p.Reread] {
				continue
			}
			done[p.Reread] = true
			shown := p.Shown(j)
			if !strings.HasPrefix(shown.Hint, "measure "+p.Reread+" ") {
				t.Errorf("seed %d: %q names %s late", seed, shown.Hint, p.Reread)
			}
			if w := shown.Ways; len(w) == 0 || strings.Join(w[0].Lead, "/") != "stock/"+p.Reread+"/thickness" {
				t.Errorf("seed %d: no way to the readings of %s: %+v", seed, p.Reread, w)
			}
			if strings.Contains(shown.Hint, "; or write `cutter: ") {
				beforeCutters++
			}
			if p.Subject.Check == nil {
				continue
			}
			followed++
			promised := strings.Split(strings.SplitAfter(shown.Hint, " alike, ")[1], "; or ")[0]
			if got := reread(t, text, p); got != promised {
				t.Errorf("seed %d: %s\npromised %s, and it is %s", seed, shown.Message, promised, got)
			}
		}
	}
	if followed < 4 || beforeCutters == 0 {
		t.Errorf("%d hints were followed, %d stand before a cutter", followed, beforeCutters)
	}
}

// reread is what comes of the measure of a problem once the stock that it names was read as often as is
// asked for, always alike.
func reread(t *testing.T, text string, p batch.Problem) string {
	t.Helper()
	var root yaml.MapSlice
	if err := yaml.UnmarshalWithOptions([]byte(text), &root, yaml.UseOrderedMap()); err != nil {
		t.Fatal(err)
	}
	stocks := get(root, "stock").(yaml.MapSlice)
	own := get(stocks, p.Reread).(yaml.MapSlice)
	one := get(own, "thickness")
	if list, is := one.([]any); is {
		one = list[0]
	}
	changed, err := yaml.Marshal(set(root, "stock", set(stocks, p.Reread, set(own, "thickness", []any{one, one, one}))))
	if err != nil {
		t.Fatal(err)
	}
	after, problems := job.Read("job.yaml", strings.NewReader(string(changed)))
	if after == nil {
		t.Fatal(problems)
	}
	b, _ := batch.Make(t.Context(), after)
	for _, m := range b.Drawers[p.Drawer].Outcome.Measures {
		if m.CheckID == p.Subject.Check {
			return fmt.Sprint(m.Right)
		}
	}
	return "not measured"
}
