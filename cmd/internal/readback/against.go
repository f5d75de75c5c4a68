package readback

import "slices"

// Record is what report.json and the cut list, which has equal parts together, say, by what
// it is about.
type Record map[Key][]Fact

// RecordOf reads these.
func RecordOf(job Job, outputs Outputs) (Record, error) {
	facts, err := Read(job, outputs)
	if err != nil {
		return nil, err
	}
	r := make(Record, len(facts))
	for _, f := range facts {
		r[f.Key] = append(r[f.Key], f)
	}
	return r, nil
}

// Against finds where the facts of one output are not those of the record, and what should
// stand in it and does not. Of what the record does not have nothing is said.
func Against(job Job, record Record, facts []Fact, out string) (found []Contradiction) {
	there := make(map[Key]bool, len(facts))
	for _, f := range facts {
		there[f.Key] = true
		for _, g := range record[f.Key] {
			if !job.agree(g, f) {
				found = append(found, Contradiction{Key: f.Key, Says: []Fact{g, f}})
				break
			}
		}
	}
	var not []Contradiction
	for k, list := range record {
		if !there[k] && slices.Contains(job.standsIn(k), out) {
			not = append(not, Contradiction{Key: k, Says: list[:1], Not: []string{out}})
		}
	}
	slices.SortFunc(not, func(a, b Contradiction) int { return compareKeys(a.Key, b.Key) })
	return append(found, not...)
}
