package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"sync"
	"syscall"
)

// stopping is said where a folder is being written.
const stopping = "stopping: what was begun is taken away; Ctrl-C again ends at once, and leaves that to the next run"

// interruptible gives a context that Ctrl-C ends, and the signals of systems that end a process. What
// then is done is said at once, for it can take a moment until it is; a second Ctrl-C ends the process
// as it is. The word is out when end returns.
func (s streams) interruptible(parent context.Context, word string) (ctx context.Context, end func()) {
	ctx, release := signal.NotifyContext(parent, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	told := make(chan struct{})
	unused := context.AfterFunc(ctx, func() {
		defer close(told)
		release()
		if parent.Err() != nil {
			return
		}
		if terminal(s.err) {
			io.WriteString(s.err, "\n") // below a bar
		}
		s.complain("%s", word)
	})
	return ctx, sync.OnceFunc(func() {
		if !unused() {
			<-told
		}
		release()
	})
}
