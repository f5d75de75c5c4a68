package prove_test

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"

	"drawerwright/cmd/internal/record"
)

const (
	assembledSTL = "3d/base-1/assembled.stl"
	explodedSTL  = "3d/base-1/exploded.stl"
	cabinetGLB   = "3d/base.glb"
	cabinetPic   = "cabinet/base.svg"
	cutListCSV   = "tables/cut-list.csv"
	packetPDF    = "packet.pdf"
)

// short cuts the end of a file off.
func short(by int) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) { return b[:len(b)-by], 0 }
}

var plantedLists = map[string]planted{
	"a length of the cut list":        {file: cutListCSV, code: "table-number", part: "base-1-box-front", bytes: row("birch,6.10 / 6.10,2,0,481.78,", "birch,6.10 / 6.10,2,0,482.78,")},
	"a thickness of the cut list":     {file: cutListCSV, code: "table-number", part: "base-1-side", bytes: row("128.5,12.2,", "128.5,12.3,")},
	"pieces of the cut list":          {file: cutListCSV, code: "table-number", bytes: row("6.10,4,0,550", "6.10,5,0,550")},
	"spares of the cut list":          {file: cutListCSV, code: "table-number", bytes: row("6.10,4,0,550", "6.10,4,1,550")},
	"a stock of the cut list":         {file: cutListCSV, code: "table-word", bytes: row("ply,-", "oak,-")},
	"faces of the cut list":           {file: cutListCSV, code: "table-word", part: "base-1-side", bytes: row("inside face", "outside face")},
	"a part left out of the cut list": {file: cutListCSV, code: "table-row", part: "base-2-back", bytes: func(b []byte) ([]byte, int) { return bytes.Replace(b, []byte(" base-2-back"), nil, 1), 0 }},
	"a part twice in the cut list":    {file: cutListCSV, code: "table-row", part: "base-1-back", bytes: row("base-1-drawer-front base-2-drawer-front", "base-1-drawer-front base-1-back")},
	"a part unknown to the cut list":  {file: cutListCSV, code: "table-row", part: "base-9-side", bytes: row("base-2-side", "base-9-side")},
	"a column of the cut list":        {file: cutListCSV, code: "table-column", bytes: row("spares", "more")},
	"the cut list lost":               {file: cutListCSV, code: "missing-file", gone: true},
	"a quantity to buy":               {file: "tables/buy.csv", code: "table-number", bytes: row("glue,for 0.03 m2 of joints,5", "glue,for 0.03 m2 of joints,9")},
	"a thing to buy left out":         {file: "tables/buy.csv", code: "table-row", bytes: func(b []byte) ([]byte, int) { return b[:bytes.LastIndex(b, []byte("glue"))], 0 }},
	"a thing to buy added":            {file: "tables/buy.csv", code: "table-row", bytes: row("hardware,screw", "hardware,bolt")},
	"a depth of the legend":           {file: "router/layers.csv", code: "table-number", part: "DADO_INSIDE_6-10MM", bytes: row("dado,inside,6.10", "dado,inside,6.20")},
	"a bit of the legend":             {file: "router/layers.csv", code: "table-row", bytes: row(",3 mm,3.00,groove", ",6 mm,3.00,groove")},
	"a diameter of the legend":        {file: "router/layers.csv", code: "table-number", bytes: row(",3 mm,3.00,groove", ",3 mm,6.00,groove")},
	"an order of the legend":          {file: "router/layers.csv", code: "table-row", bytes: row("base-1-side.inside.dxf,,1,", "base-1-side.inside.dxf,,4,")},
	"a count of the legend":           {file: "router/layers.csv", code: "table-number", bytes: row("6.10,false,mm,2", "6.10,false,mm,3")},
	"a legend cut short": {file: "router/layers.csv", code: "table-row", bytes: func(b []byte) ([]byte, int) {
		return b[:bytes.Index(b, []byte(",,,TABS,"))], 0
	}},
	"a depth to set of the legend": {file: "router/layers.csv", code: "table-number", part: "DADO_INSIDE_6-10MM",
		bytes: row("mm,2,,6.10,top", "mm,2,,6.20,top")},
	"a height to set of the legend": {file: "router/layers.csv", code: "table-row", bytes: row("mm,2,,6.10,top",
		"mm,2,,6.10,spoilboard")},
	"an outline to cut of the legend": {file: "router/layers.csv", code: "table-row", bytes: row(",,,OUTLINE,,,,not cut",
		",,,OUTLINE,,,,profile")},
	"a grain of the list":         {file: "tables/parts.csv", code: "table-row", bytes: row("birch,none", "birch,length")},
	"an offcut of the layout":     {file: "tables/layout.csv", code: "table-number", bytes: row("offcut,,572.8,", "offcut,,500,")},
	"a quote left open in a list": {file: "tables/buy.csv", code: "unreadable", bytes: row(`"ply`, `ply"`)},
}

