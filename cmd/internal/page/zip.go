package page

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"net/http"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"drawerwright/cmd/internal/files"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
)

// maxFiles is how much of a build is held at once, in bytes; what is larger takes a
// build on disk.
const maxFiles = 512 << 20

var errManyFiles = errors.New("the files are too many for a download: use `drawerwright build`")

// zip answers with all that a build of the text writes, proven as a build proves it.
func (p *Page) zip(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		Text string `json:"text"`
	}
	if !read(w, r, &asked) {
		return
	}
	ctx, stop := context.WithTimeout(r.Context(), zipTime)
	defer stop()
	done, ok := p.longWork(ctx, w, asked.Text)
	if !ok {
		return
	}
	defer end(p.work.long)
	name := done.Batch.Title
	if name == "" {
		name = strings.TrimSuffix(fileOf(ctx).base(), filepath.Ext(fileOf(ctx).base()))
	}
	name = job.FileName(name)
	data, err := zipped(ctx, done, name)
	var unproven *files.Unproven
	if errors.As(err, &unproven) {
		var said present.Printed
		present.Unproven(&said, unproven.Proofs, unproven.Checked, done.Batch.Units)
		err = fmt.Errorf("%w\n%s", err, said.Bytes())
	}
	if err != nil {
		refuse(w, http.StatusUnprocessableEntity, err.Error())
		return
	}
	w.Header().Set("Content-Type", "application/zip")
	w.Header().Set("Content-Disposition", `attachment; filename="`+name+`.zip"`) // letters, digits, - and _
	w.Write(data)                                                                // a browser that has gone needs no answer
}

// zipped is a build as a zip of one folder, its files in the order of their names. They
// carry no time, so that the same job gives the same bytes.
func zipped(ctx context.Context, done worked, name string) ([]byte, error) {
	all := &held{files: map[string][]byte{}}
	if err := files.Write(ctx, done.Batch, all, files.Options{Warnings: done.Warnings, Plan: done.Plan}); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, file := range slices.Sorted(maps.Keys(all.files)) {
		// The first day that the format knows.
		h := &zip.FileHeader{Name: name + "/" + file, Method: zip.Deflate, Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)}
		one, err := z.CreateHeader(h)
		if err == nil {
			_, err = one.Write(all.files[file])
		}
		if err = errors.Join(err, ctx.Err()); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// held is a folder in memory.
type held struct {
	mu    sync.Mutex
	files map[string][]byte
	size  int
}

func (h *held) WriteFile(name string, data []byte) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.size += len(data); h.size > maxFiles {
		return errManyFiles
	}
	h.files[name] = bytes.Clone(data)
	return nil
}

func (h *held) Stream(name string, fill func(io.Writer) error) error {
	var data bytes.Buffer
	if err := fill(&data); err != nil {
		return err
	}
	return h.WriteFile(name, data.Bytes())
}

func (h *held) ReadFile(name string) ([]byte, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	data, ok := h.files[name]
	if !ok {
		return nil, fmt.Errorf("%s: %w", name, fs.ErrNotExist)
	}
	return data, nil
}
