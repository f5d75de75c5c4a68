package list

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/shoplog"
)

// LogFile is a log on disk.
type LogFile struct {
	Name string // as messages call it
	// Read reads it: nothing where there is none yet.
	Read func() ([]byte, error)
	// Replace writes it anew, whole or not at all; done is false where it is no more what it was.
	Replace func(was, now []byte) (done bool, err error)
	// Once is set where cuts are added that may have been before: a form that is read again.
	Once bool
}

// hasLines reports whether a text has each line of another one.
func hasLines(text, other []byte) bool {
	has := make(map[string]bool)
	for line := range bytes.Lines(text) {
		has[string(bytes.TrimSpace(line))] = true
	}
	for line := range bytes.Lines(other) {
		if !has[string(bytes.TrimSpace(line))] {
			return false
		}
	}
	return true
}

// tries is how often a log is written anew that others write too.
const tries = 20

// Add adds cuts to the log, whole or not at all; what others add meanwhile stays.
func (f LogFile) Add(cuts []shoplog.Cut, u geom.Unit) (said string, err error) {
	for range tries {
		was, err := f.Read()
		if err != nil {
			return "", err
		}
		log, err := ReadLog(f.Name, bytes.NewReader(was))
		if err != nil {
			return "", err
		}
		now := log.With(cuts, u)
		if f.Once && hasLines(was, now[len(was):]) {
			return fmt.Sprintf("Nothing is added: %s has these readings of this day already.", f.Name), nil
		}
		done, err := f.Replace(was, now)
		switch {
		case err != nil:
			return "", fmt.Errorf("cannot write the log, which is as it was: %w", err)
		case done:
			return fmt.Sprintf("%s added to %s.", words.Count(len(cuts), "line", "lines"), f.Name), nil
		}
	}
	return "", fmt.Errorf("nothing is added: other programs write %s all the time; do this again", f.Name)
}
