package joinery

import "drawerwright/geom"

// fieldedTongue is how thick the tongue of a fielded bottom is. Of grooves that are made for it, half
// of the bottom at least; common practice, no source. Else as thick as the other tongues, at their
// setting, if the groove takes that, or what the groove takes.
func (l *layout) fieldedTongue() float64 {
	tongue := l.minGroove() - l.GrooveClearance
	switch {
	case l.groovesFit():
		return max(tongue, l.Tb/2)
	case l.Limits.GrooveClearance.Contains(l.Cutter.Width - l.f):
		return l.f
	}
	return tongue
}

// fieldedFails reports whether a bottom cannot be fielded, and says so: one that is no thicker than
// its tongue has nothing to be rabbeted, a thick one hangs out of the box below.
func (l *layout) fieldedFails() bool {
	if l.BottomFit != BottomFielded {
		return false
	}
	tongue, deep := l.fieldedTongue(), l.below()
	if deep < minRabbet-settle {
		l.refuse(geom.Diagnosis{
			Code: "bottom", Subject: about(SettingBottom, Bottom),
			Measured: geom.Millimeters(deep), Limit: geom.Millimeters(minRabbet),
			Fact: geom.Sentencef("a fielded bottom of %s on a tongue of %s leaves nothing to rabbet: it has to be thicker by %s", geom.Millimeters(l.Tb), geom.Millimeters(tongue), geom.Millimeters(minRabbet)),
			Ask:  geom.Sentencef("take a thicker bottom, or a narrower cutter"),
			Remedies: []geom.Remedy{
				write(SettingBottomFit, BottomSlideIn), l.least(SettingBottom, tongue+minRabbet), l.grooveWay(),
			},
		}, l.Tb > settle)
		return true
	}
	if low := deep + l.Bottom.Thickness.Max - l.Tb; low > l.rise+settle {
		uneven := l.Bottom.Thickness.Max - l.Tb
		l.refuse(geom.Diagnosis{
			Code: "bottom-height", Subject: about(SettingBottomHeight, Bottom),
			Measured: geom.Millimeters(l.rise), Limit: geom.Millimeters(low),
			Fact: geom.Sentencef("a fielded bottom reaches %s below its tongue, and the groove is %s over the bottom edges: it would hang out of the box", geom.Millimeters(low), geom.Millimeters(l.rise)),
			Ask:  geom.Sentencef("take a thinner bottom"),
			Remedies: []geom.Remedy{
				l.least(SettingBottomHeight, low),
				l.most(SettingBottom, l.rise+tongue-uneven), l.most(SettingBottom, 2*(l.rise-uneven)),
			},
		}, true)
		return true
	}
	return false
}
