package geom

import (
	"math"
	"slices"
	"testing"
)

func TestCheck(t *testing.T) {
	nan := math.NaN()
	blank := func(pockets ...Pocket) Panel {
		return Panel{Outline: Rectangle(0, 0, 300, 100), Thickness: 12, Pockets: pockets}
	}
	for name, c := range map[string]struct {
		panel Panel
		want  []Rule
	}{
		"blank":        {blank(), nil},
		"sound":        {blank(Pocket{Kind: Dado, Depth: 6, Outline: Rectangle(6, 0, 12, 100)}, Pocket{Kind: Drill, Depth: 12, Outline: Circle(Point{50, 50}, 2.5)}), nil},
		"no thickness": {Panel{Outline: Rectangle(0, 0, 300, 100)}, []Rule{RuleThickness}},
		"no outline":   {Panel{Thickness: 12}, []Rule{RuleRing}},
		"bow tie":      {Panel{Outline: Polygon(Point{0, 0}, Point{10, 10}, Point{10, 0}, Point{0, 10}), Thickness: 12}, []Rule{RuleRing}},
		"spike":        {Panel{Outline: Polygon(Point{0, 0}, Point{10, 0}, Point{20, 0}, Point{10, 0}, Point{10, 10}), Thickness: 12}, []Rule{RuleRing}},
		"flat":         {Panel{Outline: Polygon(Point{0, 0}, Point{10, 0}, Point{5, 0}), Thickness: 12}, []Rule{RuleRing}},
		"touches":      {Panel{Outline: Polygon(Point{0, 0}, Point{20, 0}, Point{20, 20}, Point{10, 0}, Point{0, 20}), Thickness: 12}, []Rule{RuleRing}},
		"nan":          {Panel{Outline: Rectangle(0, 0, nan, 10), Thickness: 12}, []Rule{RuleRing}},
		"infinite":     {Panel{Outline: Rectangle(0, 0, math.Inf(1), 10), Thickness: 12}, []Rule{RuleRing}},
		"clockwise":    {Panel{Outline: Rectangle(0, 0, 300, 100).Reverse(), Thickness: 12}, []Rule{RuleWinding}},
		"pocket clockwise, without depth, and one that is no ring": {
			blank(Pocket{Outline: Rectangle(0, 0, 9, 9).Reverse()}, Pocket{Depth: 1}), []Rule{RuleWinding, RuleDepth, RuleRing}},
		"dado through":                {blank(Pocket{Kind: Dado, Depth: 12, Outline: Rectangle(6, 0, 12, 100)}), []Rule{RuleDepth}},
		"cutout not quite":            {blank(Pocket{Kind: Cutout, Depth: 11, Outline: Rectangle(6, 6, 12, 12)}), []Rule{RuleDepth}},
		"depth nan":                   {blank(Pocket{Kind: Dado, Depth: nan, Outline: Rectangle(6, 0, 12, 100)}), []Rule{RuleDepth}},
		"beyond":                      {blank(Pocket{Depth: 3, Outline: Rectangle(-5, 0, 12, 100)}), []Rule{RuleInside}},
		"beyond by a hair":            {blank(Pocket{Depth: 3, Outline: Rectangle(-1e-7, 0, 12, 100)}), nil},
		"beyond by half a micrometer": {blank(Pocket{Depth: 3, Outline: Rectangle(-5e-4, 0, 12, 100)}), nil},
		"beyond by 5 micrometers":     {blank(Pocket{Depth: 3, Outline: Rectangle(-5e-3, 0, 12, 100)}), []Rule{RuleInside}},
		"meet by half a micrometer":   {blank(Pocket{Depth: 7, Outline: Rectangle(0, 10, 300, 20.0005)}, Pocket{Face: Outside, Depth: 7, Outline: Rectangle(0, 20, 300, 30)}), nil},
		"meet by 5 micrometers":       {blank(Pocket{Depth: 7, Outline: Rectangle(0, 10, 300, 20.005)}, Pocket{Face: Outside, Depth: 7, Outline: Rectangle(0, 20, 300, 30)}), []Rule{RuleWeb}},
		"thinner than a web":          {Panel{Outline: Rectangle(0, 0, 300, 100), Thickness: 1.5}, nil},
		"hole beyond":                 {Panel{Outline: Rectangle(0, 0, 300, 100), Thickness: 12, Holes: []Loop{Circle(Point{0, 50}, 10)}}, []Rule{RuleInside}},
		"thin web":                    {blank(Pocket{Kind: Groove, Depth: 10.5, Outline: Rectangle(6, 10, 12, 90)}), []Rule{RuleThinWeb}},
		"2 mm, computed":              {Panel{Outline: Rectangle(0, 0, 300, 100), Thickness: 8.03, Pockets: []Pocket{{Kind: Groove, Depth: 6.03, Outline: Rectangle(6, 10, 12, 90)}}}, nil},
		"2 mm is enough":              {blank(Pocket{Kind: Groove, Depth: 10, Outline: Rectangle(6, 10, 12, 90)}), nil},
		"faces meet":                  {blank(Pocket{Depth: 7, Outline: Rectangle(0, 10, 300, 20)}, Pocket{Face: Outside, Depth: 6, Outline: Rectangle(0, 0, 10, 100)}), []Rule{RuleWeb}},
		"faces just meet":             {blank(Pocket{Depth: 6, Outline: Rectangle(0, 10, 300, 20)}, Pocket{Face: Outside, Depth: 6, Outline: Rectangle(0, 0, 10, 100)}), []Rule{RuleWeb}},
		"as the joint wants": {blank(Pocket{Depth: 7, MayMeet: true, Outline: Rectangle(0, 10, 300, 20)}, Pocket{Face: Outside, Depth: 6, Outline: Rectangle(0, 0, 10, 100)}),
			nil},
		"faces nearly meet": {blank(Pocket{Depth: 5, Outline: Rectangle(0, 10, 300, 20)}, Pocket{Face: Outside, Depth: 6, Outline: Rectangle(0, 0, 10, 100)}), []Rule{RuleThinWeb}},
		"side by side":      {blank(Pocket{Depth: 7, Outline: Rectangle(0, 10, 300, 20)}, Pocket{Face: Outside, Depth: 7, Outline: Rectangle(0, 20, 300, 30)}), nil},
		"over a hole": {Panel{Outline: Rectangle(0, 0, 300, 100), Thickness: 12, Holes: []Loop{Rectangle(40, 40, 60, 60)},
			Pockets: []Pocket{{Depth: 7, Outline: Rectangle(0, 45, 300, 55)}}}, nil},
		"in a through cut": {blank(Pocket{Kind: Cutout, Depth: 12, Outline: Rectangle(6, 6, 50, 50)}, Pocket{Face: Outside, Depth: 5, Outline: Rectangle(6, 6, 50, 50)}), nil},
	} {
		t.Run(name, func(t *testing.T) {
			got := c.panel.Check()
			if len(got) != len(c.want) {
				t.Fatalf("rules %+v, want %v", got, c.want)
			}
			for i, v := range got {
				if v.Rule != c.want[i] || v.Warning != (v.Rule == RuleThinWeb) {
					t.Errorf("%d: %s (warning %t), want %s", i, v.Rule, v.Warning, c.want[i])
				}
			}
		})
	}
}

