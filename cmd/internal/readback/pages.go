package readback

import "bytes"

// Pages are the texts of a PDF, page by page.
func Pages(name string, data []byte) (pages [][]string, err error) {
	r := &reading{out: name}
	err = r.run(func(r *reading, _ string) {
		for page := range pdfPages(r, bytes.NewReader(data), nil) {
			var list []string
			for _, t := range page {
				list = append(list, t.text)
			}
			pages = append(pages, list)
		}
	}, "")
	return pages, err
}
