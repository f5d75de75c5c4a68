package job

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Starts begin the first item of a list, a named thing or a section that is not there yet, with
// the entries that it cannot do without. They are texts of the whole file, in the order in which
// they are to be tried: the first that can be built is what a shop may mean. files are those
// that the job may name.
func Starts(file []byte, files Option, name string, path ...string) ([][]byte, error) {
	k, _ := keyAt(path)
	if k == nil {
		return nil, fmt.Errorf("the job file has no entry %s", quote(strings.Join(path, " > ")))
	}
	m := newMaker(file, files)
	var before, behind string
	switch k.form {
	case formNamed:
		path = append(slices.Clone(path), strings.TrimSpace(name))
	case formList:
		before, behind = "[", "]"
	case formSection:
	default:
		return nil, fmt.Errorf("%s takes a single value", k.name)
	}
	if n := m.root.Of(path...); n != nil && !n.blank() {
		return nil, fmt.Errorf("there is %s already: change it, or give another name", quote(path[len(path)-1]))
	}
	if k.name == "bits" {
		return m.firstBit(file, path)
	}
	return each(m.sections(k, name, path), func(one string) ([]byte, error) {
		return Patch(file, Edit{Path: path, Value: before + one + behind})
	})
}

// firstBit writes a bit of a name. What the file says of a router's only bit moves into it.
func (m maker) firstBit(file []byte, path []string) ([][]byte, error) {
	cutter := path[:len(path)-2]
	one, text, err := "", file, error(nil)
	for _, key := range []string{"diameter", "width", "reach", "flutes"} {
		only := m.root.Of(below(cutter, key)...)
		if only == nil || err != nil || m.root.Of(below(cutter, "kind")...).textOf() != string(joinery.Router) {
			continue
		}
		if text, err = Remove(text, below(cutter, key)...); key == "width" {
			key = "diameter"
		}
		one += ", " + key + ": " + only.flow()
	}
	if !strings.Contains(one, "diameter") {
		one += ", diameter: " + m.length(6)
	}
	if err == nil {
		text, err = Patch(text, Edit{Path: path, Value: "{" + one[2:] + "}"})
	}
	return [][]byte{text}, err
}

// each makes texts of values. The error is that of the last one, where none can be made.
func each(values []string, make func(string) ([]byte, error)) (texts [][]byte, err error) {
	for _, v := range values {
		text, failed := make(v)
		if failed != nil {
			err = failed
			continue
		}
		texts = append(texts, text)
	}
	if len(texts) > 0 {
		err = nil
	}
	return texts, err
}

// maker makes values for a file, of what is in it.
type maker struct {
	root   *Node
	job    *Job // nil where it cannot be read
	units  geom.Unit
	stocks []string // from the thinnest to the thickest
}

func newMaker(file []byte, files Option) maker {
	m := maker{root: Outlined(file).Root, units: geom.Millimeter}
	m.job, _ = Read("", bytes.NewReader(file), files)
	if u, err := geom.ParseUnit(m.root.Of("units").textOf()); err == nil {
		m.units = u
	}
	for _, e := range m.root.Of("stock").entriesOf() {
		m.stocks = append(m.stocks, e.Key)
	}
	if m.job != nil {
		thick := make(map[string]float64)
		for _, s := range m.job.Stocks {
			thick[s.Name] = s.Thickness.Mean
		}
		slices.SortStableFunc(m.stocks, func(a, b string) int { return cmp.Compare(thick[a], thick[b]) })
	}
	return m
}

// maxStarts is how many stocks are tried.
const maxStarts = 8

// sections are sections of a key that may be begun at a path.
func (m maker) sections(k *key, name string, path []string) (list []string) {
	stocks := m.stocks[:min(len(m.stocks), maxStarts)]
	if len(stocks) == 0 {
		stocks = []string{"stock"}
	}
	switch k.name {
	case string(joinery.FieldPull):
		for _, shape := range k.keys[0].words {
			list = append(list, "{shape: "+shape+"}")
		}
		return list
	case string(joinery.FieldInsert): // the least that stands by itself
		for _, s := range stocks {
			list = append(list, "{stock: "+writeKey(s)+", columns: 2, rows: 2}")
		}
		return list
	case "openings":
		return m.openings(m.sizeOf(-1), 0, 20)
	case string(joinery.FieldDrawerFront):
		return m.fronts(path, stocks)
	case "drawers":
		thickest := slices.Clone(stocks)
		slices.Reverse(thickest)
		for _, sides := range thickest {
			list = append(list, fmt.Sprintf("{name: %s, outside: %s, sides: %s, bottom: %s}", writeKey(name),
				m.size(m.sizeOf(-1)), writeKey(sides), writeKey(stocks[0])))
		}
		return list
	case string(joinery.SettingCutter):
		if file := m.root.Of("cutter"); file != nil {
			return []string{file.flow()}
		}
		return []string{"{kind: " + string(joinery.Saw) + ", width: " + m.length(6.35) + "}"}
	}
	for _, s := range stocks {
		if one := m.starter(k.keys, name, s); !slices.Contains(list, one) {
			list = append(list, one)
		}
	}
	return list
}

