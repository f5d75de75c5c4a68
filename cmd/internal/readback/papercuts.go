package readback

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// paperCuts are the cuts that take the sheets of a stock apart, as they are read on paper: how many there are to be,
// the last that was read, what is set for those that follow, and how often fence or stop was set.
type paperCuts struct {
	stock       string
	total, last int
	setting     string
	set         int
}

// devices are what is set for cuts.
const devices = `(Fence|Sled stop|Clean-up, fence|Clean-up on the sled,|Clean-up by a guide,|Cut along a guide at)`

var (
	cutsTitle = regexp.MustCompile(`^Cuts of (.+)$`)
	setBegins = regexp.MustCompile(`^` + devices + `( again| still)? \d`) // its unit may stand on the next line
	cutsOfRow = regexp.MustCompile(`^(\d+)(?:-(\d+))?$`)
	setLine   = regexp.MustCompile(`^` + devices + `( again| still)? ((?:\d+ )?\d\S*(?: \([^)]+\))?) (?:mm|in)\b`)
)

// cuts reads how a stock is taken apart: how many cuts there are, and what is set for each.
func (p *packetReader) cuts() taken {
	switch c := &p.sawn; {
	case len(p.list) == 2 && p.list[0] == "·" && cutsTitle.MatchString(p.title) && cutsLine.MatchString(p.list[1]):
		stock := cutsTitle.FindStringSubmatch(p.title)[1]
		line := p.s.together(1)
		p.cutsSummary(line, stock)
		*c = paperCuts{stock: stock, total: whole(p.reading, cutsLine.FindStringSubmatch(line)[1])}
	case c.stock != "" && setBegins.MatchString(p.one):
		said := p.s.together(0)
		m := setLine.FindStringSubmatch(said)
		if m == nil {
			p.fail("nothing is set: %q", said)
		}
		c.setting = m[3]
		stopped := m[1] == "Fence" || m[1] == "Sled stop" || m[1] == "Clean-up, fence"
		if stopped && m[2] != " still" && !strings.HasSuffix(said, ", goes on") {
			c.set++
		}
	case c.stock != "" && len(p.list) == 4 && cutsOfRow.MatchString(p.list[0]):
		m := cutsOfRow.FindStringSubmatch(p.list[0])
		if m[1] != strconv.Itoa(c.last+1) {
			return notTaken
		}
		last, _ := strconv.Atoi(m[2]) // 0 where a row is of one cut
		for last = max(last, c.last+1); c.last < last; {
			c.last++
			p.printed("saw cut", fmt.Sprint(c.stock, " ", c.last), "setting", c.setting)
		}
		if c.last == c.total {
			p.count("layout", c.stock, "times that the fence is set", c.set)
			*c = paperCuts{}
		}
	default:
		return notTaken
	}
	return lineTaken
}
