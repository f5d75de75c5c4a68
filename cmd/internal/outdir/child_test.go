//go:build darwin || linux

package outdir

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"syscall"
	"testing"
	"time"
)

// The test binary runs itself as a child that builds and is killed. These are
// the child's orders.
const (
	envDir      = "OUTDIR_CHILD_DIR"      // the folder; set only in a child
	envKillAt   = "OUTDIR_CHILD_KILL_AT"  // the step at which the child kills itself; builds without end if empty
	envExchange = "OUTDIR_CHILD_EXCHANGE" // "true" or "false"
)

func TestMain(m *testing.M) {
	dir := os.Getenv(envDir)
	if dir == "" {
		os.Exit(m.Run())
	}
	exchange, at := os.Getenv(envExchange) == "true", os.Getenv(envKillAt)
	var err error
	if at == "" {
		err = childBuilds(dir, exchange)
	} else {
		err = childDies(dir, exchange, at)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// childBuilds builds versions 2 and 1 in turn until the process ends, and says
// once that it has begun.
func childBuilds(dir string, exchange bool) error {
	sys := watched(exchange, func(_ string, do, _ func() error) error { return do() })
	fmt.Println("begun")
	for n := 2; ; n = 3 - n {
		if err := build(dir, version(n), sys); err != nil {
			return err
		}
	}
}

// childDies builds version 2 and kills its process at a step, the step half
// done where it can be. A build that has fewer steps ends well.
func childDies(dir string, exchange bool, at string) error {
	last, err := strconv.Atoi(at)
	if err != nil {
		return err
	}
	step := 0
	return build(dir, version(2), watched(exchange, func(_ string, do, half func() error) error {
		if step == last {
			half()
			syscall.Kill(os.Getpid(), syscall.SIGKILL)
			select {}
		}
		step++
		return do()
	}))
}

// child makes the command that runs this binary with orders.
func child(dir string, exchange bool, at string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), envDir+"="+dir, envKillAt+"="+at, envExchange+"="+strconv.FormatBool(exchange))
	cmd.Stderr = os.Stderr
	return cmd
}

// afterKill checks what a killed build left: the folder is whole, or, where two
// renames make the swap, at least after the next Create; which then leaves
// nothing beside it. It gives the version.
func afterKill(t *testing.T, dir string, exchange bool, old int) int {
	t.Helper()
	n, err := whole(dir, 1, 2)
	if err != nil {
		t.Fatal(err)
	}
	if n == 0 && old > 0 && exchange {
		t.Fatal("the folder is gone")
	}
	s, err := Create(dir)
	if err != nil {
		t.Fatal(err)
	}
	again, err := whole(dir, 1, 2)
	if err != nil || again == 0 && old > 0 || n > 0 && again != n {
		t.Fatalf("version %d became %d: %v", n, again, err)
	}
	if err := s.Abort(); err != nil {
		t.Fatal(err)
	}
	if again > 0 {
		expectAlone(t, filepath.Dir(dir), "out")
	} else {
		expectAlone(t, filepath.Dir(dir))
	}
	return again
}

// TestKilledAtEachStep: the process ends at each step of a build in turn.
func TestKilledAtEachStep(t *testing.T) {
	for _, exchange := range []bool{true, false} {
		for _, old := range []int{1, 0} {
			t.Run(fmt.Sprintf("exchange=%v/old=%d", exchange, old), func(t *testing.T) {
				seen := map[int]int{}
				for at := 0; ; at++ {
					dir := filepath.Join(t.TempDir(), "out")
					if old > 0 {
						mustBuild(t, dir, old)
					}
					err := child(dir, exchange, strconv.Itoa(at)).Run()
					if err == nil {
						break
					}
					if status, ok := err.(*exec.ExitError); !ok || !status.Sys().(syscall.WaitStatus).Signaled() {
						t.Fatalf("step %d: %v", at, err)
					}
					seen[afterKill(t, dir, exchange, old)]++
				}
				if seen[old] < 15 || seen[2] < 3 {
					t.Errorf("killed builds left these versions, by how often: %v", seen)
				}
			})
		}
	}
}

// TestKilledAtAnyMoment: a process that builds without end is killed from
// outside, 50 times, at moments that nobody chose.
func TestKilledAtAnyMoment(t *testing.T) {
	for _, exchange := range []bool{true, false} {
		t.Run(fmt.Sprintf("exchange=%v", exchange), func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "out")
			mustBuild(t, dir, 1)
			seen := map[int]int{}
			for round := range 50 {
				cmd := child(dir, exchange, "")
				out, err := cmd.StdoutPipe()
				if err != nil {
					t.Fatal(err)
				}
				if err := cmd.Start(); err != nil {
					t.Fatal(err)
				}
				if _, err := bufio.NewReader(out).ReadString('\n'); err != nil && err != io.EOF {
					t.Fatal(err)
				}
				// Any moment will do; these are spread over the first few builds.
				time.Sleep(time.Duration(round) * 700 * time.Microsecond)
				if err := cmd.Process.Kill(); err != nil {
					t.Fatal(err)
				}
				if cmd.Wait() == nil {
					t.Fatal("the child ended by itself")
				}
				seen[afterKill(t, dir, exchange, 1)]++
			}
			t.Logf("versions found: %v", seen)
		})
	}
}

// TestKilledHolder: a claim ends with the process that holds it, and not before.
func TestKilledHolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	mustBuild(t, dir, 1)
	cmd := child(dir, true, "")
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if _, err := bufio.NewReader(out).ReadString('\n'); err != nil {
		t.Fatal(err)
	}
	// Stop the child where it is; if that is between two builds, let it go on.
	for refused := false; !refused; {
		if err := cmd.Process.Signal(syscall.SIGSTOP); err != nil {
			t.Fatal(err)
		}
		var status syscall.WaitStatus
		if _, err := syscall.Wait4(cmd.Process.Pid, &status, syscall.WUNTRACED, nil); err != nil || !status.Stopped() {
			t.Fatalf("%v %v", status, err)
		}
		s, err := Create(dir)
		if refused = err != nil; refused {
			expectRule(t, err, ErrBusy)
			continue
		}
		if err := s.Abort(); err != nil {
			t.Fatal(err)
		}
		if err := cmd.Process.Signal(syscall.SIGCONT); err != nil {
			t.Fatal(err)
		}
	}
	if err := cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	cmd.Wait()
	afterKill(t, dir, true, 1)
}