// outward moves what lies past a place along an axis.
func outward(axis int, from, by float32) func([]byte) ([]byte, int) {
	return cornersOf(func(x, y, z float32) (float32, float32, float32) {
		at := [3]*float32{&x, &y, &z}[axis]
		if *at > from {
			*at += by
		}
		return x, y, z
	})
}

// firstOf moves the first triangles of a solid, as many as its first shell has.
func firstOf(n int, f func(x, y, z float32) (float32, float32, float32)) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) {
		rest := bytes.Clone(b[84+50*n:])
		moved, _ := cornersOf(f)(b[:84+50*n])
		return append(moved, rest...), 0
	}
}

var plantedBoxes = map[string]planted{
	"an assembled box 1 wider":         {file: assembledSTL, code: "box-place", bytes: outward(0, 400, 1)},
	"an assembled box moved":           {file: assembledSTL, code: "box-place", bytes: outward(2, -1000, 5)},
	"an assembled box's bottom higher": {file: assembledSTL, code: "box-parts", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) { return x, y, between(z, 5, 20, 1) })},
	"an assembled box without a face":  {file: assembledSTL, code: "box-parts", bytes: fewer(2)},
	"an assembled box mirrored": {file: assembledSTL, code: "box-parts", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) {
		return 493.98 - x, y, z
	})},
	"an assembled box cut short":        {file: assembledSTL, code: "unreadable", bytes: short(30)},
	"an assembled box lost":             {file: assembledSTL, code: "missing-file", gone: true},
	"a box of a report with parts away": {code: "box-parts", at: assembledSTL, edit: func(r *record.Report) { r.Parts[0].Placements[1].Origin[0] += 2 }},
	"a box of a report with a part turned": {code: "box-parts", at: assembledSTL, edit: func(r *record.Report) {
		s := &r.Parts[1].Placements[0]
		s.Origin[0], s.X[0] = s.Origin[0]-481.78, -s.X[0]
	}},
	"an exploded box torn apart": {file: explodedSTL, code: "box-count", bytes: firstOf(60, func(x, y, z float32) (float32, float32, float32) { return x, y, z + 900 })},
	"an exploded box's part larger": {file: explodedSTL, code: "box-parts", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) {
		if x < -90 {
			z *= 1.01
		}
		return x, y, z
	})},
	"an exploded box's part aside": {file: explodedSTL, code: "box-parts", bytes: shellMoved(3, 0, 2)},
	"an exploded box in inches": {file: explodedSTL, code: "box-parts", bytes: cornersOf(func(x, y, z float32) (float32, float32, float32) {
		return x / 25.4, y / 25.4, z / 25.4
	})},
	"an exploded box with a part lost": {file: explodedSTL, code: "box-count", bytes: fewer(200)},
	"an exploded box lost":             {file: explodedSTL, code: "missing-file", gone: true},
	"a cabinet's preview lost":         {file: cabinetGLB, code: "missing-file", gone: true},
	"a cabinet's preview cut short":    {file: cabinetGLB, code: "unreadable", bytes: short(8)},
	"a cabinet's part of another name": {file: cabinetGLB, code: "scene-place", bytes: inScene(`"part":"base-2-back"`, `"part":"base-1-back"`)},
	"a cabinet's part larger":          {file: cabinetGLB, code: "solid-size", bytes: inMesh(func(_ int, v float32) float32 { return v * 1.01 })},
	"a cabinet's box 3 higher":         {code: "scene-place", at: cabinetGLB, edit: func(r *record.Report) { r.Cabinets[0].Rows[0].BoxBottom += 3 }},
	"a cabinet wider than its preview": {code: "scene-place", at: cabinetGLB, edit: func(r *record.Report) { r.Cabinets[0].Opening.Width += 3 }},
	"a cabinet with a row too few":     {code: "scene-count", at: cabinetGLB, edit: func(r *record.Report) { r.Cabinets[0].Rows = r.Cabinets[0].Rows[:1] }},
}

