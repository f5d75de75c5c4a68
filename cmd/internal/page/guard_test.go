package page

import (
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// header sets or, with an empty value, takes out a header.
func header(name, value string) func(*http.Request) {
	return func(r *http.Request) {
		if value == "" {
			r.Header.Del(name)
		} else {
			r.Header.Set(name, value)
		}
	}
}

func at(host string) func(*http.Request) { return func(r *http.Request) { r.Host = host } }

// under puts a request under another token than that of the run; an empty one puts it under none.
func under(p *Page, token string) func(*http.Request) {
	return func(r *http.Request) { r.URL.Path = strings.Replace(r.URL.Path, "/"+p.token, token, 1) }
}

// Nothing is answered that does not come from the page, at its own address, with the
// token of this run.
func TestGuard(t *testing.T) {
	p, _ := open(t, jobText)
	look := asked{Text: jobText}
	for name, c := range map[string]struct {
		r    *http.Request
		code int
	}{
		"the page":                         {request(p, "GET", "/", nil), 200},
		"a script":                         {request(p, "GET", "/main.js", nil), 200},
		"the job":                          {request(p, "GET", "/api/job", nil), 200},
		"a look":                           {request(p, "POST", "/api/look", look), 200},
		"a program with the token":         {request(p, "POST", "/api/look", look, header("Origin", ""), header("Sec-Fetch-Site", "")), 200},
		"another name for this computer":   {request(p, "GET", "/", nil, at("drawers.example:8123")), 421},
		"localhost":                        {request(p, "GET", "/api/job", nil, at("localhost:8123")), 421},
		"another port":                     {request(p, "GET", "/api/job", nil, at("127.0.0.1:80")), 421},
		"no host":                          {request(p, "GET", "/api/job", nil, at("")), 421},
		"another page's request":           {request(p, "POST", "/api/look", look, header("Origin", "http://drawers.example")), 403},
		"a page of another port":           {request(p, "POST", "/api/save", look, header("Origin", "http://127.0.0.1:8124")), 403},
		"a page from a file":               {request(p, "POST", "/api/save", look, header("Origin", "null")), 403},
		"a read by another page":           {request(p, "GET", "/api/job", nil, header("Origin", "http://drawers.example")), 403},
		"an image of another page":         {request(p, "GET", "/api/job", nil, header("Sec-Fetch-Site", "cross-site")), 403},
		"another port of this computer":    {request(p, "GET", "/api/job", nil, header("Sec-Fetch-Site", "same-site")), 403},
		"no token":                         {request(p, "GET", "/api/job", nil, under(p, "")), 401},
		"no token for the page":            {request(p, "GET", "/", nil, under(p, "")), 401},
		"no token for a script":            {request(p, "GET", "/main.js", nil, under(p, "")), 401},
		"no token to save":                 {request(p, "POST", "/api/save", look, under(p, "")), 401},
		"no token to begin":                {request(p, "POST", "/api/begin", answered{}, under(p, "")), 401},
		"no token for the folder":          {request(p, "GET", "/api/start", nil, under(p, "")), 401},
		"no token for a name":              {request(p, "POST", "/api/name", look, under(p, "")), 401},
		"no token to leave":                {request(p, "POST", "/api/leave", tab{}, under(p, "")), 401},
		"another page that leaves":         {request(p, "POST", "/api/leave", tab{}, header("Origin", "http://x.example")), 403},
		"leaving in plain text":            {request(p, "POST", "/api/leave", tab{}, header("Content-Type", "text/plain")), 415},
		"a folder read by another page":    {request(p, "GET", "/api/start", nil, header("Sec-Fetch-Site", "cross-site")), 403},
		"a file out of the folder":         {request(p, "GET", "/api/job?file=../x.yaml", nil), 400},
		"a wrong token":                    {request(p, "GET", "/api/job", nil, under(p, "/"+p.token[1:]+"x")), 401},
		"a part of the token":              {request(p, "GET", "/api/job", nil, under(p, "/"+p.token[:47])), 401},
		"more than the token":              {request(p, "GET", "/api/job", nil, under(p, "/"+p.token+"0")), 401},
		"the token with no slash":          {request(p, "GET", "", nil), 401},
		"the token in a cookie":            {request(p, "GET", "/api/job", nil, under(p, ""), header("Cookie", "a="+p.token)), 401},
		"the token in a header":            {request(p, "GET", "/api/job", nil, under(p, ""), header("X-Token", p.token)), 401},
		"an empty ticket":                  {request(p, "GET", "/?ticket=", nil, under(p, "")), 401},
		"the token beside the path":        {request(p, "GET", "/api/job?token="+p.token, nil, under(p, "")), 401},
		"a form":                           {request(p, "POST", "/api/save", "text=x", header("Content-Type", "application/x-www-form-urlencoded")), 415},
		"plain text":                       {request(p, "POST", "/api/save", "{}", header("Content-Type", "text/plain")), 415},
		"no JSON":                          {request(p, "POST", "/api/look", "{"), 400},
		"two values":                       {request(p, "POST", "/api/look", "{}{}"), 400},
		"an unknown entry":                 {request(p, "POST", "/api/look", `{"path":"/etc/passwd"}`), 400},
		"too large":                        {request(p, "POST", "/api/look", asked{Text: strings.Repeat("#", most)}), 413},
		"too large to save":                {request(p, "POST", "/api/save", state{Text: strings.Repeat("#", maxFile+1)}), 413},
		"a long header":                    {request(p, "GET", "/", nil, header("X-Long", strings.Repeat("x", maxHeader))), 431},
		"a long address":                   {request(p, "GET", "/?"+strings.Repeat("x", maxHeader), nil), 431},
		"a look by reading":                {request(p, "GET", "/api/look", nil), 405},
		"saving by another method":         {request(p, "PUT", "/api/save", look), 405},
		"deleting":                         {request(p, "DELETE", "/api/job", nil), 405},
		"tracing":                          {request(p, "TRACE", "/", nil), 405},
		"writing the page":                 {request(p, "POST", "/", look), 405},
		"nothing there":                    {request(p, "GET", "/api/nothing", nil), 404},
		"the job as a file":                {request(p, "GET", "/bench.yaml", nil), 404},
		"a file of the program":            {request(p, "GET", "/assets/main.js", nil), 404},
		"out of the folder":                {request(p, "GET", "/..%2f..%2fetc/passwd", nil), 404},
		"out of the folder, backslashes":   {request(p, "GET", `/..%5c..%5cetc%5cpasswd`, nil), 404},
		"out of the folder in the version": {request(p, "GET", "/api/disk?seen=../../etc/passwd", nil), 200},
	} {
		w := do(p, c.r)
		if w.Code != c.code {
			t.Errorf("%s: %d, want %d: %.200s", name, w.Code, c.code, w.Body)
		}
		if strings.Contains(w.Body.String(), "root:") || c.code != 200 && strings.Contains(w.Body.String(), "birch") {
			t.Errorf("%s tells what it must not: %.200s", name, w.Body)
		}
		for _, must := range []string{"default-src 'none'", "script-src 'self'", "frame-ancestors 'none'", "require-trusted-types-for 'script'"} {
			if !strings.Contains(w.Header().Get("Content-Security-Policy"), must) {
				t.Errorf("%s: the policy has no %s", name, must)
			}
		}
		for _, not := range []string{"unsafe", "*", "data:", "http"} {
			if strings.Contains(w.Header().Get("Content-Security-Policy"), not) {
				t.Errorf("%s: the policy has %s", name, not)
			}
		}
		if w.Header().Get("Access-Control-Allow-Origin") != "" || w.Header().Get("X-Content-Type-Options") != "nosniff" || w.Header().Get("Cache-Control") != "no-store" || w.Header().Get("Referrer-Policy") != "no-referrer" {
			t.Errorf("%s: headers %v", name, w.Header())
		}
	}
	if w := do(p, request(p, "GET", "/../../etc/passwd", nil)); w.Code == 200 {
		t.Errorf("a path out of the folder is answered: %s", w.Body)
	}
}

// The printed address is the page's own, with a token of the run. Nothing is kept of it where another
// port, name or page would get it.
func TestFirstAddress(t *testing.T) {
	p, _ := open(t, jobText)
	first := func(change ...func(*http.Request)) *httptest.ResponseRecorder {
		r := httptest.NewRequest("GET", strings.TrimPrefix(p.Address(host), "http://"+host), nil)
		r.Host = host
		r.Header.Set("Sec-Fetch-Site", "none")
		for _, f := range change {
			f(r)
		}
		return do(p, r)
	}
	w := first()
	cookies := w.Result().Cookies()
	if w.Code != http.StatusOK || len(cookies) > 0 || strings.Contains(w.Body.String(), p.token) || len(p.token) != 48 {
		t.Fatalf("%d %v", w.Code, w.Header())
	}
	other, _ := open(t, jobText)
	if other.token == p.token {
		t.Error("two runs have one token")
	}
	if w := first(at("drawers.example:8123")); w.Code != http.StatusMisdirectedRequest {
		t.Errorf("another name: %d", w.Code)
	}
	if w := first(header("Sec-Fetch-Site", "cross-site")); w.Code != http.StatusForbidden {
		t.Errorf("a link of another page: %d", w.Code)
	}
}

// A job on the page reads files beside it and in folders below, and no other.
func TestFilesOfTheJob(t *testing.T) {
	p, path := open(t, jobText)
	folder := filepath.Dir(path)
	const slides = "units: mm\nslides:\n  quiet: {kind: side-mount}\n"
	outside := filepath.Join(t.TempDir(), "slides.yaml")
	for _, name := range []string{filepath.Join(folder, "slides.yaml"), outside} {
		if err := os.WriteFile(name, []byte(slides), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink(outside, filepath.Join(folder, "link.yaml")); err != nil {
		t.Skip(err) // a system where links take a right of their own
	}
	for name, fine := range map[string]bool{"slides.yaml": true, "link.yaml": false, "../" + filepath.Base(filepath.Dir(outside)) + "/slides.yaml": false, "./../bench.yaml": false, ".": false} {
		text := strings.Replace(jobText, "drawers:", "slides-file: "+name+"\ndrawers:", 1)
		got := answer[looked](t, p, "/api/look", asked{Text: text}, http.StatusOK)
		if got.Failed == fine {
			t.Errorf("slides from %s: %+v", name, got.Problems)
		}
	}
}

// A server of the page has a limit for everything that a client could draw out.
func TestLimits(t *testing.T) {
	p, _ := open(t, jobText)
	s := p.Server(host)
	if s.ReadHeaderTimeout <= 0 || s.ReadTimeout <= 0 || s.WriteTimeout <= 0 || s.IdleTimeout <= 0 || s.MaxHeaderBytes <= 0 {
		t.Errorf("%+v", s)
	}
}

// served has a page answer at an address until the test ends.
func served(t *testing.T, p *Page) (at string) {
	t.Helper()
	listener, err := net.Listen("tcp4", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	s := p.Server(listener.Addr().String())
	t.Cleanup(func() { s.Close() })
	go s.Serve(Sealed(listener))
	return listener.Addr().String()
}

// Clients that send nothing, or half a request, keep nobody else from the page.
func TestSlowClients(t *testing.T) {
	p, _ := open(t, jobText)
	at := served(t, p)
	for i := range 300 {
		c, err := net.Dial("tcp4", at)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		half := "POST /" + p.token + "/api/look HTTP/1.1\r\nHost: " + at +
			"\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{"
		if _, err := io.WriteString(c, half[:len(half)*(i%4)/3]); err != nil {
			t.Fatal(err)
		}
	}
	got, err := http.Get(p.Address(at))
	if err != nil || got.StatusCode != http.StatusOK {
		t.Fatal(got, err)
	}
	got.Body.Close()
}

// The page is made of the files that are known, and loads nothing from elsewhere.
func TestAssets(t *testing.T) {
	p, _ := open(t, jobText)
	var names []string
	for name, data := range assets {
		names = append(names, name)
		text := strings.ReplaceAll(string(data), "http://www.w3.org/2000/svg", "")
		for _, not := range []string{"innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(", "new Function", "http://", "https://", "//cdn", " style=\"", " onclick=\"", "localStorage"} {
			if strings.Contains(text, not) {
				t.Errorf("%s has %s", name, not)
			}
		}
		if w := do(p, request(p, "GET", "/"+name, nil)); w.Code != 200 || w.Header().Get("Content-Type") == "" {
			t.Errorf("%s: %d %v", name, w.Code, w.Header())
		}
	}
	if !slices.Contains(names, "index.html") || !slices.Contains(names, "main.js") {
		t.Errorf("the page has %q", names)
	}
}
