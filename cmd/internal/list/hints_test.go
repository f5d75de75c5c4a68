package list

import (
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestHintsHold follows what is said of the mistakes of a list: the text that a hint asks for,
// written as it says, is read without a word.
func TestHintsHold(t *testing.T) {
	const heads, sheet, part = "kind,name,length,width,count\n", "sheet,birch,2440,1220\n", "part,side,500,140,12\n"
	for _, c := range []struct{ wrong, says, hint, followed string }{
		{heads + part, "there is no sheet", "`sheet,birch,2440,1220`", heads + part + sheet},
		{heads + sheet, "there are no parts", "`part,side,500,140,12`", heads + sheet + part},
		{"kind;name\n", "semicolons", "write commas between values", heads + sheet + part},
		{"kind,name,long,width\n", `"long" is no column heading`, "length", heads + sheet + part},
		{"kind,name,name,length,width\n", "stands twice", "delete one", "kind,name,length,width\n" + sheet + "part,side,500,140\n"},
		{"kind,count\n", "no column name", "`name,length,width`", "name,length,width,kind\nbirch,2440,1220,sheet\nside,500,140,part\n"},
		{heads + sheet + "part,side,\"500,5\",140,12\n", "is no length", "500", heads + sheet + part},
		{heads + sheet + "part,side,500,5,140,12\n", "6 values under 5 column headings", "decimal points", heads + sheet + "part,side,500.5,140,12\n"},
		{heads + sheet + "part,side,0,140,12\n", "out of range", "from 1 mm", heads + sheet + "part,side,1,140,12\n"},
		{heads + sheet + "part,a \"wide\" side,500,140,12\n", "near character", "two for each", heads + sheet + "part,\"a \"\"wide\"\" side\",500,140,12\n"},
		{heads + sheet + "part,\"side,500,140,12\n\n", "are not closed", "quotes about the whole", heads + sheet + "part,\"side\",500,140,12\n\n"},
		{heads + sheet + "part,side,500,140,0\n", "count of 0", "delete the line", heads + sheet + part},
		{heads + sheet + "part,side,500,140,-1\n", "out of range", "a whole number", heads + sheet + "part,side,500,140,1\n"},
		{heads + sheet + "board,side,500,140,12\n", "is no kind", "part, sheet or offcut", heads + sheet + part},
		{"kind,name,length,width,turn\nsheet,birch,2440,1220,\npart,side,500,140,maybe\n", "neither yes nor no", "write yes", "kind,name,length,width,turn\nsheet,birch,2440,1220,\npart,side,500,140,yes\n"},
		{"kind,name,length,width,turn\nsheet,birch,2440,1220,yes\npart,side,500,140,\n", "has \"yes\" for turn", "leave it out", "kind,name,length,width,turn\nsheet,birch,2440,1220,\npart,side,500,140,\n"},
		{"kind,name,length,width,price\nsheet,birch,2440,1220,dear\npart,side,500,140,\n", "price", "58.50", "kind,name,length,width,price\nsheet,birch,2440,1220,58.50\npart,side,500,140,\n"},
		{"kind,name,length,width,price\nsheet,birch,2440,1220,\npart,side,500,140,2\n", "the part has a price", "leave it out", "kind,name,length,width,price\nsheet,birch,2440,1220,\npart,side,500,140,\n"},
		{"kind,name,length,width,batch\nsheet,birch,2440,1220,\npart,side,500,140,a\n", "the part has a batch", "a name under match", "kind,name,length,width,batch,match\nsheet,birch,2440,1220,,\npart,side,500,140,,a\n"},
		{heads + sheet + "part," + strings.Repeat("a", maxName+1) + ",500,140,12\n", "characters", "write up to", heads + sheet + "part," + strings.Repeat("a", maxName) + ",500,140,12\n"},
	} {
		_, err := Read("list.csv", strings.NewReader(c.wrong), geom.Millimeter)
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), c.hint) {
			t.Errorf("%q: %v, not %q with %q", c.wrong, err, c.says, c.hint)
		}
		if _, err := Read("list.csv", strings.NewReader(c.followed), geom.Millimeter); err != nil {
			t.Errorf("%q, as %q asks for: %v", c.followed, c.hint, err)
		}
	}
}
