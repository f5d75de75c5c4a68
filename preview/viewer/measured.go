package viewer

import (
	"slices"
	"strconv"

	"drawerwright/geom/fit"
	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"
)

// measured are the joints of a box as forms of what is off. The script adds and multiplies, as the package fit does,
// to the last bit; what comes of it is judged here, and told for each choice.
type measured struct {
	// Off is what a source is off by: of a board at least and at most; of the machine by what a draw is multiplied,
	// and what is added.
	Off    map[int][2]float64 `json:"off,omitempty"`
	Joints []joint            `json:"joints"`
}

type joint struct {
	Name      string `json:"name"`
	Clearance form   `json:"clearance"`
	Slot      *form  `json:"slot,omitempty"`
	Tongue    *form  `json:"tongue,omitempty"`
	// Within is the word for what is in the slot.
	Within string `json:"within,omitempty"`
	Said   []said `json:"said"`
	// Verdicts has the place of one in Said for each choice, a digit each: of boards at the least, the machine as set
	// and in each numbered box, then of boards at the mean and at the most.
	Verdicts string `json:"verdicts"`
}

// said is a verdict; Jams where nothing goes in.
type said struct {
	State string `json:"state"`
	Sign  string `json:"sign"`
	Words string `json:"words"`
	Jams  bool   `json:"jams,omitempty"`
}

// form is a length, as [fit.Response] has it.
type form struct {
	At    float64      `json:"at"`
	By    [][2]float64 `json:"by"` // source, and what it adds for each mm
	Bends []bend       `json:"bends,omitempty"`
}

type bend struct {
	Times float64 `json:"times"`
	A     form    `json:"a"`
	B     form    `json:"b"`
}

// measuredOf are the joints of a box; draws gets the random numbers of their sources.
func measuredOf(b scene.Box, draws map[int][]float64) measured {
	m := measured{Off: make(map[int][2]float64), Joints: []joint{}}
	if b.Joints == nil {
		return m
	}
	joints := b.Joints()
	if len(joints) == 0 {
		return m
	}
	sources := joints[0].Stack.Sources
	errors := fit.Errors(sources)
	linear := func(l fit.Linear) form {
		f := form{At: l.At0, By: [][2]float64{}}
		for _, s := range l.By {
			from := sources[s.Source]
			if from.Minus+from.Plus == 0 {
				continue // it is off by nothing
			}
			f.By = append(f.By, [2]float64{float64(s.Source), s.By})
			if list := errors[s.Source]; list == nil {
				m.Off[s.Source] = [2]float64{from.Level(fit.Least), from.Level(fit.Most)}
			} else {
				times, plus := from.Spread()
				m.Off[s.Source], draws[s.Source] = [2]float64{times, plus}, list
			}
		}
		return f
	}
	for _, j := range joints {
		one := joint{Name: j.Name, Clearance: linear(j.Clearance.Linear)}
		for _, b := range j.Clearance.Bends {
			one.Clearance.Bends = append(one.Clearance.Bends, bend{b.Times, linear(b.A), linear(b.B)})
		}
		if j.Slot.At0 > 0 {
			one.Slot, one.Tongue, one.Within = new(linear(j.Slot)), new(linear(j.Tongue)), within[j.Code]
		}
		m.Joints = append(m.Joints, one)
	}
	for level := range fit.Levels {
		for number := range fit.Numbered + 1 {
			off := fit.Off(sources, errors, level, number)
			for i, j := range joints {
				m.Joints[i].say(j.At(off))
			}
		}
	}
	return m
}

// say adds the verdict on the next choice.
func (j *joint) say(c joinery.Check) {
	one := said{string(c.State()), c.State().Sign(), c.Words(), c.Verdict == joinery.WillNot}
	at := slices.Index(j.Said, one)
	if at < 0 {
		at = len(j.Said)
		j.Said = append(j.Said, one)
	}
	j.Verdicts += strconv.Itoa(at) // there are four: right, tight, loose, jammed
}

// within are the words for what is in a slot, by its clearance.
var within = map[joinery.CheckCode]string{
	joinery.CheckTongueClearance: "tongue", joinery.CheckBackClearance: "back",
	joinery.CheckGrooveClearance: "bottom", joinery.CheckDividerClearance: "divider",
	joinery.CheckFingerClearance: "finger",
}
