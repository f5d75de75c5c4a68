// Command drawerwright turns a job file with measured stock into drawer boxes
// that a shop can cut: layered DXF for a router, STL to look at, a cut list and
// a report. explain and help have the whole story; main only maps errors to exits.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"

	"drawerwright/cmd/internal/present"
)

// Exit codes, a contract with scripts.
const (
	exitDone  = 0
	exitJob   = 1 // the job cannot be read or built as asked, or was stopped
	exitUsage = 2 // the command line is wrong
)

// errShown is an error whose words the user has already seen.
var errShown = errors.New("shown")

// toldError is an error of the command line that says itself what to write.
type toldError struct{ error }

// jobError marks an error as the job's, not the command line's.
type jobError struct{ error }

func (e jobError) Unwrap() error { return e.error }

func main() {
	os.Exit(run(context.Background(), os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}

// run is main without the process, for tests.
func run(ctx context.Context, args []string, s streams) int {
	out := &watched{Writer: s.out}
	s.out, s.err = out, &watched{Writer: s.err} // an interrupt is told beside what else is
	root := newRoot(s)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if err == nil && out.failed != nil { // help and the like do not tell
		err = jobError{out.failed}
	}
	var job jobError
	var told toldError
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errShown):
		return exitJob
	case errors.As(err, &job):
		s.complain("drawerwright: %s", plain(err.Error()))
		return exitJob
	}
	if errors.As(err, &told) {
		s.complain("drawerwright: %s", plain(err.Error()))
		return exitUsage
	}
	s.complain("drawerwright: %s\n  hint: drawerwright --help lists the commands, "+
		"drawerwright COMMAND --help one of them", plain(err.Error()))
	return exitUsage
}

// complain writes to standard error, as wide as a screen.
func (s streams) complain(format string, args ...any) {
	out := present.Printed{Width: wrapped(s.err)}
	fmt.Fprintf(&out, format+"\n", args...)
	s.err.Write(out.Wrapped()) // there is nowhere else to say that it failed
}
