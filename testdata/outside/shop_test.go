package outside

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestShopPage: shop.html on a phone in Chromium keeps ticks over a reload and apart from those of
// another job, says where it cannot, and is for everybody; a title that would be markup is text.
// Pictures of it stay in the folder that DRAWERWRIGHT_PICTURES names, if it names one.
func TestShopPage(t *testing.T) {
	t.Parallel()
	const named = `<img src=x onerror=alert(1)> & Co`
	text := textOf(t, "../../samples/bench-drawers.yaml")
	marked, _ := build(t, strings.Replace(text, "job: Bench drawers", "job: "+named, 1))
	bench, _ := build(t, text)
	pictures := os.Getenv("DRAWERWRIGHT_PICTURES")
	if pictures == "" {
		pictures = t.TempDir()
	}
	page := func(dir string) string { return filepath.Join(dir, "shop.html") }
	tried := 0
	tries := lines[struct{ Tried, Fault string }](t, "", "node", "shop.mjs", page(marked), named, page(bench), pictures)
	for _, r := range tries {
		tried++
		if r.Fault != "" {
			t.Errorf("%s: %s", r.Tried, r.Fault)
		}
	}
	if tried != 8 {
		t.Errorf("%d things were tried", tried)
	}
}
