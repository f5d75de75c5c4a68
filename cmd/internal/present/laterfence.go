package present

import (
	"slices"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/setup"
)

// laterFence is a distance at which the fence stands for a pass after the first. Of is what is cut so, where other cuts
// of the setting are not.
type laterFence struct{ Value, Of string }

// laterFences are those of a setting in their order, for its heading and its figures alike. Cuts that take the same
// passes share them.
func (s Setting) laterFences(u geom.Unit) (list []laterFence) {
	for i, c := range s.Cuts {
		same := func(o CutStep) bool { return slices.Equal(o.Passes, c.Passes) }
		if len(c.Passes) < 2 || slices.ContainsFunc(s.Cuts[:i], same) {
			continue
		}
		var of []string
		others := false
		for _, o := range s.Cuts {
			if !same(o) {
				others = true
			} else if name := s.named(o, u); !slices.Contains(of, name) {
				of = append(of, name)
			}
		}
		one := laterFence{}
		if others {
			one.Of = words.And(of)
		}
		for _, at := range c.Passes[1:] {
			one.Value = words.Length(at.MM(), u)
			list = append(list, one)
		}
	}
	return list
}

// named is a cut by its kind, with its width where another of its setting has that kind and takes other passes.
func (s Setting) named(c CutStep, u geom.Unit) string {
	alike := func(o CutStep) bool { return o.Kind == c.Kind && !slices.Equal(o.Passes, c.Passes) }
	if setup.Holding(c.Work) == setup.OnEnd || !slices.ContainsFunc(s.Cuts, alike) {
		return c.Kind
	}
	return c.Kind + " " + caliper(c.Width, u) + " wide"
}

// thenFences say the later fences after the first.
func (s Setting) thenFences(u geom.Unit) (said string) {
	for _, f := range s.laterFences(u) {
		said += ", then " + f.Value
		if f.Of != "" {
			said += " for " + f.Of
		}
	}
	return said
}
