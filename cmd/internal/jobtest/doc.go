// Package jobtest draws random job files for tests: whole texts, as a shop would write
// them, of which most can be built. [Unfolded] is what they print, to search. Only tests import it.
//
// What it covers:
//   - files in mm and in in, with lengths as decimals, fractions and with a unit of their own;
//   - machines: see [Machines]; a saw or router table may have another cutter for grooves, a
//     CNC router has one bit, or several with reach and flutes;
//   - corners: see [Corners], each with its own entries (fasteners, finger-width, setback);
//   - bottoms: see [Bottoms]; raised grooves; slack, plays and glue room of the shop's own;
//   - drawers by outside size (the slide is then [Outside]) and in openings on each of
//     [Slides], built-in or as a slide of the shop's own: rows as a number or a list,
//     graduation, gaps, reveals, overlays, box heights, line boring, face frames, diagonals,
//     room behind, drawer fronts with knobs and handles;
//   - stocks with one reading or several, a tolerance, sheets of one size or more, counts,
//     prices, grain, material, solid wood with a climate, banding, fronts that match;
//   - other stocks for front and back, dividers, rails of folders or an insert, pulls, loads, counts, spares, spacers;
//   - limits, accuracy, router options, dxf options, paper, sheets, marking templates.
//
// Not covered: slides-file (it needs a second file), names beyond plain letters, densities
// and stiffnesses of the shop's own, and files with mistakes of writing: the tests of
// package job have those.
package jobtest

import (
	"math/rand/v2"
	"strings"

	"pgregory.net/rapid"
)

// Outside stands for a drawer by its outside size, in no opening.
const Outside = "outside"

// The words that a drawing chooses from, as the job file has them.
var (
	Units    = []string{"mm", "in"}
	Machines = []string{"saw", "router-table", "router", "hand"}
	Corners  = []string{"dado-rabbet", "double-rabbet", "rabbet", "butt", "box-joint", Housed, fronted}
	Bottoms  = []string{"auto", "grooved-in", "flush", "slide-in", "fielded", "applied", "cleats"}
	Slides   = []string{Outside, "side-mount", "undermount", "center-mount", "wooden-runner", "none"}
)

// Housed is a back in dados of the sides, behind any of the other corners.
const Housed = "back-joint: dado"

// Want holds a drawing to some words; an empty one leaves it free.
type Want struct{ Units, Machine, Corner, Bottom, Slide string }

// fronted is drawn for some of those that are "rabbet", the corner of its back.
const fronted = "rabbeted-front"

// tailed is drawn for some of those that are "box-joint" by hand; no machine cuts it, nor a list asks for it.
const tailed = "dovetail"

// Job is a job file as it was drawn. Corners, Bottoms and Slides are those of its
// drawers' entries, in their order; a housed back comes as one corner more.
type Job struct {
	Text                     string
	Units, Machine           string
	Corners, Bottoms, Slides []string
}

// Draw draws a job file with rapid, which makes failing ones smaller.
func Draw(t *rapid.T, want Want) Job {
	return draw(func(low, high int, name string) int { return rapid.IntRange(low, high).Draw(t, name) }, want)
}

// Seeded draws the job file of a seed, always the same one.
func Seeded(seed uint64, want Want) Job {
	r := rand.New(rand.NewPCG(seed, 0x6472_6177))
	return draw(func(low, high int, _ string) int { return low + r.IntN(high-low+1) }, want)
}

// Text is the job file of a seed without any wants.
func Text(seed uint64) string { return Seeded(seed, Want{}).Text }

// draw writes the sections in the order of explain's list. Drawers are drawn first,
// since stocks, openings and slides follow from them.
func draw(between func(low, high int, name string) int, want Want) Job {
	d := &drawing{between: between, want: want}
	d.choose()
	d.drawers()
	var b strings.Builder
	for _, section := range []string{d.head(), d.stockSection(), d.machine(), d.joinery(), d.settings(), d.places(), d.entries} {
		b.WriteString(section)
	}
	d.job.Text = b.String()
	return d.job
}
