package geom

import (
	"fmt"
	"math"

	"drawerwright/geom/internal/planar"
)

// Rule names a promise that a panel must keep.
type Rule string

const (
	RuleThickness Rule = "thickness" // the panel is thicker than 0
	RuleRing      Rule = "ring"      // a loop is closed, finite, has an area and crosses itself nowhere
	RuleWinding   Rule = "winding"   // loops run counter-clockwise
	RuleDepth     Rule = "depth"     // a pocket is deeper than 0; a cutout goes through, a channel or step does not
	RuleInside    Rule = "inside"    // pockets and holes lie on their panel
	RuleWeb       Rule = "web"       // material is left under a pocket, also where two faces' pockets meet
	RuleThinWeb   Rule = "thin-web"  // and not too little of it
)

// MinWeb is the web under a pocket below which a panel is likely to break in
// the hand or show the cut on its other face. In millimeters; common practice,
// no source.
const MinWeb = 2.0

// sliverWidth is the width, in millimeters, up to which a place where two
// pockets seem to meet, or a pocket seems to leave its panel, is taken for the
// rounding of computed sizes: four steps of the grid that rules are judged on.
const sliverWidth = 4 * CoarseGrid

// Settle is the part of a computed size, in millimeters, that no verdict may hang on:
// ten steps of a [Length], whose rounding may add up.
const Settle = 1e-5

// ruleChord is the chord tolerance with which arcs are judged, in millimeters:
// a tenth of what a careful shop can cut.
const ruleChord = 0.01

// Violation is a broken rule. Pocket and Other are indices into Panel.Pockets,
// or -1; Hole likewise into Panel.Holes. Value and Limit are in millimeters
// (RuleInside: square millimeters of the pocket that lie beyond the panel).
type Violation struct {
	Rule         Rule
	Warning      bool
	Pocket       int
	Other        int
	Hole         int
	At           Point
	Value, Limit float64
}

// Diagnosis is a broken rule of a panel, with the panel's own words for its pockets. It has
// no subject: which part a panel is, it does not know.
func (v Violation) Diagnosis(p Panel) Diagnosis {
	d := Diagnosis{Code: Code(v.Rule), Level: LevelError, Fact: v.fact(p)}
	if v.Warning {
		d.Level = LevelWarning
	}
	switch v.Rule {
	case RuleThickness, RuleDepth, RuleWeb, RuleThinWeb:
		d.Measured, d.Limit = Millimeters(v.Value), Millimeters(v.Limit)
	}
	return d
}

// fact says what is wrong.
func (v Violation) fact(p Panel) Sentence {
	what := "the outline"
	if v.Hole >= 0 {
		what = fmt.Sprintf("hole %d", v.Hole+1)
	}
	if v.Pocket >= 0 {
		what = fmt.Sprintf("the %s on the %s face", p.Pockets[v.Pocket].Kind.Noun(), p.Pockets[v.Pocket].Face)
	}
	x, y := Millimeters(v.At.X), Millimeters(v.At.Y)
	switch v.Rule {
	case RuleThickness:
		return Sentencef("the panel is %s thick", Millimeters(v.Value))
	case RuleRing:
		return Sentencef("%s crosses or touches itself, or has no area, near x %s, y %s", what, x, y)
	case RuleWinding:
		return Sentencef("%s runs clockwise", what)
	case RuleDepth:
		return Sentencef("%s is %s deep; the panel is %s thick", what, Millimeters(v.Value), Millimeters(p.Thickness))
	case RuleInside:
		return Sentencef("%s reaches beyond the panel near x %s, y %s", what, x, y)
	}
	verb := "s" // of one thing
	if v.Other >= 0 {
		verb = ""
		what += fmt.Sprintf(" and the %s on the %s face", p.Pockets[v.Other].Kind.Noun(), p.Pockets[v.Other].Face)
	}
	if v.Rule == RuleWeb {
		return Sentencef("%s break%s through the panel near x %s, y %s", what, verb, x, y)
	}
	return Sentencef("%s leave%s only %s of the panel near x %s, y %s", what, verb, Millimeters(v.Value), x, y)
}

