package readback

import (
	"regexp"
	"strconv"
	"strings"
)

var (
	blockPage  = regexp.MustCompile(`^page (\d+)$`)
	blockCode  = regexp.MustCompile(`^code ([0-9A-Z]+)$`)
	stripCode  = regexp.MustCompile(`, code ([0-9A-Z]+)$`)
	labelPiece = regexp.MustCompile(`(?:^|, )piece \d+ of \d+$`)
	blockDate  = regexp.MustCompile(`^\d{4}-\d\d-\d\d$`)
	blockOf    = regexp.MustCompile(`^of (\d+)$`)
)

// titleBlock takes the title block, or the strip of a page of labels, away from the lines of a page, and reads it:
// every page says the code of the job, and which page it is. It is the last line that does: names may say the like.
func (r *reading) titleBlock(lines [][]pdfText, page int) [][]pdfText {
	for i := len(lines) - 1; i >= 0; i-- {
		number, code, strip := "", "", false
		for _, c := range cells(lines[i]) {
			if m := blockPage.FindStringSubmatch(c); m != nil {
				number = m[1]
			}
			if m := blockCode.FindStringSubmatch(c); m != nil {
				code, strip = m[1], false
			} else if m := stripCode.FindStringSubmatch(c); m != nil && code == "" {
				code, strip = m[1], true
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
		if strip {
			r.labelCodes(lines[:i], code)
		}
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

// offcutOf begins the words of an offcut's label, which has no code: an offcut outlives the job.
const offcutOf = "offcut of"

// labelCodes reads the code of the job on each label of a page. Where as many texts as there are labels say that of the
// page, others that look like one are names of boards, broken into lines.
func (r *reading) labelCodes(lines [][]pdfText, code string) {
	var others []string
	labels, right := 0, 0
	for _, line := range lines {
		for _, c := range cells(line) {
			if labelPiece.MatchString(c) {
				labels++
			}
			if strings.HasPrefix(c, offcutOf) {
				labels--
			}
			if m := blockCode.FindStringSubmatch(c); m != nil && m[1] == code {
				right++
			} else if m != nil {
				others = append(others, m[1])
			}
		}
	}
	if right >= labels {
		return
	}
	for _, other := range others {
		r.words("total", "job", "code", other)
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
