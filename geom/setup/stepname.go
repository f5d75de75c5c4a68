package setup

import "drawerwright/geom"

// Name is what a step makes, in the plural.
func (s Step) Name() string {
	switch {
	case len(s.EdgeCuts) > 0 && s.Edge == geom.PullCut:
		return "pulls"
	case len(s.EdgeCuts) > 0 && s.Edge == geom.CrossingCut:
		return "slots for boards that cross"
	case len(s.EdgeCuts) > 0 && s.Edge == geom.NotchCut:
		return "notches"
	case len(s.EdgeCuts) > 0 && s.Edge == geom.TailCut:
		return "tails"
	case len(s.EdgeCuts) > 0 && s.Edge == geom.PinCut:
		return "pins"
	case len(s.EdgeCuts) > 0:
		return "fingers"
	case s.Holding == Bored:
		return "holes"
	case s.Holding == Opened:
		return "openings"
	case s.Holding == Mortised:
		return "mortises"
	}
	return s.Kind.String() + "s"
}
