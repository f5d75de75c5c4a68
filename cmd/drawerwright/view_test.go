package main

import (
	"bufio"
	"context"
	"io"
	"net/http"
	"net/http/cookiejar"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestView: the address that is printed leads to the page, on this computer alone; when
// the run is stopped the port is free again and the job is as it was.
func TestView(t *testing.T) {
	samples := inTemp(t)
	data, err := os.ReadFile(filepath.Join(samples, "bench-drawers.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("bench.yaml", data, 0o644); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	from, to := io.Pipe()
	ended := make(chan int, 1)
	go func() {
		ended <- run(ctx, []string{"view", "bench.yaml"}, streams{strings.NewReader(""), to, io.Discard})
		to.Close()
	}()
	line, err := bufio.NewReader(from).ReadString('\n')
	address := strings.TrimSpace(line)
	if err != nil || !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Fatal(line, err)
	}
	jar, _ := cookiejar.New(nil) // it fails never
	client := &http.Client{Jar: jar}
	got, err := client.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	page, err := io.ReadAll(got.Body)
	got.Body.Close()
	if err != nil || got.StatusCode != http.StatusOK || !strings.Contains(string(page), "main.js") || strings.Contains(got.Request.URL.String(), "token") {
		t.Errorf("%s %v: %.200s", got.Status, err, page)
	}
	if code, _, errs := call(t, "", "view", "bench.yaml", "--port", strings.SplitN(strings.TrimPrefix(address, "http://127.0.0.1:"), "/", 2)[0]); code != exitJob || !strings.Contains(errs, "--port") {
		t.Errorf("a port that is taken: %d %s", code, errs)
	}
	stop()
	if code := <-ended; code != exitDone {
		t.Errorf("it ends with %d", code)
	}
	if _, err := http.Get(address); err == nil {
		t.Error("the page still answers")
	}
	if now, err := os.ReadFile("bench.yaml"); err != nil || string(now) != string(data) {
		t.Errorf("the job has changed: %v", err)
	}
	if list, err := os.ReadDir("."); err != nil || len(list) != 1 {
		t.Errorf("files are left: %v %v", list, err)
	}
}
