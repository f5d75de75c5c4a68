package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// Settings that diagnoses are about; see [Settings].
const (
	SettingBits           geom.Setting = "bits"
	SettingOvercut        geom.Setting = "overcut"
	SettingRegister       geom.Setting = "register"
	SettingTabs           geom.Setting = "tabs"
	SettingOnionSkin      geom.Setting = "onion-skin"
	SettingSmall          geom.Setting = "small-part"
	SettingPartSpacing    geom.Setting = "part-spacing"
	SettingIntoSpoilboard geom.Setting = "into-spoilboard"
	SettingRelief         geom.Setting = "relief"
	SettingSlots          geom.Setting = "exact-slots"
)

// Keys of remedies within a setting. The relief of an operation has its name.
const (
	KeyReach    = "reach"    // of a bit
	KeyDiameter = "diameter" // of a bit
	KeyHeight   = "height"   // of tabs
	KeyDistance = "distance" // of registration holes from the panel's ends
)

// least, most and exactly are remedies that write one length of a setting, on the grid
// that it is printed on. Nothing has tried them.
func (p *preparation) least(s geom.Setting, key string, mm float64) geom.Remedy {
	return lengths(s, key, geom.LengthOf(mm).RoundUp(p.Unit).MM(), math.Inf(1))
}

func (p *preparation) most(s geom.Setting, key string, mm float64) geom.Remedy {
	return lengths(s, key, 0, geom.LengthOf(mm).RoundDown(p.Unit).MM())
}

func (p *preparation) exactly(s geom.Setting, mm float64) geom.Remedy {
	v := geom.LengthOf(mm).RoundUp(p.Unit).MM()
	return lengths(s, "", v, v)
}

func lengths(s geom.Setting, key string, least, most float64) geom.Remedy {
	return geom.Remedy{Changes: []geom.Change{{Setting: s, Key: key, Min: least, Max: most}}}
}

// relieved are the remedies of an operation whose corners stay round.
func relieved(operation string) []geom.Remedy {
	list := make([]geom.Remedy, 0, 2)
	for _, r := range []Relief{ReliefDogbone, ReliefTBone} {
		list = append(list, geom.Remedy{Changes: []geom.Change{{Setting: SettingRelief, Key: operation, Word: string(r)}}})
	}
	return list
}

// CodeBitReach is that of a bit that is too short.
const CodeBitReach geom.Code = "bit-reach"

// failBit adds an error about one of the bits, which the subject's item tells.
func (p *preparation) failBit(code geom.Code, b Bit, format string, args ...any) *geom.Diagnosis {
	d := p.found.Fail(code, SettingBits, format, args...)
	d.Subject.Item = max(0, slices.Index(p.Bits, b))
	return d
}

// longer is a bit that reaches a depth; of several bits, one that gets into what is so wide besides.
func (p *preparation) longer(deep, wide float64) geom.Remedy {
	r := p.least(SettingBits, KeyReach, deep)
	if len(p.bits) > 1 && wide > 0 {
		r = r.With(p.most(SettingBits, KeyDiameter, wide))
	}
	return r
}

// named prints a bit with its diameter, which may be its name.
type named struct{ Bit }

func (b named) In(u geom.Unit) string {
	if d := geom.LengthOf(b.Diameter).Text(u); b.Name == "" || b.Name == d {
		return "the bit of " + d
	}
	return geom.Sentencef("the bit %s of %s", b.Name, geom.Millimeters(b.Diameter)).In(u)
}

// what names a pocket, a round one by its size.
func (p *preparation) what(pocket int) geom.Sentence {
	if pocket < 0 {
		return geom.Sentencef("a hole")
	}
	k := p.part.Pockets[pocket]
	if _, r, round := k.Outline.AsCircle(); round {
		return geom.Sentencef("the %s of %s on the %s face", k.Kind.Noun(), geom.Millimeters(2*r), k.Face)
	}
	return geom.Sentencef("the %s on the %s face", k.Kind.Noun(), k.Face)
}
