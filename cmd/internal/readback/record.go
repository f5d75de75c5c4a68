package readback

import (
	"cmp"
	"io"
	"slices"
)

// Record is what report.json and the cut list, which has equal parts together, say. A job of 1,000
// drawers has a quarter of a million facts, so each has numbers for what others have too.
type Record struct {
	things   numbered[thing]
	measures numbered[string]
	steps    numbered[float64]
	facts    []recorded // by key, those of one key as they were read
	values   []byte     // of all facts, one after the other
}

// thing is what several facts are about.
type thing struct{ kind, of string }

// measured is a key: the numbers of its thing and of its measure.
type measured struct{ thing, measure int32 }

func (m measured) compare(n measured) int {
	return cmp.Or(cmp.Compare(m.thing, n.thing), cmp.Compare(m.measure, n.measure))
}

// recorded is a fact of a record: its key, where its value stands among the values, the number of its step.
type recorded struct {
	key            measured
	from, to, step int32
}

func (r *Record) fact(i int) Fact {
	f := r.facts[i]
	return Fact{Value: string(r.values[f.from:f.to]), Step: r.steps.list[f.step]}
}

// numbered are values by their numbers, from 0.
type numbered[T comparable] struct {
	number map[T]int32
	list   []T
}

// add gives the number of a value, a new one if need be.
func (n *numbered[T]) add(v T) int32 {
	k, known := n.number[v]
	if !known {
		if n.number == nil {
			n.number = make(map[T]int32)
		}
		k = int32(len(n.list))
		n.number[v], n.list = k, append(n.list, v)
	}
	return k
}

// RecordOf reads a report, and the cut list if there is one.
func RecordOf(job Job, report io.Reader, cutList string) (*Record, error) {
	all := new(Record)
	take := func(f Fact) {
		key := measured{all.things.add(thing{f.Kind, f.Of}), all.measures.add(f.Measure)}
		from := int32(len(all.values))
		all.values = append(all.values, f.Value...)
		all.facts = append(all.facts, recorded{key, from, int32(len(all.values)), all.steps.add(f.Step)})
	}
	r := &reading{out: ReportJSON, unit: job.Units, job: job, take: take}
	err := r.run(func(r *reading, _ string) { r.report(report) }, "")
	if err == nil && cutList != "" {
		err = readOne(job, CutList, cutList, take)
	}
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(all.facts, func(a, b recorded) int { return a.key.compare(b.key) })
	return all, nil
}

// find gives the first fact of a key, if there is one.
func (r *Record) find(k Key) (first int, known bool) {
	t, known := r.things.number[thing{k.Kind, k.Of}]
	if !known {
		return 0, false
	}
	m, known := r.measures.number[k.Measure]
	if !known {
		return 0, false
	}
	return slices.BinarySearchFunc(r.facts, measured{t, m}, func(f recorded, k measured) int { return f.key.compare(k) })
}

// keyOf is the key of a fact.
func (r *Record) keyOf(m measured) Key {
	t := r.things.list[m.thing]
	return Key{t.kind, t.of, r.measures.list[m.measure]}
}

// Against finds where the facts of one output are not those of the record, and what should
// stand in it and does not. Of what the record does not have nothing is said. Facts are compared
// as they are read, and not kept. The error says that the output cannot be read.
func Against(job Job, record *Record, out string, text io.Reader) (found []Contradiction, err error) {
	there := make([]bool, len(record.facts)) // by the first fact of a key
	err = readFrom(job, out, text, func(f Fact) {
		first, known := record.find(f.Key)
		if !known {
			return
		}
		there[first] = true
		for i := first; i < len(record.facts) && record.facts[i].key == record.facts[first].key; i++ {
			if g := record.fact(i); !job.agree(g, f) {
				found = append(found, Contradiction{Key: f.Key, Says: []Fact{g, f}})
				break
			}
		}
	})
	if err != nil {
		return nil, err
	}
	var not []Contradiction
	for i, f := range record.facts {
		if there[i] || i > 0 && record.facts[i-1].key == f.key {
			continue
		}
		if k := record.keyOf(f.key); slices.Contains(job.standsIn(k), out) {
			not = append(not, Contradiction{Key: k, Says: []Fact{record.fact(i)}, Not: []string{out}})
		}
	}
	slices.SortFunc(not, func(a, b Contradiction) int { return compareKeys(a.Key, b.Key) })
	return append(found, not...), nil
}