// between moves what lies between two places.
func between(v, from, to, by float32) float32 {
	if v > from && v < to {
		return v + by
	}
	return v
}

// fewer takes the last triangles of a binary STL off.
func fewer(n int) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) {
		b = bytes.Clone(b[:len(b)-50*n])
		binary.LittleEndian.PutUint32(b[80:], uint32((len(b)-84)/50))
		return b, 0
	}
}

// shellMoved moves the triangles that have all corners past a place along one axis, as the
// outermost part of an exploded box has, along another.
func shellMoved(by float32, axis, along int) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) {
		b = bytes.Clone(b)
		least := float32(math.Inf(1))
		for i := 84; i+50 <= len(b); i += 50 {
			for k := range 3 {
				least = min(least, math.Float32frombits(binary.LittleEndian.Uint32(b[i+12+12*k+4*axis:])))
			}
		}
		for i := 84; i+50 <= len(b); i += 50 {
			for k := range 3 {
				at := b[i+12+12*k:]
				if math.Float32frombits(binary.LittleEndian.Uint32(at[4*axis:])) > least+13 { // a thickness
					continue
				}
				v := math.Float32frombits(binary.LittleEndian.Uint32(at[4*along:]))
				binary.LittleEndian.PutUint32(at[4*along:], math.Float32bits(v+by))
			}
		}
		return b, 0
	}
}

const page, shopHTML = "boxes.html", "shop.html"

