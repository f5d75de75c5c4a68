package present

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/proof"
)

// drawings prints the legend of a router's job: for each file, in the order of cutting, its layers,
// how deep they go and with which bit; and which parts have to be turned over.
func drawings(out *Printed, r record.Kept, u geom.Unit) {
	routed := func(d record.Drawer) bool { return joinery.CutterKind(d.Machine).FollowsDrawing() }
	if !slices.ContainsFunc(r.Drawers, routed) {
		return
	}
	fmt.Fprintln(out, "drawings: each file's layers in the order of cutting, and what is set for them")
	fmt.Fprintln(out, HowCut())
	file := ""
	t := NewTable(Words(""), Words(""), Words(""), Words(""))
	flush := func() {
		if file != "" {
			fmt.Fprintln(out, file)
			t.Print(out, "  ")
		}
		t.Rows = nil
	}
	for _, l := range r.Layers.All() {
		if l.File != file {
			flush()
			file = l.File
		}
		in := ""
		if l.BitFile != "" {
			in = "in " + path.Base(l.BitFile)
		}
		t.Add(append(layerSaid(l, u), in)...)
	}
	flush()
	if len(r.IdleBits) > 0 {
		var idle []string
		for _, b := range r.IdleBits {
			idle = append(idle, bitText(b, u))
		}
		fmt.Fprintf(out, "\nbits that cut nothing in this job: %s\n", strings.Join(idle, "; "))
	}
	turned(out, r, u)
	fmt.Fprintln(out)
}

// layerSaid is what an operator takes of a layer: its name, what is set for it, and its bit.
func layerSaid(l record.Layer, u geom.Unit) []string {
	return []string{l.Layer, setInWords(l.ToSet, l.Stated == "through", u), bitText(l.Cutter(), u)}
}

// bitText names a bit with all that is known of it; nothing where a saw cuts.
func bitText(b record.Bit, u geom.Unit) string {
	if b.Diameter == 0 {
		return ""
	}
	d := of(b.Diameter).Text(u)
	bit := d + " bit"
	if b.Name != d {
		bit += " " + b.Name
	}
	if b.Tool > 0 {
		bit += fmt.Sprintf(", tool %d", b.Tool)
	}
	if b.Flutes > 0 {
		bit += ", " + words.Count(b.Flutes, "flute", "flutes")
	}
	return bit
}

// turned lists the parts to turn over by what an error in turning does.
func turned(out *Printed, r record.Kept, u geom.Unit) {
	var words []string
	parts := make(map[string][]string)
	for _, f := range r.Faces.All() {
		if f.Flip == nil {
			continue
		}
		if _, known := parts[f.Flip.Text]; !known {
			words = append(words, f.Flip.Text)
		}
		blank := fmt.Sprintf("%s from a blank of %s or more", f.Part, blankSize(f.Blank, u))
		parts[f.Flip.Text] = append(parts[f.Flip.Text], blank)
	}
	if len(words) == 0 {
		fmt.Fprintln(out, "\nno part has to be turned over on the router")
		return
	}
	out.WriteString("\n")
	out.Paragraph("to turn over: cut the outside drawing first, with REGISTER; put pins into those holes; turn the part " +
		"over end for end; keep the zero after turning; cut the inside drawing, whose outline cuts it out")
	for _, w := range words {
		for _, p := range parts[w] {
			fmt.Fprintf(out, "  %s\n", p)
		}
		for _, clause := range strings.Split(w, "; ") {
			fmt.Fprintf(out, "    %s\n", clause)
		}
	}
}

// proofs prints what the drawings, cut virtually, make of each drawer.
func proofs(out *Printed, r record.Kept, u geom.Unit) {
	if r.Proof.Len() == 0 {
		return
	}
	ProofText(out, r.Proof.Slice(), u)
	CheckedText(out, r.Checked)
	fmt.Fprintln(out)
}

// Unproven prints why a build was not written.
func Unproven(out *Printed, proofs []record.Proof, checked []record.Checked, u geom.Unit) {
	if len(proofs) > 0 {
		ProofText(out, proofs, u)
	}
	faults(out, checked)
}

