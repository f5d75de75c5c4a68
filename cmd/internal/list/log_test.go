package list

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"drawerwright/cmd/internal/mutate"
	"drawerwright/geom"
	"drawerwright/geom/shoplog"
)

const logHead = "date,machine,cutter,what,aimed,measured,units,then\n"

func TestLog(t *testing.T) {
	const text = "\ufeffmachine,date,units,What,aimed,measured,cutter,then\n" +
		"saw,2026-03-02,mm,fence,6.1,6.14,'=stack,\nsaw,2026-03-01,in,cut,1/4,0.252,,moved\n"
	l, err := ReadLog("shop.csv", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	day := func(d int) time.Time { return time.Date(2026, 3, d, 0, 0, 0, 0, time.UTC) }
	want := []shoplog.Cut{
		{Date: day(2), Tool: shoplog.Tool{Machine: "saw", Cutter: "=stack"}, What: shoplog.Fence, Aimed: 6.1, Measured: 6.14},
		{Date: day(1), Tool: shoplog.Tool{Machine: "saw"}, What: shoplog.Again, Aimed: 6.35, Measured: 6.4008, Moved: true}, // 0.252 x 25.4
	}
	if !reflect.DeepEqual(l.Cuts, want) {
		t.Fatalf("%+v", l.Cuts)
	}
	// More cuts stand in the columns of the file, after all that was in it; a last line without its end gets one.
	l.text = l.text[:len(l.text)-1]
	more := l.With(want[:1], geom.Millimeter)
	if got, want := string(more), text+"saw,2026-03-02,mm,fence,6.1,6.14,'=stack,kept\n"; got != want {
		t.Errorf("%q, not %q", got, want)
	}
	begun := Log{}.With(want, geom.Inch)
	again, err := ReadLog("shop.csv", bytes.NewReader(begun))
	if err != nil || !bytes.HasPrefix(begun, []byte(strings.TrimSpace(logHead)+"\r\n")) || len(again.Cuts) != 2 ||
		again.Cuts[1] != want[1] {
		t.Errorf("%q: %+v %v", begun, again.Cuts, err)
	}
	if l, err := ReadLog("shop.csv", strings.NewReader("")); err != nil || len(l.Cuts) != 0 {
		t.Errorf("an empty log: %v", err)
	}
}

// TestLogMistakes: each mistake is named with its line, its column, what stands there and what to write; written so,
// the line is read.
func TestLogMistakes(t *testing.T) {
	const right = "2026-03-02,saw,stack,fence,6.1,6.14,mm,kept"
	for wrong, want := range map[string][3]string{
		"2026-13-02,saw,stack,fence,6.1,6.14,mm,kept": {`column 1, date: "2026-13-02" is no day`, "2026-03-31", right},
		"2026-03-02,,stack,fence,6.1,6.14,mm,kept":    {`column 2, machine: "" is no name`, "as saw", right},
		"2026-03-02,saw,stack,slot,6.1,6.14,mm,kept":  {`column 4, what: "slot" is nothing`, "cutter, cut, fence, height and length", "2026-03-02,saw,stack,cutter,6.1,6.14,mm,kept"},
		"2026-03-02,saw,stack,fence,x,6.14,mm,kept":   {`column 5, aimed: "x" is no length`, "6.35 or 1/4", right},
		"2026-03-02,saw,stack,fence,6.1,,mm,kept":     {`column 6, measured: "" is no length`, "6.35 or 1/4", right},
		"2026-03-02,saw,stack,fence,6.1,61.4,mm,kept": {`column 6, measured: "61.4" is too far from "6.1"`, "decimal point", right},
		"2026-03-02,saw,stack,fence,6.1,6.14,cm,kept": {`column 7, units: "cm" is no unit`, "mm or in", right},
		"2026-03-02,saw,stack,fence,6.1,6.14,mm,left": {`column 8, then: "left" is neither kept nor moved`, "write moved where", right},
		"2026-03-02,saw,stack,fence,6.1,6,14,mm,kept": {"the line has 9 values under 8 column headings", "decimal points", right},
	} {
		_, err := ReadLog("shop.csv", strings.NewReader(logHead+right+"\n"+wrong+"\n"))
		var p Problem
		if !errors.As(err, &p) || p.Line != 3 || !strings.Contains(err.Error(), want[0]) ||
			!strings.Contains(err.Error(), want[1]) {
			t.Errorf("%q: %v", wrong, err)
		}
		if _, err := ReadLog("shop.csv", strings.NewReader(logHead+want[2]+"\n")); err != nil {
			t.Errorf("%q, as %q asks for: %v", want[2], want[1], err)
		}
	}
	_, err := ReadLog("shop.csv", strings.NewReader("date,machine,what\n"))
	if err == nil || !strings.Contains(err.Error(), "no column cutter") {
		t.Error(err)
	}
}

// spoiledLogs are logs as shops may have them.
var spoiledLogs = []mutate.Sample{
	{Name: "as written", Text: strings.ReplaceAll(logHead, "\n", "\r\n") +
		"2026-03-02,saw,stack,fence,6.1,6.14,mm,kept\r\n2026-03-02,saw,stack,height,6.1,6.05,mm,kept\r\n2026-03-03,\"saw, old\",,cut,6.35,6.37,mm,moved\r\n"},
	{Name: "by hand", Text: "what,then,units,measured,aimed,date,cutter,machine\nfence,,in,0.252,1/4,2026-03-02,'=stack,saw\nlength,moved,in,18 1/8,18.11,2026-04-02,,saw\n"},
}

// readableLog reads a log, writes more to it, and reads that again.
func readableLog(text string) error {
	l, err := ReadLog("l.csv", strings.NewReader(text))
	if err != nil {
		return placed(text, err)
	}
	more := l.With(l.Cuts, geom.Millimeter)
	again, err := ReadLog("l.csv", bytes.NewReader(more))
	if err != nil || len(again.Cuts) != 2*len(l.Cuts) || !bytes.HasPrefix(more, l.text) {
		return fmt.Errorf("%+v was written on as %q and read as %+v: %w", l.Cuts, more, again.Cuts, err)
	}
	for i, c := range l.Cuts {
		if d := again.Cuts[len(l.Cuts)+i]; d.Tool != c.Tool || d.What != c.What || !d.Date.Equal(c.Date) ||
			d.Moved != c.Moved {
			return fmt.Errorf("%+v was written as %+v", c, d)
		}
	}
	return nil
}

// TestSpoiledLogs: a spoiled log is read, or refused with the lines of what is wrong; what is read is written on.
func TestSpoiledLogs(t *testing.T) {
	mutate.CSV.Each(t, spoiledLogs, func(spoiled mutate.Sample) error { return readableLog(spoiled.Text) })
}

// FuzzLog: whatever a log holds, it is read or refused with a line, and what is read is written on.
func FuzzLog(f *testing.F) {
	for _, s := range spoiledLogs {
		f.Add(s.Text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if err := readableLog(text); err != nil {
			t.Fatal(err)
		}
	})
}
