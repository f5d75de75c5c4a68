package job

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
)

// keyPaths are all keys of the job file, from its description.
var keyPaths = strings.Fields(`
	job units
	stock.*.readings-per-sheet
	stock stock.* stock.*.thickness stock.*.sheet stock.*.grain stock.*.price stock.*.material stock.*.cut stock.*.density
	stock.*.stiffness stock.*.stiffness-across stock.*.movement stock.*.tolerance stock.*.edge-banding stock.*.edge-banding.thickness stock.*.edge-banding.price stock.*.kerf stock.*.boards stock.*.boards.width stock.*.boards.rough stock.*.boards.waste
	stock.*.boards.price
	preview cad paper paper.size paper.labels paper.label-columns paper.label-rows
	templates templates.stock templates.bed templates.register templates.pin-diameter templates.slot-width templates.roll-width
	sheets sheets.method sheets.stages sheets.first-cuts sheets.prefer sheets.times
	sheets.times.setting sheets.times.guide sheets.times.cut sheets.times.turn sheets.times.helper sheets.kerf
	sheets.trim sheets.flip-on sheets.pin-distance sheets.min-offcut sheets.max-weight
	machines machines.saw machines.saw.max-height machines.saw.max-width machines.saw.rip-capacity machines.saw.crosscut-capacity machines.saw.max-length-on-sled machines.saw.max-stop
	machines.saw.min-length-on-end machines.saw.max-length-on-end machines.saw.min-length-along-fence machines.saw.min-width-on-end machines.saw.min-width-along-fence
	machines.router-table machines.router-table.max-height machines.router-table.max-width machines.router-table.fence-capacity machines.router-table.crosscut-capacity
	machines.router-table.max-length-on-sled machines.router-table.min-length-on-end machines.router-table.max-length-on-end machines.router-table.min-length-along-fence machines.router-table.min-width-along-fence machines.router-table.pass-depth
	stock.*.count stock.*.batch stock.*.min-sheet stock.*.keep-out stock.*.keep-out.at stock.*.keep-out.size stock.*.match stock.*.other-sheets stock.*.other-sheets.* stock.*.other-sheets.*.sheet stock.*.other-sheets.*.price stock.*.other-sheets.*.count stock.*.other-sheets.*.batch
	cutter cutter.kind cutter.width cutter.diameter cutter.reach cutter.flutes cutter.groove-cutter cutter.machine cutter.name
	cutter.bits cutter.bits.* cutter.bits.*.diameter cutter.bits.*.reach cutter.bits.*.flutes
	cutter.bits.*.tool cutter.bits.*.type cutter.bits.*.tip cutter.bits.*.feed cutter.bits.*.plunge cutter.bits.*.speed cutter.bits.*.chip-load cutter.bits.*.pass-depth
	router router.overcut router.relief router.relief.others router.relief.dado router.relief.groove router.relief.rabbet router.relief.cutout router.relief.profile router.exact-slots router.depth-from router.onion-skin router.small-part router.part-spacing router.into-spoilboard router.engrave router.engrave.depth router.engrave.height router.engrave.bit
	router.register router.register.place router.register.diameter router.register.distance
	router.tabs router.tabs.width router.tabs.height router.tabs.spacing router.tabs.as
	joinery joinery.faces joinery.fence-distance joinery.cutter-height joinery.groove-ends joinery.bottom-fit joinery.bottom-height
	joinery.bottom-clearance joinery.bottom-clearance-depth joinery.dado-clearance joinery.groove-clearance joinery.glue-space
	limits limits.min-tongue-clearance limits.max-tongue-clearance limits.min-groove-clearance limits.max-groove-clearance limits.min-bottom-clearance limits.max-bottom-clearance limits.end-clearance
	limits.flush limits.shoulder-gap limits.width limits.depth limits.height limits.diagonal
	log accuracy.from-log accuracy.keep-days accuracy.keep-cuts accuracy accuracy.cutter accuracy.cut accuracy.fence accuracy.height accuracy.length spacers
	dxf dxf.version dxf.units dxf.layers dxf.elevation dxf.order dxf.split dxf.notes dxf.files
	climate climate.now climate.driest climate.dampest climate.temperature
	openings openings.* openings.*.width openings.*.height openings.*.depth openings.*.diagonals openings.*.cabinet openings.*.cabinet-stock openings.*.frame-overhang openings.*.fronts openings.*.clearance-behind
	openings.*.web-frame openings.*.dust-panel
	group-openings slides-file slides slides.* slides.*.kind slides.*.lengths slides.*.load slides.*.clearance slides.*.clearance-plus slides.*.clearance-minus slides.*.clearance-above slides.*.clearance-below
	slides.*.inside-deduction slides.*.max-side-thickness slides.*.bottom-recess slides.*.clearance-behind slides.*.notch-width slides.*.notch-height slides.*.hook-diameter
	slides.*.hook-depth slides.*.hook-height slides.*.hook-inset slides.*.screw-line slides.*.height slides.*.setback slides.*.hole-pitch slides.*.runner-width slides.*.wear-strip
	drawers drawers.name drawers.count drawers.spares drawers.outside drawers.sides drawers.box-front drawers.back drawers.bottom
	drawers.joint drawers.back-joint drawers.back-setback drawers.fasteners drawers.finger-width drawers.lip
	drawers.load drawers.tails drawers.slope
	drawers.cutter drawers.cutter.kind drawers.cutter.width drawers.cutter.diameter drawers.cutter.reach drawers.cutter.flutes drawers.cutter.groove-cutter drawers.cutter.machine drawers.cutter.name
	drawers.cutter.bits drawers.cutter.bits.* drawers.cutter.bits.*.diameter drawers.cutter.bits.*.reach drawers.cutter.bits.*.flutes
	drawers.cutter.bits.*.tool drawers.cutter.bits.*.type drawers.cutter.bits.*.tip drawers.cutter.bits.*.feed drawers.cutter.bits.*.plunge drawers.cutter.bits.*.speed drawers.cutter.bits.*.chip-load drawers.cutter.bits.*.pass-depth
	drawers.joinery drawers.joinery.faces drawers.joinery.fence-distance drawers.joinery.cutter-height drawers.joinery.groove-ends drawers.joinery.bottom-fit
	drawers.joinery.bottom-height drawers.joinery.bottom-clearance drawers.joinery.bottom-clearance-depth drawers.joinery.dado-clearance drawers.joinery.groove-clearance drawers.joinery.glue-space
	drawers.dividers drawers.dividers.direction drawers.dividers.at drawers.dividers.height drawers.dividers.folders drawers.dividers.stock drawers.dividers.loose
	drawers.insert drawers.insert.stock drawers.insert.columns drawers.insert.rows drawers.insert.height drawers.insert.contents-clearance drawers.insert.wall-clearance
	drawers.pull drawers.pull.shape drawers.pull.width drawers.pull.height drawers.pull.from-top
	drawers.drawer-front drawers.drawer-front.stock drawers.drawer-front.width drawers.drawer-front.height drawers.drawer-front.overhang-left drawers.drawer-front.overhang-below
	drawers.drawer-front.handles drawers.drawer-front.handle-spacing drawers.drawer-front.handle-diameter drawers.drawer-front.handle-from-top
	drawers.opening drawers.slide drawers.rows drawers.graduation drawers.graduation.arithmetic drawers.graduation.geometric
	drawers.front-gap drawers.reveal drawers.overlay drawers.box-heights drawers.line-boring`)