// ProofHead is the answer of a proof: on the boxes as the files are now, and on whether these are as they were built.
func ProofHead(proofs []record.Proof, checked []record.Checked) Line {
	since, bad, beyond := notAsBuilt(checked), 0, 0
	for _, p := range proofs {
		if !p.Cuttable() {
			return Line{Bad, fmt.Sprintf("Not proven: %s: %s.%s", p.Drawer, p.Verdict, since)}
		}
		if p.Verdict == record.GoesBut {
			beyond++
		}
	}
	for _, c := range checked {
		if len(c.Faults) > 0 && c.Kind != record.CheckedFolder {
			bad++
		}
	}
	if bad > 0 {
		return Line{Bad, "Not proven: " + words.Count(bad, "file disagrees", "files disagree") +
			" with the drawings or the report." + since}
	}
	boxes := words.Count(len(proofs), "drawer goes", "drawers go") + " together as drawn"
	level := Good
	if beyond > 0 {
		level = Bad
		boxes += fmt.Sprintf(", %d of them out of limits", beyond)
	}
	if since != "" {
		return Line{Bad, "Not as built." + since + " As the files are now " + boxes + "; all others agree."}
	}
	return Line{level, "Proven: " + boxes + "; all other files agree, and are as they were built."}
}

// notAsBuilt says which files are no longer as they were built, with a blank before it; empty where all are.
func notAsBuilt(checked []record.Checked) (said string) {
	for _, w := range []struct{ code, what string }{
		{record.FaultUnlisted, "Nothing says what was built: see"},
		{record.FaultChanged, "Changed since it was built:"},
		{record.FaultAdded, "Not of the build:"},
		{record.FaultLost, "Lost since it was built:"},
	} {
		var names []string
		for _, c := range checked {
			for _, f := range c.Faults {
				if f.Code == w.code {
					names = append(names, f.File)
				}
			}
		}
		if len(names) > 0 {
			said += " " + w.what + " " + words.Some(names) + "."
		}
	}
	return said
}

// CheckedText prints what else was read back: faults first, then what holds the parts of
// each sheet, then how many of the others agree.
func CheckedText(out *Printed, list []record.Checked) {
	faults(out, list)
	count := make(map[string]int)
	for _, c := range list {
		if len(c.Faults) > 0 {
			continue
		}
		if c.Sheet == nil {
			count[c.Kind]++
			continue
		}
		fmt.Fprintf(out, "sheet %s: %s\n", c.Name, onSheet(*c.Sheet))
	}
	for _, w := range []struct{ what, one, many, is string }{
		{record.CheckedSolid, "solid", "solids", "what the job asks for of a part"},
		{record.CheckedBox, "box", "boxes", "the solids of their parts in their places"},
		{record.CheckedScene, "preview", "previews", "the parts in their places"},
		{record.CheckedCabinet, "drawing of a cabinet", "drawings of cabinets", "the slide lines of the report"},
		{record.CheckedTemplate, "template", "templates", "the marks and edges of the report"},
		{record.CheckedPictures, "set of pictures", "sets of pictures",
			"their sizes in millimeters, whole"},
		{record.CheckedTable, "table", "tables", "the numbers of the report"},
		{record.CheckedFolder, "folder", "folders", "every file as it was built"},
		{record.CheckedDocument, "document", "documents", "the numbers, verdicts and warnings of the report"},
	} {
		if n := count[w.what]; n > 0 {
			fmt.Fprintf(out, "read back: %s, with %s\n", words.Count(n, w.one, w.many), w.is)
		}
	}
}

func faults(out *Printed, list []record.Checked) {
	for _, c := range list {
		for _, f := range c.Faults {
			about := f.Part
			if about == f.File {
				about = ""
			}
			if about != "" {
				about += ": "
			}
			fmt.Fprintf(out, "%s: %s%s\n", f.Place(), about, f.Message)
			if f.Hint != "" {
				fmt.Fprintf(out, "  hint: %s\n", f.Hint)
			}
		}
	}
}

