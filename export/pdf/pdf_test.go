package pdf

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"
)

// regular are the letters of the tests, read by a library.
func regular(t testing.TB) (Letters, *sfnt.Font) {
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	return Letters{Name: "Go-Regular", TTF: goregular.TTF, Glyph: func(r rune) (uint16, float64) {
		n, err := font.GlyphIndex(nil, r)
		if err != nil {
			t.Fatal(err)
		}
		return uint16(n), 500
	}}, font
}

// written is a document of so many pages, each with its number, the first with bookmarks.
func written(t testing.TB, w io.Writer, pages int) {
	letters, _ := regular(t)
	f := New(w)
	font := f.Font(letters)
	var c Content
	for i := range pages {
		c.Reset()
		c.Begin("P", 0)
		c.Text(font, 12, [2]float64{10, 20}, i, fmt.Sprintf("page (%d) \\ é", i))
		c.End()
		c.BeginArtifact()
		c.Rectangle(1, 2, 3, 4)
		c.Paint(Area)
		c.End()
		var marks []Bookmark
		if i == 0 {
			marks = []Bookmark{{"one", 0}, {"within", 1}, {"within too", 1}, {"two", 0}}
		}
		f.Page(Page{Wide: 200, High: 100, Content: &c, Elements: []Element{{Kind: "P", Marks: []int{0}}}, Bookmarks: marks})
	}
	if err := f.Close(Info{Title: "Title – with a dash"}); err != nil {
		t.Fatal(err)
	}
}

// objectsOf finds the objects of a document by the table at its end, streams unpacked.
func objectsOf(t *testing.T, data []byte) map[int]string {
	t.Helper()
	text := string(data)
	start, err := strconv.Atoi(strings.Fields(text[strings.LastIndex(text, "startxref"):])[1])
	if err != nil {
		t.Fatal(err)
	}
	rows := []byte(contentOf(t, objectAt(t, data, start)))
	list := make(map[int]string)
	for n := range len(rows) / 8 {
		if row := rows[8*n:]; row[0] == 1 {
			one := objectAt(t, data, int(binary.BigEndian.Uint32(row[2:])))
			head := fmt.Sprintf("%d 0 obj\n", n)
			if !strings.HasPrefix(one, head) {
				t.Errorf("object %d begins %.20q", n, one)
			}
			list[n] = strings.TrimPrefix(one, head)
		}
	}
	for n := range len(rows) / 8 {
		row := rows[8*n:]
		if row[0] != 2 {
			continue
		}
		in, nth := int(binary.BigEndian.Uint32(row[2:])), int(binary.BigEndian.Uint16(row[6:]))
		content := contentOf(t, list[in])
		first := number(t, list[in], "/First")
		heads := strings.Fields(content[:first])
		if heads[2*nth] != strconv.Itoa(n) {
			t.Errorf("%d stands in place of object %d", nth, n)
		}
		from, _ := strconv.Atoi(heads[2*nth+1])
		list[n], _, _ = strings.Cut(content[first+from:], "\n")
	}
	if size := number(t, objectAt(t, data, start), "/Size"); len(list)+1 != size {
		t.Errorf("%d objects of %d", len(list), size-1)
	}
	return list
}

// objectAt is the object, no longer one of others, that begins at a byte.
func objectAt(t *testing.T, data []byte, at int) string {
	t.Helper()
	long := number(t, string(data[at:]), "/Length")
	from := at + strings.Index(string(data[at:]), "stream\n") + len("stream\n")
	if !bytes.HasPrefix(data[from+long:], []byte("\nendstream\nendobj\n")) {
		t.Fatalf("a stream is not %d long", long)
	}
	return string(data[at : from+long])
}

func number(t *testing.T, text, key string) int {
	t.Helper()
	_, after, found := strings.Cut(text, key+" ")
	n, err := strconv.Atoi(after[:strings.IndexFunc(after, func(r rune) bool { return r < '0' || r > '9' })])
	if !found || err != nil {
		t.Fatalf("no %s in %.80q", key, text)
	}
	return n
}

