package prove_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"

	"pgregory.net/rapid"
)

// sensible reports what is wrong with a proof, whatever it is of.
func sensible(p record.Proof) error {
	if _, err := record.JSON(record.Report{Proof: []record.Proof{p}}); err != nil {
		return err
	}
	if !slices.Contains([]string{record.Goes, record.GoesBut, record.GoesSome, record.GoesNot, record.FilesFail}, p.Verdict) {
		return fmt.Errorf("verdict %q", p.Verdict)
	}
	// What a bit's rounds are in the way of is no fault of the file.
	others := slices.DeleteFunc(slices.Clone(p.Faults),
		func(f record.Fault) bool { return f.Code == "corner-radius" && p.Verdict == record.GoesNot })
	if (p.Verdict == record.FilesFail) != (len(others) > 0) {
		return fmt.Errorf("%s with %d faults", p.Verdict, len(p.Faults))
	}
	for _, f := range p.Faults {
		if f.Code == "" || f.File == "" || f.Message == "" {
			return fmt.Errorf("a fault without code, file or words: %+v", f)
		}
	}
	if !p.Cuttable() {
		return nil
	}
	stuck := func(c record.Corner) bool { return !c.Fits }
	if len(p.Corners) != 4 || slices.ContainsFunc(p.Corners,
		stuck) || p.Bottom != nil && !p.Bottom.Fits || len(p.Overlaps) != 0 {
		return fmt.Errorf("%s: %+v", p.Verdict, p)
	}
	return nil
}

// Values that are not expected anywhere.
var (
	oddNumbers = []string{"0", "-0", "1", "-1", "7", "0.0005", "1e-320", "1e6", "-1e6", "1e18", "1e308", "-1e308", "1e400", "nan", "-inf", "", " ", "1,5", "9223372036854775807"}
	oddWords   = []string{"LWPOLYLINE", "POLYLINE", "VERTEX", "SEQEND", "CIRCLE", "LINE", "ARC", "INSERT", "ENDSEC", "EOF", "SCALE", "BLANK", "LABEL", "0",
		"DADO_INSIDE_6-10MM", "GROOVE_INSIDE_6-10MM", "RABBET_OUTSIDE_6-10MM", "PROFILE_INSIDE_THROUGH", "REGISTER", "DADO_INSIDE_THROUGH", "DADO_OUTSIDE_6-10MM"}
	oddValues = []any{0.0, -1.0, 1e308, -1e308, 1e-308, 25.4, 6.1, 2.0}
	oddNames  = []any{"", "inside", "outside", "one-side", "birch", "in", "mm", "through", "left", "router", "saw", "front"}
	oddThings = []any{nil, true, 1.0, "x", []any{}, map[string]any{}}
)

// TestAnyHarm: whatever few things are changed in a folder, in its report or its
// drawings, a proof is an error or makes sense.
func TestAnyHarm(t *testing.T) {
	outcomes := map[string]int{}
	rapid.Check(t, func(rt *rapid.T) {
		f := build(t, harmed(rapid.SampledFrom([]string{"R2000", "R12"}).Draw(rt, "version"), ""))
		for range rapid.IntRange(0, 2).Draw(rt, "times in the report") {
			var all any
			if json.Unmarshal(f.files["report.json"], &all) != nil {
				break
			}
			change(rt, all)
			f.files["report.json"], _ = json.Marshal(all)
		}
		for range rapid.IntRange(0, 3).Draw(rt, "times in drawings") {
			name := rapid.SampledFrom([]string{sideIn, frontIn, frontOut, backIn, backOut, bottomIn}).Draw(rt, "drawing")
			d := drawn(t, f.files[name])
			all := slices.DeleteFunc(d.entities(), func(e entity) bool { return e.layer == "LABEL" })
			if len(all) == 0 {
				continue
			}
			e := rapid.SampledFrom(all).Draw(rt, "entity")
			at := rapid.IntRange(e.from, e.to-1).Draw(rt, "tag")
			switch rapid.IntRange(0, 5).Draw(rt, "what") {
			case 0:
				d.tags = slices.Delete(d.tags, at, at+1)
			case 1:
				d.tags = slices.Insert(d.tags, at, d.tags[at])
			case 2:
				d.tags[at].value = rapid.SampledFrom(oddNumbers).Draw(rt, "number")
			case 3:
				d.tags[at].value = rapid.SampledFrom(oddWords).Draw(rt, "word")
			case 4:
				d.tags[at].code = rapid.SampledFrom([]string{"0", "8", "10", "20", "38", "40", "42", "70", "90", "67", "210"}).Draw(rt, "code")
			case 5:
				if v, err := strconv.ParseFloat(d.tags[at].value, 64); err == nil && strings.Contains(d.tags[at].value, ".") {
					d.set(at, v+rapid.Float64Range(-10, 10).Draw(rt, "moved"))
				}
			}
			f.files[name] = d.data()
			if _, ok := entitiesOf(d); !ok {
				break
			}
		}
		r, err := record.Read(f.files["report.json"])
		if err != nil {
			outcomes["no report"]++
			return
		}
		p, err := prove.New(record.Keep(r))
		if err != nil {
			outcomes["refused"]++
			return
		}
		for i := range min(3, p.Drawers()) {
			proof := p.Worker().Drawer(i, f.ReadFile, prove.Options{Detail: true})
			if err := sensible(proof); err != nil {
				rt.Fatal(err)
			}
			outcomes[proof.Verdict]++
		}
	})
	for _, what := range []string{record.Goes, record.FilesFail} {
		if outcomes[what] == 0 {
			t.Errorf("nothing came out as %q: %v", what, outcomes)
		}
	}
}

// entitiesOf reports whether a drawing can still be taken apart here.
func entitiesOf(d *drawing) (n int, ok bool) {
	from := slices.Index(d.tags, tag{"2", "ENTITIES"})
	if from < 0 || from+1 >= len(d.tags) || d.tags[from+1].code != "0" {
		return 0, false
	}
	for _, t := range d.tags[from:] {
		if t == (tag{"0", "ENDSEC"}) {
			return n, true
		}
		if t.code == "0" {
			if n == 0 && (t.value == "VERTEX" || t.value == "SEQEND") {
				return 0, false
			}
			n++
		}
	}
	return 0, false
}

// change puts an odd value somewhere into what JSON holds.
func change(t *rapid.T, v any) {
	switch v := v.(type) {
	case map[string]any:
		keys := make([]string, 0, len(v))
		for k := range v {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		if len(keys) == 0 {
			return
		}
		k := rapid.SampledFrom(keys).Draw(t, "key")
		if leaf(v[k]) || rapid.IntRange(0, 9).Draw(t, "cut off") == 0 {
			v[k] = another(t, v[k])
			return
		}
		change(t, v[k])
	case []any:
		if len(v) == 0 {
			return
		}
		i := rapid.IntRange(0, len(v)-1).Draw(t, "index")
		if leaf(v[i]) {
			v[i] = another(t, v[i])
			return
		}
		change(t, v[i])
	}
}

// another is an odd value in the place of one, mostly of the same kind.
func another(t *rapid.T, v any) any {
	from := oddThings
	if rapid.IntRange(0, 9).Draw(t, "of a kind") > 0 {
		switch v.(type) {
		case float64:
			from = oddValues
		case string:
			from = oddNames
		}
	}
	return rapid.SampledFrom(from).Draw(t, "value")
}

func leaf(v any) bool {
	switch v := v.(type) {
	case map[string]any:
		return len(v) == 0
	case []any:
		return len(v) == 0
	}
	return true
}
