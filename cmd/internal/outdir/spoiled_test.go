package outdir

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"drawerwright/cmd/internal/mutate"
	"drawerwright/geom/geomtest"
)

// TestSpoiledManifests: with a spoiled manifest a folder is replaced or refused with the line, whole in
// either case, and nothing beside it is touched.
func TestSpoiledManifests(t *testing.T) {
	parent := t.TempDir()
	dir, beside := filepath.Join(parent, "out"), filepath.Join(parent, "beside")
	mustBuild(t, dir, 1)
	if err := build(beside, map[string]string{"a": "1"}, realSystem()); err != nil {
		t.Fatal(err)
	}
	manifest := filepath.Join(dir, ManifestName)
	sound, err := os.ReadFile(manifest)
	if err != nil {
		t.Fatal(err)
	}
	line := regexp.MustCompile(`^is not a list that .*: line [1-9]\d* is none of it$`)
	const some = 20 // of them are met by a build, unless there is a night for it
	number, replaced := 0, 0
	mutate.Lines.Each(t, []mutate.Sample{{Name: ManifestName, Text: string(sound)}}, func(spoiled mutate.Sample) error {
		if _, err := parseManifest(spoiled.Text); err != nil && !line.MatchString(err.Error()) {
			return fmt.Errorf("no line: %w", err)
		}
		if number++; number%some != 0 && !geomtest.All() {
			return nil
		}
		if err := os.WriteFile(manifest, []byte(spoiled.Text), 0o644); err != nil {
			return err
		}
		before, err := contents(parent)
		if err != nil {
			return err
		}
		err = build(dir, version(2), realSystem())
		after, readErr := contents(parent)
		switch {
		case readErr != nil:
			return readErr
		case err == nil:
			replaced++
			expectWhole(t, dir, 2)
			mustBuild(t, dir, 1)
		case !maps.Equal(before, after):
			return fmt.Errorf("it was refused, and something is changed: %w", err)
		case !errors.Is(err, ErrForeign):
			return err
		}
		if after["beside/a"] != "1" {
			return errors.New("what stands beside the folder is touched")
		}
		expectAlone(t, parent, "beside", "out")
		return nil
	})
	t.Logf("%d folders were replaced", replaced)
}
