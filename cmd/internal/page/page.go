// Package page serves a local page on which a job is designed: the job as a form and
// as text, what it comes out as, and the file on disk.
//
// [Open] takes a job file, or none, [Page.Handler] answers what a browser asks. The page works
// on the text that the browser holds; the file is read when it is asked for and
// written only when a person saves. A request is answered when it comes to the address
// of the page itself, from the page itself, and has the token of this run in its path.
//
// Nothing outside the folder of the job is read or written.
package page

import (
	"crypto/rand"
	"encoding/hex"
	"net/http"
	"time"
)

// Limits of requests. A job of 1 MiB is, with every character escaped, less than
// most.
const (
	most       = 8 << 20  // bytes of a body
	maxHeader  = 16 << 10 // bytes of a request but for its body
	headerTime = 5 * time.Second
	readTime   = 20 * time.Second
	writeTime  = 3 * time.Minute // a download of a large job
	idleTime   = 2 * time.Minute
	sheetTime  = 30 * time.Second
	takeTime   = 2 * time.Minute
	lineTime   = 10 * time.Second // of a line that tells how far a build has come
)

// Page is the jobs of a folder on a local page; each tab of a browser has one of them.
type Page struct {
	folder *folder
	token  string
	once   ticket
	work   *work
	tabs   tabs
	// Sized, if there is one, is told of how many drawers each text is before they are worked out.
	Sized func(drawers int)
}

// Open opens the page of a job file, which need not be there yet; without a path, of the folder
// in which the program was started. The error is about the file.
func Open(path string) (*Page, error) {
	d, err := openFolder(path)
	if err != nil {
		return nil, err
	}
	p := &Page{folder: d, token: secret()}
	p.work = newWork(d, func(drawers int) {
		if p.Sized != nil {
			p.Sized(drawers)
		}
	})
	return p, nil
}

// secret is a text that nobody guesses.
func secret() string {
	var random [24]byte
	rand.Read(random[:]) // never fails
	return hex.EncodeToString(random[:])
}

// Close closes the job's folder, once saves have ended and builds are cleared away: those of requests whose
// contexts have ended soon are.
func (p *Page) Close() error { return p.folder.close() }

// New reports whether the job that the page was opened on is still to be written.
func (p *Page) New() bool {
	now, err := p.folder.given.now()
	return err == nil && blank(now.Text)
}

// Address is what a person opens; host is where the page listens, as 127.0.0.1:8080.
func (p *Page) Address(host string) string { return "http://" + host + "/" + p.token + "/" }

// AddressOnce is an address that opens the page one time, the latest alone: for the command line of a
// browser, which other users of the computer may see.
func (p *Page) AddressOnce(host string) string {
	return "http://" + host + "/?ticket=" + p.once.issue()
}

// Server is a server with the page's limits, for a page that listens on host.
func (p *Page) Server(host string) *http.Server {
	return &http.Server{
		Handler:           p.Handler(host),
		MaxHeaderBytes:    64 * maxHeader, // guard refuses less with its policy, net/http has none
		ReadHeaderTimeout: headerTime,
		ReadTimeout:       readTime,
		WriteTimeout:      writeTime,
		IdleTimeout:       idleTime,
		ErrorLog:          quiet,

		DisableGeneralOptionsHandler: true, // what it answers has no policy
	}
}

// Handler answers what comes to the page at host.
func (p *Page) Handler(host string) http.Handler {
	mux := http.NewServeMux()
	for name := range assets {
		mux.HandleFunc("GET /"+name, serveAsset(name))
	}
	mux.HandleFunc("GET /{$}", serveAsset("index.html"))
	mux.HandleFunc("GET /api/job", p.job)
	mux.HandleFunc("GET /api/disk", p.disk)
	mux.HandleFunc("GET /api/beside", p.changed)
	mux.HandleFunc("GET /api/start", p.start)
	mux.HandleFunc("POST /api/begin", p.begin)
	mux.HandleFunc("POST /api/slide", p.slide)
	mux.HandleFunc("POST /api/name", p.name)
	mux.HandleFunc("POST /api/here", p.here)
	mux.HandleFunc("POST /api/leave", p.leave)
	mux.HandleFunc("POST /api/look", p.look)
	mux.HandleFunc("POST /api/edit", p.edit)
	mux.HandleFunc("POST /api/sheets", p.sheets)
	mux.HandleFunc("POST /api/first", p.first)
	mux.HandleFunc("POST /api/save", p.save)
	mux.HandleFunc("POST /api/take", p.take)
	return guard{host: host, token: p.token, once: &p.once, next: p.named(mux)}
}