// contentOf is what a stream holds.
func contentOf(t *testing.T, object string) string {
	t.Helper()
	head, body, _ := strings.Cut(object, "stream\n")
	if !strings.Contains(head, "/FlateDecode") {
		return body
	}
	z, err := zlib.NewReader(strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	content, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return string(content)
}

// TestObjectsAreWhereTheyAreSaidToBe: the table at the end has each object, every reference is to one of them, and
// pages show what was written on them.
func TestObjectsAreWhereTheyAreSaidToBe(t *testing.T) {
	var out bytes.Buffer
	const pages = 120 // more than one stream has of objects
	written(t, &out, pages)
	objects := objectsOf(t, out.Bytes())
	all, shown := "", 0
	const text = "\x00\\)\x00 \x00\\\\\x00 \x00\xe9) Tj ET"
	for n, o := range objects {
		head, _, _ := strings.Cut(o, "stream\n")
		for _, m := range regexp.MustCompile(`(\d+) 0 R`).FindAllStringSubmatch(head, -1) {
			if to, _ := strconv.Atoi(m[1]); objects[to] == "" {
				t.Errorf("object %d names %s, which is none", n, m[0])
			}
		}
		if strings.Contains(o, "stream\n") && strings.Contains(contentOf(t, o), text) {
			shown++
		}
		all += o + "\n"
	}
	if shown != pages || strings.Count(all, "/Type /Page ") != pages || !strings.Contains(all, "/Count 120 ") {
		t.Errorf("%d pages of %d", shown, pages)
	}
	for _, want := range []string{"/Title <FEFF006F006E0065> /Parent", "/Count -2",
		"/Title <FEFF005400690074006C006500202013"} {
		if strings.Count(all, want) != 1 {
			t.Errorf("%s stands in it %d times", want, strings.Count(all, want))
		}
	}
}

// TestStructure: elements are written in their order, each within its own, with the page that shows them; those that
// nothing shows are left out, but cells of a row; a stretch leads to its element.
func TestStructure(t *testing.T) {
	var out bytes.Buffer
	f := New(&out)
	var c Content
	f.Page(Page{Wide: 100, High: 100, Content: &c}) // without any
	f.Page(Page{Wide: 100, High: 100, Content: &c, Elements: []Element{{Kind: "H1"}, {Kind: "Table"}, {Kind: "TR", In: 2},
		{Kind: "TD", In: 3}, {Kind: "TD", In: 3, Marks: []int{0, 2}}, {Kind: "Figure", Alt: "A", Marks: []int{1}}}})
	if err := f.Close(Info{}); err != nil {
		t.Fatal(err)
	}
	objects := objectsOf(t, out.Bytes())
	find := func(pattern string) (n int, groups []string) {
		t.Helper()
		for i, o := range objects {
			if m := regexp.MustCompile(pattern).FindStringSubmatch(o); m != nil {
				n, groups = i, m
			}
		}
		if n == 0 {
			t.Fatalf("no %s", pattern)
		}
		return n, groups
	}
	page, _ := find(`/Type /Page .*/StructParents 0 /Tabs /S>>$`)
	table, in := find(`^<</S /Table /P (\d+) 0 R /K \[ ?(\d+) 0 R ?\]>>$`)
	row, cells := find(`^<</S /TR /P ` + fmt.Sprint(table) + ` 0 R /K \[ ?(\d+) 0 R (\d+) 0 R ?\]>>$`)
	figure, _ := find(`^<</S /Figure /P ` + in[1] + ` 0 R /Alt <FEFF0041> /Pg ` + fmt.Sprint(page) + ` 0 R /K \[1\]>>$`)
	if fmt.Sprint(row) != in[2] {
		t.Error("the row is not in its table")
	}
	full, _ := find(`^<</S /TD /P ` + fmt.Sprint(row) + ` 0 R /Pg ` + fmt.Sprint(page) + ` 0 R /K \[0 2\]>>$`)
	empty, _ := find(`^<</S /TD /P ` + fmt.Sprint(row) + ` 0 R>>$`)
	if cells[1] != fmt.Sprint(empty) || cells[2] != fmt.Sprint(full) {
		t.Errorf("cells %q, not %d and %d", cells[1:], empty, full)
	}
	find(fmt.Sprintf(`^\[%d 0 R %d 0 R %d 0 R \]$`, full, figure, full))
	find(fmt.Sprintf(`^<</S /Div /P \d+ 0 R /K \[%d 0 R %d 0 R \]>>$`, table, figure))
	for _, o := range objects {
		if strings.Contains(o, "/H1") {
			t.Errorf("a heading that nothing shows: %s", o)
		}
	}
}

// TestPagesGoOut: of a page that is written no more than a few KB wait, however many there are.
func TestPagesGoOut(t *testing.T) {
	var out bytes.Buffer
	f := New(&out)
	noise := Content{}
	for range 50 {
		before := f.at
		f.Page(Page{Wide: 100, High: 100, Content: &noise})
		if waits := f.at - int64(out.Len()); f.at == before || waits > 4096 {
			t.Fatalf("%d bytes wait of %d", waits, f.at)
		}
	}
}

// failing takes so many bytes.
type failing struct{ room int }

func (f *failing) Write(b []byte) (int, error) {
	if f.room -= len(b); f.room < 0 {
		return 0, io.ErrShortWrite
	}
	return len(b), nil
}

// TestErrorOfTheWriter: whenever the writer fails, Close tells it.
func TestErrorOfTheWriter(t *testing.T) {
	letters, _ := regular(t)
	for room := range 40 {
		f := New(&failing{room * 1000})
		font := f.Font(letters)
		var c Content
		for i := range 200 {
			c.Reset()
			c.Text(font, 12, [2]float64{}, 0, strings.Repeat(string(rune('!'+i%90)), i))
			f.Page(Page{Wide: 100, High: 100, Content: &c})
		}
		if err := f.Close(Info{}); err != io.ErrShortWrite {
			t.Fatalf("room for %d KB: %v", room, err)
		}
	}
}

// TestLettersAreCut: what is left of a font is read by a library, has the outlines of the letters that
// are used, accented ones with their parts, and none of the others; its sums are right.
func TestLettersAreCut(t *testing.T) {
	letters, whole := regular(t)
	rapid.Check(t, func(t *rapid.T) {
		used := rapid.StringMatching(`[A-Za-zÀ-ÿΑ-ωА-я0-9 ]{1,12}`).Draw(t, "used")
		var glyphs []uint16
		for _, r := range used {
			n, _ := letters.Glyph(r)
			glyphs = append(glyphs, n)
		}
		data := truetype(letters.TTF).with(glyphs)
		if got := sum(data); got != 0xB1B0AFBA {
			t.Fatalf("the sum of all is %x", got)
		}
		// The library asks for a table of names of letters, which documents do without.
		tables := []namedTable{}
		for _, tag := range []string{"cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name",
			"post", "prep"} {
			from := truetype(data)
			if tag == "cmap" || tag == "name" || tag == "post" {
				from = letters.TTF
			}
			tables = append(tables, namedTable{tag, from.table(tag)})
		}
		cut, err := sfnt.Parse(assembled(tables))
		if err != nil {
			t.Fatal(err)
		}
		outline := func(f *sfnt.Font, n uint16) sfnt.Segments {
			s, err := f.LoadGlyph(&sfnt.Buffer{}, sfnt.GlyphIndex(n), fixed.I(1000), nil)
			if err != nil {
				t.Fatal(err)
			}
			return s
		}
		for _, n := range glyphs {
			if !slices.Equal(outline(cut, n), outline(whole, n)) {
				t.Fatalf("letter %d of %q has another outline", n, used)
			}
		}
		kept := 0
		for n := range whole.NumGlyphs() {
			if len(truetype(data).glyph(uint16(n))) > 0 {
				kept++
			}
		}
		if kept > 3*len(glyphs) { // with their parts
			t.Fatalf("%d outlines for %d letters", kept, len(glyphs))
		}
	})
}

// TestNumbers: two decimals, none that say nothing, and no negative zero.
func TestNumbers(t *testing.T) {
	for v, want := range map[float64]string{0: "0", -0.004: "0", 0.005: "0.01", 12.3: "12.3", -7.06: "-7.06",
		841.89: "841.89", 100: "100", -0.5: "-0.5"} {
		var c Content
		if c.number(v); string(c.data) != want+" " {
			t.Errorf("%g is %q", v, c.data)
		}
	}
}

// TestStateIsSaidOnce: what is set already is not set again, and each page begins anew.
func TestStateIsSaidOnce(t *testing.T) {
	var c Content
	draw := func() string {
		c.Reset()
		for range 2 {
			c.Pen(0.5, 0.2, []float64{2, 1})
			c.Fill(0.4)
		}
		return string(c.data)
	}
	const want = "1 J 1 j\n0.200 G\n0.5 w\n[2 1 ] 0 d\n0.400 g\n"
	if a, b := draw(), draw(); a != want || b != want {
		t.Errorf("%q, then %q", a, b)
	}
}

// TestNoDate: a document has no date, so that the same pages give the same bytes and nobody reads
// one that is none.
func TestNoDate(t *testing.T) {
	var out bytes.Buffer
	written(t, &out, 1)
	if strings.Contains(out.String(), "Date") {
		t.Error("the document has a date")
	}
}
