package joinery

import "drawerwright/geom"

// KeyFolders is the key of what hangs on dividers.
const KeyFolders = "folders"

// Hanging folders, in millimeters; common practice, no source.
const (
	maxRail    = 4.0  // the thickest rail that hooks go over
	folderRoom = 10.0 // below them, to the bottom
)

// rails are the near faces of all boards: two where folders hang between them.
func (s standingDivider) rails() []float64 {
	if s.Folders.Width == 0 {
		return s.at
	}
	var list []float64
	for _, at := range s.at {
		list = append(list, at, at+s.Folders.Width)
	}
	return list
}

// hangFolders finds how high the rails of folders are, which hang free of the bottom and do not
// stand up over the box, and judges whether hooks go over them.
func (l *layout) hangFolders(s *standingDivider) bool {
	f, board := s.Folders, s.Stock.Thickness
	grown := float64(board.Max * s.Stock.Swelling)
	if board.Max+grown > maxRail+settle {
		l.failDivider(s.number, geom.Diagnosis{
			Code:     "folder-rails",
			Measured: geom.Millimeters(board.Max + grown), Limit: geom.Millimeters(maxRail),
			Fact: geom.Sentencef("its boards are up to %s thick, and the hooks of folders go over rails of %s",
				geom.Millimeters(board.Max+grown), geom.AtMost(maxRail)),
			Ask:      geom.Sentencef("take a thinner board, as hardboard"),
			Remedies: []geom.Remedy{l.most(FieldDividers, maxRail-(board.Max-board.Mean)-grown).Of("", s.number)},
		})
		return false
	}
	if cell := f.Width - s.t; cell < minCell-settle {
		l.failDivider(s.number, geom.Diagnosis{
			Code:     "divider-room",
			Measured: geom.Millimeters(cell), Limit: geom.Millimeters(minCell),
			Fact: geom.Sentencef("between its rails a cell of %s is left; at least %s is needed",
				geom.Millimeters(cell), geom.Millimeters(minCell)),
			Ask: geom.Sentencef("measure the folders from hook to hook"),
		})
		return false
	}
	room, least := l.Height-l.dividerFoot()-f.Above, f.Below+folderRoom
	if s.height == 0 {
		s.height = room
	}
	way := l.between(FieldDividers, least, room).Of("height", s.number)
	if room < least-settle {
		way = l.least(SettingOutside, l.Height+least-room).Of("height", 0)
	}
	if s.height < least-settle || s.height > room+settle {
		l.failDivider(s.number, geom.Diagnosis{
			Code:     "folder-height",
			Measured: geom.Millimeters(s.height), Limit: geom.Millimeters(least),
			Fact: geom.Sentencef("its rails are %s high over the bottom: folders that hang %s below them need at "+
				"least %s, and the box has %s, as they stand up %s over them",
				geom.Millimeters(s.height), geom.Millimeters(f.Below), geom.Millimeters(least),
				geom.Millimeters(room), geom.Millimeters(f.Above)),
			Ask:      geom.Sentencef("measure the folders with their tabs"),
			Remedies: []geom.Remedy{way},
		})
		return false
	}
	return true
}