var plantedPictures = map[string]planted{
	"a length on the page": {file: page, code: "page-part", part: "base-1-box-front",
		bytes: row(`"eased":5,"length":481.78`, `"eased":5,"length":491.78`)},
	"a quantity on the page":      {file: page, code: "page-part", bytes: row(`"quantity":2`, `"quantity":3`)},
	"a part's name on the page":   {file: page, code: "page-part", bytes: row(`{"name":"base-1-back"`, `{"name":"base-1-rear"`)},
	"a box's size on the page":    {file: page, code: "page-box", part: "base-1", bytes: row(`"size":[493.98,128.5,550]`, `"size":[393.98,128.5,550]`)},
	"a box's name on the page":    {file: page, code: "page-box", bytes: row(`{"name":"base-2","count"`, `{"name":"base-3","count"`)},
	"a place on the page":         {file: page, code: "page-place", bytes: row(`"part":0,"origin":[0,0,0]`, `"part":0,"origin":[0,9,0]`)},
	"a direction on the page":     {file: page, code: "page-place", bytes: row(`"part":0,"origin":[0,0,0],"x":[0,1,0]`, `"part":0,"origin":[0,0,0],"x":[1,0,0]`)},
	"the page cut short":          {file: page, code: "unreadable", bytes: short(40)},
	"the page's boxes spoilt":     {file: page, code: "unreadable", bytes: row(`"boxes":[{`, `"boxes":[[`)},
	"the page lost":               {file: page, code: "missing-file", gone: true},
	"a picture cut short":         {file: "pictures/base-1-corner.svg", code: "unreadable", bytes: short(20)},
	"a picture of another scale":  {file: "pictures/base-1-corner.svg", code: "unreadable", bytes: row(`viewBox="0 0 `, `viewBox="0 0 1`)},
	"a picture without lines":     {file: "pictures/base-2-assembled.svg", code: "picture-empty", bytes: func(b []byte) ([]byte, int) { return bytes.ReplaceAll(b, []byte("<path"), []byte("<pith")), 0 }},
	"a picture lost":              {file: "pictures/base-2-exploded.svg", code: "missing-file", gone: true},
	"a picture in dots cut short": {file: "pictures/base-1-exploded.png", code: "unreadable", bytes: short(6)},
	"a picture in dots stretched": {file: "pictures/base-1-assembled.png", code: "picture-size", bytes: func(b []byte) ([]byte, int) { b = bytes.Clone(b); b[22]++; return b, 0 }},
	"a picture in dots lost":      {file: "sheets/birch-1.png", code: "missing-file", gone: true},
	"a picture of a sheet spoilt": {file: "sheets/birch-1.svg", code: "unreadable", bytes: row("<svg ", "<svq ")},
	"a picture of a sheet lost":   {file: "sheets/ply-1.svg", code: "missing-file", gone: true},
	"a slide line of the picture": {file: cabinetPic, code: "slide-line", bytes: row("M12 150.5L572 150.5", "M12 152.5L572 152.5")},
	"a height in the picture":     {file: cabinetPic, code: "slide-line", part: "base-1", bytes: row("base-1  196.5 mm", "base-1  195.6 mm")},
	"a name in the picture":       {file: cabinetPic, code: "slide-line", bytes: func(b []byte) ([]byte, int) { return bytes.Replace(b, []byte(">base-2  "), []byte(">base-3  "), 1), 0 }},
	"a hole of the picture lower": {file: cabinetPic, code: "cabinet-holes", bytes: lowered("M51.5 302C")},
	"a hole of the picture lost": {file: cabinetPic, code: "cabinet-holes", bytes: func(b []byte) ([]byte, int) {
		return bytes.Replace(b, []byte(`<path d="M51.5 302C`), []byte(`<pith d="M51.5 302C`), 1), 0
	}},
	"a side's picture higher":       {file: cabinetPic, code: "cabinet-size", bytes: row("M12 347L572 347L572 47L12 47Z", "M12 347L572 347L572 46L12 46Z")},
	"a side's picture with a curve": {file: cabinetPic, code: "unreadable", bytes: row("M12 150.5L572 150.5", "M12 150.5Q572 150.5")},
}

// lowered moves the path that begins so down by a millimeter.
func lowered(begin string) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) {
		at := bytes.Index(b, []byte(begin))
		if at < 0 {
			return b, -1
		}
		end, n := at+bytes.IndexByte(b[at:], '"'), 0
		path := number.ReplaceAllFunc(b[at:end], func(v []byte) []byte {
			if n++; n%2 == 1 { // an x
				return v
			}
			y, _ := strconv.ParseFloat(string(v), 64)
			return strconv.AppendFloat(nil, y+1, 'f', 4, 64)
		})
		return slices.Concat(b[:at], path, b[end:]), 1 + bytes.Count(b[:at], []byte("\n"))
	}
}

var number = regexp.MustCompile(`[0-9.]+`)

// inPages replaces words of a packet, and gives the page where they stood as a negative line.
func inPages(old, new string) func([]byte) ([]byte, int) {
	wide := func(s string) []byte {
		var b []byte
		for _, u := range utf16.Encode([]rune(s)) {
			b = append(b, byte(u>>8), byte(u))
		}
		return b
	}
	return func(data []byte) ([]byte, int) {
		const begin, end = "stream\n", "\nendstream"
		page := 0
		var out bytes.Buffer
		for rest := data; ; {
			at := bytes.Index(rest, []byte(begin))
			if at < 0 {
				return data, 1 // not there: no such line is at fault
			}
			at += len(begin)
			to := at + bytes.Index(rest[at:], []byte(end))
			out.Write(rest[:at])
			content := []byte(nil)
			if z, err := zlib.NewReader(bytes.NewReader(rest[at:to])); err == nil {
				content, _ = io.ReadAll(z)
			}
			if bytes.Contains(content, []byte(" Tj ET")) {
				page++
			}
			if from := append([]byte("("), append(wide(old), ')')...); bytes.Contains(content, from) {
				z := zlib.NewWriter(&out)
				z.Write(bytes.Replace(content, from, append([]byte("("), append(wide(new), ')')...), 1))
				z.Close()
				out.Write(rest[to:])
				return out.Bytes(), -page
			}
			out.Write(rest[at : to+len(end)])
			rest = rest[to+len(end):]
		}
	}
}

