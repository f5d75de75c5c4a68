package files_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/sheets"
)

// spoiling hands the first half of some files back: of those whose names have one of these
// ends.
type spoiling struct {
	folder
	ends []string
}

func (s *spoiling) ReadFile(name string) ([]byte, error) {
	data, err := s.folder.ReadFile(name)
	if slices.ContainsFunc(s.ends, func(end string) bool { return strings.HasSuffix(name, end) }) {
		data = data[:len(data)/2]
	}
	return data, err
}

func (s *spoiling) Open(name string) (io.ReadCloser, error) {
	data, err := s.ReadFile(name)
	return io.NopCloser(bytes.NewReader(data)), err
}

// TestSpoiledFilesStopABuild: what does not come back from the disk as it was written stops a build, what people
// read too; it names all of these, but drawings alone where they are at fault.
func TestSpoiledFilesStopABuild(t *testing.T) {
	j, problems := job.Read("job.yaml", strings.NewReader(`units: mm
stock: {ply: {thickness: 12}, thin: {thickness: 6}}
cutter: {kind: router, diameter: 6}
drawers: [{name: a, outside: 300 x 100 x 400, sides: ply, bottom: thin}]
`))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, _ := batch.Make(t.Context(), j)
	for _, c := range []struct {
		ends   []string
		faulty []string // none where the drawings are
	}{
		{[]string{"packet.pdf"}, []string{"packet.pdf"}},
		{[]string{"parts.txt"}, []string{"parts.txt"}},
		{[]string{"shop.html"}, []string{"shop.html"}},
		{[]string{"packet.pdf", "parts.txt"}, []string{"parts.txt", "packet.pdf"}},
		{[]string{"packet.pdf", ".glb"}, []string{"a"}},
		{[]string{"packet.pdf", ".dxf"}, nil},
	} {
		var stopped *files.Unproven
		to := &spoiling{folder{files: map[string][]byte{}}, c.ends}
		err := files.Write(context.Background(), b, to, files.Options{Plan: sheets.Plan{}})
		if !errors.As(err, &stopped) {
			t.Fatalf("%v spoiled: %v", c.ends, err)
		}
		var faulty []string
		for _, f := range stopped.Checked {
			if len(f.Faults) > 0 {
				faulty = append(faulty, f.Name)
			}
		}
		if !slices.Equal(faulty, c.faulty) || (len(stopped.Proofs) > 0) != (c.faulty == nil) {
			t.Errorf("%v spoiled: %v at fault, and %d drawers", c.ends, faulty, len(stopped.Proofs))
		}
	}
}
