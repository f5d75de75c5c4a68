package page

import (
	"archive/zip"
	"cmp"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"time"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/outdir"
)

// built is a build for one download, proven as any build, on disk until it is cleared: of a large
// job it would not fit into memory.
type built struct {
	*outdir.Stage
	title string
	dir   string // is removed with all that is in it

	mu    sync.Mutex
	names []string // of the files
}

// roomFor is a build of nothing yet, in a folder of its own.
func roomFor(title string) (*built, error) {
	dir, err := os.MkdirTemp("", "drawerwright-*")
	if err != nil {
		return nil, err
	}
	stage, err := outdir.Create(filepath.Join(dir, title))
	if err != nil {
		return nil, errors.Join(err, os.RemoveAll(dir))
	}
	return &built{Stage: stage, title: title, dir: dir}, nil
}

// fill builds a job, which is let go, so that it ends when the last file is made of it; each is called after every
// drawer.
func (b *built) fill(ctx context.Context, done *worked, each func()) error {
	of, o := done.Batch, files.Options{Warnings: done.Warnings, Plan: done.Plan, Done: each}
	*done = worked{}
	return files.Write(ctx, of, b, o)
}

// clear takes the build away. What cannot be removed is left to the system's own clearing of its
// folder for such files.
func (b *built) clear() {
	b.Abort()
	os.RemoveAll(b.dir)
}

func (b *built) WriteFile(name string, data []byte) error {
	b.note(name)
	return b.Stage.WriteFile(name, data)
}

func (b *built) Stream(name string, fill func(io.Writer) error) error {
	b.note(name)
	return b.Stage.Stream(name, fill)
}

func (b *built) note(name string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.names = append(b.names, name)
}

// copied writes a file of the build as it stands on disk: it need not go into memory whole.
func (b *built) copied(name string, w io.Writer) error {
	f, err := b.Open(name)
	if err != nil {
		return err
	}
	_, err = io.Copy(w, f)
	return errors.Join(err, f.Close())
}

// zipped writes a build as a zip of one folder: the list of its files, by which prove knows them, and these in the
// order of their names. They carry no time, so that the same job gives the same bytes.
func zipped(ctx context.Context, b *built, w io.Writer) error {
	z := zip.NewWriter(w)
	add := func(name string, write func(io.Writer) error) error {
		// The first day that the format knows.
		one, err := z.CreateHeader(&zip.FileHeader{Name: b.title + "/" + name, Method: zip.Deflate,
			Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)})
		if err == nil {
			err = write(one)
		}
		return err
	}
	err := add(outdir.ManifestName, func(w io.Writer) error {
		_, err := w.Write(b.Manifest())
		return err
	})
	slices.Sort(b.names)
	for _, name := range b.names {
		err = cmp.Or(err, ctx.Err())
		if err != nil {
			return err
		}
		err = add(name, func(w io.Writer) error { return b.copied(name, w) })
	}
	return cmp.Or(err, z.Close())
}