// nowhere is for what is missing then: it has no page.
func nowhere(f func([]byte) ([]byte, int)) func([]byte) ([]byte, int) {
	return func(b []byte) ([]byte, int) { b, _ = f(b); return b, 0 }
}

var plantedSaid = map[string]planted{
	"parts.txt cut off below a stock": {file: "parts.txt", code: "unreadable", bytes: func(b []byte) ([]byte, int) {
		at := bytes.Index(b, []byte("birch, 12.2 mm thick"))
		at += bytes.IndexByte(b[at:], '\n') + 1
		return b[:at], bytes.Count(b[:at], []byte("\n"))
	}},
	"a length in parts.txt":       {file: "parts.txt", code: "said", part: "base-1-box-front", bytes: row("481.78     128.5  both", "482.78     128.5  both")},
	"pieces in parts.txt":         {file: "parts.txt", code: "said", bytes: row("4        550", "5        550")},
	"a thickness in parts.txt":    {file: "parts.txt", code: "said", bytes: row("birch, 12.2 mm thick", "birch, 12.1 mm thick")},
	"a slide line in parts.txt":   {file: "parts.txt", code: "said", part: "base-1", bytes: row("161.50      196.50", "161.50      197.50")},
	"a width as a sum":            {file: "parts.txt", code: "said", bytes: row("- 2 x 12.70 slide", "- 2 x 12.60 slide")},
	"a slide taken once":          {file: "parts.txt", code: "said", bytes: row("- 2 x 12.70 slide", "- 3 x 12.70 slide")},
	"a spacer in parts.txt":       {file: "parts.txt", code: "said", bytes: row("106.50 mm for base-1", "105.50 mm for base-1")},
	"an opening in parts.txt":     {file: "parts.txt", code: "said", bytes: row("520.00 x 300.00", "521.00 x 300.00")},
	"a fence in parts.txt":        {file: "parts.txt", code: "said", bytes: row("router                 6.10           6.10", "router                 6.20           6.10")},
	"a width in parts.txt":        {file: "parts.txt", code: "said", bytes: row("493.98  493.18", "494.98  493.18")},
	"odds in parts.txt":           {file: "parts.txt", code: "said", bytes: row("  780  ", "  922  ")},
	"a verdict in parts.txt":      {file: "parts.txt", code: "said", bytes: row("107 of 1,000 boxes come out right\n", "907 of 1,000 boxes come out right\n")},
	"the answer in parts.txt":     {file: "parts.txt", code: "said", bytes: row("Does not fit: do not cut", "Fits: do not cut")},
	"sheets in parts.txt":         {file: "parts.txt", code: "said", bytes: row("birch: 1 sheet of", "birch: 2 sheets of")},
	"a thing to buy in parts.txt": {file: "parts.txt", code: "said", bytes: row("5  g", "6  g")},
	"the cut list out of parts.txt": {file: "parts.txt", code: "said-not", bytes: func(b []byte) ([]byte, int) {
		return bytes.Replace(b, []byte("ply, 5.9 mm thick"), []byte("ply, about 6 thick"), 1), 0
	}},
	"parts.txt lost":               {file: "parts.txt", code: "missing-file", gone: true},
	"a length in the packet":       {file: packetPDF, code: "said", part: "base-1-box-front", bytes: inPages("481.78", "482.78")},
	"a box's size in the packet":   {file: packetPDF, code: "said", part: "base-1", bytes: inPages("493.98 x 128.5 x 550", "493.98 x 138.5 x 550")},
	"pieces in the packet":         {file: packetPDF, code: "said", bytes: inPages("2 pieces, 481.78 x 128.5 mm, of birch, 12.2 mm thick.", "3 pieces, 481.78 x 128.5 mm, of birch, 12.2 mm thick.")},
	"a cut's place in the packet":  {file: packetPDF, code: "said", bytes: inPages("6.10 to 12.40", "6.10 to 12.60")},
	"a cut's face in the packet":   {file: packetPDF, code: "said", bytes: inPages("outside, seen through", "inside, seen through")},
	"boxes in the packet":          {file: packetPDF, code: "said", bytes: inPages("1 of 1", "1 of 3")},
	"a stock in the packet":        {file: packetPDF, code: "said", bytes: inPages("2 pieces, 479.78 x 535.8 mm, of ply, 5.9 mm thick.", "2 pieces, 479.78 x 535.8 mm, of oak, 5.9 mm thick.")},
	"a thing to buy in the packet": {file: packetPDF, code: "said", bytes: inPages("8", "9")},
	"sheets in the packet":         {file: packetPDF, code: "said", bytes: inPages("1 sheet of 1500.00 x 1100.00 mm; best possible; yield 42.7 %.", "1 sheet of 1500.00 x 1100.00 mm; best possible; yield 52.7 %.")},
	"a part's name in the packet":  {file: packetPDF, code: "said-not", bytes: nowhere(inPages("base-1-back, base-2-back", "base-1-back and more"))},
	"pilot holes of another drawer in the packet": {file: packetPDF, code: "said", part: "base-2",
		bytes: inPages("63.28, 121.43", "51.28, 109.43")},
	"a pilot hole too few in the packet": {file: packetPDF, code: "said", part: "base-2",
		bytes: inPages("63.28, 121.43", "63.28")},
	"no pilot holes in the packet": {file: packetPDF, code: "said-not", part: "base-1",
		bytes: nowhere(inPages("from below", "from above"))},
	"a report with a drawer front lower": {code: "said", at: packetPDF, part: "base-2", edit: func(r *record.Report) {
		for i, p := range r.Parts {
			if p.Name == "base-2-drawer-front" {
				r.Parts[i].Placements[0].Origin[2] -= 3
			}
		}
	}},
	"a packet without pages":    {file: packetPDF, code: "unreadable", bytes: func(b []byte) ([]byte, int) { return []byte(strings.ReplaceAll(string(b), "stream\n", "stroam\n")), 0 }},
	"a length for the shop":     {file: shopHTML, code: "said", part: "base-1-box-front", bytes: row(`"length">481.78<`, `"length">482.78<`)},
	"pieces for the shop":       {file: shopHTML, code: "said", bytes: row(`"pieces">2<`, `"pieces">3<`)},
	"a box's size for the shop": {file: shopHTML, code: "said", part: "base-1", bytes: row("493.98 x 128.5 x 550", "493.98 x 138.5 x 550")},
	"parts lost for the shop": {file: shopHTML, code: "said-not", bytes: func(b []byte) ([]byte, int) {
		return bytes.Replace(b, []byte(`class="parts"`), []byte(`class="part"`), 1), 0
	}},
	"the page for the shop spoilt":    {file: shopHTML, code: "unreadable", bytes: nowhere(row("</li>", "</lo>"))},
	"the page for the shop cut short": {file: shopHTML, code: "unreadable", bytes: short(4)},
	"the page for the shop lost":      {file: shopHTML, code: "missing-file", gone: true},
	"the packet lost":                 {file: packetPDF, code: "missing-file", gone: true},
	"a report with another length":    {code: "said", at: packetPDF, part: "base-1-back", edit: func(r *record.Report) { r.Parts[2].Length++ }},
	"a report with more boxes":        {code: "said", at: packetPDF, edit: func(r *record.Report) { r.Drawers[1].Count = 2 }},
}

