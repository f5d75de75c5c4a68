package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
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
	got, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	page, err := io.ReadAll(got.Body)
	got.Body.Close()
	if err != nil || got.StatusCode != http.StatusOK || !strings.Contains(string(page), "main.js") {
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

// TestViewEndsAtOnce: a browser that holds connections, and sends and reads nothing, keeps nobody from
// ending the page.
func TestViewEndsAtOnce(t *testing.T) {
	inTemp(t)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	from, to := io.Pipe()
	ended := make(chan error, 1)
	go func() {
		ended <- viewing{keep: true}.serve(ctx, "new.yaml", streams{strings.NewReader(""), to, io.Discard})
	}()
	address, err := bufio.NewReader(from).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	for _, sent := range []string{"", "GET / HTTP/1.1\r\n"} {
		c, err := net.Dial("tcp4", strings.Split(address, "/")[2])
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		if _, err := io.WriteString(c, sent); err != nil {
			t.Fatal(err)
		}
	}
	got, err := http.Get(strings.TrimSpace(address)) // the others are taken before this one is
	if err != nil {
		t.Fatal(err)
	}
	got.Body.Close()
	stop()
	select {
	case err := <-ended:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(4 * time.Second): // of a few milliseconds; such connections are given five seconds else
		t.Error("it does not end")
	}
}

// TestViewEnds: once the page was closed in the browser the program ends and says why, unless it
// is kept.
func TestViewEnds(t *testing.T) {
	inTemp(t)
	for _, keep := range []bool{false, true} {
		ctx, stop := context.WithCancel(context.Background())
		from, to := io.Pipe()
		var errs bytes.Buffer
		ended := make(chan error, 1)
		go func() {
			v := viewing{keep: keep, wait: time.Nanosecond}
			ended <- v.serve(ctx, "new.yaml", streams{strings.NewReader(""), to, &errs})
		}()
		line, err := bufio.NewReader(from).ReadString('\n')
		address := strings.TrimSpace(line)
		if err != nil || address == "" {
			t.Fatal(line, err)
		}
		for _, word := range []string{"here", "leave"} {
			r, err := http.NewRequest("POST", address+"api/"+word, strings.NewReader(`{"tab": "one"}`))
			if err != nil {
				t.Fatal(err)
			}
			r.Header.Set("Content-Type", "application/json")
			got, err := http.DefaultClient.Do(r)
			if err != nil || got.StatusCode != http.StatusNoContent {
				t.Fatal(word, got, err)
			}
			got.Body.Close()
		}
		if keep {
			stop()
		}
		if err := <-ended; err != nil {
			t.Error(err)
		}
		stop()
		said := errs.String()
		if strings.Contains(said, "--keep lets it wait") == keep || !strings.Contains(said, "nothing is written") {
			t.Errorf("kept: %t, said: %s", keep, said)
		}
	}
	if list, err := os.ReadDir("."); err != nil || len(list) > 0 {
		t.Errorf("files are left: %v %v", list, err)
	}
}

// TestAlone: without a terminal the program alone prints its help, also where --keep is given.
func TestAlone(t *testing.T) {
	for _, args := range [][]string{nil, {"--keep"}, {"--port", "0"}} {
		code, out, errs := call(t, "", args...)
		if code != exitDone || !strings.Contains(out, "Commands:") || errs != "" {
			t.Errorf("%q: %d %s %s", args, code, out, errs)
		}
	}
	if code, _, errs := call(t, "", "sheep"); code != exitUsage || !strings.Contains(errs, "sheets") {
		t.Errorf("a command that is none: %d %s", code, errs)
	}
	code, _, errs := call(t, "", "view", "one.yaml", "two.yaml")
	if code != exitUsage || !strings.Contains(errs, "one job file") {
		t.Errorf("two jobs: %d %s", code, errs)
	}
}
