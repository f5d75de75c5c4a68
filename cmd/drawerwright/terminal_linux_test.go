package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"golang.org/x/sys/unix"
)

// The terminal's size.
const rows, columns = 20, 60

// atTerminal runs the program at a terminal at which a person types, and gives what it shows.
func atTerminal(t *testing.T, typed string, args ...string) (code int, shown string) {
	t.Helper()
	return atTerminalIn(t.Context(), t, typed, args...)
}

// atTerminalIn does so until a context ends.
func atTerminalIn(ctx context.Context, t *testing.T, typed string, args ...string) (code int, shown string) {
	t.Helper()
	keyboard, err := os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Skip("no terminals here:", err)
	}
	if err := unix.IoctlSetPointerInt(int(keyboard.Fd()), unix.TIOCSPTLCK, 0); err != nil {
		t.Fatal(err)
	}
	size := &unix.Winsize{Row: rows, Col: columns}
	if err := unix.IoctlSetWinsize(int(keyboard.Fd()), unix.TIOCSWINSZ, size); err != nil {
		t.Fatal(err)
	}
	number, err := unix.IoctlGetInt(int(keyboard.Fd()), unix.TIOCGPTN)
	if err != nil {
		t.Fatal(err)
	}
	screen, err := os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Fatal(err)
	}
	all := make(chan string)
	go func() {
		data, _ := io.ReadAll(keyboard) // it ends with an error when the screen is closed
		all <- string(data)
	}()
	if _, err := keyboard.WriteString(typed); err != nil {
		t.Fatal(err)
	}
	code = run(ctx, args, streams{screen, screen, screen})
	screen.Close()
	shown = <-all
	keyboard.Close()
	return code, shown
}

// left is what stands on a screen in the end: what was written over it is gone.
func left(shown string) string {
	lines := strings.Split(strings.ReplaceAll(shown, "\r\n", "\n"), "\n")
	for i, line := range lines {
		var whole []rune
		for over := range strings.SplitSeq(line, "\r") {
			letters := []rune(over)
			whole = append(letters, whole[min(len(letters), len(whole)):]...)
		}
		lines[i] = strings.TrimRight(string(whole), " ")
	}
	return strings.Join(lines, "\n")
}

// TestWorkingAtATerminal: a person sees what is done while it is, and nothing of it is left.
func TestWorkingAtATerminal(t *testing.T) {
	samples := inTemp(t)
	if err := os.WriteFile("many.yaml", manyDrawers(120), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args string
		says []string
	}{
		{"build many.yaml -o out", []string{" of 120 drawers", "writing the pages"}},
		{"sheets " + filepath.Join(samples, "bench-drawers.yaml"), []string{" %, ", "at least"}},
	} {
		code, shown := atTerminal(t, "", strings.Fields(c.args)...)
		if code != exitDone {
			t.Fatalf("%s: exit %d\n%s", c.args, code, left(shown))
		}
		for _, says := range c.says {
			if !strings.Contains(shown, says) || strings.Contains(left(shown), "[0s]") {
				t.Errorf("%s: %q is not shown, or stays:\n%s", c.args, says, left(shown))
			}
		}
	}
}

// TestInitAtATerminal: the questions are asked there, a file is written at their end and none
// after Ctrl-D, and --yes asks nothing.
func TestInitAtATerminal(t *testing.T) {
	inTemp(t)
	const end = "\x04" // what Ctrl-D sends
	code, shown := atTerminal(t, "in\nbox\n\n"+end, "init", "none.yaml")
	if code != exitJob || !strings.Contains(shown, "no file was written") {
		t.Errorf("ended: exit %d\n%s", code, shown)
	}
	if _, err := os.Stat("none.yaml"); err == nil {
		t.Error("answers that ended leave a file")
	}
	code, shown = atTerminal(t, strings.Repeat("\n", 9), "init", "usual.yaml")
	if code != exitDone || strings.Count(shown, "?") != 9 || !strings.Contains(shown, "check usual.yaml") {
		t.Errorf("exit %d\n%s", code, shown)
	}
	if code, shown := atTerminal(t, "", "init", "yes.yaml", "--yes"); code != exitDone || strings.Contains(shown, "?") {
		t.Errorf("--yes: exit %d\n%s", code, shown)
	}
	usual, err := os.ReadFile("usual.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if yes, err := os.ReadFile("yes.yaml"); err != nil || !bytes.Equal(usual, yes) {
		t.Errorf("what is usual differs, %v", err)
	}
	if code, shown := atTerminal(t, "", "init", "yes.yaml"); code != exitJob || strings.Contains(shown, "?") {
		t.Errorf("a file that is there: exit %d\n%s", code, shown)
	}
}

// TestScreenOfATerminal: the answer is colored there, unless NO_COLOR says no; tables are as wide
// as the terminal, and its height is not exceeded.
func TestScreenOfATerminal(t *testing.T) {
	samples := inTemp(t)
	for _, name := range []string{"COLUMNS", "LINES"} {
		t.Setenv(name, "") // the terminal tells
	}
	loose := "units: mm\nstock: {a: {thickness: [12, 12.1]}, b: {thickness: [6, 6.1]}}\ncutter: {kind: saw, width: 6.6}\n" +
		"drawers: [{name: top, outside: 400 x 120 x 450, sides: a, bottom: b}]\n"
	if err := os.WriteFile("loose.yaml", []byte(loose), 0o644); err != nil {
		t.Fatal(err)
	}
	fits, not := "\x1b[32mFits: ", "\x1b[1;31m! Does not fit: do not cut from this yet; top is "
	for _, c := range []struct {
		job, no, begins string
	}{
		{filepath.Join(samples, "bench-drawers.yaml"), "", fits}, {filepath.Join(samples, "bench-drawers.yaml"), "1", "Fits: "},
		{"loose.yaml", "", not}, {"loose.yaml", "1", "! Does not fit: do not cut from this yet; top is "},
	} {
		t.Setenv("NO_COLOR", c.no)
		code, shown := atTerminal(t, "", "fit", c.job)
		shown = left(shown)
		if code != exitDone || !strings.HasPrefix(shown, c.begins) {
			t.Errorf("exit %d, not %q:\n%q", code, c.begins, shown)
		}
		plain := regexp.MustCompile("\x1b\\[[0-9;]*m").ReplaceAllString(shown, "")
		lines := strings.Split(strings.ReplaceAll(plain, "\r\n", "\n"), "\n")
		for _, line := range lines {
			if utf8.RuneCountInString(line) > columns && !strings.Contains(line, "/") {
				t.Errorf("%d columns: %q", utf8.RuneCountInString(line), line)
			}
		}
		if len(lines) > rows {
			t.Errorf("%d lines on %d:\n%s", len(lines), rows, shown)
		}
		if c.no == "1" && strings.Contains(shown, "\x1b[") {
			t.Errorf("colored all the same:\n%q", shown)
		}
	}
}

// TestAloneAtATerminal: the program alone serves a page there, until Ctrl-C.
func TestAloneAtATerminal(t *testing.T) {
	inTemp(t)
	t.Setenv("DISPLAY", "") // no browser is opened
	t.Setenv("WAYLAND_DISPLAY", "")
	stopped, stop := context.WithCancel(t.Context())
	stop()
	code, shown := atTerminalIn(stopped, t, "")
	said := strings.Contains(shown, "http://127.0.0.1:") && strings.Contains(shown, "nothing is written")
	if code != exitDone || !said {
		t.Errorf("exit %d\n%s", code, shown)
	}
}