// TestDescribe: messages name the pocket and its face, the place and the value,
// in the unit that is asked for.
func TestDescribe(t *testing.T) {
	p := Panel{Outline: Rectangle(0, 0, 254, 101.6), Thickness: 12.7, Pockets: []Pocket{
		{Kind: Groove, Depth: 11.1125, Outline: Rectangle(0, 25.4, 254, 50.8)}, {Kind: Rabbet, Face: Outside, Depth: 6.35, Outline: Rectangle(0, 0, 25.4, 101.6)}}}
	var got []string
	for _, v := range p.Check() {
		got = append(got, v.Diagnosis(p).Fact.In(Inch))
	}
	want := []string{
		"the groove on the inside face and the rabbet on the outside face break through the panel near x 0.667 in, y 1.667 in",
		"the groove on the inside face leaves only 0.063 in of the panel near x 7 in, y 1.667 in",
	}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// TestCheckMeasures: the web is measured where faces' deepest pockets meet.
func TestCheckMeasures(t *testing.T) {
	p := Panel{Outline: Rectangle(0, 0, 300, 100), Thickness: 12, Pockets: []Pocket{
		{Depth: 3, Outline: Rectangle(0, 10, 300, 60)}, {Depth: 5, Outline: Rectangle(100, 10, 200, 60)}, {Face: Outside, Depth: 5.5, Outline: Rectangle(150, 0, 180, 100)}}}
	got := p.Check()
	if len(got) != 1 || got[0].Pocket != 1 || got[0].Other != 2 || got[0].Value != 1.5 || got[0].At.X < 150 || got[0].At.X > 180 {
		t.Errorf("%+v", got)
	}
}

// TestPlacement: an end-for-end axis system stays right-handed.
func TestPlacement(t *testing.T) {
	for _, p := range []Placement{{X: Right, Y: Up}, {X: Back, Y: Up}, {X: Right.Scale(-1), Y: Up}, {X: Back.Scale(-1), Y: Up}, {X: Right, Y: Back}} {
		if n := p.Normal(); n.Dot(n) != 1 || n.Dot(p.X) != 0 || n.Dot(p.Y) != 0 || p.X.Cross(p.Y).Dot(n) != 1 {
			t.Errorf("%+v has the normal %v", p, n)
		}
	}
	front := Placement{Origin: Vec3{460, 0, 0}, X: Right.Scale(-1), Y: Up}
	if got := front.Apply(Vec3{10, 20, 12}); got != (Vec3{450, 12, 20}) {
		t.Errorf("a front's inside faces the back: %v", got)
	}
}
