package present

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
)

// BlankNotes say which parts of some groups are sawn and grooved as one size and one board,
// and what each gets afterwards.
func BlankNotes(groups []batch.Group, u geom.Unit) (list []string) {
	for _, b := range batch.Blanks(groups) {
		p := b.Groups[0].Parts[0].Panel
		var gets []string
		for _, g := range b.Groups {
			names := make([]string, len(g.Parts))
			for i, q := range g.Parts {
				names[i] = q.Name
			}
			then := batch.Later(g.Parts[0].Panel)
			switch {
			case then == "":
				then = "stays as it is"
				if g.Quantity > 1 {
					then = "stay as they are"
				}
			case g.Quantity > 1:
				then = "get " + then + " each"
			default:
				then = "gets " + then
			}
			gets = append(gets, fmt.Sprintf("%d (%s) %s", g.Quantity, words.Some(names), then))
		}
		list = append(list, fmt.Sprintf("%s, %s x %s %s, with the same cuts: %s", words.Count(b.Quantity, "blank", "blanks"),
			geom.LengthOf(p.Length()).Measured(u), geom.LengthOf(p.Width()).Measured(u), u, strings.Join(gets, "; ")))
	}
	return list
}
