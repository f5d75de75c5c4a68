package page

import (
	"crypto/subtle"
	"io"
	"log"
	"mime"
	"net/http"
	"strings"
)

// quiet drops what net/http logs of broken connections: the terminal is the shop's.
var quiet = log.New(io.Discard, "", 0)

// policy is what a page may load and do: its own scripts, styles and answers. Text is
// never made into markup.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; trusted-types 'none'"

// guard lets through what comes from the page itself.
type guard struct {
	host  string
	token string
	once  *ticket
	next  http.Handler
}

func (g guard) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	for _, each := range policies {
		h.Set(each[0], each[1])
	}
	r.Body = http.MaxBytesReader(w, r.Body, most)
	switch {
	case headSize(r) > maxHeader:
		refuse(w, http.StatusRequestHeaderFieldsTooLarge, "the request is too long")
	case r.Host != g.host: // another name that was made to lead here
		refuse(w, http.StatusMisdirectedRequest, "this page answers at "+g.host+" alone")
	case len(r.TransferEncoding) > 0: // a browser says how long; of two lengths someone may believe the other
		refuse(w, http.StatusLengthRequired, "the request does not say how long it is")
	case !g.ours(r):
		refuse(w, http.StatusForbidden, "the request comes from another page")
	case r.Method == http.MethodGet && r.URL.Path == "/" && g.once.take(r.URL.Query().Get("ticket")):
		http.Redirect(w, r, g.way(), http.StatusSeeOther)
	case !g.known(r):
		refuse(w, http.StatusUnauthorized, "open the address that the program has printed, whole")
	case r.Method == http.MethodPost && !isJSON(r):
		refuse(w, http.StatusUnsupportedMediaType, "a request is JSON")
	default:
		http.StripPrefix(strings.TrimSuffix(g.way(), "/"), g.next).ServeHTTP(w, r)
	}
}

// headSize is how many bytes a request has but for its body, nearly.
func headSize(r *http.Request) int {
	n := len(r.RequestURI)
	for name, values := range r.Header {
		for _, v := range values {
			n += len(name) + len(v)
		}
	}
	return n
}

// ours reports whether a request comes from the page, or from a person who typed its address, as
// far as a browser says where it comes from.
func (g guard) ours(r *http.Request) bool {
	origin, site := r.Header.Get("Origin"), r.Header.Get("Sec-Fetch-Site")
	return (origin == "" || origin == "http://"+g.host) && (site == "" || site == "same-origin" || site == "none")
}

// way is the path under which everything stands. The token is in it, not in a cookie: browsers send
// the cookies of one port of a computer to all of them, whatever program answers there.
func (g guard) way() string { return "/" + g.token + "/" }

// known reports whether a request has the token.
func (g guard) known(r *http.Request) bool {
	way := g.way()
	return len(r.URL.Path) >= len(way) && subtle.ConstantTimeCompare([]byte(r.URL.Path[:len(way)]), []byte(way)) == 1
}

func isJSON(r *http.Request) bool {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	return err == nil && kind == "application/json"
}

// refuse answers with an error and nothing else.
func refuse(w http.ResponseWriter, code int, message string) {
	reply(w, code, struct {
		Error string `json:"error"`
	}{message})
}
