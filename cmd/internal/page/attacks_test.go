package page

import (
	"archive/zip"
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"net"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// attacks are the classes that the guides of OWASP have for what answers on a person's own computer, with
// the test of each.
var attacks = map[string]string{
	"another name that leads here (DNS rebinding)":     "TestGuard",
	"a request forged by another page (CSRF)":          "TestGuard",
	"a page in the frame of another (clickjacking)":    "TestGuard",
	"content taken for another kind (MIME sniffing)":   "TestGuard",
	"answers kept by a browser or between":             "TestGuard",
	"the token in the referrer, in a cookie, in pages": "TestFirstAddress",
	"the token guessed":                                "TestTokens",
	"a ticket used twice":                              "TestAddressOnce",
	"paths out of the folder":                          "TestPaths",
	"files out of the folder":                          "TestFilesOfTheJob",
	"links out of the folder":                          "TestSwappedForLinks",
	"two lengths of one request (smuggling)":           "TestNoRequests",
	"headers made of names":                            "TestTextsInAnswers",
	"markup made of texts and queries (XSS)":           "TestTextsInAnswers",
	"names in an archive (zip slip)":                   "TestTextsInAnswers",
	"another method by a header":                       "TestMethods",
	"a redirect to another place":                      "TestMethods",
	"what other pages may read (CORS)":                 "TestMethods",
	"too much in a body, a header or an address":       "TestGuard",
	"limits of time":                                   "TestLimits",
	"slow clients":                                     "TestSlowClients",
	"what is no request, or asks for another protocol": "TestNoRequests",
	"policy in every answer":                           "TestNoRequests",
	"scripts and markup from elsewhere":                "TestAssets",
}

// TestAttacks: each class has a test, which is there.
func TestAttacks(t *testing.T) {
	list, err := filepath.Glob("*_test.go")
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, name := range list {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`(?m)^func (Test\w+)\(`).FindAllStringSubmatch(string(data), -1) {
			all = append(all, m[1])
		}
	}
	for class, test := range attacks {
		if !slices.Contains(all, test) {
			t.Errorf("%s: there is no %s", class, test)
		}
	}
}

// policed fails unless an answer has every header of the policy, once, and no leave for other pages.
func policed(t *testing.T, what string, h http.Header) {
	t.Helper()
	for _, each := range policies {
		if got := h.Values(each[0]); !slices.Equal(got, []string{each[1]}) {
			t.Errorf("%s: %s: %q", what, each[0], got)
		}
	}
	for name := range h {
		if strings.HasPrefix(name, "Access-Control-") || name == "Set-Cookie" || name == "Server" {
			t.Errorf("%s: the answer has %s", what, name)
		}
	}
}

// A token has as many random bits as nobody tries, and is compared in one time.
func TestTokens(t *testing.T) {
	seen := map[string]bool{}
	for range 1000 {
		s := secret()
		if seen[s] || len(s) != 48 || strings.Trim(s, "0123456789abcdef") != "" {
			t.Fatalf("%q is no new one of 192 bits", s)
		}
		seen[s] = true
	}
	for _, name := range []string{"guard.go", "ticket.go"} {
		data, err := os.ReadFile(name)
		if err != nil || !strings.Contains(string(data), "subtle.ConstantTimeCompare(") {
			t.Errorf("%s compares in another way, %v", name, err)
		}
	}
}

