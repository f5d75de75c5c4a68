package outdir

import (
	"crypto/sha256"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestManifestRoundTrip: what is formatted is parsed to the same; cut anywhere
// but at a line's end it is no manifest.
func TestManifestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfNDistinct(rapid.StringMatching(`[a-zA-Z0-9 ._/-]{1,12}`).Filter(validName), 0, 10, rapid.ID).Draw(t, "names")
		var list []entry
		for i, n := range names {
			list = append(list, entry{n, int64(i) << (4 * i), sha256.Sum256([]byte(n))})
		}
		text := string(formatManifest(list))
		m, err := parseManifest(text)
		if err != nil || len(m.files) != len(list) {
			t.Fatalf("%v: %q", err, text)
		}
		for _, e := range list {
			if m.files[e.path] != e {
				t.Fatalf("%v became %v", e, m.files[e.path])
			}
		}
		cut := text[:rapid.IntRange(0, len(text)-1).Draw(t, "cut")]
		if m, err := parseManifest(cut); err == nil && (!strings.HasSuffix(cut, "\n") || len(m.files) >= len(list)) {
			t.Fatalf("%q is taken for a manifest", cut)
		}
	})
}

// TestManifestRefuses: each line breaks one rule of the format.
func TestManifestRefuses(t *testing.T) {
	sum := strings.Repeat("0", 64)
	good := manifestFormat + "\n" + sum + "  0  b\n"
	if _, err := parseManifest(good); err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"", manifestFormat, "drawerwright manifest 10\n", "\n" + good, good + "\n", good[:len(good)-1],
		good + sum + "  0  b\n", good + sum + "  0  a\n", good + sum + "  -1  c\n", good + sum + "  x  c\n",
		good + sum[1:] + "  0  c\n", good + "g" + sum[1:] + "  0  c\n", good + sum + " 0 c\n",
		good + sum + "  0  ../c\n", good + sum + "  0  /c\n", good + sum + "  0  \n", good + sum + "  0  c\r\n",
	} {
		if _, err := parseManifest(text); err == nil {
			t.Errorf("%q is taken for a manifest", text)
		}
	}
}
