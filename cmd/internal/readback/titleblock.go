package readback

import (
	"regexp"
	"strconv"
)

var (
	blockPage = regexp.MustCompile(`^page (\d+)$`)
	blockCode = regexp.MustCompile(`(?:^|, )code ([0-9A-Z]+)$`)
	blockDate = regexp.MustCompile(`^\d{4}-\d\d-\d\d$`)
	blockOf   = regexp.MustCompile(`^of (\d+)$`)
)

// titleBlock takes the title block, or the strip of a page of labels, away from the lines of a page, and reads it:
// every page says the code of the job, and which page it is.
func (r *reading) titleBlock(lines [][]pdfText, page int) [][]pdfText {
	for i, line := range lines {
		number, code := "", ""
		for _, c := range cells(line) {
			if m := blockPage.FindStringSubmatch(c); m != nil {
				number = m[1]
			}
			if m := blockCode.FindStringSubmatch(c); m != nil {
				code = m[1]
			}
		}
		if number == "" || code == "" {
			continue
		}
		if n, err := strconv.Atoi(number); err != nil || n != page {
			r.fail("page %d says that it is page %s", page, number)
		}
		r.at = page
		r.words("total", "job", "code", code)
		r.labelCodes(lines[:i])
		for _, below := range lines[i+1:] {
			if last := below[len(below)-1].text; blockDate.MatchString(last) {
				r.words("total", "job", "date", last)
			}
		}
		return lines[:i]
	}
	r.fail("page %d has no title block", page)
	return nil
}

// labelCodes reads the code of the job on each label of a page.
func (r *reading) labelCodes(lines [][]pdfText) {
	for _, line := range lines {
		for _, c := range cells(line) {
			if m := blockCode.FindStringSubmatch(c); m != nil {
				r.words("total", "job", "code", m[1])
			}
		}
	}
}

// counted reads of how many pages each says to be one, which they share.
func (s *paperScan) counted(shared []pdfText) {
	for _, c := range shared {
		if m := blockOf.FindStringSubmatch(c.text); m != nil && m[1] != strconv.Itoa(s.read) {
			s.r.fail("its pages say that there are %s of them; there are %d", m[1], s.read)
		}
	}
}
