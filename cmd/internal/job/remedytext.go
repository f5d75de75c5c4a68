package job

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/words"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
	"drawerwright/geom/opening"
)

// Hint says what a shop can do about a diagnosis of a drawer: what it does first, then its remedies and
// what else ends it; where nothing does, what helps, or what only a person can do.
func Hint(d geom.Diagnosis, s joinery.Spec, others ...string) string {
	var ways []string
	for _, r := range d.Remedies {
		ways = append(ways, RemedyText(r, s))
	}
	if ways = append(ways, others...); len(ways) == 0 {
		for _, r := range d.Eases {
			ways = append(ways, RemedyText(r, s))
		}
	}
	if len(ways) == 0 && !d.Ask.IsEmpty() {
		ways = []string{d.Ask.In(s.Units)}
	}
	if !d.First.IsEmpty() {
		ways = append([]string{d.First.In(s.Units)}, ways...)
	}
	return strings.Join(ways, "; or ")
}

// Advice is [Hint] for what libraries say that know of no drawer: where there are remedies,
// what only a person can do stands behind them.
func Advice(d geom.Diagnosis, u geom.Unit) string {
	var asked []string
	if !d.Ask.IsEmpty() {
		asked = []string{d.Ask.In(u)}
	}
	return Hint(d, joinery.Spec{Units: u}, asked...)
}

// RemedyText says what to do about a drawer, in the words of the job file.
func RemedyText(r geom.Remedy, s joinery.Spec) string {
	list := make([]string, len(r.Changes))
	for i, c := range r.Changes {
		list[i] = changeText(c, s)
	}
	text := words.And(list)
	const bits = mill.SettingBits
	if c := r.Changes; len(c) == 2 && c[0].Setting == bits && c[1].Setting == bits { // of one
		text = fmt.Sprintf("use a bit of %s with a reach of %s", span(c[1], s.Units), span(c[0], s.Units))
	}
	for i, d := range r.Then {
		if i == 0 {
			text += "; but then "
		} else {
			text += "; and "
		}
		text += d.Fact.In(s.Units)
	}
	if !r.Result.IsEmpty() {
		text += ": then " + r.Result.In(s.Units)
	}
	return text
}

func changeText(c geom.Change, s joinery.Spec) string {
	if c.Word != "" && c.Key != "" {
		return fmt.Sprintf("write %s: %s under %s", c.Key, c.Word, c.Setting)
	}
	if c.Word != "" {
		return "write " + entryText(c.Setting, c.Word)
	}
	if c.Count > 0 {
		return fmt.Sprintf("write %s: %d for divider %d", c.Key, c.Count, c.Item+1)
	}
	v := span(c, s.Units)
	switch c.Setting {
	case joinery.SettingOutside:
		return fmt.Sprintf("make the %s %s", c.Key, v)
	case joinery.SettingSides:
		return "take sides of " + v
	case joinery.SettingBoxFront, joinery.SettingBack, joinery.SettingBottom:
		return fmt.Sprintf("take a %s of %s", strings.ReplaceAll(string(c.Setting), "-", " "), v)
	case joinery.SettingCutter:
		return cutterText(c, s, v)
	case joinery.FieldDividers:
		if c.Key == joinery.KeyAt {
			return fmt.Sprintf("let divider %d begin at %s", c.Item+1, v)
		}
		if c.Key == "height" {
			return fmt.Sprintf("write a height of %s for divider %d", v, c.Item+1)
		}
		return fmt.Sprintf("take a board of %s for divider %d", v, c.Item+1)
	case joinery.FieldInsert:
		return fmt.Sprintf("write %s: %s for the insert", cmp.Or(c.Key, joinery.KeyWallClearance), v)
	case joinery.FieldPull:
		return fmt.Sprintf("write %s: %s for the pull", c.Key, v)
	case opening.SettingOpening:
		return fmt.Sprintf("take an opening with a %s of %s", c.Key, v)
	case mill.SettingBits:
		if c.Key == mill.KeyReach {
			return "use a bit with a reach of " + v
		}
		return "use a bit of " + v
	}
	if section, own := sectionOf(c.Setting); own && c.Key == "" {
		switch {
		case c.Min == c.Max:
			return "write " + entryText(c.Setting, v)
		case section == "joinery" && len(c.Ends()) == 2: // it is set, not bought
			return fmt.Sprintf("write %s, within %s", entryText(c.Setting, aim(c, s)), v)
		}
		return fmt.Sprintf("write %s with %s", entryText(c.Setting, "..."), v)
	}
	name, article := cmp.Or(c.Key, string(c.Setting)), "a"
	if strings.ContainsAny(name[:1], "aeiou") {
		article = "an"
	}
	return fmt.Sprintf("write %s %s of %s", article, name, v)
}

// sectionOf is the section in which an entry about joints stands; else it is not known by its
// name alone.
func sectionOf(s geom.Setting) (section string, own bool) {
	is := func(k key) bool { return k.name == string(s) }
	switch {
	case slices.ContainsFunc(joineryKeys, is):
		return "joinery", true
	case s == joinery.SettingGrooveCutter:
		return "cutter", true
	}
	return "", false
}

// entryText is an entry with its value as it stands in the file, its section with it.
func entryText(s geom.Setting, value string) string {
	if section, own := sectionOf(s); own {
		return fmt.Sprintf("`%s: {%s: %s}`", section, s, value)
	}
	return fmt.Sprintf("%s: %s", s, value)
}

// cutterText asks for a cutter as it is to be had.
func cutterText(c geom.Change, s joinery.Spec, v string) string {
	switch bit, sold := joinery.BitIn(c.Min, c.Max); {
	case s.Cutter.Kind == joinery.Saw && joinery.IsStack(c.Min, c.Max) && c.Min < c.Max:
		return fmt.Sprintf("set the dado stack by its shims to %s, within %s", aim(c, s), v)
	case s.Cutter.Kind == joinery.Saw && joinery.IsStack(c.Min, c.Max):
		return "set the dado stack by its shims to " + v
	case s.Cutter.Kind == joinery.Saw:
		return "take a blade of " + v
	case sold && c.Min < c.Max:
		return fmt.Sprintf("take a %s of %s, such as %s", cutterName(s.Cutter.Kind), v,
			geom.Millimeters(bit).In(s.Units))
	}
	return fmt.Sprintf("take a %s of %s", cutterName(s.Cutter.Kind), v)
}

// cutterName is what the trade calls the cutter of a machine.
func cutterName(k joinery.CutterKind) string {
	switch {
	case k.Rounds():
		return "bit"
	case k == joinery.Hand:
		return "plow iron"
	}
	return "cutter"
}

// aim is what to set within the range of a change.
func aim(c geom.Change, s joinery.Spec) string {
	return geom.Millimeters(choice(c, s.Cutter.Kind, s.Units)).In(s.Units)
}

// span prints the range of a change.
func span(c geom.Change, u geom.Unit) string {
	least, most := geom.Millimeters(c.Min), geom.Millimeters(c.Max)
	switch {
	case c.Min == c.Max:
		return least.In(u)
	case math.IsInf(c.Max, 1):
		return least.In(u) + " or more"
	case c.Min == 0:
		return most.In(u) + " or less"
	}
	return geom.Sentencef("%s to %s", least, most).In(u)
}
