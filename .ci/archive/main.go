// Command archive packs files into an archive that has the same bytes each time: names in
// order, one time for all, no owner.
//
//	go run ./.ci/archive NAME.tar.gz|NAME.zip FOLDER SECONDS
//
// FOLDER becomes the only folder in the archive; SECONDS since 1970 are the time of all files.
package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// file is one to pack, under the name that it gets.
type file struct {
	name string
	mode fs.FileMode // 0755 or 0644, whatever the umask was
	data []byte
}

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "archive:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 3 {
		return fmt.Errorf("give the archive, the folder and the seconds; here are %d words", len(args))
	}
	seconds, err := strconv.ParseInt(args[2], 10, 64)
	if err != nil {
		return err
	}
	files, err := below(args[1])
	if err != nil {
		return err
	}
	pack := packTar
	if strings.HasSuffix(args[0], ".zip") {
		pack = packZip
	}
	packed, err := pack(files, time.Unix(seconds, 0).UTC())
	if err != nil {
		return err
	}
	return os.WriteFile(args[0], packed, 0o644)
}

// below reads all files of a folder, in the order of their names.
func below(dir string) (all []file, err error) {
	err = filepath.WalkDir(dir, func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		mode := fs.FileMode(0o644)
		if info.Mode()&0o100 != 0 {
			mode = 0o755
		}
		data, err := os.ReadFile(at)
		if err != nil {
			return err
		}
		inside, err := filepath.Rel(dir, at)
		all = append(all, file{path.Join(filepath.Base(dir), filepath.ToSlash(inside)), mode, data})
		return err
	})
	return all, err
}

func packTar(files []file, at time.Time) ([]byte, error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	w := tar.NewWriter(z)
	for _, f := range files {
		head := tar.Header{Name: f.name, Mode: int64(f.mode), Size: int64(len(f.data)), ModTime: at}
		if err := w.WriteHeader(&head); err != nil {
			return nil, err
		}
		if _, err := w.Write(f.data); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return finished(&b, z.Close())
}

func packZip(files []file, at time.Time) ([]byte, error) {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, f := range files {
		head := zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: at}
		head.SetMode(f.mode)
		into, err := w.CreateHeader(&head)
		if err != nil {
			return nil, err
		}
		if _, err := into.Write(f.data); err != nil {
			return nil, err
		}
	}
	return finished(&b, w.Close())
}

func finished(b *bytes.Buffer, err error) ([]byte, error) {
	return b.Bytes(), err
}