// schemaPaths lists the keys that a schema knows.
func schemaPaths(schema map[string]any, path string) []string {
	var paths []string
	sub := func(name string, s any) {
		if m, ok := s.(map[string]any); ok {
			paths = append(paths, path+name)
			paths = append(paths, schemaPaths(m, path+name+".")...)
		}
	}
	if properties, ok := schema["properties"].(map[string]any); ok {
		for name, s := range properties {
			sub(name, s)
		}
	}
	sub("*", schema["additionalProperties"])
	if either, ok := schema["anyOf"].([]any); ok {
		for _, one := range either {
			paths = append(paths, schemaPaths(one.(map[string]any), path)...)
		}
	}
	if items, ok := schema["items"].(map[string]any); ok {
		paths = append(paths, schemaPaths(items, path)...)
	}
	return paths
}

func parsedSchema(t *testing.T) map[string]any {
	t.Helper()
	var schema map[string]any
	if err := json.Unmarshal(Schema(), &schema); err != nil {
		t.Fatal(err)
	}
	return schema
}

func TestSchemaKnowsEveryKey(t *testing.T) {
	got, want := schemaPaths(parsedSchema(t), ""), slices.Clone(keyPaths)
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// TestReaderKnowsEveryKey writes each key, and a key like it, into a file and
// expects that only the second is unknown.
func TestReaderKnowsEveryKey(t *testing.T) {
	unknown := func(steps []string) bool {
		text := "1"
		for i, step := range slices.Backward(steps) {
			if (step == "drawers" || step == "dividers" || step == "keep-out") && i < len(steps)-1 {
				text = "[" + text + "]"
			}
			text = "{" + strings.Replace(step, "*", "ply", 1) + ": " + text + "}"
		}
		_, problems := Read("job.yaml", strings.NewReader(text))
		return slices.ContainsFunc(problems, func(p Problem) bool { return p.Code == CodeUnknownKey })
	}
	for _, path := range keyPaths {
		steps := strings.Split(path, ".")
		if unknown(steps) {
			t.Errorf("%s is unknown", path)
		}
		if last := len(steps) - 1; steps[last] != "*" {
			steps[last] += "-not"
			if !unknown(steps) {
				t.Errorf("%s is known", strings.Join(steps, "."))
			}
		}
	}
}

func TestSchemaIsTheSameEveryTime(t *testing.T) {
	first := Schema()
	for range 20 {
		if !bytes.Equal(first, Schema()) {
			t.Fatal("two schemas of one program differ")
		}
	}
}

func TestSchemaDescribesEveryKey(t *testing.T) {
	var walk func(path string, s map[string]any)
	walk = func(path string, s map[string]any) {
		properties, _ := s["properties"].(map[string]any)
		for name, p := range properties {
			p := p.(map[string]any)
			if d, _ := p["description"].(string); len(d) < 10 {
				t.Errorf("%s%s is described as %q", path, name, d)
			}
			walk(path+name+".", p)
		}
		for _, inner := range []string{"items", "additionalProperties"} {
			if m, ok := s[inner].(map[string]any); ok {
				walk(path, m)
			}
		}
	}
	walk("", parsedSchema(t))
}

// conforms checks a value against the words of JSON Schema that Schema uses,
// and says what does not conform.
func conforms(v any, s map[string]any) error {
	if any := s["anyOf"]; any != nil {
		var err error
		for _, one := range any.([]interface{}) {
			if err = conforms(v, one.(map[string]interface{})); err == nil {
				return nil
			}
		}
		return err
	}
	if ways, ok := s["oneOf"].([]any); ok {
		n := 0
		for _, way := range ways {
			if conforms(v, way.(map[string]any)) == nil {
				n++
			}
		}
		if n != 1 {
			return fmt.Errorf("%v conforms to %d of %v", v, n, ways)
		}
	}
	if enum, ok := s["enum"].([]any); ok && !slices.Contains(enum, v) {
		return fmt.Errorf("%v is none of %v", v, enum)
	}
	kind := ""
	limit := func(word string, ok func(limit float64) bool) error {
		if l, found := s[word].(float64); found && !ok(l) {
			return fmt.Errorf("%v breaks %s %g", v, word, l)
		}
		return nil
	}
	var errs []error
	switch x := v.(type) {
	case nil:
		kind = "null"
	case bool:
		kind = "boolean"
	case string:
		kind = "string"
		n := float64(utf8.RuneCountInString(x))
		errs = append(errs, limit("minLength", func(l float64) bool { return n >= l }),
			limit("maxLength", func(l float64) bool { return n <= l }))
		if p, ok := s["pattern"].(string); ok && !regexp.MustCompile(p).MatchString(x) {
			errs = append(errs, fmt.Errorf("%q does not match %s", x, p))
		}
	case float64:
		kind = "number"
		if types := fmt.Sprint(s["type"]); x == float64(int(x)) && strings.Contains(types, "integer") {
			kind = "integer"
		}
		errs = append(errs, limit("minimum", func(l float64) bool { return x >= l }),
			limit("maximum", func(l float64) bool { return x <= l }),
			limit("exclusiveMinimum", func(l float64) bool { return x > l }))
	case []any:
		kind = "array"
		n := float64(len(x))
		errs = append(errs, limit("minItems", func(l float64) bool { return n >= l }),
			limit("maxItems", func(l float64) bool { return n <= l }))
		for _, item := range x {
			if items, ok := s["items"].(map[string]any); ok {
				errs = append(errs, conforms(item, items))
			}
		}
	case map[string]any:
		kind = "object"
		properties, _ := s["properties"].(map[string]any)
		for name, value := range x {
			if p, ok := properties[name].(map[string]any); ok {
				errs = append(errs, conforms(value, p))
			} else if p, ok := s["additionalProperties"].(map[string]any); ok {
				errs = append(errs, conforms(value, p))
			} else if s["additionalProperties"] == false {
				errs = append(errs, fmt.Errorf("no key %s", name))
			}
		}
		required, _ := s["required"].([]any)
		for _, name := range required {
			if _, ok := x[name.(string)]; !ok {
				errs = append(errs, fmt.Errorf("%s is missing", name))
			}
		}
	}
	if types := s["type"]; types != nil && !slices.Contains(strings.Fields(strings.Trim(fmt.Sprint(types), "[]")), kind) {
		errs = append(errs, fmt.Errorf("%v is no %v", v, types))
	}
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// asJSON is what an editor makes of the text of a job file.
func asJSON(t *testing.T, text string) any {
	t.Helper()
	data, err := yaml.YAMLToJSON([]byte(strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\t", " ")))
	if err != nil {
		t.Fatal(err)
	}
	var v any
	if err := json.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

func TestSchemaTakesGoodFiles(t *testing.T) {
	schema := parsedSchema(t)
	for name, text := range goodFiles {
		if err := conforms(asJSON(t, text), schema); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestSchemaRefusesMistakes(t *testing.T) {
	schema := parsedSchema(t)
	for _, text := range []string{
		"units: cm", "units: mm\nstock: {}\ndrawers: []", strings.Replace(base, "count: 6", "count: 0", 1),
		strings.Replace(base, "count: 6", "cuont: 6", 1), strings.Replace(base, "5.9", "0", 1), strings.Replace(base, "[300, 140, 500]", "[300, 140]", 1),
		strings.Replace(base, "kind: saw", "kind: laser", 1), strings.Replace(base, "    outside: [300, 140, 500]\n", "", 1),
		strings.Replace(base, "count: 6", "opening: a", 1), strings.Replace(base, "count: 6", "load: 20", 1), strings.Replace(base, "count: 6", "load: heavy", 1),
		strings.Replace(base, "count: 6", "dividers: [{direction: along, at: 0, stock: birch}]", 1), strings.Replace(base, "count: 6", "overlay: [3, 3]", 1),
		strings.Replace(base, "count: 6", "graduation: {ratio: 2}", 1), strings.Replace(base, "    bottom: hardboard\n  -", "  -", 1),
	} {
		if conforms(asJSON(t, text), schema) == nil {
			t.Errorf("the schema takes %q", text)
		}
	}
}
