package firstbox

import (
	"io"
	"time"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/list"
	"drawerwright/geom"
	"drawerwright/geom/shoplog"
)

// Fields are the rows of a form as a table to fill in has them.
func (f Form) Fields() []list.Field {
	fields := make([]list.Field, len(f.Rows))
	for i, r := range f.Rows {
		right, least, most := r.Texts()
		fields[i] = list.Field{Drawer: f.Drawer(), What: r.What, Right: right, Least: least, Most: most,
			Meant: r.Target.MM(), Near: r.near}
	}
	return fields
}

// Empty is a table of forms to fill in.
func Empty(forms []Form) []byte {
	var fields []list.Field
	for _, f := range forms {
		fields = append(fields, f.Fields()...)
	}
	return list.WriteForm(fields)
}

// Read judges the first boxes of a table that was filled in: one for each drawer of which something was read, in the
// order of the table.
func Read(b batch.Batch, file string, from io.Reader) ([]Record, error) {
	forms := make(map[string]*Form)
	of := func(drawer string) ([]list.Field, bool) {
		f, known := forms[drawer]
		for i, d := range b.Drawers {
			if !known && d.Spec.Name == drawer {
				made := Of(b, i)
				f, known = &made, true
				forms[drawer] = f
			}
		}
		if !known {
			return nil, false
		}
		return f.Fields(), true
	}
	filled, err := list.ReadForm(file, from, b.Units, of)
	if err != nil {
		return nil, err
	}
	readings, order := make(map[string][]Reading), []string{}
	for _, one := range filled {
		if _, known := readings[one.Drawer]; !known {
			order = append(order, one.Drawer)
		}
		readings[one.Drawer] = append(readings[one.Drawer], Reading{one.Field, one.MM})
	}
	var records []Record
	for _, drawer := range order {
		records = append(records, forms[drawer].Judge(b, readings[drawer]))
	}
	return records, nil
}

// Log adds first boxes to a log, all that can go there or none, and says what it did.
func Log(records []Record, day time.Time, log list.LogFile, u geom.Unit) (said []string, err error) {
	var all []shoplog.Cut
	for _, r := range records {
		cuts, why := r.logged(day)
		if why != "" {
			said = append(said, r.Drawer+": "+why)
			continue
		}
		all = append(all, cuts...)
	}
	if len(all) == 0 {
		return said, nil
	}
	log.Once = true
	added, err := log.Add(all, u)
	return append(said, added), err
}
