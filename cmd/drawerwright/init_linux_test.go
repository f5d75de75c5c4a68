package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"

	"golang.org/x/sys/unix"
)

// atTerminal runs the program at a terminal at which a person types, and gives what it shows.
func atTerminal(t *testing.T, typed string, args ...string) (code int, shown string) {
	t.Helper()
	keyboard, err := os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Skip("no terminals here:", err)
	}
	if err := unix.IoctlSetPointerInt(int(keyboard.Fd()), unix.TIOCSPTLCK, 0); err != nil {
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
	code = run(t.Context(), args, streams{screen, screen, screen})
	screen.Close()
	shown = <-all
	keyboard.Close()
	return code, shown
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
