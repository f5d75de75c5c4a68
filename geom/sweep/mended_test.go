package sweep

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// TestMended keeps what once had no result: found by the fuzzer and by
// properties, mended since. Areas are those of the shape itself where the disc
// is small, of a straight path where it is one.
func TestMended(t *testing.T) {
	pocket := func(l geom.Loop, r float64) (float64, error) {
		loops, err := Pocket(l, r)
		return areaSum(loops), err
	}
	line := func(l geom.Loop, r float64) (float64, error) {
		loops, err := Line(l, r)
		return areaSum(loops), err
	}
	outside := func(l geom.Loop, r float64) (float64, error) {
		o, err := Outside(l, r)
		return o.Area(), err
	}
	notched := geom.Loop{v(-1.9463888888888885, -1.9066666666666663), v(-1.9066666666666663, -1.9463888888888885),
		v(-1.9066666666666663, -1.9066666666666663, 4096), v(-1.9861111111111107, -1.9066666666666663)}
	hollow := geom.Loop{v(-987, -3384, -0.0001), v(-3384, -2256), v(-3384, -3384)}
	neck := geom.Loop{
		v(3.9598946237134682, -0.5650084681535052), v(4.242398857790221, 1.4149388437032289, 0.4142135623730951),
		v(2.544956274997067, 3.6773903190106574, 0.4142136355964199), v(0.28250430470281995, 1.9799478068436236, 0.33886240577985405),
		v(-1.781677240106537, 0.6945689689706683, -0.00011397343480102666), v(-1.7820955082746694, 0.6934598954704908, 0.0550940712323585),
		v(-1.8911459267561206, 0.2677877547512886, 0.011252997461359413), v(-1.9799473118567341, 0.2825042340767526),
		v(-3.6216793190762298, 0.5167509943220541, 0.07412605469900516), v(-4.211435489642525, 0.5130618034016812, 0.8619791784369755),
		v(-4.186691033918191, -3.4431431661451297), v(-2.5449557800102394, -3.6773903896367157, 0.4142136355964199),
		v(-0.28250430470281995, -1.9799478068436236, 0.0002531930118209972), v(-0.2822191367331903, -1.9779419326391587, 0.011252934953421622),
		v(-0.1934182466194755, -1.9926583413386187), v(1.6974430777799814, -2.262451545933487, 0.4142136355964199)} // an opening itself
	for name, c := range map[string]struct {
		of         func(geom.Loop, float64) (float64, error)
		loop       geom.Loop
		r          float64
		area, part float64 // and what part of it may be missing or too much
	}{
		"a corner that the disc cannot tell from straight": {pocket, notched, 0.00617283950617284, notched.Area(), 1e-6},
		"chords that turn by a millionth":                  {outside, hollow, 0.01875, hollow.Area(), 1e-6},
		"back on an arc that is all but straight": {line, geom.Loop{v(-2004, -2004), v(-2004, -3674, 1e-7), v(-2004, -2004)}, 1.75,
			2*1.75*1670 + math.Pi*1.75*1.75, 1e-4},
		"a spur on a shorter one": {line, geom.Loop{v(0, 0), v(16, 0, 1e-7), v(16+1.0/3, 0), v(16, 0)}, 229.5,
			2*229.5*(16+1.0/3) + math.Pi*229.5*229.5, 1e-6},
		"arcs about the disc, in a neck": {pocket, neck, 2, neck.Area(), 1e-6},
	} {
		t.Run(name, func(t *testing.T) {
			area, err := c.of(c.loop, c.r)
			if err != nil || !(math.Abs(area-c.area) <= c.part*c.area) {
				t.Errorf("area %.9g, want %.9g; %v", area, c.area, err)
			}
		})
	}
}
