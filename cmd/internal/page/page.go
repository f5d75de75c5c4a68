// Package page serves a local page on which a job is designed: the job as a form and
// as text, what it comes out as, and the file on disk.
//
// [Open] takes a job file, [Page.Handler] answers what a browser asks. The page works
// on the text that the browser holds; the file is read when it is asked for and
// written only when a person saves. A request is answered when it comes to the address
// of the page itself, from the page itself, and carries the token of this run.
//
// Nothing outside the folder of the job is read or written.
package page

import (
	"crypto/rand"
	"encoding/hex"
	"net/http"
	"time"
)

// Limits of requests. A job of 512 KiB is, with every character escaped, less than
// most.
const (
	most       = 4 << 20 // bytes of a body
	maxHeader  = 16 << 10
	headerTime = 5 * time.Second
	readTime   = 20 * time.Second
	writeTime  = 3 * time.Minute // a download of a large job
	idleTime   = 2 * time.Minute
	sheetTime  = 30 * time.Second
	zipTime    = 2 * time.Minute
)

// Page is one job on a local page.
type Page struct {
	file  *file
	token string
	work  *work
}

// Open opens the page of a job file. The error is about the file.
func Open(path string) (*Page, error) {
	f, err := openFile(path)
	if err != nil {
		return nil, err
	}
	var token [24]byte
	rand.Read(token[:]) // never fails
	return &Page{file: f, token: hex.EncodeToString(token[:]), work: newWork(f)}, nil
}

// Close closes the job's folder.
func (p *Page) Close() error { return p.file.root.Close() }

// Address is what a person opens; host is where the page listens, as 127.0.0.1:8080.
func (p *Page) Address(host string) string { return "http://" + host + "/?token=" + p.token }

// Server is a server with the page's limits, for a page that listens on host.
func (p *Page) Server(host string) *http.Server {
	return &http.Server{
		Handler:           p.Handler(host),
		MaxHeaderBytes:    maxHeader,
		ReadHeaderTimeout: headerTime,
		ReadTimeout:       readTime,
		WriteTimeout:      writeTime,
		IdleTimeout:       idleTime,
		ErrorLog:          quiet,
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
	mux.HandleFunc("POST /api/look", p.look)
	mux.HandleFunc("POST /api/edit", p.edit)
	mux.HandleFunc("POST /api/sheets", p.sheets)
	mux.HandleFunc("POST /api/save", p.save)
	mux.HandleFunc("POST /api/zip", p.zip)
	return guard{host: host, token: p.token, next: mux}
}
