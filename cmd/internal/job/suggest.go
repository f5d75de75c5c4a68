package job

import (
	"cmp"
	"slices"
	"strings"
)

// suggestion is the hint of a problem, with the words of it that may be written at the place.
type suggestion struct {
	hint    string
	instead []string
}

// didYouMean is for a word that is none of the known ones: the nearest of them, those that
// share parts with it or begin like it, or all.
func didYouMean(word string, known []string) suggestion {
	if near := near(word, known); len(near) > 0 {
		return anyOf(near)
	}
	return suggestion{"write " + alternatives(known), known[:min(len(known), maxShown)]}
}

// anyOf asks whether one of some words was meant.
func anyOf(near []string) suggestion {
	return suggestion{"did you mean " + alternatives(near) + "?", near}
}

// near are the known words that may have been meant; none where nothing is near.
func near(word string, known []string) []string {
	if one := nearest(word, known); one != "" {
		return []string{one}
	}
	if list := sharing(word, known); len(list) > 0 {
		return list
	}
	return beginning(word, known)
}

// elsewhere says below which entries of the job file a key belongs that is none of those where
// it was written, or whose part it is: `keep` of `keep-out`. It is empty where there is none, or
// more than a person weighs.
func elsewhere(word string) string {
	var list []string
	for _, exact := range []bool{true, false} {
		list = nil
		for _, e := range entriesOf(func(p placeOfKey) bool {
			return p.key().name == word || !exact && slices.Contains(strings.Split(p.key().name, "-"), word)
		}) {
			steps := strings.Split(e.Path, ".")
			above := "at the beginning of a line"
			if n := len(steps) - 1; n > 0 {
				above = "below `" + strings.Join(steps[:n], ": ") + ":`"
			}
			list = append(list, "`"+steps[len(steps)-1]+"` belongs "+above)
		}
		if len(list) > 0 {
			break
		}
	}
	if len(list) > maxSharing {
		return ""
	}
	return strings.Join(list, "; ")
}

// between is for a number that is out of a range, with its ends.
func between(least, most string) suggestion {
	return suggestion{"write " + least + " to " + most, []string{least, most}}
}

// DidYouMean is a hint for a word that is none of the known ones.
func DidYouMean(word string, known []string) string {
	return didYouMean(word, known).hint
}

// Nearest is the known word that was probably meant; empty where none is near.
func Nearest(word string, known []string) string { return nearest(word, known) }

// maxShown is how many words a person reads; the keys of a job are among them.
const maxShown = 20

// alternatives lists words for a person, as many as a person reads.
func alternatives(words []string) string {
	quoted := make([]string, 0, maxShown+1)
	for _, w := range words[:min(len(words), maxShown)] {
		quoted = append(quoted, "`"+w+"`")
	}
	if len(words) > maxShown {
		return strings.Join(append(quoted, "..."), ", ")
	}
	if n := len(quoted); n > 1 {
		return strings.Join(quoted[:n-1], ", ") + " or " + quoted[n-1]
	}
	return strings.Join(quoted, "")
}

// nearest is the known word with the fewest slips of the finger to the given
// one, at most one in three characters; empty when none is that near.
func nearest(word string, known []string) string {
	a := []rune(strings.ToLower(word))
	if len(a) > maxName {
		return ""
	}
	best, least := "", max(1, len(a)/3)+1
	for _, k := range known {
		if d := slips(a, []rune(strings.ToLower(k))); d < least {
			best, least = k, d
		}
	}
	return best
}

// maxSharing is how many words are near enough to be meant: of more, none is. Of a word that
// is meant at least one part in leastShared is in what was written.
const maxSharing, leastShared = 4, 3

// sharing are the known words that have the most parts between hyphens in common with the
// given one, the nearest first: `front` is in `box-front`.
func sharing(word string, known []string) (best []string) {
	parts := func(w string) []string {
		return strings.FieldsFunc(strings.ToLower(w), func(r rune) bool { return r == '-' || r == '_' || r == ' ' })
	}
	given, most := parts(word[:min(len(word), maxName)]), 1
	for _, k := range known {
		all, n := parts(k), 0
		for _, p := range all {
			if slices.Contains(given, p) {
				n++
			}
		}
		switch {
		case n*leastShared < len(all):
		case n > most:
			best, most = []string{k}, n
		case n == most:
			best = append(best, k)
		}
	}
	if len(best) > maxSharing {
		return nil
	}
	letters := []rune(strings.ToLower(word[:min(len(word), maxName)]))
	slices.SortStableFunc(best, func(a, b string) int {
		return cmp.Compare(slips(letters, []rune(a)), slips(letters, []rune(b)))
	})
	return best
}

// leastBeginning is how many letters two words have to begin with for one to be meant by the
// other.
const leastBeginning = 4

// beginning are the known words that begin like the given one: `overcut` like over-run. Of more
// than a person weighs none is.
func beginning(word string, known []string) (list []string) {
	letters := []rune(strings.ToLower(word))
	if len(letters) < leastBeginning {
		return nil
	}
	for _, k := range known {
		if strings.HasPrefix(strings.ToLower(k), string(letters[:leastBeginning])) {
			list = append(list, k)
		}
	}
	if len(list) > maxSharing {
		return nil
	}
	return list
}

// slips counts the characters that are missing, added, changed, or swapped
// with their neighbor between two words.
func slips(a, b []rune) int {
	// Three rows of the table of distances between all beginnings of a and b.
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		before, last, row = last, row, before
		row[0] = i + 1
		for j := range b {
			change := 1
			if a[i] == b[j] {
				change = 0
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+change)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
	}
	return row[len(b)]
}
