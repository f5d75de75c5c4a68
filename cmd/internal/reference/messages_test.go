package reference

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"go/ast"
	"go/constant"
	"go/types"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
)

var update = flag.Bool("update", false, "write the samples of messages anew")

// codesOf are the codes of messages in the project's code, each with the place of one of its uses:
// every constant, named or not, that has the type of a code.
func codesOf(t *testing.T) map[string]string {
	t.Helper()
	kinds := map[string]bool{"drawerwright/geom.Code": true, "drawerwright/cmd/internal/job.Code": true,
		"drawerwright/geom.Rule": true, "drawerwright/geom/joinery.CheckCode": true}
	found, src := make(map[string]string), geomtest.Project(t, "../../..")
	for _, file := range src.Code {
		ast.Inspect(file, func(n ast.Node) bool {
			e, is := n.(ast.Expr)
			if !is {
				return true
			}
			v := src.Info.Types[e]
			if v.Value == nil || v.Type == nil || !kinds[types.TypeString(v.Type, nil)] {
				return true
			}
			if code := constant.StringVal(v.Value); code != "" {
				found[code] = src.Files.Position(e.Pos()).String()
			}
			return true
		})
	}
	return found
}

// fixtures are the jobs that have a message of each code, by the code.
func fixtures(t *testing.T) map[string]io.Reader {
	t.Helper()
	files, err := filepath.Glob("../../../testdata/messages/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d fixtures, %v", len(files), err)
	}
	list := map[string]io.Reader{"read": iotest.ErrReader(errors.New("input/output error")),
		"too-large": strings.NewReader(strings.Repeat("#", 1<<20))}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		list[strings.TrimSuffix(filepath.Base(file), ".yaml")] = bytes.NewReader(text)
	}
	return list
}

// sampled is the gravest message of a code that a job has. One that is no error counts only
// where the job has none: beside an error it may say what makes no sense.
func sampled(code string, text io.Reader) (m message, found bool) {
	l := load.Read("job.yaml", text, beside)
	l.Lay(context.Background(), nil, sheets.Search{})
	level := geom.Level(-1)
	if l.Failed() {
		level = geom.LevelWarning
	}
	for _, p := range l.Problems {
		if string(p.Code) == code && p.Level > level {
			level, found = p.Level, true
			m = message{Code: code, Level: p.Level.String(), Message: p.Message, Hint: p.Hint}
		}
	}
	return m, found
}

// TestMessages: every code that stands in the program's code has a sample in the list of
// messages, as the program prints it today of the fixture of the code, or is one that no job
// leads to. After a change that is meant: -update.
func TestMessages(t *testing.T) {
	var list []message
	codes, jobs := codesOf(t), fixtures(t)
	for code, text := range jobs {
		m, found := sampled(code, text)
		switch {
		case codes[code] == "":
			t.Errorf("testdata/messages has a job for %s, which is no code", code)
		case !found:
			t.Errorf("the job of testdata/messages for %s has no such message", code)
		default:
			list = append(list, m)
		}
	}
	for code, other := range otherCommands {
		err := other.ask()
		d, found := diagnosed(err)
		if !found || string(d.Code) != code {
			t.Errorf("%s: the command says %v", code, err)
			continue
		}
		list = append(list, message{Code: code, Level: d.Level.String(), Command: other.command,
			Message: d.Fact.In(geom.Millimeter), Hint: d.Ask.In(geom.Millimeter)})
	}
	for code, at := range codes {
		listed := slices.ContainsFunc(list, func(m message) bool { return m.Code == code })
		if unseen[code] == "" && !listed {
			t.Errorf("%s: the code %s has no fixture", at, code)
		} else if unseen[code] != "" && listed {
			t.Errorf("%s is printed, though %s", code, unseen[code])
		}
	}
	slices.SortFunc(list, func(a, b message) int { return strings.Compare(a.Code, b.Code) })
	var out bytes.Buffer
	printer := json.NewEncoder(&out)
	printer.SetEscapeHTML(false)
	printer.SetIndent("", "\t")
	if err := printer.Encode(list); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("messages.json", out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if !bytes.Equal(out.Bytes(), messagesTable) {
		t.Errorf("messages.json is not what the program prints (-update writes it)")
	}
}
