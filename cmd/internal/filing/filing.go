// Package filing says where each file of a build stands in its folder, for what writes it, what
// names it on paper and what reads it back. Names are relative to the folder, with slashes.
//
// At the top is what a person looks for first. Below, each folder is for one use: what goes to the
// router, what goes into a spreadsheet, what is looked at.
package filing

import "strings"

// What stands at the top.
const (
	Packet    = "packet.pdf"  // what goes to the bench, on paper
	Page      = "boxes.html"  // the boxes to turn and open
	Shop      = "shop.html"   // the page for a phone in the shop
	PartsText = "parts.txt"   // the job as text
	Report    = "report.json" // the job for programs
)

// Folders.
const (
	router = "router/"
	// RouterParts and RouterSheets have the drawings that a router cuts.
	RouterParts  = router + "parts/"
	RouterSheets = router + "sheets/"
	Drawings     = "drawings/" // of parts that are made without a router
	Sheets       = "sheets/"   // pictures of sheets
	solids       = "3d/"
	pictures     = "pictures/" // of boxes
	Cabinet      = "cabinet/"
	Templates    = "templates/"
	tables       = "tables/"
)

// Tables for programs.
const (
	Layers     = router + "layers.csv" // the legend of what is in the router's folder
	Parts      = tables + "parts.csv"
	CutList    = tables + "cut-list.csv"
	Buy        = tables + "buy.csv"
	Layout     = tables + "layout.csv" // where parts lie on sheets
	Cuts       = tables + "cuts.csv"   // those that take sheets apart
	SlideLines = tables + "slide-lines.csv"
)

// ForRouter reports whether a file is in the router's folder.
func ForRouter(name string) bool { return strings.HasPrefix(name, router) }

// DrawingFolders are all that have drawings of parts and sheets.
func DrawingFolders() []string { return []string{RouterParts, RouterSheets, Drawings} }

// What pictures and solids show of a box.
const (
	Assembled = "assembled"
	Exploded  = "exploded"
	Corner    = "corner"
)

// BoxPicture is a picture of a box, without the ending of its name. No two boxes share one: what
// follows the last dash is the view.
func BoxPicture(box, view string) string { return pictures + box + "-" + view }

// PartSolid is the solid of a part, in the folder of its box.
func PartSolid(box, part string) string { return solids + box + "/" + part + ".stl" }

// PartStep is the exact solid of a part, without what does not go into a box.
func PartStep(box, part string) string { return solids + box + "/" + part + ".step" }

// BoxStep is the assembled box of exact solids. No part has its name: those of parts begin with
// that of their box.
func BoxStep(box string) string { return solids + box + "/" + Assembled + ".step" }

// BoxSolid is that of a whole box, assembled or exploded.
func BoxSolid(box, view string) string { return solids + box + "/" + view + ".stl" }

// BoxScene is a box with its pieces by name.
func BoxScene(box string) string { return solids + box + "/drawer.glb" }

// CabinetScene is all boxes of an opening as they stand in it.
func CabinetScene(cabinet string) string { return solids + cabinet + ".glb" }

// Looks is what is written to look at, beyond the assembled box: the page of boxes shows all else.
type Looks struct {
	PNG      bool // pictures in dots too, for programs that take no lines
	Exploded bool // the exploded box, and a corner of it
}

// Files are those of a picture, named without an ending.
func (l Looks) Files(picture string) []string {
	if l.PNG {
		return []string{picture + ".svg", picture + ".png"}
	}
	return []string{picture + ".svg"}
}

// Pictures are the files of all pictures of a box.
func (l Looks) Pictures(box string) (list []string) {
	views := []string{Assembled}
	if l.Exploded {
		views = append(views, Exploded, Corner)
	}
	for _, view := range views {
		list = append(list, l.Files(BoxPicture(box, view))...)
	}
	return list
}

// Solids are the files of a whole box as STL.
func (l Looks) Solids(box string) []string {
	if l.Exploded {
		return []string{BoxSolid(box, Assembled), BoxSolid(box, Exploded)}
	}
	return []string{BoxSolid(box, Assembled)}
}
