package load

import (
	"context"
	"fmt"
	"sort"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/sheets"
)

func TestSurvey(t *testing.T) {
	n := map[string][2]int{}
	ex := map[string]string{}
	for seed := uint64(0); seed < 200; seed++ {
		drawn := jobtest.Seeded(seed, jobtest.Want{})
		text := drawn.Text
		if seed%2 == 1 {
			text = spoilt(text, seed)
		}
		j, found, _, _ := said(t, text)
		if j == nil {
			continue
		}
		for _, p := range found {
			k := "batch " + p.Code
			v := n[k]
			if len(p.Remedies)+len(p.Ways) > 0 {
				v[0]++
			} else {
				v[1]++
				ex[k] = fmt.Sprintf("seed %d: %s\n      %s", seed, p.Message, p.Hint)
			}
			n[k] = v
		}
		l := Read("job.yaml", strings.NewReader(text), nil)
		for _, p := range l.Problems {
			k := "all " + string(p.Code)
			v := n[k]
			v[1]++
			n[k] = v
		}
		if seed < 0 {
			l.Lay(context.Background(), nil, sheets.Search{})
		}
	}
	var keys []string
	for k := range n {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	for _, k := range keys {
		fmt.Println(k, n[k], ex[k])
	}
}
