package load

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
)

// about tells diagnoses of a job apart: of a drawer by its code and part, of the
// file by its code.
type about struct {
	drawer int
	code   geom.Code
	part   string
}

// said is what is said of a job file, counted. A box that cannot be made is not judged
// by what comes after it, router, machines and strength: whole is the part of a drawer's boxes
// that come out right, and unsound where not all of it was judged.
func said(t *testing.T, text string) (j *job.Job, found []batch.Problem, count map[about]int, whole []float64) {
	t.Helper()
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	count = make(map[about]int)
	for _, p := range problems {
		count[about{-1, geom.Code(p.Code), ""}]++
	}
	if j == nil {
		return nil, nil, count, nil
	}
	b, found := batch.Make(t.Context(), j)
	for _, p := range found {
		if p.OfJob { // that an entry has become idle harms no drawer
			continue
		}
		count[about{p.Drawer, p.Code, p.Subject.Part}]++
	}
	for _, d := range b.Drawers {
		if _, _, sound := joinery.LayOut(d.Spec); !sound {
			whole = append(whole, unsound)
			continue
		}
		whole = append(whole, d.Outcome.Right.Fraction)
	}
	return j, found, count, whole
}

const unsound = -1.0

// printedOdds is by how much odds may differ because a hint prints its lengths.
const printedOdds = 0.005

// TestHintsHoldInJobFiles: what a hint says, written into the job file as it is printed,
// ends the complaint, and nothing comes that was not there and is not announced. Of a box that
// can be made no fewer come out right.
func TestHintsHoldInJobFiles(t *testing.T) {
	followed := make(map[geom.Code]int)
	for seed := uint64(0); seed < uint64(geomtest.Cases(12, 60)); seed++ {
		drawn := jobtest.Seeded(seed, jobtest.Want{})
		text := drawn.Text
		if seed%2 == 1 {
			text = spoilt(text, seed)
		}
		j, found, before, whole := said(t, text)
		for _, p := range found {
			for _, r := range p.Remedies {
				ends := r.Ends()
				for _, lengths := range []([]float64){ends[0], ends[len(ends)-1]} {
					changed, ok := written(t, text, j, p.Drawer, r, lengths)
					if !ok {
						continue
					}
					followed[p.Code]++
					_, after, now, then := said(t, changed)
					if was := whole[p.Drawer]; !p.IsError() && was != unsound && then[p.Drawer] < was-printedOdds {
						t.Errorf("seed %d: %s\n%s\nfollowed with %v: %.4f of the boxes come out right, and it was %.4f", seed, p.Shown(j).Message, p.Shown(j).Hint, lengths, then[p.Drawer], was)
					}
					end := about{p.Drawer, p.Code, p.Subject.Part}
					if left := now[end]; left >= before[end] && (judged(j, end, whole) || byReadings(changed, end) >= before[end]) {
						t.Errorf("seed %d: %s\n%s\nfollowed with %v does not end it", seed,
							p.Shown(j).Message, p.Shown(j).Hint, lengths)
					}
					for a, n := range now {
						announced := slices.ContainsFunc(r.Then,
							func(q geom.Diagnosis) bool { return q.Code == a.code && q.Subject.Part == a.part })
						if n > before[a] && !announced && judged(j, a, whole) {
							t.Errorf("seed %d: %s\n%s\nfollowed with %v leads into %v %s", seed,
								p.Shown(j).Message, p.Shown(j).Hint, lengths, a, worded(after, a))
							break
						}
					}
				}
			}
		}
	}
	if len(followed) < 8 {
		t.Errorf("only hints of %v were followed", followed)
	}
}

// byReadings counts a complaint as of a box that cannot be made: with the readings of its
// boards, and nothing known of what the machine is off.
func byReadings(text string, a about) (n int) {
	j, _ := job.Read("job.yaml", strings.NewReader(text))
	if j == nil {
		return 0
	}
	_, found := joinery.Build(j.Drawers[a.drawer].Spec)
	for _, p := range found {
		if p.Code == a.code && p.Subject.Part == a.part {
			n++
		}
	}
	return n
}

// judged reports whether a complaint was looked for before: of a box that could not be made,
// only what its corner, bottom and fittings say.
func judged(j *job.Job, a about, whole []float64) bool {
	switch a.code {
	case "template", "tabs", "small-part", "onion-skin", "sag", "bottom-held", "weight", "setup-limit", "bit-width", "bit-reach", "bit-radius", "corner-relief", "part-spacing", "register", "outline-corner":
		if a.code == "template" {
			return !slices.Contains(whole, unsound)
		}
		return a.drawer < 0 || whole[a.drawer] != unsound
	case "tongue-clearance", "recess", "recess-inner", "shoulder-gap", "groove-clearance", "bottom-flush", "groove-step", "back-over-bottom", "bottom-clearance", "bottom-clearance-depth", "lap", "back-clearance", "finger-clearance", "divider-clearance",
		"insert-clearance", "insert-clearance-depth",
		"outside-width", "outside-depth", "outside-height", "diagonal", geom.Code(fit.SlideClearance): // boards and machine are off by what is known of a box that can be made
		return whole[a.drawer] != unsound
	}
	return true
}

// spoilt changes one length of a job file that can be built, so that there is something
// to say.
func spoilt(text string, seed uint64) string {
	for _, c := range [][2]string{
		{"cutter-height: ", "9"}, {"bottom-clearance: ", "0.1"}, {"dado-clearance: ", "0.7"}, {"glue-space: ", "0.4"}, {"bottom-height: ", "7"}, {"fence-distance: ", "4"},
	}[seed%6:] {
		if at := strings.Index(text, c[0]); at >= 0 {
			end := at + strings.IndexAny(text[at:], ",}\n")
			return text[:at] + c[0] + c[1] + "mm" + text[end:]
		}
	}
	return text
}

