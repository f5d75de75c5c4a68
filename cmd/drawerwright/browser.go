package main

import (
	"io/fs"
	"os"
	"os/exec"
	"runtime"
)

// desktop reports whether there is one, on which a browser can be opened.
func desktop() bool {
	return runtime.GOOS == "windows" || runtime.GOOS == "darwin" ||
		os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}

// openBrowser opens an address in the browser that a person uses, as the desktop does it; it
// does not wait for it.
func openBrowser(address string) error {
	command := []string{"xdg-open", address}
	switch runtime.GOOS {
	case "windows":
		command = []string{"rundll32", "url.dll,FileProtocolHandler", address}
	case "darwin":
		command = []string{"open", address}
	}
	c := exec.Command(command[0], command[1:]...)
	err := c.Start()
	if err == nil {
		go c.Wait() // so that it does not stay as a process that has ended
	}
	return err
}

// byPerson reports whether a person started the program and waits for what it shows: at a
// terminal, or by a double click on a desktop, which gives a program no terminal, no pipe and
// no file.
func byPerson(s streams) bool {
	if terminal(s.in) && terminal(s.out) {
		return true
	}
	return desktop() && idle(s.in) && idle(s.out)
}

// idle reports whether a stream is one of the system that nobody reads or types at.
func idle(w any) bool {
	f, ok := unwatched(w).(*os.File)
	if !ok || terminal(w) {
		return false
	}
	info, err := f.Stat()
	return err != nil || info.Mode()&(fs.ModeCharDevice|fs.ModeSocket) != 0 // closed, nothing, or a log
}