const (
	stickSVG = "templates/stick-wall.as-drawn.svg"
	plateSVG = "templates/wall-1-side-inside.kerf-0-18mm.svg"
)

// plantedMarked are of what templates mark, and of their other files.
var plantedMarked = map[string]planted{
	"a template's slot off its wall": {file: plateDrawn, code: "template-mark", harm: aside("CUTOUT", 4, 0.3)},
	"a template's slot elsewhere":    {file: plateDrawn, code: "template-mark", harm: aside("CUTOUT", 10, 20)},
	"a stick's slot off its line":    {file: stickDrawn, code: "template-mark", harm: func(d *drawing) int { d.on("CUTOUT")[1].points(moved(0.4, 0)); return 0 }},
	"a wall of the report elsewhere": {code: "template-mark", at: plateDrawn, edit: func(r *record.Report) {
		o := r.Parts[0].Operations[2].Outline
		o[2].Y, o[3].Y = o[2].Y+0.5, o[3].Y+0.5
	}},
	"a template laid elsewhere": {code: "template-mark", at: plateDrawn, edit: func(r *record.Report) { r.Templates[0].Origin[0] += 1 }},
	"a slide line beside the stick's": {code: "template-mark", at: stickDrawn,
		edit: func(r *record.Report) { r.Cabinets[0].Rows[1].SlideLine += 1 }},
	"an SVG's slot moved": {file: stickSVG, code: "template-svg", bytes: row("M193.3333 172.8L194.5333 172.8L194.5333 152.8L193.3333", "M193.4333 172.8L194.6333 172.8L194.6333 152.8L193.4333")},
	"an SVG's slot lost": {file: stickSVG, code: "template-svg", bytes: func(b []byte) ([]byte, int) {
		return bytes.Replace(b, []byte(`<path d="M55 172.8`), []byte(`<poth d="M55 172.8`), 1), 0
	}},
	"an SVG's slot open":               {file: stickSVG, code: "open", bytes: row("L55 152.8Z", "L55 152.8")},
	"an SVG's outline longer":          {file: stickSVG, code: "template-svg", bytes: row("L422 179.3L422 123.3", "L423 179.3L423 123.3")},
	"an SVG's outline lost":            {file: stickSVG, code: "no-outline", bytes: func(b []byte) ([]byte, int) { return bytes.ReplaceAll(b, []byte("PROFILE_"), []byte("OUTLINE_")), 0 }},
	"an SVG of another scale":          {file: stickSVG, code: "unreadable", bytes: row(`width="432mm"`, `width="431mm"`)},
	"an SVG cut short":                 {file: plateSVG, code: "unreadable", bytes: short(10)},
	"an SVG lost":                      {file: plateSVG, code: "missing-file", gone: true},
	"a template's page lost":           {code: "template-page", at: "templates/as-drawn.pdf", edit: func(r *record.Report) { r.Templates[1].Title = "wall-9-box-front, inside face" }},
	"the templates to be printed lost": {file: "templates/as-drawn.pdf", code: "missing-file", gone: true},
	"a setting of the cuts":            {file: "tables/cuts.csv", code: "table-number", bytes: row("poplar ply,12,2,hand-held,467.43", "poplar ply,12,2,hand-held,468.43")},
	"a board of the cuts":              {file: "tables/cuts.csv", code: "table-row", bytes: row("1A1 wall-1-box-front", "1A1 wall-1-back")},
	"a cut left out": {file: "tables/cuts.csv", code: "table-row", bytes: func(b []byte) ([]byte, int) {
		at := bytes.LastIndex(b, []byte("\npoplar ply,")) + 1
		return append(bytes.Clone(b[:at]), b[at+bytes.IndexByte(b[at:], 10)+1:]...), 0
	}},
	"what a cut leaves": {file: "tables/cuts.csv", code: "table-number", bytes: row("sheet 1,1520,1401.466667", "sheet 1,1520,1301.466667")},
}
