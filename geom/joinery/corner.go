package joinery

// lay lays a corner out. Its setting is judged, then its joints, then the room of the box; then
// walls and bottom are made, with the ends that the corner gives them.
func (l *layout) lay(setting, joints func(), end func(Role) ending) {
	setting()
	judged := !l.failed()
	if judged { // else they would only repeat it in other words
		joints()
	}
	l.checkRoom()
	if !judged {
		l.then(joints)
	}
	if l.failed() {
		l.then(l.seatAsRefused)
	}
	l.then(func() { l.assemble(end) })
}

// CornerAt is how front or back meets the sides.
func (s Spec) CornerAt(r Role) Joint {
	switch {
	case r == Back && s.BackJoint == Housed:
		return Housed
	case r == Back && s.Joint == RabbetedFront:
		return Rabbet
	}
	return s.Joint
}
