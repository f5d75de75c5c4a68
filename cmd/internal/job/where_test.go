package job

import (
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// fields are all fields that a problem of the joinery package can name.
var fields = []geom.Setting{
	joinery.SettingName, joinery.SettingOutside, joinery.SettingSides, joinery.SettingBoxFront, joinery.SettingBack, joinery.SettingBottom,
	joinery.SettingJoint, joinery.SettingCutter, joinery.SettingFenceDistance, joinery.SettingCutterHeight, joinery.SettingGrooveEnds,
	joinery.SettingBottomFit, joinery.SettingBottomClearance, joinery.SettingBottomClearanceDepth, joinery.SettingDadoClearance, joinery.SettingGrooveClearance, joinery.SettingGlueSpace,
	joinery.SettingBottomHeight, joinery.SettingBackJoint, joinery.SettingBackSetback, joinery.SettingFasteners, joinery.SettingFingerWidth,
	"dividers", "pull", "drawer-front", "load", "opening", "slide",
}

func TestWhere(t *testing.T) {
	j := read(t, `units: mm
stock: {é: {thickness: 12}}
cutter: {kind: router, width: 6}
joinery: {bottom-clearance: 1, glue-space: 0.1, bottom-height: 9}
drawers:
  - name: a
    outside: 400 x 100 x 500
    sides: é
    bottom: é
    joinery: {glue-space: 0.2}
    joint: butt
    fasteners: screws
    back-joint: dado
    back-setback: 12
    load: 9 kg
    pull: {shape: hole}
    dividers:
      - {direction: along, at: 2, stock: é}
  - {name: é, outside: 400 x 100 x 500, sides: é, box-front: é, back: é, bottom: é, joint: dado-rabbet, cutter: {kind: saw, width: 6}}
`)
	itself := [2]Position{{6, 5}, {19, 5}}
	want := map[geom.Setting][2]Position{
		joinery.SettingName:            {{6, 11}, {19, 12}},
		joinery.SettingOutside:         {{7, 14}, {19, 24}},
		joinery.SettingSides:           {{8, 12}, {19, 48}},
		joinery.SettingBoxFront:        {{8, 12}, {19, 62}}, // of the first drawer: as its sides
		joinery.SettingBack:            {{8, 12}, {19, 71}},
		joinery.SettingBottom:          {{9, 13}, {19, 82}},
		joinery.SettingJoint:           {{11, 12}, {19, 92}},
		joinery.SettingFasteners:       {{12, 16}, itself[1]},
		joinery.SettingBackJoint:       {{13, 17}, itself[1]},
		joinery.SettingBackSetback:     {{14, 19}, itself[1]},
		"load":                         {{15, 11}, itself[1]},
		"pull":                         {{16, 11}, itself[1]},
		"dividers":                     {{18, 7}, itself[1]},
		joinery.SettingCutter:          {{3, 9}, {19, 113}},
		joinery.SettingBottomClearance: {{4, 29}, {4, 29}},
		joinery.SettingGlueSpace:       {{10, 27}, {4, 44}},
		joinery.SettingBottomHeight:    {{4, 64}, {4, 64}},
	}
	for _, f := range fields {
		at, ok := want[f]
		if !ok {
			at = itself
		}
		for drawer := range at {
			if got := j.Where(drawer, f); got != at[drawer] {
				t.Errorf("%s of drawer %d is at %v, want %v", f, drawer, got, at[drawer])
			}
		}
	}
}

func TestProblemOfJoinery(t *testing.T) {
	j := read(t, goodFiles["least"])
	got := j.Problem(0, geom.Diagnosis{Code: "too-low", Level: geom.LevelError, Subject: geom.Subject{Setting: joinery.SettingOutside},
		Fact: geom.Sentencef("the side is too low"), Ask: geom.Sentencef("make it higher")}).String()
	want := `job.yaml:6:24: error: the side is too low
    - {name: a, outside: 400 x 100 x 500, sides: birch, bottom: birch}
                         ^
  hint: make it higher
`
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}
