package readback

import (
	"io"
	"maps"
	"slices"
	"strings"
)

// settings are what an output says of the settings of machines, by their keys: of one that stands twice, both.
func settings(job Job, out string, text io.Reader) (map[Key][]Fact, error) {
	facts := make(map[Key][]Fact)
	take := func(f Fact) {
		if strings.HasPrefix(f.Kind, "machine ") {
			facts[f.Key] = append(facts[f.Key], f)
		}
	}
	return facts, readFrom(job, out, text, take)
}

// Settings finds where two outputs disagree about the settings of machines, which the record does not have: heights,
// fences, passes, steps, pieces, limits. All that the first says stands in the second, and that has no setting of its
// own. The error says that one of them cannot be read.
func Settings(job Job, outs [2]string, texts [2]io.Reader) (found []Contradiction, err error) {
	var facts [2]map[Key][]Fact
	for i := range outs {
		if facts[i], err = settings(job, outs[i], texts[i]); err != nil {
			return nil, err
		}
	}
	for _, key := range slices.SortedFunc(maps.Keys(facts[0]), compareKeys) {
		f := facts[0][key][0]
		all := append(facts[0][key][1:], facts[1][key]...)
		if at := slices.IndexFunc(all, func(g Fact) bool { return !job.agree(f, g) }); at >= 0 {
			found = append(found, Contradiction{Key: key, Says: []Fact{f, all[at]}})
		} else if len(facts[1][key]) == 0 {
			found = append(found, Contradiction{Key: key, Says: []Fact{f}, Not: outs[1:]})
		}
	}
	for _, key := range slices.SortedFunc(maps.Keys(facts[1]), compareKeys) {
		if strings.HasPrefix(key.Of, "setting ") && len(facts[0][key]) == 0 {
			found = append(found, Contradiction{Key: key, Says: facts[1][key][:1], Not: outs[:1]})
		}
	}
	return found, nil
}