// onSheet says in words how the parts of a sheet are held.
func onSheet(s record.OnSheet) string {
	text := words.Count(s.Parts, "part", "parts") + " cut as by their own drawings"
	if s.HeldByTabs > 0 {
		text += fmt.Sprintf("; %d held by %s or more", s.HeldByTabs, words.Count(s.MinTabs, "bridge", "bridges"))
	}
	if s.HeldByOnionSkin > 0 {
		text += fmt.Sprintf("; %d by an onion skin", s.HeldByOnionSkin)
	}
	if s.HeldAtMarks > 0 {
		text += fmt.Sprintf("; %d with %s or more where the program has to make tabs, on which their hold rests",
			s.HeldAtMarks, words.Count(s.MinMarks, "mark", "marks"))
	}
	if s.Loose > 0 {
		text += fmt.Sprintf("; %d loose when all is cut", s.Loose)
	}
	return text
}

// ProofText prints proofs: faults of files first, then what the boxes do.
func ProofText(out *Printed, proofs []record.Proof, u geom.Unit) {
	unit := u.String()
	fmt.Fprintln(out, "proof: the drawings read back, cut with their bits to the depths of their layers' names, "+
		"and put together")
	for _, p := range proofs {
		for _, f := range p.Faults {
			fmt.Fprintf(out, "%s: %s\n", f.Place(), f.Message)
			if f.Hint != "" {
				fmt.Fprintf(out, "  hint: %s\n", f.Hint)
			}
		}
	}
	joints := NewTable(Words("drawer"), Words("verdict"), In("tongue clearance", unit), Words("side seats on"),
		In("open shoulder", unit), In("recess", unit), In("bottom clearance", unit))
	sizes := NewTable(Words("drawer"), In("width", unit), In("depth", unit), In("height", unit), In("diagonal", unit),
		In("joints let diagonals differ by", unit))
	for _, p := range proofs {
		if p.Width == (record.Range{}) { // there was no box to put together
			joints.Add(p.Drawer, p.Verdict, "-", "-", "-", "-", "-")
			continue
		}
		joints.Add(jointsOf(p, u)...)
		sizes.Add(p.Drawer, span(p.Width, u), span(p.Depth, u), span(p.Height, u), span(p.Diagonal, u), span(p.Rack, u))
	}
	joints.Print(out, "")
	dividers(out, proofs, u)
	inserts(out, proofs, u)
	if len(sizes.Rows) > 0 {
		fmt.Fprintln(out)
		sizes.Print(out, "")
		out.Paragraph(howProven)
	}
	for _, p := range proofs {
		trouble(out, p, u)
	}
}

// howProven says how the tables of a proof are to be read.
const howProven = "Ranges are over the readings. A side that is pushed on stops at the shoulder of box front and back, " +
	"or when the tongue meets the floor of its dado: the shoulder then stays open by that much. Recess: how far " +
	"box front and back stand behind the ends of the sides (where they lap over the sides: the sides' faces before " +
	"their ends); below 0 proud. Diagonals differ by so much only before the glue has set; how far " +
	"apart they may stay in the clamps is what fit says."

// ungrooved are the fits of a bottom that stands in no groove.
var ungrooved = []string{string(joinery.BottomApplied), string(joinery.BottomCleats)}

// dividers prints the dividers of all drawers, if there are any.
func dividers(out *Printed, proofs []record.Proof, u geom.Unit) {
	unit := u.String()
	t := NewTable(Words("drawer"), Words("divider"), Words("stands in"), In("clearance", unit), In("end clearance", unit),
		In("above the bottom", unit))
	for _, p := range proofs {
		for _, d := range p.Dividers {
			t.Add(p.Drawer, d.Name, strings.Join(d.Between[:], ", "), span(d.Clearance, u), span(d.EndClearance, u),
				span(d.Height, u))
		}
	}
	if len(t.Rows) > 0 {
		fmt.Fprintln(out)
		t.Print(out, "")
	}
}

// inserts prints the inserts of all drawers, if there are any.
func inserts(out *Printed, proofs []record.Proof, u geom.Unit) {
	unit := u.String()
	t := NewTable(Words("drawer"), Words("insert"), In("side to side", unit), In("front to back", unit))
	for _, p := range proofs {
		if n := p.Insert; n != nil {
			lifts := "cannot be lifted out"
			if n.Removable {
				lifts = "lifts out"
			}
			t.Add(p.Drawer, lifts, span(n.Clearance[0], u), span(n.Clearance[1], u))
		}
	}
	if len(t.Rows) > 0 {
		fmt.Fprintln(out)
		t.Print(out, "")
	}
}

// span prints a range, or one number where it is none.
func span(v record.Range, u geom.Unit) string {
	return between(v.Min, v.Max, u)
}

