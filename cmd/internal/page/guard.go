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

// tokenHeader carries the token of programs that keep no cookies.
const tokenHeader = "X-Drawerwright-Token"

// guard lets through what comes from the page itself.
type guard struct {
	host  string
	token string
	once  *ticket
	next  http.Handler
}

func (g guard) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cache-Control", "no-store")
	r.Body = http.MaxBytesReader(w, r.Body, most)
	switch {
	case r.Host != g.host: // another name that was made to lead here
		refuse(w, http.StatusMisdirectedRequest, "this page answers at "+g.host+" alone")
	case !g.ours(r):
		refuse(w, http.StatusForbidden, "the request comes from another page")
	case g.first(r):
		http.SetCookie(w, &http.Cookie{Name: g.cookie(), Value: g.token, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
		http.Redirect(w, r, "/", http.StatusSeeOther) // so that the token stands in no address
	case !g.known(r):
		refuse(w, http.StatusUnauthorized, "open the address that the program has printed, with its token")
	case r.Method == http.MethodPost && !isJSON(r):
		refuse(w, http.StatusUnsupportedMediaType, "a request is JSON")
	default:
		g.next.ServeHTTP(w, r)
	}
}

// ours reports whether a request comes from the page, or from a person who typed its
// address. A browser names where a request that changes something comes from.
func (g guard) ours(r *http.Request) bool {
	origin := r.Header.Get("Origin")
	switch site := r.Header.Get("Sec-Fetch-Site"); {
	case origin != "" && origin != "http://"+g.host:
		return false
	case site != "" && site != "same-origin" && site != "none":
		return false
	case r.Method == http.MethodGet || r.Method == http.MethodHead:
		return true
	}
	return origin != "" || r.Header.Get(tokenHeader) != ""
}

// first reports whether the address with the token is opened.
func (g guard) first(r *http.Request) bool {
	token := r.URL.Query().Get("token")
	return r.Method == http.MethodGet && r.URL.Path == "/" && (g.equal(token) || g.once.take(token))
}

// known reports whether a request has the token.
func (g guard) known(r *http.Request) bool {
	if g.equal(r.Header.Get(tokenHeader)) {
		return true
	}
	c, err := r.Cookie(g.cookie())
	return err == nil && g.equal(c.Value)
}

func (g guard) equal(token string) bool {
	return subtle.ConstantTimeCompare([]byte(token), []byte(g.token)) == 1
}

// cookie is a name of its own for every port: browsers share cookies among them.
func (g guard) cookie() string {
	return "drawerwright" + strings.TrimLeft(g.host[strings.LastIndexByte(g.host, ':')+1:], "0")
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
