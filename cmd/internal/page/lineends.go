package page

import "strings"

// endedAs gives the lines of a text, which end with \n alone, the ends that they have in an old
// text. New lines, and those that were changed, end as most of the old ones.
func endedAs(old, text string) string {
	carried, all := strings.Count(old, "\r\n"), strings.Count(old, "\n")
	usual := "\n"
	if 2*carried > all {
		usual = "\r\n"
	}
	if carried == 0 || carried == all {
		return strings.ReplaceAll(text, "\n", usual)
	}
	was, now := strings.Split(old, "\n"), strings.Split(text, "\n")
	bare := make([]string, len(was))
	for i, line := range was {
		bare[i] = strings.TrimSuffix(line, "\r")
	}
	same := matched(bare[:len(bare)-1], now[:len(now)-1]) // what follows the last end is no line
	var out strings.Builder
	for i, line := range now {
		out.WriteString(line)
		switch {
		case i == len(now)-1:
		case same[i] < 0:
			out.WriteString(usual)
		default:
			out.WriteString(was[same[i]][len(bare[same[i]]):] + "\n")
		}
	}
	return out.String()
}

// mostCompared is how many pairs of lines are compared, beside those before the first and after the
// last change: of 2,000 lines each with each.
const mostCompared = 4_000_000

// matched gives for each line of a text the old line that it is, -1 for none: as many as can be in
// their order. Where there would be too many to compare, only those before the first and after the last
// change are told.
func matched(old, now []string) []int {
	same := make([]int, len(now))
	for i := range same {
		same[i] = -1
	}
	first := 0
	for first < min(len(old), len(now)) && old[first] == now[first] {
		same[first] = first
		first++
	}
	n, m := len(old), len(now) // what is left lies before them
	for n > first && m > first && old[n-1] == now[m-1] {
		n, m = n-1, m-1
		same[m] = n
	}
	rows, columns := n-first+1, m-first+1
	if rows*columns > mostCompared {
		return same
	}
	// most[i*columns+k] is how many lines from old[first+i] and now[first+k] on are the same.
	most := make([]int32, rows*columns)
	for i := rows - 2; i >= 0; i-- {
		for k := columns - 2; k >= 0; k-- {
			at := i*columns + k
			most[at] = max(most[at+columns], most[at+1])
			if old[first+i] == now[first+k] {
				most[at] = most[at+columns+1] + 1
			}
		}
	}
	for i, k := 0, 0; i < rows-1 && k < columns-1; {
		at := i*columns + k
		switch {
		case old[first+i] == now[first+k]:
			same[first+k] = first + i
			i, k = i+1, k+1
		case most[at+columns] >= most[at+1]:
			i++
		default:
			k++
		}
	}
	return same
}
