package job

import (
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// machineLength is one of the limits of a machine with a fence.
type machineLength struct {
	limit    setup.Limit
	of       func(*setup.Machine) *float64
	min, max float64
	doc      string
}

var machineLengths = []machineLength{
	{setup.LimitHeight, func(m *setup.Machine) *float64 { return &m.MaxHeight }, 1, 200, "How far the cutter stands over the table at most"},
	{setup.LimitWidth, func(m *setup.Machine) *float64 { return &m.MaxWidth }, 1, 200, "The widest cutter that its arbor or collet carries"},
	{setup.LimitRip, func(m *setup.Machine) *float64 { return &m.RipCapacity }, minReachOfSaw, maxSize, "How far the fence opens; of a saw, a sheet that is wider is cut with a hand-held saw along a guide"},
	{setup.LimitCrosscut, func(m *setup.Machine) *float64 { return &m.CrosscutCapacity }, minReachOfSaw, maxSize, "The longest crosscut that the sled or miter gauge takes; of a saw, a longer one through a sheet is cut along a guide"},
	{setup.LimitMaxOnSled, func(m *setup.Machine) *float64 { return &m.MaxOnSled }, minReachOfSaw, maxSize, "The longest part that lies across the sled"},
	{setup.LimitMaxStop, func(m *setup.Machine) *float64 { return &m.MaxStop }, minReachOfSaw, maxSize,
		"How far from the blade the stop on the sled or miter gauge is clamped; a longer piece is cut off a sheet along a guide"},
	{setup.LimitMinOnEnd, func(m *setup.Machine) *float64 { return &m.MinOnEnd }, 20, maxSize, "The shortest part that is stood on its end or edge; on a router table, in a finger jig"},
	{setup.LimitMaxOnEnd, func(m *setup.Machine) *float64 { return &m.MaxOnEnd }, 20, maxSize, "The longest part that is stood on its end or edge; on a router table, in a finger jig"},
	{setup.LimitMinWidthOnEnd, func(m *setup.Machine) *float64 { return &m.MinWidthOnEnd }, 20, maxSize,
		"The narrowest part that is stood on its end; a narrower one lies flat for the rabbets at its ends"},
	{setup.LimitMinAlongFence, func(m *setup.Machine) *float64 { return &m.MinAlongFence }, 20, maxSize, "The shortest part that is pushed along the fence; across, a shorter one is clamped to the sled"},
	{setup.LimitMinWidthAlongFence, func(m *setup.Machine) *float64 { return &m.MinWidthAlongFence }, 20, maxSize,
		"The narrowest part that is pushed along the fence over the cutter"},
}

// fencedKinds are the machines whose limits a job can write down.
var fencedKinds = []joinery.CutterKind{joinery.Saw, joinery.RouterTable}

// passDepthKey is how deep a router table's bit goes in one pass.
const passDepthKey = "pass-depth"

var machineKeys = func() (keys []key) {
	docs := map[joinery.CutterKind]string{joinery.Saw: "What the table saw can do: nothing beyond that is planned", joinery.RouterTable: "What the router table can do: nothing beyond that is planned"}
	for _, k := range fencedKinds {
		keys = append(keys, key{name: string(k), form: formSection, keys: limitsOfMachine(k), without: "a cautious machine of a small shop", doc: docs[k],
			example: "{" + setup.LimitRip.Entry(k) + ": 250}", why: noSource})
	}
	return keys
}()

func limitsOfMachine(k joinery.CutterKind) (keys []key) {
	for _, l := range machineLengths {
		metric, inches := setup.DefaultMachine(k, geom.Millimeter), setup.DefaultMachine(k, geom.Inch)
		if *l.of(&metric) == 0 { // no limit of this machine
			continue
		}
		keys = append(keys, key{name: l.limit.Entry(k), form: formLength, min: l.min, max: l.max, doc: l.doc,
			without: mm(*l.of(&metric)) + ", or with units: in " + geom.LengthOf(*l.of(&inches)).Text(geom.Inch),
			example: mm(*l.of(&metric)), why: "what a small one of its kind does; " + noSource})
	}
	if k == joinery.RouterTable {
		keys = append(keys, key{name: passDepthKey, form: formMeasure, measures: ratios, min: 0.1, max: 1, fallback: "0.5", doc: "How deep one pass goes at most, as a part of the bit's diameter",
			example: "0.4", why: noSource})
	}
	return keys
}

// machines are the limits of the shop's machines.
func (b *builder) machines() setup.Machines {
	out := setup.Machines{}
	all := b.sub(b.root, "machines", machineKeys)
	for _, k := range fencedKinds {
		s := b.sub(all, string(k), limitsOfMachine(k))
		m := setup.DefaultMachine(k, b.units)
		for _, l := range machineLengths {
			if v := s.values[l.limit.Entry(k)]; len(v.lengths) > 0 {
				*l.of(&m) = v.mm(0)
			}
		}
		if v := s.values[passDepthKey]; v.number > 0 {
			m.PassDepth = v.number
		}
		if m.MinOnEnd > m.MaxOnEnd {
			b.fail(CodeOutOfRange, either(s.values[string(setup.LimitMaxOnEnd)],
				s.values[string(setup.LimitMinOnEnd)]).at, "write the smaller of the two as the minimum",
				"%s is more than %s", setup.LimitMinOnEnd, setup.LimitMaxOnEnd)
		}
		out[k] = m
	}
	return out
}
