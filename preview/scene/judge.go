package scene

import "drawerwright/geom/joinery"

// checkOf is the check that judges the gap beside a piece in a pocket, across an axis of the
// box: that of its thickness, and of a bottom also those of its length and width.
func checkOf(parts []Part, in Piece, across int) joinery.CheckID {
	role := parts[in.Part].Role
	thick := axisOf(in.Placement.Normal()) == across
	switch {
	case role == joinery.Bottom && thick:
		return joinery.CheckID{Code: joinery.CheckGrooveClearance, Part: role}
	case role == joinery.Bottom && across == 0:
		return joinery.CheckID{Code: joinery.CheckBottomClearance, Part: role}
	case role == joinery.Bottom:
		return joinery.CheckID{Code: joinery.CheckBottomClearanceDepth, Part: role}
	case role == joinery.DividerRole && thick:
		id := joinery.CheckID{Code: joinery.CheckDividerClearance, Part: role}
		for _, p := range parts[:in.Part+1] { // they stand in the order of the job
			if p.Role == role {
				id.Item++
			}
		}
		return id
	case (role == joinery.Front || role == joinery.Back) && thick:
		return joinery.CheckID{Code: joinery.CheckTongueClearance, Part: role}
	}
	return joinery.CheckID{}
}

// judge names the measures of clearances, with the verdicts on those that are not right.
func judge(list []Clearance, measures []joinery.Check) {
	for i := range list {
		c := &list[i]
		for _, m := range measures {
			if !judges(m.CheckID, c.Check) {
				continue
			}
			c.Measure, c.State, c.Verdict = m.Name, m.State(), ""
			if c.State != joinery.StateRight {
				c.Verdict = m.Words()
			}
			if m.Part == c.Check.Part { // else that of the front, for a back that is its twin
				break
			}
		}
	}
}

// judges reports whether a check of a drawer is that of a clearance. A back in dados has one of
// its own, or that of the front, whose twin it is.
func judges(id, of joinery.CheckID) bool {
	if of.Part == joinery.Back && id.Code == joinery.CheckBackClearance {
		return true
	}
	same := id.Part == of.Part && id.Item == of.Item || of.Part == joinery.Back && id.Part == joinery.Front
	return of.Code != "" && id.Code == of.Code && same
}
