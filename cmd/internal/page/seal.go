package page

import (
	"bytes"
	"net"
	"strings"
)

// policies are the headers of every answer.
var policies = [][2]string{
	{"Content-Security-Policy", policy},
	{"X-Content-Type-Options", "nosniff"},
	{"X-Frame-Options", "DENY"},
	{"Referrer-Policy", "no-referrer"},
	{"Cross-Origin-Opener-Policy", "same-origin"},
	{"Cross-Origin-Resource-Policy", "same-origin"},
	{"Cache-Control", "no-store"},
}

// policyLines are the same as they stand in an answer.
var policyLines = func() []byte {
	var b strings.Builder
	for _, h := range policies {
		b.WriteString(h[0] + ": " + h[1] + "\r\n")
	}
	return []byte(b.String())
}()

// Sealed is a listener of a page. What comes and is no request never gets to the page: net/http answers it,
// and these answers get the headers here.
func Sealed(l net.Listener) net.Listener { return sealed{l} }

type sealed struct{ net.Listener }

// Accept is that of a net.Listener.
func (l sealed) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	if err != nil {
		return nil, err
	}
	return sealedConn{c}, nil
}

type sealedConn struct{ net.Conn }

// ownHead is what follows the status in an answer of net/http's own.
const ownHead = "Content-Type: text/plain; charset=utf-8\r\nConnection: close"

// Write puts the headers into an answer of net/http's own, which is one write: ownHead with a body, or a
// head alone. An answer of the page has the headers, and no text of a job holds the ends of lines of another.
func (c sealedConn) Write(p []byte) (int, error) {
	head, body, found := bytes.Cut(p, []byte("\r\n\r\n"))
	status, rest, more := bytes.Cut(head, []byte("\r\n"))
	own := string(rest) == ownHead || len(body) == 0 && !bytes.Contains(rest, []byte(policies[0][0]))
	if !found || !more || !own || !bytes.HasPrefix(status, []byte("HTTP/1.1 ")) {
		return c.Conn.Write(p)
	}
	out := bytes.Join([][]byte{status, append(bytes.Clone(policyLines), rest...)}, []byte("\r\n"))
	if _, err := c.Conn.Write(append(out, p[len(head):]...)); err != nil {
		return 0, err
	}
	return len(p), nil
}
