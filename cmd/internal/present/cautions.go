package present

import (
	"fmt"
	"slices"

	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// Caution is what can hurt at a cut, with the public source that says so, by its
// place, from 1, among the sheet's; 0 for common practice without one.
type Caution struct {
	Text   string `json:"text"`
	Source int    `json:"source"`
}

// first stands before everything else.
const first = "The rules of the place where you work and the manuals of your machines come first; this sheet knows " +
	"neither. Work on machines that you were trained on."

// general are the cautions for every machine.
var general = []Caution{
	{"Unplug or isolate the machine before a cutter is changed or a height is measured with a hand near it.", 0},
	{"Wear eye and hearing protection; no gloves, loose sleeves or rings near a turning cutter.", 0},
	{"Extract dust where it is made: the dust of hardwood, and of the glue in boards, harms the nose and the " +
		"lungs.", 5},
}

// atHand are those where nothing but a drill turns.
var atHand = []Caution{
	{"Wear eye protection; no gloves, loose sleeves or rings near a drill that turns.", 0},
	general[2],
}

// TemplateCautions are those for cutting and using templates.
var TemplateCautions = []Caution{
	{"A laser is watched while it cuts, with its cover closed and its extraction on: hardboard burns, and its smoke " +
		"harms. The maker's manual and local rules come first.", 0},
	{"Small plates are held by their sheet until they are cut out; do not reach for them while the cutter turns.", 0},
	{"A knife is drawn away from the hand that holds the template; clamp the template where both hands are needed.", 0},
}

// ofMachine are the cautions for one kind of machine.
var ofMachine = map[joinery.CutterKind][]Caution{
	joinery.Saw: {
		{"Look in the saw's manual whether it takes a dado stack at all: a short arbor or a longer run-down can " +
			"forbid it. For grooves a guarded router or shaper suits better.", 3},
		{"Where the usual guard cannot stay on, featherboards or a jig take its place and are used for every cut; " +
			"afterward guard and riving knife go back at once.", 1},
		{"Keep hands out of the line of the cut and away from the cutter; push the last stretch and small pieces " +
			"with a push stick or block.", 2},
		{"Wait until the cutter has stopped before anything is cleared away.", 2},
	},
	joinery.RouterTable: {
		{"Feed against the turning of the bit: along the fence in front of the bit, from right to left. Never push " +
			"a part between bit and fence.", 0},
		{"Guard the bit; featherboards hold the part down and against the fence, a push block moves it.", 1},
		{"Keep the bit's speed within what its maker allows; take deep cuts in passes.", 0},
	},
	joinery.Router: {
		{"Keep the cutting area enclosed or keep clear of it, with the doors' interlock in order and dust extracted " +
			"at the bit.", 4},
		{"Clamp each part or hold it by vacuum and tabs; know where clamps and screws are before the bit does.", 0},
		{"Hold small parts in a carrier or cut them out by hand along an onion skin.", 0},
	},
	joinery.Hand: {
		{"Clamp the part or hold it against a bench hook or stops; both hands stay behind the cutting edge.", 0},
		{"Sharp irons and chisels need less force and slip less; cut away from the body, and lay tools down where " +
			"nobody reaches into them.", 0},
	},
}

// settingCautions are said once more where a machine is set. A cutter wider than a blade is a stack, for which an arbor
// can be too short.
func (m maker) settingCautions(s setup.Setting) []Caution {
	const widestBlade = 4.0 // mm: saw blades cut 2 to 3.5 (common practice, no source)
	switch m.Cutter.Kind {
	case joinery.Saw:
		list := []Caution{{"Unplug first. Where guard and riving knife come off, featherboards or a jig cover the " +
			"cutter; both go back at once.", 1}}
		if s.Cutter > widestBlade {
			list = append(list, Caution{fmt.Sprintf("Look in this saw's manual whether it takes a cutter %s wide, "+
				"and whether its arbor is long enough for it.", m.text(s.Cutter)), 0})
		}
		return append(list, measured(s)...)
	case joinery.RouterTable:
		return []Caution{{"Unplug first. Guard and featherboards are in place before the bit turns.", 0}}
	}
	return nil
}

// measured says from where a saw's setting is measured.
func measured(s setup.Setting) []Caution {
	said := "Measure the height at the tip of the highest tooth, with that tooth at the top."
	if slices.ContainsFunc(s.Cuts, func(c setup.Cut) bool { return c.Holding == setup.OnEnd }) {
		said += " Put the tall fence on first, measure the distance from its face, and leave it on for all cuts."
	}
	return []Caution{{said, 0}}
}

// stopped are those for a groove between two stops.
var stopped = []Caution{
	{"Clamp both stops to the fence; hold the part against the first one, lower it on to the turning bit with both " +
		"hands away from it, feed to the second, and let the bit stop before the part is lifted.", 0},
}

// ofWork are the cautions where a cut is described.
var ofWork = map[setup.Holding][]Caution{
	setup.Across: {
		{"The fence is a stop, the miter gauge or sliding table feeds: right only because nothing is cut off; never " +
			"both for a cut that goes through.", 0},
		{"No sled with a floor: it lifts the part, and cannot pass a near fence.", 0},
		{"A backing board between part and gauge keeps its trailing edge whole. Let the cutter stop before the part " +
			"is lifted.", 0},
		{"A throat plate that closes round the cutter supports the part beside it.", 0},
	},
	setup.Along: {
		{"Featherboards on the infeed side, before the cutter, and above it; none beside or behind it. A push block, " +
			"never the bare hand, goes past the cutter.", 1},
	},
	setup.AtEnd: {
		{"Bury the cutter in a sacrificial fence, or have it touch one, only with the machine's own fence clear of " +
			"it; raise it into the wood slowly, or cut the recess first.", 0},
		{"A backing board between the part and the miter gauge or sliding table keeps it from turning and its " +
			"trailing edge from breaking out. No sled with a floor: it lifts the part.", 0},
	},
	setup.AtEdge: {
		{"Bury the cutter in a sacrificial fence only with the machine's own fence clear of it; featherboards hold " +
			"the part down and against it, a push block moves it.", 1},
	},
	setup.OnEnd: {
		{"A tall fence, and a carriage or backing board clamped to the part, keep it upright and its far edge whole; " +
			"never the hand alone.", 1},
		{"A throat plate closes round the cutter, or the end drops in.", 0},
		{"The waste lies away from the fence, so that nothing is trapped between the two; no stop stands where waste " +
			"would jam.", 0},
	},
	setup.Fingers: {
		{"Clamp the part to the jig, and keep hands away from where the cutter comes out behind it.", 1},
	},
	setup.Knifed: {
		{"Chisel from both edges toward the middle, the part clamped, both hands behind the edge.", 0},
	},
	setup.Shoulder: {
		{"Saw against a bench hook or with the part in the vice; start with light strokes beside the knife line, " +
			"the thumb above the teeth.", 0},
	},
	setup.Plowed: {
		{"Clamp the part so that no clamp stands in the way of the plane's fence; knuckles keep clear of the " +
			"bench.", 0},
	},
	setup.Chopped: {
		{"Chop with the part clamped on the bench, not held in the hand; never pry toward the other hand.", 0},
	},
	setup.HandSawn: {
		{"Hold the part upright and low in the vice, so that it does not shake; pare from both faces, with the " +
			"hands behind the edge.", 0},
	},
	setup.Sawn: {
		{"Clamp the part for a jigsaw or a hand saw; at a band saw set the guide just over the part and keep " +
			"fingers out of the line of the blade.", 0},
	},
	setup.Opened: {
		{"Clamp the part over scrap; saw with the part clamped again, not held on the knee.", 0},
	},
	setup.Mortised: {
		{"Clamp the board and the jig so that both hands are on the router; let its bit stop before it is lifted or " +
			"laid down, and unplug it before the bit or the depth is changed.", 0},
		{"Move the router so that the turning bit draws its fence against the board. At a horizontal mortiser clamp " +
			"the board down and keep both hands at the levers.", 0},
	},
	setup.Bored: {
		{"Clamp the part tight on scrap, or it turns with the bit and its far face breaks out; bits that break " +
			"through grab. No gloves at a drill press.", 0},
	},
}