// starter is a section with what it cannot do without.
func (m maker) starter(keys []key, name, stock string) string {
	var list []string
	for i := range keys {
		if k := &keys[i]; k.required {
			list = append(list, k.name+": "+m.value(k, name, stock))
		}
	}
	return "{" + strings.Join(list, ", ") + "}"
}

// value is a value that a key takes: its example, in the unit of the file.
func (m maker) value(k *key, name, stock string) string {
	switch k.form {
	case formStock:
		return writeKey(stock)
	case formTitle, formName:
		return writeKey(name)
	case formWord:
		return k.words[0]
	case formCells:
		return "1"
	case formLength, formReadings, formSize:
		parts := strings.Split(strings.Split(strings.Trim(k.example, "[]"), ",")[0], " x ")
		for i, p := range parts {
			if l, err := geom.ParseLength(p, geom.Millimeter); err == nil {
				parts[i] = m.length(l.MM())
			}
		}
		return strings.Join(parts, " x ")
	}
	return k.example
}

// length is a length as a shop would write it in the unit of the file: in whole sixteenths of an
// inch, as long as there is one.
func (m maker) length(mm float64) string {
	if m.units == geom.Inch {
		if step := geom.InchMM / 16; math.Abs(mm) >= step {
			mm = math.Round(mm/step) * step
		}
	}
	return geom.LengthOf(mm).Number(m.units)
}

// exact is a length as it is, in the unit of the file.
func (m maker) exact(mm float64) string { return geom.LengthOf(mm).Number(m.units) }

func (m maker) exactSize(width, height, depth float64) string {
	return m.exact(width) + " x " + m.exact(height) + " x " + m.exact(depth)
}

func (m maker) size(size [3]float64) string {
	return m.length(size[0]) + " x " + m.length(size[1]) + " x " + m.length(size[2])
}

// sizeOf is the outside size of the box of an entry, of its first one where it makes several; for
// one that is not known a usual one.
func (m maker) sizeOf(entry int) [3]float64 {
	if d := m.drawer(entry); d != nil {
		return [3]float64{d.Width, d.Height, d.Depth}
	}
	return [3]float64{400, 120, 450}
}

// drawer is the first drawer of an entry of the file; nil where it could not be read.
func (m maker) drawer(entry int) *Drawer {
	if m.job == nil {
		return nil
	}
	i := slices.IndexFunc(m.job.Drawers, func(d Drawer) bool { return d.entry == entry && d.Width > 0 })
	if i < 0 {
		return nil
	}
	return &m.job.Drawers[i]
}

// fronts are drawer fronts for the drawer that a path leads into.
func (m maker) fronts(path, stocks []string) (list []string) {
	entry, _ := strconv.Atoi(path[1])
	size, more := m.sizeOf(entry), ""
	if m.root.Of("drawers", path[1], "opening") == nil {
		over := 5.0 // at each side and below
		more = fmt.Sprintf(", width: %s, height: %s, overhang-left: %s, overhang-below: %[3]s",
			m.length(size[0]+2*over), m.length(size[1]+2*over), m.length(over))
	}
	for _, s := range slices.Backward(stocks) { // a front is of the thicker board
		list = append(list, "{stock: "+writeKey(s)+more+"}")
	}
	return list
}

// blank reports whether nothing stands at a node.
func (n *Node) blank() bool {
	return len(n.Entries)+len(n.Items) == 0 && slices.Contains([]string{"", "~", "null"}, strings.TrimSpace(n.Text))
}

// Of is the value at a path; nil where there is none.
func (n *Node) Of(path ...string) *Node {
	for _, step := range path {
		if n == nil {
			return nil
		}
		if i, err := strconv.Atoi(step); err == nil && i >= 0 && i < len(n.Items) {
			n = n.Items[i]
			continue
		}
		i := slices.IndexFunc(n.Entries, func(e NodeEntry) bool { return e.Key == step })
		if i < 0 {
			return nil
		}
		n = n.Entries[i].Value
	}
	return n
}

func (n *Node) textOf() string {
	if n == nil {
		return ""
	}
	return n.Text
}

func (n *Node) entriesOf() []NodeEntry {
	if n == nil {
		return nil
	}
	return n.Entries
}

// flow is a value on one line.
func (n *Node) flow() string {
	var list []string
	for _, e := range n.Entries {
		list = append(list, writeKey(e.Key)+": "+e.Value.flow())
	}
	if list != nil {
		return "{" + strings.Join(list, ", ") + "}"
	}
	for _, item := range n.Items {
		list = append(list, item.flow())
	}
	if list != nil {
		return "[" + strings.Join(list, ", ") + "]"
	}
	return oneScalar(n.Text)
}
