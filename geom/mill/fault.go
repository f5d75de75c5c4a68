package mill

import (
	"fmt"

	"drawerwright/geom"
)

// Fault is something about a panel that a router cannot do, or a doubt.
type Fault struct {
	Code    string // stable, for programs
	Error   bool
	Field   Field
	Message string
	Hint    string
	// Write is the length, in mm, that the hint names for the setting Entry; 0 where it
	// names none.
	Write float64
	Entry Field
}

// Field is the setting that a fault is about.
type Field string

const (
	FieldBits     Field = "bits"
	FieldReach    Field = "reach" // of the bits
	FieldOverRun  Field = "over-run"
	FieldRegister Field = "register"
	FieldTabs     Field = "tabs"
	FieldSkin     Field = "skin"
	FieldSmall    Field = "small-part"
	FieldGap      Field = "part-gap"
	FieldThrough  Field = "through"
	FieldRelief   Field = "relief"
)

func (p *preparation) fail(code string, f Field, hint, format string, args ...any) {
	p.faults = append(p.faults, Fault{Code: code, Error: true, Field: f, Message: fmt.Sprintf(format, args...), Hint: hint})
}

func (p *preparation) warn(code string, f Field, hint, format string, args ...any) {
	p.faults = append(p.faults, Fault{Code: code, Field: f, Message: fmt.Sprintf(format, args...), Hint: hint})
}

// naming keeps the length that the last fault's hint names for a setting.
func (p *preparation) naming(f Field, l geom.Length) {
	last := &p.faults[len(p.faults)-1]
	last.Entry, last.Write = f, l.MM()
}

func (p *preparation) text(mm float64) string { return geom.LengthOf(mm).Text(p.Unit) }
func (p *preparation) atLeast(mm float64) string {
	return p.up(mm).Text(p.Unit)
}
func (p *preparation) atMost(mm float64) string {
	return p.down(mm).Text(p.Unit)
}
func (p *preparation) up(mm float64) geom.Length   { return geom.LengthOf(mm).RoundUp(p.Unit) }
func (p *preparation) down(mm float64) geom.Length { return geom.LengthOf(mm).RoundDown(p.Unit) }

// bit names a bit with its diameter, which may be its name.
func (p *preparation) bit(b Bit) string {
	if d := p.text(b.Diameter); b.Name != "" && b.Name != d {
		return fmt.Sprintf("the bit %s of %s", b.Name, d)
	}
	return "the bit of " + p.text(b.Diameter)
}

// what names a pocket.
func (p *preparation) what(pocket int) string {
	if pocket < 0 {
		return "a hole"
	}
	k := p.part.Pockets[pocket]
	return fmt.Sprintf("the %s on the %s face", k.Kind, k.Face)
}
