package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"strconv"
	"syscall"
	"time"

	"drawerwright/cmd/internal/page"
	"drawerwright/cmd/internal/present"

	"github.com/spf13/cobra"
)

// lastWords is how long answers that are being given may take when the page is ended.
const lastWords = 5 * time.Second

func newView(s streams) *cobra.Command {
	var port uint16
	c := &cobra.Command{
		Use:   "view JOB",
		Short: "Design the drawers of a job on a page in the browser",
		Long: `view serves a page for this computer only: the job as a form and as text side by
side, the box to look at, what its joints will do, the cut list, setups and sheets.
It prints the address to open, which has a token of this run, and ends with Ctrl-C.

The job file is written when you save, whole, and only if it is still what the page
has read. Other files are not touched; a download gives all that build writes.`,
		Example: `  $ drawerwright view drawers.yaml
  http://127.0.0.1:40123/?token=...`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			if args[0] == "-" {
				return errors.New("view needs a job file, not standard input")
			}
			ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			if err := view(ctx, args[0], port, s); err != nil {
				return jobError{err}
			}
			return nil
		},
	}
	c.Flags().Uint16Var(&port, "port", 0, "the port to listen on; 0 takes any that is free")
	return c
}

// answered says before the address what becomes of the job as it is. It stands on standard
// error, so that the address alone is on standard output.
func answered(path string, s streams) error {
	l, err := loadJob(path, s)
	if err != nil {
		return nil // the page says so
	}
	head := []present.Line{{Level: present.Bad, Text: "This job cannot be built yet; the page says where it is wrong."}}
	if !l.Failed() {
		head = l.answer()
	}
	_, err = s.err.Write(present.Screen{Head: head}.Text(sizeOf(s.err), painter(s.err)))
	return err
}

// view serves the page of a job until the context ends.
func view(ctx context.Context, path string, port uint16, s streams) error {
	p, err := page.Open(path)
	if err != nil {
		return err
	}
	defer p.Close()
	listener, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", strconv.Itoa(int(port))))
	if err != nil {
		return fmt.Errorf("cannot serve the page: %w; another --port may be free", err)
	}
	host := listener.Addr().String()
	server := p.Server(host)
	work, cancel := context.WithCancel(ctx)
	defer cancel()
	server.BaseContext = func(net.Listener) context.Context { return work } // searches end with the page
	served := make(chan error, 1)
	go func() { served <- server.Serve(listener) }()
	if err := answered(path, s); err != nil {
		server.Close()
		return err
	}
	if _, err := fmt.Fprintln(s.out, p.Address(host)); err != nil {
		server.Close()
		return err
	}
	fmt.Fprintln(s.err, "Open that address in a browser on this computer. Ctrl-C ends the page.")
	select {
	case err := <-served:
		return fmt.Errorf("the page ended: %w", err)
	case <-ctx.Done():
	}
	last, done := context.WithTimeout(context.Background(), lastWords)
	defer done()
	if err := server.Shutdown(last); err != nil && !errors.Is(err, http.ErrServerClosed) {
		server.Close()
	}
	return nil
}