// TestPaths: no way of writing a path leads to a file of the computer.
func TestPaths(t *testing.T) {
	p, path := open(t, jobText)
	up := strings.Repeat("../", 12)
	for _, to := range []string{"etc/passwd", "proc/self/environ", strings.TrimPrefix(filepath.ToSlash(path), "/")} {
		for _, way := range []string{
			up, "..%2f", "%2e%2e/", "..%252f", `..\`, "..%5c", "....//", "..%c0%af",
			"main.js%00/" + up, "main.js/" + up, "/", "file:///", "api/job/" + up, "assets/" + up,
		} {
			if strings.HasPrefix(strings.TrimLeft(way, "."), "%") || way == `..\` || way == "....//" {
				way = strings.Repeat(way, 12)
			}
			path, query := request(p, "GET", "/", nil), request(p, "GET", "/api/disk", nil)
			path.URL.Path += way + to
			path.URL.RawPath = path.URL.Path
			query.URL.RawQuery = url.Values{"file": {way + to}}.Encode()
			escaped, err := url.PathUnescape(way + to)
			again := request(p, "GET", "/api/disk", nil)
			again.URL.RawQuery = url.Values{"file": {escaped}}.Encode()
			for _, r := range []*http.Request{path, query, again} {
				w := do(p, r)
				policed(t, way, w.Header())
				said := w.Body.String()
				if w.Code == http.StatusOK || strings.Contains(said, "root:") || strings.Contains(said, "birch") {
					t.Errorf("%q: %d, %v, %.200s", r.URL, w.Code, err, said)
				}
			}
		}
	}
}

// TestMethods: a method is what it says; none of a header counts. No answer leads elsewhere or is for
// another page to read.
func TestMethods(t *testing.T) {
	p, path := open(t, jobText)
	saved := state{stateOf([]byte(jobText)).Version, "# other\n"}
	for name, c := range map[string]struct {
		r    *http.Request
		code int
	}{
		"a head":  {request(p, "HEAD", "/", nil), 200},
		"options": {request(p, "OPTIONS", "/api/save", nil), 405},
		"before a forged save": {request(p, "OPTIONS", "/api/save", nil, header("Origin", "http://x.example"),
			header("Access-Control-Request-Method", "POST")), 403},
		"patch":         {request(p, "PATCH", "/api/save", saved), 405},
		"a range":       {request(p, "GET", "/main.js", nil, header("Range", "bytes=0-1")), 200},
		"an upgrade":    {request(p, "GET", "/api/job", nil, header("Upgrade", "websocket")), 200},
		"two slashes":   {request(p, "GET", "//x.example", nil), 307},
		"a next place":  {request(p, "GET", "/?next=http://x.example&url=//x.example", nil), 200},
		"an old ticket": {request(p, "GET", "/?ticket=x&next=http://x.example", nil, under(p, "")), 401},
	} {
		w := do(p, c.r)
		if policed(t, name, w.Header()); w.Code != c.code {
			t.Errorf("%s: %d, want %d", name, w.Code, c.code)
		}
		if to := w.Header().Get("Location"); strings.HasPrefix(to, "//") || strings.Contains(to, ":") {
			t.Errorf("%s leads to %s", name, to)
		}
	}
	for _, over := range []string{"X-HTTP-Method-Override", "X-Method-Override", "X-HTTP-Method"} {
		if w := do(p, request(p, "GET", "/api/save", nil, header(over, "POST"))); w.Code != 405 {
			t.Errorf("%s: %d", over, w.Code)
		}
	}
	if data, _ := os.ReadFile(path); string(data) != jobText {
		t.Errorf("something was saved: %q", data)
	}
}

// TestTextsInAnswers: texts of a job and of a query, whatever they are, are in answers as JSON alone, are
// no header, and no name in an archive that leads out of its folder.
func TestTextsInAnswers(t *testing.T) {
	const wild = `"><script>alert(1)</script>\r\nSet-Cookie: a=b\r\n\r\n../../x`
	p, _ := open(t, jobText)
	const title = `"><script>alert(1)</script>../../x`
	text := strings.Replace(jobText, "units: mm", "job: '"+title+"'\nunits: mm", 1)
	bad := strings.ReplaceAll(text, "name: wide", `name: "<img src=x onerror=alert(1)>"`)
	answers := map[string]*http.Request{
		"a look":       request(p, "POST", "/api/look", asked{text, view{Show: "parts"}}),
		"a flat look":  request(p, "POST", "/api/look", asked{text, view{Show: "setups", Flat: true}}),
		"a mistake":    request(p, "POST", "/api/look", asked{bad, view{Show: "fit"}}),
		"sheets":       request(p, "POST", "/api/sheets", map[string]string{"text": text}),
		"a first box":  request(p, "POST", "/api/first", boxAsked{Text: text, Drawer: wild, Readings: map[string]string{"height": wild}}),
		"a file":       request(p, "GET", "/api/job?file=%3Cscript%3E.yaml", nil),
		"what is near": request(p, "GET", "/api/beside?name=%3Cscript%3E&seen=x", nil),
		"what is seen": request(p, "GET", "/api/disk?seen=%3Cscript%3E%0d%0aX:y", nil),
		"a name":       request(p, "POST", "/api/name", map[string]string{"name": wild}),
		"a thing":      request(p, "POST", "/api/take", map[string]string{"text": text, "what": wild}),
		"a slide":      request(p, "POST", "/api/slide", answered{Slide: wild}),
		"a path":       request(p, "GET", "/%3Cscript%3Ealert(1)%3C/script%3E", nil),
	}
	for name, r := range answers {
		w := do(p, r)
		policed(t, name, w.Header())
		said, kind := w.Body.String(), w.Header().Get("Content-Type")
		if strings.Contains(said, "<script") || strings.Contains(said, "<img") || strings.Contains(said, p.token) {
			t.Errorf("%s: markup or the token in %.300s", name, said)
		}
		if kind != "application/json" && !(w.Code == 404 && strings.HasPrefix(kind, "text/plain")) {
			t.Errorf("%s: %d is %q", name, w.Code, kind)
		}
	}
	data := taken(t, p, text, "all").data
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil || len(z.File) < 10 {
		t.Fatal(z, err)
	}
	for _, f := range z.File {
		if !filepath.IsLocal(filepath.FromSlash(f.Name)) || strings.ContainsAny(f.Name, "\\:<>\"\r\n") {
			t.Errorf("the archive has a file %q", f.Name)
		}
	}
}

// TestNoRequests: what is no request of a browser's to this page, sent as it is: two lengths, a length and
// chunks, headers that two readers read in two ways, another protocol. None gets an answer of the page, and
// each answer has the policy.
func TestNoRequests(t *testing.T) {
	p, path := open(t, jobText)
	at := served(t, p)
	body, err := json.Marshal(state{stateOf([]byte(jobText)).Version, "# forged\n"})
	if err != nil {
		t.Fatal(err)
	}
	save := "POST /" + p.token + "/api/save HTTP/1.1\r\nHost: " + at + "\r\nContent-Type: application/json\r\n"
	const chunked = "Transfer-Encoding: chunked\r\n"
	get := "GET /" + p.token + "/ HTTP/1.1\r\nHost: " + at + "\r\n"
	for name, c := range map[string]struct {
		sent string
		code int
	}{
		"a request of the page":    {get + "\r\n", 200},
		"two lengths":              {save + "Content-Length: 5\r\nContent-Length: 6\r\n\r\n" + string(body), 400},
		"a length below 0":         {save + "Content-Length: -5\r\n\r\n" + string(body), 400},
		"a length with a sign":     {save + "Content-Length: +5\r\n\r\n" + string(body), 400},
		"a length and chunks":      {save + chunked + "Content-Length: 5\r\n\r\n0\r\n\r\n", 411},
		"chunks":                   {save + chunked + "\r\n9\r\n" + string(body[:9]) + "\r\n0\r\n\r\n", 411},
		"chunks by another name":   {save + "Transfer-Encoding: xchunked\r\n\r\n0\r\n\r\n", 501},
		"two kinds of chunks":      {save + chunked + "Transfer-Encoding: identity\r\n\r\n0\r\n\r\n", 501},
		"a space before the colon": {save + "Content-Length : 5\r\n\r\n" + string(body), 400},
		"a line that goes on":      {get + "X-A: b\r\n c: d\r\n\r\n", 200}, // it is one header, for anybody
		"NUL in a header":          {get + "X-A: b\x00c\r\n\r\n", 400},
		"no host":                  {"GET / HTTP/1.1\r\n\r\n", 400},
		"two hosts":                {get + "Host: x.example\r\n\r\n", 400},
		"a host in the address":    {"GET http://x.example/" + p.token + "/ HTTP/1.1\r\nHost: " + at + "\r\n\r\n", 421},
		"a tunnel":                 {"CONNECT x.example:80 HTTP/1.1\r\nHost: x.example:80\r\n\r\n", 421},
		"what there is to be had":  {"OPTIONS * HTTP/1.1\r\nHost: " + at + "\r\n\r\n", 401},
		"another protocol":         {get + "Upgrade: websocket\r\nConnection: Upgrade\r\n\r\n", 200},
		"a later protocol":         {"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", 421},
		"no such protocol":         {"GET / HTTP/9.9\r\nHost: " + at + "\r\n\r\n", 505},
		"no protocol":              {"GET /\r\n\r\n", 400},
		"what nobody can expect":   {get + "Expect: wonders\r\n\r\n", 417},
		"a long head":              {get + "X-A: " + strings.Repeat("x", 2<<20) + "\r\n\r\n", 431},
		"noise":                    {"\x16\x03\x01\x02\x00\r\n\r\n", 400},
	} {
		conn, err := net.Dial("tcp4", at)
		if err != nil {
			t.Fatal(err)
		}
		go io.WriteString(conn, c.sent) // of a long head not all is read
		got, err := http.ReadResponse(bufio.NewReader(conn), nil)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			conn.Close()
			continue
		}
		if policed(t, name, got.Header); got.StatusCode != c.code {
			t.Errorf("%s: %d, want %d", name, got.StatusCode, c.code)
		}
		said, _ := io.ReadAll(got.Body) // of what was not read whole, the end is lost
		if strings.Contains(string(said), p.token) || strings.Contains(string(said), "birch") {
			t.Errorf("%s: %.200s", name, said)
		}
		conn.Close()
	}
	if data, _ := os.ReadFile(path); string(data) != jobText {
		t.Errorf("something was saved: %q", data)
	}
}
