package joinery

import (
	"math"

	"drawerwright/geom"
)

// FieldInsert is the entry of a [geom.Diagnosis] about an insert.
const FieldInsert geom.Setting = "insert"

// Keys of an insert that remedies write, for short none where it is the clearance to the walls.
const (
	KeyWallClearance     = "wall-clearance"
	KeyContentsClearance = "contents-clearance"
)

// InsertLimits is what an insert may be shorter than the inside of its box, in mm, as the package
// fit checks it: below, it sticks; above, it rattles, and things slip behind it. Common practice,
// no source.
var InsertLimits = geom.Interval{Min: 0.3, Max: 6}

// insert stands strips on the bottom, those across halved from above, those along from below:
// they go into each other, and are lifted out as one.
func (l *layout) insert() {
	n := l.Insert
	if n == nil {
		return
	}
	across, along := l.strip(Across), l.strip(Along)
	if l.shapeless {
		return
	}
	all := []standingDivider{across, along}
	for _, s := range all {
		l.drawer.Parts = append(l.drawer.Parts, Part{Role: InsertRole, Label: string(s.Direction), Stock: n.Stock,
			Panel: l.dividerPanel(s, all), Placements: l.dividerStands(s)})
	}
}

// stripLength is how long the strips of a direction are.
func (l *layout) stripLength(w GrainDirection) float64 {
	return l.lengthFor(w) - l.Insert.WallClearance
}

// strip works out the strips of a direction, and judges them.
func (l *layout) strip(w GrainDirection) standingDivider {
	n := l.Insert
	t := n.Stock.Thickness.Mean
	swells := float64(t * n.Stock.Swelling)
	s := standingDivider{Divider: Divider{Stock: n.Stock, Direction: w}, t: t, length: l.stripLength(w), foot: l.bottomTop(),
		play: l.crossingPlay(l.DadoWidth(t, l.DadoClearance)-t) + swells}
	s.height = l.stripHeight()
	s.at = l.cells(w)
	return s
}

// stripHeight is that of all strips: in no season do they stand out over the walls.
func (l *layout) stripHeight() float64 {
	n := l.Insert
	room := (l.Height - l.dividerFoot()) / (1 + n.Stock.Swelling)
	switch height := n.Height; {
	case l.shapeless:
	case height == 0:
		return room - looseBelow
	case height > room+settle:
		l.fail(geom.Diagnosis{
			Code: "insert-height", Subject: about(FieldInsert, InsertRole),
			Measured: geom.Millimeters(height), Limit: geom.Millimeters(room),
			Fact:     geom.Sentencef("the insert is %s high, and the box has room for %s over its bottom", geom.Millimeters(height), geom.Millimeters(room)),
			Ask:      geom.Sentencef("make it lower, or the box higher"),
			Remedies: []geom.Remedy{l.most(FieldInsert, room).Of("height", 0)},
		})
	}
	return n.Height
}

// cells are the near faces of the strips that stand between the cells of a direction: rows are
// parted by the strips across, columns by those along.
func (l *layout) cells(w GrainDirection) (at []float64) {
	n := l.Insert
	list, what := n.Rows, "row"
	if w == Along {
		list, what = n.Columns, "column"
	}
	if len(list) < 2 {
		l.fail(geom.Diagnosis{
			Code: "insert-cells", Subject: about(FieldInsert, InsertRole),
			Fact: geom.Sentencef("an insert with one %s has no strips that cross, and nothing stands it up", what),
			Ask:  geom.Sentencef("write at least two columns and two rows, or loose dividers"),
		})
		return nil
	}
	sizes, free, measured := make([]float64, len(list)), 0, 0
	left := l.roomFor(w) - float64(float64(len(list)-1)*n.Stock.Thickness.Mean)
	for i, c := range list {
		if c == 0 {
			free++
			continue
		}
		measured++
		sizes[i] = math.Max(minCell, c+n.ContentsClearance)
		left -= sizes[i]
	}
	each := left / float64(max(free, 1))
	least := 0.0
	if free > 0 {
		least = minCell
	}
	if each < least-settle {
		l.failCells(what, float64(max(free, 1))*(least-each), measured)
		return nil
	}
	sum := 0.0
	for i, c := range sizes[:len(sizes)-1] {
		switch {
		case free == 0: // all share what is left
			c += left / float64(len(list))
		case list[i] == 0:
			c = each
		}
		sum += c
		at = append(at, sum)
		sum += n.Stock.Thickness.Mean
	}
	return at
}

// failCells refuses cells that lack some room, with so many that are measured.
func (l *layout) failCells(what string, lack float64, measured int) {
	key, size := "width", l.Width
	if what == "row" {
		key, size = "depth", l.Depth
	}
	var ways []geom.Remedy
	if less := l.Insert.ContentsClearance - lack/math.Max(1, float64(measured)); measured > 0 && less >= 0 {
		ways = append(ways, l.most(FieldInsert, less).Of(KeyContentsClearance, 0))
	}
	ways = append(ways, l.least(SettingOutside, size+lack).Of(key, 0))
	l.fail(geom.Diagnosis{
		Code: "insert-room", Subject: about(FieldInsert, InsertRole),
		Measured: geom.Millimeters(size), Limit: geom.Millimeters(size + lack),
		Fact: geom.Sentencef("the %ss of the insert need %s more than the box has: each is at least %s, a measured one as large as what lies in it with %s of clearance, and strips stand between them",
			what, geom.Millimeters(lack), geom.Millimeters(minCell), geom.Millimeters(l.Insert.ContentsClearance)),
		Ask:      geom.Sentencef("write fewer or smaller ones"),
		Remedies: ways,
	})
}

// InsertClearanceName names the check of an insert's clearance for people.
func InsertClearanceName(c CheckCode) string {
	if c == CheckInsertClearanceDepth {
		return "insert clearance " + deepWay
	}
	return "insert clearance " + acrossWay
}
