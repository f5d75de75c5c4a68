package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"strconv"
	"time"

	"drawerwright/cmd/internal/page"
	"drawerwright/cmd/internal/present"

	"github.com/spf13/cobra"
)

// closedWait is how long the page is served once it was closed in the browser.
const closedWait = time.Minute

// viewing is how a page is served.
type viewing struct {
	port uint16
	keep bool          // until it is stopped, whether or not it is open in a browser
	wait time.Duration // once it was closed there
	open bool          // the browser, too
}

func (v *viewing) flags(c *cobra.Command) {
	c.Flags().Uint16Var(&v.port, "port", 0, "the port to listen on; 0 takes any that is free")
	c.Flags().BoolVar(&v.keep, "keep", false, "go on when the page was closed in the browser")
}

func newView(s streams) *cobra.Command {
	v := viewing{wait: closedWait}
	c := &cobra.Command{
		Use:   "view [JOB]",
		Short: "Design the drawers of a job on a page in the browser",
		Long: `view serves a page for this computer only: the job as a form and as text side by
side, the box to look at, what its joints will do, the cut list, setups and sheets.
It prints the address to open, which has a token of this run. It ends with Ctrl-C, or
a minute after the page was closed in the browser with nothing unsaved, unless --keep.

Without a job, with one that is not there yet or is empty, the page begins with what
you measured, or with a job file of the folder in which you are. drawerwright alone on
a terminal, or a double click on it, does the same and opens the browser.

The job file is written when you save, whole, and only if it is still what the page
has read; an editor that saves in that very instant is not seen. Other files are not
touched; a download gives all that build writes.`,
		Example: `  $ drawerwright view drawers.yaml
  http://127.0.0.1:40123/6f1c.../
  $ drawerwright view`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return oneJob(nil, args)
			}
			return nil
		},
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			path := ""
			if len(args) == 1 {
				path = args[0]
			}
			if path == "-" {
				return errors.New("view needs a job file, not standard input")
			}
			return v.run(c.Context(), path, s)
		},
	}
	v.flags(c)
	return c
}

// run serves the page of a job, or of none, until a person ends it.
func (v viewing) run(ctx context.Context, path string, s streams) error {
	if err := v.serve(ctx, path, s); err != nil {
		return jobError{err}
	}
	return nil
}

// answered says before the address what becomes of the job as it is. It stands on standard
// error, so that the address alone is on standard output.
func answered(path string, sized func(drawers int), s streams) error {
	l, err := parseJob(path, s)
	if err != nil {
		return nil // the page says so
	}
	l.startWith(sized)
	head := []present.Line{{Level: present.Bad, Text: "This job cannot be built yet; the page says where it is wrong."}}
	if !l.Failed() {
		head = l.answer()
	}
	_, err = s.err.Write(present.Screen{Head: head}.Text(sizeOf(s.err), painter(s.err)))
	return err
}

// serve serves the page of a job until the context ends, or the page was closed.
func (v viewing) serve(ctx context.Context, path string, s streams) error {
	p, err := page.Open(path)
	if err != nil {
		return err
	}
	defer p.Close()
	sized, restore := pageMemory()
	defer restore()
	p.Sized = sized
	listener, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", strconv.Itoa(int(v.port))))
	if err != nil {
		return fmt.Errorf("cannot serve the page: %w; another --port may be free", err)
	}
	host := listener.Addr().String()
	server := p.Server(host)
	defer server.Close()
	work, cancel := context.WithCancel(ctx)
	defer cancel()
	server.BaseContext = func(net.Listener) context.Context { return work } // searches end with the page
	var closed <-chan struct{}                                              // never, where the page is kept
	if !v.keep {
		closed = p.Ended(v.wait)
	}
	served := make(chan error, 1)
	go func() { served <- server.Serve(page.Sealed(listener)) }()
	if err := begun(p, path, sized, s); err != nil {
		return err
	}
	// Before, nothing is to be ended well: an interrupt need not wait for a large job to be worked out.
	ctx, stop := s.interruptible(ctx, "the page ends")
	defer stop()
	if err := v.announce(p, host, s); err != nil {
		return err
	}
	select {
	case err := <-served:
		return fmt.Errorf("the page ended: %w", err)
	case <-closed:
		s.complain("The page was closed a minute ago with nothing unsaved, so drawerwright ends; --keep lets it wait.")
	case <-ctx.Done():
	}
	return nil // what ends the page ends with it all answers; what is being written is written
}

// begun says what the page begins with.
func begun(p *page.Page, path string, sized func(drawers int), s streams) error {
	if p.New() {
		s.complain("A new job: nothing is written before you save it.")
		return nil
	}
	return answered(path, sized, s)
}

// announce says where the page is, and opens it if it shall.
func (v viewing) announce(p *page.Page, host string, s streams) error {
	if _, err := fmt.Fprintln(s.out, p.Address(host)); err != nil {
		return err
	}
	opened := v.open && desktop() && openBrowser(p.AddressOnce(host)) == nil
	how := "Open that address in a browser on this computer."
	if opened {
		how = "The browser opens it now."
	}
	ends := "Ctrl-C ends the page, and so does closing it in the browser for a minute."
	if v.keep {
		ends = "Ctrl-C ends the page."
	}
	s.complain("%s %s", how, ends)
	return nil
}
