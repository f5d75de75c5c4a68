package page

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"
)

// bankText is a cabinet of twelve drawers.
const bankText = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length, price: 58}
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
openings:
  base: {width: 564, height: 2100, depth: 545, cabinet: frameless, fronts: overlay}
drawers:
  - name: bank
    opening: base
    slide: side-mount
    rows: 12
    sides: birch
    bottom: hard
`

// sixtyText is five such cabinets, each of another width.
var sixtyText = func() string {
	from, to := strings.Index(bankText, "  base:"), strings.Index(bankText, "drawers:\n")
	opening, bank := bankText[from:to], bankText[to+len("drawers:\n"):]
	openings, banks := "", ""
	for i := range 5 {
		name := fmt.Sprintf("base%d", i+1)
		openings += strings.NewReplacer("base", name, "564", strconv.Itoa(564+i)).Replace(opening)
		banks += strings.NewReplacer("base", name, "name: bank", "name: "+name+" bank").Replace(bank)
	}
	return bankText[:from] + openings + "drawers:\n" + banks
}()

// BenchmarkEdit is what a key that is pressed costs the program; soon, what it costs until the numbers are there.
func BenchmarkEdit(b *testing.B) {
	for name, text := range map[string]string{"one": jobText, "twelve": bankText, "sixty": sixtyText} {
		for _, show := range []string{"soon", "fit", "parts", "setups", "buy"} {
			b.Run(name+"/"+show, func(b *testing.B) {
				p, _ := open(b, text)
				handler := p.Handler(host)
				for n := 0; b.Loop(); n++ {
					thickness := fmt.Sprintf("12.%03d", n%1000) // few that were there before
					e := thicker(text, thickness, show)
					if show == "soon" {
						e.View = view{Show: "fit", Soon: true}
					}
					w := httptest.NewRecorder()
					handler.ServeHTTP(w, request(p, "POST", "/api/edit", e))
					if w.Code != http.StatusOK {
						b.Fatal(w.Body)
					}
				}
			})
		}
	}
}
