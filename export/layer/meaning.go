package layer

// Meaning is a word of layers' names and what its layer is for.
type Meaning struct{ Word, Text string }

// Operations are the words of layers that are cut, as {operation} has them, in the order in
// which they are cut unless a job says otherwise.
var Operations = []Meaning{
	{"register", "holes to put the part or sheet down on when it is turned over: drilled right through, and on into the spoilboard"},
	{"drill", "holes: for screws, dowels, knobs, handles and hooks"},
	{"mortise", "a blind slot with round ends, for a loose tenon: clear all inside the line"},
	{"dado", "a channel across the grain: clear all inside the line"},
	{"groove", "a channel along the grain: clear all inside the line"},
	{"rabbet", "a step along an edge: clear all inside the line"},
	{"flank", "the leaning wall of a dovetail's pin, to be sawn and pared by hand: no bit cuts it"},
	{"engrave", "the number of a part, as open lines for the middle of the bit"},
	{"cutout", "an opening right through: clear all inside the line, so that no loose piece is left under the bit"},
	{"profile", "the outline of a part: cut outside the line, last of all; with tabs only down to their height"},
	{"slot", "slots beside the outline between its tabs, right through: clear all inside the line"},
}

// Idle are the layers that are not cut.
var Idle = []Meaning{
	{Label, "words: part, how many, the code of the job, size, face, unit"},
	{Blank, "the piece that a part is cut from, a mark at one of its corners, pins, and areas to keep out of: to line up with"},
	{Outline, "the outline of parts where they are not cut out from this face: cutting it would free them too early"},
	{Scale, "a square of 100 mm, or 4 in: measure it in your program before you cut"},
	{Sheet, "the sheet that parts are cut from"},
	{Tabs, "where tabs belong, for a program that makes its own"},
	{"0", "nothing: every DXF file has it"},
}
