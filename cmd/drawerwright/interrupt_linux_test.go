package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// manyDrawers is a job of as many different drawers.
func manyDrawers(n int) []byte {
	var b bytes.Buffer
	b.WriteString("units: mm\nstock:\n  birch: {thickness: [12.21, 12.16, 12.24]}\n" +
		"  hardboard: {thickness: [5.9, 5.85]}\ncutter: {kind: router, diameter: 6}\n" +
		"router: {small-part: 50}\ndrawers:\n")
	for i := range n {
		fmt.Fprintf(&b, "  - {name: d%d, outside: %d x %d x 450, sides: birch, bottom: hardboard}\n",
			i, 250+i%500, 80+i%160)
	}
	return b.Bytes()
}

// ctrlC is what Ctrl-C sends; this process does not end by it, even if it comes too late.
func ctrlC(t *testing.T) (press func()) {
	t.Helper()
	ignored := make(chan os.Signal, 1)
	signal.Notify(ignored, os.Interrupt)
	t.Cleanup(func() { signal.Stop(ignored) })
	return func() {
		if err := syscall.Kill(os.Getpid(), syscall.SIGINT); err != nil {
			t.Error(err)
		}
	}
}

// TestInterruptedBuild: a build that is interrupted says at once that it stops, leaves the folder as it was, and
// nothing beside it.
func TestInterruptedBuild(t *testing.T) {
	inTemp(t)
	press := ctrlC(t)
	if err := os.WriteFile("many.yaml", manyDrawers(200), 0o644); err != nil {
		t.Fatal(err)
	}
	var out, complaints bytes.Buffer
	ended := make(chan int)
	s := streams{strings.NewReader(""), &out, &complaints}
	go func() {
		ended <- run(t.Context(), []string{"build", "many.yaml", "-o", "out"}, s)
	}()
	begun := func() bool {
		there, _ := filepath.Glob(".*out*/*/*")
		return len(there) > 0
	}
	for !begun() {
		time.Sleep(time.Millisecond)
	}
	press()
	code := <-ended
	said := complaints.String()
	stops, stopped := strings.Index(said, "stopping: "), strings.Index(said, "stopped; out is as it was before")
	if code != exitJob || stops < 0 || stopped < stops || out.Len() > 0 {
		t.Errorf("exit %d:\n%s%s", code, out.String(), said)
	}
	if there, err := os.ReadDir("."); err != nil || len(there) != 1 {
		t.Errorf("beside the job there is left: %v %v", there, err)
	}
}

// TestInterruptible: an interrupt is told before the work ends, and once; the end of the work is not.
func TestInterruptible(t *testing.T) {
	press := ctrlC(t)
	told := make(chan string)
	s := streams{err: writes(told)}
	ctx, end := s.interruptible(t.Context(), "stopping")
	press()
	if said := <-told; said != "stopping\n" {
		t.Errorf("%q", said)
	}
	<-ctx.Done()
	end()
	end()
	parent, cancel := context.WithCancel(t.Context())
	for _, over := range []func(){cancel, func() {}} {
		ctx, end := s.interruptible(parent, "stopping") // a word of it would wait for ever
		over()
		end()
		<-ctx.Done()
	}
}

// writes gives what is written to a channel.
type writes chan<- string

func (w writes) Write(p []byte) (int, error) {
	w <- string(p)
	return len(p), nil
}