// Check lists every rule that a panel breaks, errors and warnings, in a fixed
// order. Rules that need sound loops are judged only when all loops are sound.
func (p Panel) Check() []Violation {
	var list []Violation
	add := func(v Violation) { list = append(list, v) }
	if !(p.Thickness > 0) || math.IsInf(p.Thickness, 0) {
		add(Violation{Rule: RuleThickness, Pocket: -1, Other: -1, Hole: -1, Value: p.Thickness})
	}
	checkLoop(p.Outline, -1, -1, add)
	for i, h := range p.Holes {
		checkLoop(h, -1, i, add)
	}
	for i, k := range p.Pockets {
		checkLoop(k.Outline, i, -1, add)
		through := k.Through(p.Thickness)
		if !(k.Depth > 0) || (k.Kind == Cutout) != through && k.Kind != Drill {
			add(Violation{Rule: RuleDepth, Pocket: i, Other: -1, Hole: -1, Value: k.Depth, Limit: p.Thickness})
		}
	}
	if len(list) > 0 {
		return list
	}
	plan, err := NewPlan(p, ruleChord, CoarseGrid)
	if err != nil { // not after the same loops, chord and grid were found good
		add(Violation{Rule: RuleRing, Pocket: -1, Other: -1, Hole: -1})
		return list
	}
	area, at := plan.extents()
	p.checkInside(plan, area, at, add)
	p.checkWebs(plan, area, at, add)
	return list
}

// checkLoop judges one loop by itself.
func checkLoop(l Loop, pocket, hole int, add func(Violation)) {
	v := Violation{Rule: RuleRing, Pocket: pocket, Other: -1, Hole: hole}
	ring, err := gridRing(l, ruleChord, CoarseGrid)
	if err != nil {
		add(v)
		return
	}
	if at, ok := planar.Simple(ring); !ok {
		v.At = Point{float64(at.X) * CoarseGrid, float64(at.Y) * CoarseGrid}
		add(v)
		return
	}
	if l.Area() < 0 {
		v.Rule = RuleWinding
		add(v)
	}
}

// extents gives the area of each region and a place in it. The area is 0 for a
// region so narrow that it is a matter of rounding: the width of a strip is its area
// over half its perimeter.
func (plan *Plan) extents() (area []float64, at []Point) {
	area, at = make([]float64, len(plan.Regions)), make([]Point, len(plan.Regions))
	for _, t := range plan.Triangles {
		a, center := plan.triangle(t)
		area[t.Region] += a
		at[t.Region] = center
	}
	boundary := make([]float64, len(plan.Regions))
	for _, e := range plan.Edges {
		length := plan.Place(plan.Points[e.From]).To(plan.Place(plan.Points[e.To]))
		boundary[e.Above] += length
		boundary[e.Below] += length
	}
	for i := range area {
		if area[i] <= sliverWidth*boundary[i]/2 {
			area[i] = 0
		}
	}
	return area, at
}

// checkInside measures the part of each hole and pocket that lies beyond the outline.
func (p Panel) checkInside(plan *Plan, area []float64, at []Point, add func(Violation)) {
	type outside struct {
		area float64
		at   Point
	}
	beyond := make([]outside, len(p.Holes)+len(p.Pockets))
	for i, r := range plan.Regions {
		if r.outsideOutline && area[i] > 0 {
			plan.covers.EachCover(int32(i), func(ring int) {
				beyond[ring-1].area += area[i]
				beyond[ring-1].at = at[i]
			})
		}
	}
	for i, b := range beyond {
		if b.area == 0 {
			continue
		}
		v := Violation{Rule: RuleInside, Pocket: i - len(p.Holes), Other: -1, Hole: -1, At: b.at, Value: b.area}
		if v.Pocket < 0 {
			v.Pocket, v.Hole = -1, i
		}
		add(v)
	}
}

// checkWebs judges what is left in every region that pockets thin.
func (p Panel) checkWebs(plan *Plan, area []float64, at []Point, add func(Violation)) {
	type pair struct{ inside, outside int }
	seen := make(map[pair]bool)
	for i, r := range plan.Regions {
		web, met := r.Web(p.Thickness), pair{r.InsidePocket, r.OutsidePocket}
		if r.Leans() && r.InsidePocket < 0 {
			continue // it ends in an edge
		}
		if !r.OnPanel || r.throughPocket || web >= MinWeb-Settle || area[i] == 0 || seen[met] || met == (pair{-1, -1}) {
			continue
		}
		seen[met] = true
		v := Violation{Rule: RuleThinWeb, Warning: true, Pocket: met.inside, Other: met.outside, Hole: -1, At: at[i], Value: web, Limit: MinWeb}
		if v.Pocket < 0 {
			v.Pocket, v.Other = v.Other, -1
		}
		if v.Other >= 0 && (p.Pockets[v.Pocket].MayMeet || p.Pockets[v.Other].MayMeet) {
			continue
		}
		if web <= coincident {
			v.Rule, v.Warning = RuleWeb, false
		}
		add(v)
	}
}

// triangle gives a triangle's area and center in millimeters.
func (plan *Plan) triangle(t PlanTriangle) (area float64, center Point) {
	a, b, c := plan.Place(plan.Points[t.A]), plan.Place(plan.Points[t.B]), plan.Place(plan.Points[t.C])
	area = b.Sub(a).Cross(c.Sub(a)) / 2
	return area, Point{(a.X + b.X + c.X) / 3, (a.Y + b.Y + c.Y) / 3}
}
