package present

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// TemplateTable is the plates with the parts that they serve: the first few, and all.
func TemplateTable(list []record.Template, u geom.Unit) Table {
	unit := u.String()
	t := NewTable(Words("plate"), Numbers("pieces"), In("length", unit), In("width", unit), Words("serves"),
		Words("parts"))
	for _, p := range list {
		t.Add(p.Name, fmt.Sprint(p.Count), caliper(p.Size[0], u), caliper(p.Size[1], u), strings.Join(p.Parts, ", "),
			strings.Join(p.Parts, ", "))
	}
	return t
}

// plates prints the templates of a job.
func plates(out *Printed, r record.Kept, u geom.Unit) {
	if len(r.Templates) == 0 {
		return
	}
	fmt.Fprintf(out, "templates of %s, in the folder templates; a DXF of each as drawn", r.Templates[0].Stock)
	if k := r.Templates[0].Kerf; k > 0 {
		fmt.Fprintf(out, " and with a kerf of %s %s made up for", caliper(k, u), u)
	}
	fmt.Fprintln(out)
	TemplateTable(r.Templates, u).Pick("plate", "pieces", "length", "width", "serves").Print(out, "")
	fmt.Fprintln(out)
}
