package readback

import (
	"io"
	"slices"
)

// Record is what report.json and the cut list, which has equal parts together, say.
type Record struct {
	facts []Fact
	first map[Key]int32 // the first fact of a key, and after each the next of the same
	next  []int32
}

// RecordOf reads a report, and the cut list if there is one.
func RecordOf(job Job, report io.Reader, cutList string) (*Record, error) {
	var facts []Fact
	take := func(f Fact) { facts = append(facts, f) }
	r := &reading{out: ReportJSON, unit: job.Units, job: job, take: take}
	err := r.run(func(r *reading, _ string) { r.report(report) }, "")
	if err == nil && cutList != "" {
		err = readOne(job, CutList, cutList, take)
	}
	if err != nil {
		return nil, err
	}
	all := &Record{facts, make(map[Key]int32, len(facts)), make([]int32, len(facts))}
	for i := len(facts) - 1; i >= 0; i-- {
		all.next[i] = -1
		if n, known := all.first[facts[i].Key]; known {
			all.next[i] = n
		}
		all.first[facts[i].Key] = int32(i)
	}
	return all, nil
}

// Against finds where the facts of one output are not those of the record, and what should
// stand in it and does not. Of what the record does not have nothing is said. Facts are compared
// as they are read, and not kept. The error says that the output cannot be read.
func Against(job Job, record *Record, out string, text []byte) (found []Contradiction, err error) {
	there := make([]bool, len(record.facts)) // by the first fact of a key
	r := &reading{out: out, unit: job.Units, job: job, take: func(f Fact) {
		first, known := record.first[f.Key]
		if !known {
			return
		}
		there[first] = true
		for i := first; i >= 0; i = record.next[i] {
			if g := record.facts[i]; !job.agree(g, f) {
				found = append(found, Contradiction{Key: f.Key, Says: []Fact{g, f}})
				break
			}
		}
	}}
	read, known := readers[out]
	switch {
	case !known:
		return nil, noReader(out)
	case out == Packet: // which is large: without a copy
		err = r.run(func(r *reading, _ string) { r.packet(text) }, "")
	default:
		err = r.run(read, string(text))
	}
	if err != nil {
		return nil, err
	}
	var not []Contradiction
	for k, first := range record.first {
		if !there[first] && slices.Contains(job.standsIn(k), out) {
			not = append(not, Contradiction{Key: k, Says: record.facts[first : first+1], Not: []string{out}})
		}
	}
	slices.SortFunc(not, func(a, b Contradiction) int { return compareKeys(a.Key, b.Key) })
	return append(found, not...), nil
}
