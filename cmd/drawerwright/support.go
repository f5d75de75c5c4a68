package main

import (
	"fmt"
	"runtime"
	"strings"
)

// system is one that the program is compiled for.
type system struct {
	name     string // as Go names it: system/processor
	released bool   // .ci/release makes an archive for it
	ranBy    runner
}

// runner is what has run the program on a system.
type runner string

const (
	byTests    runner = "all tests run on it, with every change"
	byEmulator runner = "by night an emulator builds all samples: the same bytes as on linux/amd64"
	byWine     runner = "by night Wine, not Windows itself, runs all commands: the same bytes as on linux/amd64"
	never      runner = "compiled with every release; nothing has ever run it"
)

// systems are all that the program is meant for. .ci/release takes its list from what is printed of them.
var systems = []system{
	{"linux/amd64", true, byTests},
	{"linux/arm64", true, byEmulator},
	{"linux/s390x", false, byEmulator},
	{"darwin/amd64", true, never},
	{"darwin/arm64", true, never},
	{"windows/amd64", true, byWine},
	{"windows/arm64", true, never},
}

// support says where the program has been run, a line a system.
func support() string {
	var b strings.Builder
	for _, s := range systems {
		released := "released"
		if !s.released {
			released = "for tests"
		}
		here := ""
		if s.name == runtime.GOOS+"/"+runtime.GOARCH {
			here = " (this one)"
		}
		fmt.Fprintf(&b, "%-14s  %-9s  %s%s\n", s.name, released, s.ranBy, here)
	}
	return b.String()
}