// written makes a remedy's changes to the entry of a drawer, as a shop would.
func written(t *testing.T, text string, j *job.Job, drawer int, r geom.Remedy, lengths []float64) (string, bool) {
	t.Helper()
	var root yaml.MapSlice
	if err := yaml.UnmarshalWithOptions([]byte(text), &root, yaml.UseOrderedMap()); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	list := get(root, "drawers").([]any)
	spec := j.Drawers[drawer].Spec
	name, _, _ := strings.Cut(spec.Name, "-") // a row's has its number after it
	place := slices.IndexFunc(list, func(e any) bool { return get(e.(yaml.MapSlice), "name") == name })
	entry := list[place].(yaml.MapSlice)
	for i, c := range r.Changes {
		length := geom.LengthOf(lengths[i]).Text(j.Units)
		switch f := c.Setting; f {
		case joinery.SettingOutside:
			size := map[string]float64{"width": spec.Width, "height": spec.Height, "depth": spec.Depth}
			size[c.Key] = lengths[i]
			var parts []string
			for _, k := range []string{"width", "height", "depth"} {
				parts = append(parts, exact(size[k]))
			}
			entry = set(entry, "outside", strings.Join(parts, " x "))
		case joinery.SettingSides, joinery.SettingBoxFront, joinery.SettingBack, joinery.SettingBottom:
			stock := map[geom.Setting]joinery.Stock{joinery.SettingSides: spec.Sides, joinery.SettingBoxFront: spec.Front, joinery.SettingBack: spec.Back, joinery.SettingBottom: spec.Bottom}[f]
			stocks := get(root, "stock").(yaml.MapSlice)
			like := slices.Clone(get(stocks, stock.Name).(yaml.MapSlice))
			th := stock.Thickness
			var readings []any
			for _, v := range []float64{th.Min, th.Mean*3 - th.Min - th.Max, th.Max} {
				readings = append(readings, exact(v+lengths[i]-th.Mean))
			}
			if th.Min == th.Max {
				_, several := get(like, "thickness").([]any) // a single one leaves the range to a standard
				readings = slices.Delete(readings, 1, 3)
				if several {
					readings = append(readings, readings[0])
				}
			} else if mid := th.Mean*3 - th.Min - th.Max; mid < th.Min || mid > th.Max {
				return "", false
			}
			like = remove(set(like, "thickness", readings), "tolerance")
			name := "followed" + strconv.Itoa(i)
			root = set(root, "stock", append(slices.Clone(stocks), yaml.MapItem{Key: name, Value: like}))
			entry = set(entry, string(f), name)
		case joinery.SettingCutter, joinery.SettingGrooveCutter:
			cutter, own := get(entry, "cutter").(yaml.MapSlice)
			if !own {
				cutter = get(root, "cutter").(yaml.MapSlice)
			}
			key := "groove-cutter"
			if f == joinery.SettingCutter {
				if key = "width"; spec.Cutter.Kind.Rounds() {
					key = "diameter"
				}
				cutter = remove(cutter, "bits")
			}
			entry = set(entry, "cutter", set(cutter, key, length))
		case joinery.FieldDividers:
			dividers := slices.Clone(get(entry, "dividers").([]any))
			d := dividers[c.Item].(yaml.MapSlice)
			switch {
			case c.Count > 0:
				d = set(d, "at", c.Count)
			case c.Key == "height":
				d = set(d, "height", length)
			default:
				return "", false
			}
			dividers[c.Item] = d
			entry = set(entry, "dividers", dividers)
		case joinery.FieldInsert:
			key := cmp.Or(c.Key, joinery.KeyWallClearance)
			entry = set(entry, "insert", set(get(entry, "insert").(yaml.MapSlice), key, length))
		case joinery.FieldPull:
			entry = set(entry, "pull", set(get(entry, "pull").(yaml.MapSlice), c.Key, length))
		case joinery.SettingJoint, joinery.SettingBackJoint, joinery.SettingFasteners:
			entry = set(entry, string(f), c.Word)
		case joinery.SettingBackSetback, joinery.SettingFingerWidth:
			entry = set(entry, string(f), length)
		default:
			own, _ := get(entry, "joinery").(yaml.MapSlice)
			if c.Word != "" {
				length = c.Word
			}
			entry = set(entry, "joinery", set(own, string(f), length))
		}
	}
	list = slices.Clone(list)
	list[place] = entry
	out, err := yaml.Marshal(set(root, "drawers", list))
	if err != nil {
		t.Fatal(err)
	}
	return string(out), true
}

// exact writes a length so that it is read back as it is.
func exact(mm float64) string { return fmt.Sprintf("%.6f mm", math.Round(mm*1e6)/1e6) }

func get(m yaml.MapSlice, key string) any {
	for _, e := range m {
		if e.Key == key {
			return e.Value
		}
	}
	return nil
}

func set(m yaml.MapSlice, key string, value any) yaml.MapSlice {
	m = slices.Clone(m)
	for i := range m {
		if m[i].Key == key {
			m[i].Value = value
			return m
		}
	}
	return append(m, yaml.MapItem{Key: key, Value: value})
}

func remove(m yaml.MapSlice, key string) yaml.MapSlice {
	return slices.DeleteFunc(slices.Clone(m), func(e yaml.MapItem) bool { return e.Key == key })
}

func worded(list []batch.Problem, a about) string {
	for _, p := range list {
		if p.Drawer == a.drawer && p.Code == a.code && p.Subject.Part == a.part {
			return p.Fact.In(geom.Millimeter)
		}
	}
	return ""
}
