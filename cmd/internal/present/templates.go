package present

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// plates prints the templates of a job.
func plates(out *bytes.Buffer, r record.Report, u geom.Unit) {
	if len(r.Templates) == 0 {
		return
	}
	var rows [][]string
	for _, t := range r.Templates {
		rows = append(rows, []string{t.Name, fmt.Sprint(t.Count), caliper(t.Size[0], u), caliper(t.Size[1], u),
			words.Some(t.Parts)})
	}
	fmt.Fprintf(out, "templates of %s, in the folder templates; a DXF of each as drawn", r.Templates[0].Stock)
	if k := r.Templates[0].Kerf; k > 0 {
		fmt.Fprintf(out, " and with a kerf of %s %s made up for", caliper(k, u), u)
	}
	fmt.Fprintln(out)
	table(out, []string{"plate", ">pieces", ">length " + u.String(), ">width " + u.String(), "serves"}, rows)
	fmt.Fprintln(out)
}