// jointsOf is a drawer's row: the tightest tongue, the widest gap, what stands out most.
func jointsOf(p record.Proof, u geom.Unit) []string {
	play, gap, recess := record.Range{}, record.Range{}, record.Range{}
	captured, seats := false, []string{}
	for _, c := range p.Corners {
		if c.Interlocked && (!captured || c.Clearance.Min < play.Min) {
			play, captured = c.Clearance, true
		}
		if c.Seat != "" && !slices.Contains(seats, c.Seat) {
			seats = append(seats, c.Seat)
		}
		if c.ShoulderGap.Max > gap.Max {
			gap = c.ShoulderGap
		}
		stands := c.Recess
		if c.Laps && !c.Fingers { // an end that laps over the sides
			stands = c.Lap
		}
		if max(stands.Max, -stands.Min) > max(recess.Max, -recess.Min) {
			recess = stands
		}
	}
	row := []string{p.Drawer, p.Verdict, "-", strings.Join(seats, ", "), span(gap, u), span(recess, u), "-"}
	if captured {
		row[2] = span(play, u)
	}
	if p.Bottom != nil && !slices.Contains(ungrooved, p.Bottom.BottomFit) {
		row[6] = span(p.Bottom.Clearance, u)
	}
	return row
}

// trouble prints what keeps a box from going together, or from its limits.
func trouble(out *Printed, p record.Proof, u geom.Unit) {
	say := func(format string, args ...any) {
		fmt.Fprintf(out, "%s: "+format+"\n", append([]any{p.Drawer}, args...)...)
	}
	for _, c := range p.Corners {
		if !c.Fits {
			say("the %s does not go into the %s: %s", c.End, c.Side, tooThick(c.Clearance, u))
		}
	}
	if b := p.Bottom; b != nil && len(b.BlockedBy) > 0 {
		say("the bottom cannot be slid in from behind: %s in its way", strings.Join(b.BlockedBy, ", "))
	} else if b != nil && !b.Fits {
		say("the bottom does not go in: %s up and down, %s across the box, %s along it", room(b.Clearance, u),
			room(b.BottomClearance[0], u), room(b.BottomClearance[1], u))
	}
	for _, d := range p.Dividers {
		if !d.Fits {
			say("the %s does not go in: %s in its dados, %s along its length", d.Name, room(d.Clearance, u),
				room(d.EndClearance, u))
		}
	}
	if n := p.Insert; n != nil && !n.Fits {
		say("the insert does not go in: %s across the box, %s along it", room(n.Clearance[0], u),
			room(n.Clearance[1], u))
	}
	for _, c := range p.Crossings {
		if !c.Fits {
			say("%s and %s do not go over each other: %s in their slots", c.A, c.B, room(c.Clearance, u))
		}
	}
	if len(p.FailsWith) > 0 {
		var boards []string
		for _, r := range p.FailsWith {
			boards = append(boards, r.Stock+" "+caliper(r.Thickness, u)+" "+u.String())
		}
		say("does not go together from boards of %s", strings.Join(boards, ", "))
	}
	for _, r := range p.Remarks {
		say("%s", r)
	}
	for _, o := range p.Overlaps {
		say("%s and %s overlap by %s", o.A, o.B, volume(o.Volume, u))
	}
}

// volume writes one given in cubic millimeters.
func volume(mm3 float64, u geom.Unit) string {
	if u == geom.Inch {
		return fmt.Sprintf("%.4f cubic in", mm3/(geom.InchMM*geom.InchMM*geom.InchMM))
	}
	return fmt.Sprintf("%.1f mm3", mm3)
}

// room says how much there is, or lacks.
func room(r record.Range, u geom.Unit) string {
	switch mm := r.Mean.MM(); {
	case r == record.Range{}:
		return "not held"
	case proof.Blocked(mm):
		return "blocked"
	case r.Mean < 0:
		return fmt.Sprintf("%s %s too large", caliper(-r.Mean, u), u)
	}
	return fmt.Sprintf("%s %s of room", caliper(r.Mean, u), u)
}

func tooThick(play record.Range, u geom.Unit) string {
	if play.Mean < 0 {
		return "too thick by " + caliper(-play.Mean, u) + " " + u.String()
	}
	return "their cuts do not meet"
}
