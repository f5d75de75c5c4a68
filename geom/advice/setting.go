package advice

import (
	"drawerwright/geom"
	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
)

// settingOf is the setting that moves a measure as it is set, and by how much for each
// millimeter of the measure.
func (d *Box) settingOf(m fit.SimulatedMeasure) (f geom.Setting, now, factor float64) {
	s, router, fits := d.Spec, d.Spec.Cutter.Kind.FollowsDrawing(), d.Spec.Cutter.Kind.MadeToFit()
	switch m.Code {
	case joinery.CheckTongueClearance, joinery.CheckBackClearance, joinery.CheckDividerClearance:
		if fits {
			return joinery.SettingDadoClearance, s.DadoClearance, 1
		}
	case joinery.CheckGrooveClearance:
		if fits || s.Cutter.Groove > 0 {
			return joinery.SettingGrooveClearance, s.GrooveClearance, 1
		}
	case joinery.CheckBottomClearance, joinery.CheckBottomClearanceDepth:
		if m.Code == joinery.CheckBottomClearanceDepth && s.BottomClearanceDepth != nil {
			return joinery.SettingBottomClearanceDepth, *s.BottomClearanceDepth, 1
		}
		return joinery.SettingBottomClearance, s.BottomClearance, 1
	case joinery.CheckInsertClearance, joinery.CheckInsertClearanceDepth:
		return joinery.FieldInsert, s.Insert.WallClearance, 1
	case joinery.CheckRecess:
		if !router && s.Joint == joinery.DadoRabbet {
			return joinery.SettingFenceDistance, d.Setup.FenceDistance, 0.5 // it sets dado and tongue
		}
		return joinery.SettingFenceDistance, d.Setup.FenceDistance, 1
	case joinery.CheckLap:
		return joinery.SettingCutterHeight, d.Setup.CutterHeight, 1
	}
	return "", 0, 0
}

// SettingFor is the setting under which a measure is reported: what a shop looks at first.
func SettingFor(m fit.SimulatedMeasure) geom.Setting {
	switch m.Code {
	case fit.SlideClearance:
		return joinery.FieldUndermount // where the drawer names its slide
	case joinery.CheckOutsideWidth, joinery.CheckOutsideDepth, fit.OutsideHeight, fit.Diagonal:
		return joinery.SettingOutside
	case joinery.CheckBottomClearance, joinery.CheckBottomClearanceDepth:
		return joinery.SettingBottomClearance
	}
	switch m.Part {
	case joinery.Front:
		return joinery.SettingBoxFront
	case joinery.Back:
		return joinery.SettingBack
	case joinery.Bottom:
		return joinery.SettingBottom
	case joinery.DividerRole:
		return joinery.FieldDividers
	case joinery.InsertRole:
		return joinery.FieldInsert
	}
	return joinery.SettingSides
}
