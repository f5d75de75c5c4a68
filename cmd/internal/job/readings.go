package job

import (
	"fmt"

	"drawerwright/geom"
)

// ReadingsOf says of each stock with several readings what they come to, in the unit of the file.
// Nothing is said of a stock with a reading that is no length.
func ReadingsOf(root *Node) map[string]string {
	unit, err := geom.ParseUnit(root.Of("units").textOf())
	if err != nil {
		return nil
	}
	said := make(map[string]string)
	for _, e := range root.Of("stock").entriesOf() {
		list := e.Value.Of("thickness")
		if list == nil || len(list.Items) < 2 {
			continue
		}
		var spread geom.Interval
		var sum float64
		for i, item := range list.Items {
			l, err := geom.ParseLength(item.Text, unit)
			if err != nil {
				sum = -1
				break
			}
			if i == 0 {
				spread = geom.Interval{Min: l.MM(), Max: l.MM()}
			}
			spread.Min, spread.Max, sum = min(spread.Min, l.MM()), max(spread.Max, l.MM()), sum+l.MM()
		}
		if sum > 0 {
			n := len(list.Items)
			said[e.Key] = fmt.Sprintf("%d readings: mean %s %s, spread %s %s", n,
				geom.LengthOf(sum/float64(n)).Fixed(unit), unit, geom.LengthOf(spread.Max-spread.Min).Fixed(unit), unit)
		}
	}
	return said
}
