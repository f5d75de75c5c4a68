package pdf

import (
	"bytes"
	"compress/zlib"
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
		c.Text(font, 12, [2]float64{10, 20}, i, fmt.Sprintf("page (%d) \\ é", i))
		c.Rectangle(1, 2, 3, 4)
		c.Paint(Area)
		var marks []Bookmark
		if i == 0 {
			marks = []Bookmark{{"one", 0}, {"within", 1}, {"within too", 1}, {"two", 0}}
		}
		f.Page(200, 100, &c, marks...)
	}
	if err := f.Close(Info{Title: "Title – with a dash"}); err != nil {
		t.Fatal(err)
	}
}

// TestObjectsAreWhereTheyAreSaidToBe: the table at the end has each object, every reference
// is to one of them, streams are as long as they say, and a page shows what was written on it.
func TestObjectsAreWhereTheyAreSaidToBe(t *testing.T) {
	var out bytes.Buffer
	written(t, &out, 3)
	text := out.String()
	start, err := strconv.Atoi(strings.Fields(text[strings.LastIndex(text, "startxref"):])[1])
	if err != nil || !strings.HasPrefix(text[start:], "xref\n0 ") {
		t.Fatalf("the table is not at %d: %v", start, err)
	}
	rows := strings.Split(text[start:], "\n")[2:]
	objects := 0
	for n, row := range rows[1:] {
		if row == "trailer" {
			break
		}
		objects++
		at, err := strconv.Atoi(row[:10])
		if head := fmt.Sprintf("%d 0 obj\n", n+1); err != nil || len(row) != 19 || !strings.HasPrefix(text[at:], head) {
			t.Errorf("object %d is not at %d", n+1, at)
		}
	}
	if strings.Count(text, " 0 obj\n") != objects || !strings.Contains(text, fmt.Sprintf("/Size %d ", objects+1)) {
		t.Errorf("%d objects in the table", objects)
	}
	for _, m := range regexp.MustCompile(`(\d+) 0 R`).FindAllStringSubmatch(text, -1) {
		if n, err := strconv.Atoi(m[1]); err != nil || n < 1 || n > objects {
			t.Errorf("%s is no object", m[0])
		}
	}
	shown := 0
	for _, m := range regexp.MustCompile(`/Length (\d+)[^>]*>>\nstream\n`).FindAllStringSubmatchIndex(text, -1) {
		long, _ := strconv.Atoi(text[m[2]:m[3]])
		if !strings.HasPrefix(text[m[1]+long:], "\nendstream") {
			t.Errorf("a stream is not %d long", long)
		}
		z, err := zlib.NewReader(strings.NewReader(text[m[1] : m[1]+long]))
		if err != nil {
			t.Fatal(err)
		}
		content, err := io.ReadAll(z)
		if err != nil {
			t.Fatal(err)
		}
		want := "BT 10 20 Td (\x00p\x00a\x00g\x00e\x00 \x00\\(\x00" + strconv.Itoa(shown) +
			"\x00\\)\x00 \x00\\\\\x00 \x00\xe9) Tj ET"
		if bytes.Contains(content, []byte(want)) {
			shown++
		}
	}
	if shown != 3 || strings.Count(text, "/Type /Page ") != 3 || !strings.Contains(text, "/Count 3 ") {
		t.Errorf("%d pages of 3", shown)
	}
	for _, want := range []string{"/Title <FEFF006F006E0065> /Parent", "/Count -2",
		"/Title <FEFF005400690074006C006500202013"} {
		if strings.Count(text, want) != 1 {
			t.Errorf("%s stands in it %d times", want, strings.Count(text, want))
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
		f.Page(100, 100, &noise)
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
			f.Page(100, 100, &c)
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
