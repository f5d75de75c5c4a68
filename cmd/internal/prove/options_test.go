package prove_test

import (
	"math"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// expected are the numbers of the proof of a box, of all corners in the order of
// front left, front right, back left, back right.
type expected struct {
	play, recess, shoulder, floor [4]float64
	seat                          [4]string
	width, taper, depth           float64
	bottomPlay, hold              float64
	slack                         [2]float64
}

// asAsked is the box that is harmed: its play 0.2, its bottom's 0.2, 2 of slack, a
// hold of 6.1 - 2/2.
func asAsked() expected {
	all := func(v float64) [4]float64 { return [4]float64{v, v, v, v} }
	return expected{play: all(0.2), seat: [4]string{"shoulder", "shoulder", "shoulder", "shoulder"}, width: 460, depth: 500, bottomPlay: 0.2, hold: 5.1, slack: [2]float64{2, 2}}
}

func (want expected) compare(t *testing.T, p record.Proof, name string) {
	t.Helper()
	if len(p.Faults) != 0 || len(p.Corners) != 4 || p.Bottom == nil {
		t.Fatalf("%s: %s, %+v", name, p.Verdict, p)
	}
	for i, c := range p.Corners {
		at := name + ": " + c.End + " in " + c.Side + ": "
		steady(t, at+"play", c.Clearance, want.play[i])
		steady(t, at+"recess", c.Recess, want.recess[i])
		steady(t, at+"shoulder gap", c.ShoulderGap, want.shoulder[i])
		steady(t, at+"floor gap", c.FloorGap, want.floor[i])
		if c.Seat != want.seat[i] {
			t.Errorf("%sseat on the %s, want the %s", at, c.Seat, want.seat[i])
		}
	}
	steady(t, name+": width", p.Width, want.width)
	steady(t, name+": taper", p.Taper, want.taper)
	steady(t, name+": depth", p.Depth, want.depth)
	steady(t, name+": height", p.Height, 140)
	diagonal := math.Hypot(want.width-want.taper/2, want.depth)
	steady(t, name+": diagonal", p.Diagonal, diagonal)
	steady(t, name+": rack", p.Rack, 2*want.play[0]*want.depth/diagonal)
	steady(t, name+": bottom clearance", p.Bottom.Clearance, want.bottomPlay)
	steady(t, name+": hold", p.Bottom.Engagement, want.hold)
	for i, what := range []string{": clearance across", ": clearance along"} {
		steady(t, name+what, p.Bottom.BottomClearance[i], want.slack[i])
	}
}

// TestOptions: what trying other values does to every number, in closed form.
func TestOptions(t *testing.T) {
	all := func(v float64) [4]float64 { return [4]float64{v, v, v, v} }
	for name, c := range map[string]struct {
		more    string
		try     prove.Options
		want    func(*expected)
		verdict string
	}{
		"nothing": {want: func(*expected) {}, verdict: record.Goes},
		"all boards as they are": {
			try:  prove.Options{Thickness: map[string]float64{"birch": 12.2, "ply": 5.9}},
			want: func(*expected) {}, verdict: record.Goes,
		},
		// Cut down from the outside face, tongues are 0.1 thinner and the ends' outside
		// faces are where they were, their inside faces 0.1 further out; the sides have
		// less wood under their dados, and the box is narrower. The bottom comes to the
		// dados' outer walls before the floors of the ends' grooves: (500 - 2 x 6.1) -
		// (500 - 4 x 6.1 + 2 x 6.1 - 2) = 2, as before.
		"thinner boards": {
			try: prove.Options{Thickness: map[string]float64{"birch": 12.1}},
			want: func(w *expected) {
				w.play, w.width = all(0.3), 459.8
				w.hold = 5.0
			}, verdict: record.Goes,
		},
		// Measured from the spoilboard, tongues keep 6.1 and so does the wood under dados
		// and grooves: what boards are thicker makes these deeper, and stands outside, as
		// the shoulders keep the inside faces where they are.
		"thicker boards over the spoilboard": {
			more: "router: {depth-from: spoilboard}",
			try:  prove.Options{Thickness: map[string]float64{"birch": 12.4}},
			want: func(w *expected) {
				w.floor, w.recess = all(0.2), all(-0.2)
				w.width, w.depth = 460.4, 500.4
				w.slack[0] = 2.4 // along, the dados' outer walls are as far apart as before
			}, verdict: record.Goes, // 0.4 deeper than 500, as deep as it may be
		},
		"a thinner bottom": {
			try:  prove.Options{Thickness: map[string]float64{"ply": 5.8}},
			want: func(w *expected) { w.bottomPlay = 0.3 }, verdict: record.Goes,
		},
		// One tongue longer, the other shorter: it goes on a shoulder there and on a
		// floor here; front and back the other way round. Each keeps one side out by 0.3,
		// and is moved by half of it so that the sides are 0.3 further apart in all.
		"turned over 0.3 off along": {
			try: prove.Options{FlipAlong: 0.3},
			want: func(w *expected) {
				w.width = 460.3
				w.seat = [4]string{"shoulder", "floor", "floor", "shoulder"}
				w.shoulder, w.floor = [4]float64{0, 0.3, 0.3, 0}, [4]float64{0.3, 0, 0, 0.3}
				w.slack, w.hold = [2]float64{2.3, 2}, 4.95
			}, verdict: record.GoesBut, // an open shoulder of 0.3
		},
		"turned over 0.3 off the other way": {
			try: prove.Options{FlipAlong: -0.3},
			want: func(w *expected) {
				w.width = 460.3
				w.seat = [4]string{"floor", "shoulder", "shoulder", "floor"}
				w.shoulder, w.floor = [4]float64{0.3, 0, 0, 0.3}, [4]float64{0, 0.3, 0.3, 0}
				w.slack, w.hold = [2]float64{2.3, 2}, 4.95
			}, verdict: record.GoesBut,
		},
		"turned over 0.3 off, where a shoulder may stay open by 0.35": {
			more: "limits: {shoulder-gap: 0.35}",
			try:  prove.Options{FlipAlong: 0.3},
			want: func(w *expected) {
				w.width = 460.3
				w.seat = [4]string{"shoulder", "floor", "floor", "shoulder"}
				w.shoulder, w.floor = [4]float64{0, 0.3, 0.3, 0}, [4]float64{0.3, 0, 0, 0.3}
				w.slack, w.hold = [2]float64{2.3, 2}, 4.95
			}, verdict: record.Goes,
		},
		"turned over 0.3 off, with room for glue": {
			more: "joinery: {glue-space: 0.3}",
			try:  prove.Options{FlipAlong: 0.3},
			want: func(w *expected) {
				// The longer tongue goes in by all of the room: as far in as the other side
				// is out. Moved by as much, front and back keep nothing out.
				w.floor = [4]float64{0.6, 0, 0, 0.6}
			}, verdict: record.Goes,
		},
		"turned over 0.3 off, with room for glue, where a tongue's end may have 0.5": {
			more: "joinery: {glue-space: 0.3}\nlimits: {end-clearance: 0.5}",
			try:  prove.Options{FlipAlong: 0.3},
			want: func(w *expected) {
				w.floor = [4]float64{0.6, 0, 0, 0.6}
			}, verdict: record.GoesBut,
		},
		"turned over 0.9 off across": { // the rabbets run the full height and 2.5 over, 1 more than the bit needs
			try:  prove.Options{FlipAcross: 0.9},
			want: func(*expected) {}, verdict: record.Goes,
		},
		// Tongues are 0.1 thinner, and as the rabbets are deeper the ends stand that
		// much proud; dados are deeper than tongues are long.
		"cut 0.1 too deep": {
			try: prove.Options{Depth: 0.1},
			want: func(w *expected) {
				w.play, w.recess, w.floor = all(0.3), all(-0.1), all(0.1)
				w.depth = 500.2
				w.slack[0], w.hold = 2.2, 5.0 // along, the dados' outer walls are as far apart as before
			}, verdict: record.Goes,
		},
		// Dados 0.1 too shallow: 2 x 0.1 wider; tongues 0.1 thicker, ends 0.1 back.
		"cut 0.1 too shallow": {
			try: prove.Options{Depth: -0.1},
			want: func(w *expected) {
				w.play, w.recess, w.shoulder = all(0.1), all(0.1), all(0.1)
				w.seat = [4]string{"floor", "floor", "floor", "floor"}
				w.width = 460.2
				// Across, shallower grooves in walls that are as much further out; along,
				// in walls that are 0.1 further in.
				w.slack, w.hold = [2]float64{2, 1.6}, 5.0
			}, verdict: record.Goes,
		},
	} {
		t.Run(name, func(t *testing.T) {
			want := asAsked()
			c.want(&want)
			p := build(t, harmed("R2000", c.more)).proof(t, c.try)
			want.compare(t, p, name)
			if p.Verdict != c.verdict {
				t.Errorf("%s, want %s: %q", p.Verdict, c.verdict, p.Remarks)
			}
		})
	}
}

// TestTooFarAcross: 2 off across, the bit of 3 begins its round 1 inside the panel,
// and leaves r - sqrt(r^2 - 1) of the shoulder there: the sides stay out by that.
func TestTooFarAcross(t *testing.T) {
	p := build(t, harmed("R2000", "")).proof(t, prove.Options{FlipAcross: 2})
	const chords = 0.02 // for two arcs, where they are steep
	if want := 460 + 2*(1.5-math.Sqrt(1.5*1.5-1)); math.Abs(p.Width.Mean.MM()-want) > 2*chords || !p.Cuttable() {
		t.Errorf("width %.4f, want %.4f: %s", p.Width.Mean, want, p.Verdict)
	}
}

// TestFlushBottomIsNotTurned: a part that is cut on its outside alone is not turned
// over, and an error in turning moves none of its cuts.
func TestFlushBottomIsNotTurned(t *testing.T) {
	f := build(t, measured("12.2", "12", "joinery: {bottom-fit: flush}"))
	for along, slack := range map[float64]float64{0: 2, 0.3: 2.3} { // front and back each keep one side out, and are moved by half of it
		p := f.proof(t, prove.Options{FlipAlong: along, FlipAcross: 0.5})
		steady(t, "clearance across", p.Bottom.BottomClearance[0], slack)
		steady(t, "clearance along", p.Bottom.BottomClearance[1], 2)
		steady(t, "bottom clearance", p.Bottom.Clearance, 0.2)
	}
}

// TestTaper: with shoulders 0.3 further out at one end alone, the box is 0.6 wider
// there.
func TestTaper(t *testing.T) {
	for file, taper := range map[string]float64{frontOut: 0.6, backOut: -0.6} {
		f := build(t, harmed("R2000", ""))
		d := drawn(t, f.files[file])
		d.reshape(d.on("RABBET")[0], [][2]float64{{-2.5, -2.5}, {5.8, -2.5}, {5.8, 142.5}, {-2.5, 142.5}})
		d.reshape(d.on("RABBET")[1], [][2]float64{{442, -2.5}, {450.3, -2.5}, {450.3, 142.5}, {442, 142.5}})
		f.files[file] = d.data()
		p := f.proof(t, prove.Options{})
		steady(t, file+": width", p.Width, 460.6)
		steady(t, file+": taper", p.Taper, taper)
	}
}
