package firstbox

import (
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// Safely is said where a first box is to be measured.
const Safely = "Let the cutter stop, and take the piece away from the machine before you measure it; unplug the " +
	"machine before you measure or move anything at its cutter."

// Head answers whether a first box is right.
func (r Record) Head() present.Line {
	of := "First box of " + r.Drawer + ": "
	var out, left []string
	for _, j := range r.Rows {
		switch {
		case !j.Read:
			left = append(left, j.What)
		case !j.isRight():
			out = append(out, j.What)
		}
	}
	switch r.Verdict {
	case Right:
		return present.Line{Level: present.Good, Text: of + "it is right; leave all as it is, and cut the rest."}
	case Open:
		return present.Line{Text: fmt.Sprintf("%snothing is out of its limits so far; of %d readings these are still "+
			"to be taken: %s.", of, len(r.Rows), words.Some(left))}
	}
	return present.Line{Level: present.Bad, Text: fmt.Sprintf("%sit is not right, cut no other: %s out of limits: %s.", of,
		words.Count(len(out), "reading is", "readings are"), words.Some(out))}
}

// Print prints first boxes for the bench: what to do, and every reading beside its limits.
func Print(out *present.Printed, records []Record, u geom.Unit) {
	for i, r := range records {
		if i > 0 {
			fmt.Fprintln(out)
		}
		if r.Verdict == Out {
			r.toDo(out, u)
			fmt.Fprintln(out)
		}
		t := present.NewTable(present.Words("first box of "+r.Drawer), present.In("reads", u.String()),
			present.Numbers("right"), present.Words("verdict"))
		for _, j := range r.Rows {
			_, least, most := j.Texts()
			reads := ""
			if j.Read {
				reads = j.reads(u)
			}
			t.Add(j.What, reads, words.To(least, most), j.Verdict)
			t.Rows[len(t.Rows)-1][3].Level = j.Level()
		}
		t.Print(out, "")
	}
}

// Level is how a verdict is to be seen.
func (j Judged) Level() present.Level {
	switch {
	case j.isRight():
		return present.Good
	case j.Read:
		return present.Bad
	}
	return ""
}

// ToDo is what to do about readings that are out, as a printer would have it; empty where there are none.
func (r Record) ToDo(u geom.Unit) string {
	var out present.Printed
	if r.Verdict == Out {
		r.toDo(&out, u)
	}
	return out.String()
}

// toDo says what to do about readings that are out, the settings first.
func (r Record) toDo(out *present.Printed, u geom.Unit) {
	out.Paragraph(Safely)
	if r.Adjust != nil {
		present.PrintMoves(out, *r.Adjust, u)
	}
	if len(r.Do) > 0 {
		fmt.Fprintln(out, map[bool]string{true: "what to do beside that", false: "what to do"}[r.Adjust != nil])
	}
	for _, do := range r.Do {
		fmt.Fprintln(out, "  "+do)
	}
}
