package prove_test

import "fmt"

// plantedCode are pages that are of another job, or that are not all there.
var plantedCode = map[string]planted{
	"a page of an old job":         {file: packetPDF, code: "said", bytes: inPages("code 8P246E", "code 222222")},
	"a label of an old job":        {file: packetPDF, code: "said", bytes: inPages("Planted, code 8P246E", "Planted, code 222222")},
	"a page that is counted twice": {file: packetPDF, code: "unreadable", bytes: nowhere(inPages("page 3", "page 2"))},
	"more pages than there are":    {file: packetPDF, code: "unreadable", bytes: nowhere(morePages)},
	"a page without its block":     {file: packetPDF, code: "unreadable", bytes: nowhere(inPages("page 2", "two"))},
}

// morePages says of a packet that it has a page more than it has.
func morePages(b []byte) ([]byte, int) {
	for n := range 100 {
		if out, at := inPages(fmt.Sprintf("of %d", n), fmt.Sprintf("of %d", n+1))(b); at < 0 {
			return out, at
		}
	}
	return b, 1
}
