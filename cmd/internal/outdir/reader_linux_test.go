package outdir

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"sync"
	"testing"

	"golang.org/x/sys/unix"
)

// TestReader: while a folder is replaced again and again, somebody who opens its
// files finds each of them every time, and never one version after a later one.
// The versions are numbers that grow, so a, b and a again, read in turn, do too,
// and where both reads of a agree, b does.
func TestReader(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	probe := filepath.Join(parent, "probe")
	if err := os.Mkdir(probe, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := exchange(probe, parent+"/probe"); errors.Is(err, errors.ErrUnsupported) {
		t.Fatalf("run this test on a file system that exchanges folders: %v", err)
	}
	mustBuild(t, dir, 1)
	done := make(chan struct{})
	var wg sync.WaitGroup
	reads := make([]int, 2)
	for r := range reads {
		wg.Go(func() {
			for {
				select {
				case <-done:
					return
				default:
				}
				got := [3]int{}
				for i, name := range []string{"a", "b", "a"} {
					data, err := os.ReadFile(filepath.Join(dir, name))
					if err != nil {
						t.Error(err)
						return
					}
					if got[i], err = strconv.Atoi(string(data)); err != nil {
						t.Error(err)
						return
					}
				}
				if got[0] > got[1] || got[1] > got[2] {
					t.Errorf("a, b, a are of versions %v", got)
					return
				}
				reads[r]++
			}
		})
	}
	for n := 2; n <= 150; n++ {
		mustBuild(t, dir, n)
	}
	close(done)
	wg.Wait()
	t.Logf("%v reads during 149 builds", reads)
}

// TestMountPoints: places where something is mounted on every Linux, and one
// folder mounted on another of the same disk, which only root can make.
func TestMountPoints(t *testing.T) {
	for _, dir := range []string{"/proc", "/dev/", "/sys/../proc"} {
		_, err := Create(dir)
		expectRule(t, err, ErrMountPoint, "mounted there", "hint: name a folder inside it")
	}
	parent := t.TempDir()
	from, at := filepath.Join(parent, "from"), filepath.Join(parent, "at")
	if err := errors.Join(os.Mkdir(from, 0o755), os.Mkdir(at, 0o755)); err != nil {
		t.Fatal(err)
	}
	if err := unix.Mount(from, at, "", unix.MS_BIND, ""); err != nil {
		t.Logf("not tried on a bind mount: %v", err)
		return
	}
	_, err := Create(at)
	if err := unix.Unmount(at, 0); err != nil {
		t.Fatal(err)
	}
	expectRule(t, err, ErrMountPoint)
	expectAlone(t, parent, "at", "from")
}

// TestReallyFullDisk: a small disk that fills up while a build runs, where the
// user may mount one.
func TestReallyFullDisk(t *testing.T) {
	disk := t.TempDir()
	if err := unix.Mount("none", disk, "tmpfs", 0, "size=256k"); err != nil {
		t.Logf("not tried: %v", err)
		return
	}
	defer unix.Unmount(disk, unix.MNT_DETACH)
	dir := filepath.Join(disk, "out")
	mustBuild(t, dir, 1)
	files := version(2)
	files["large"] = string(make([]byte, 1<<20))
	err := build(dir, files, realSystem())
	expectRule(t, err, ErrWrite, "cannot write ", "/out/large: no space left on device\n",
		"hint: nothing was changed; make room on the disk")
	expectWhole(t, dir, 1)
	expectAlone(t, disk, "out")
}
