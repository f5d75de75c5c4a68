package job

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestTabsHideNothing: every sample, some of its lines indented by tabs as an editor writes
// them, has one problem for them and is otherwise read as it was.
func TestTabsHideNothing(t *testing.T) {
	files, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	r := rand.New(rand.NewPCG(18, 7))
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		text := string(data)
		plain, problems := Read("job.yaml", strings.NewReader(text), Files(openTest))
		if problems.Failed() {
			t.Fatal(problems)
		}
		for _, width := range []int{2, 4, 8} {
			for _, share := range []float64{0.1, 0.5, 1} {
				lines := strings.Split(text, "\n")
				first := 0
				for i, line := range lines {
					rest := strings.TrimLeft(line, " ")
					n := len(line) - len(rest)
					if n < width || rest == "" || r.Float64() > share {
						continue
					}
					if lines[i] = strings.Repeat("\t", n/width) + strings.Repeat(" ", n%width) + rest; first == 0 {
						first = i + 1
					}
				}
				if first == 0 {
					continue
				}
				got, problems := Read("job.yaml", strings.NewReader(strings.Join(lines, "\n")), Files(openTest))
				errors := slices.DeleteFunc(problems, func(p Problem) bool { return !p.IsError() })
				if len(errors) != 1 || errors[0].Code != CodeTab || errors[0].Line != first || errors[0].Column != 1 {
					t.Fatalf("%s, tabs of %d from line %d: %v", file, width, first, errors)
				}
				if len(got.Drawers) != len(plain.Drawers) || len(got.Stocks) != len(plain.Stocks) {
					t.Errorf("%s, tabs of %d: %d drawers of %d", file, width, len(got.Drawers), len(plain.Drawers))
				}
			}
		}
	}
}
