package job

// titles are what a shop calls the entries of the job file, by the entry's name; where one name
// stands for several things, by the name of the section, a dot and the name. Forms show them
// above the names, `explain` beside them.
var titles = map[string]string{
	"job": "Title of the job", "units": "Unit of bare numbers", "stock": "Stock", "cutter": "Cutting tool",
	"joinery": "Joinery", "machines": "Limits of the machines", "router": "CNC router", "limits": "What is right",
	"accuracy": "Accuracy of the shop", "from-log": "As the log shows it", "log": "Log of test cuts",
	"keep-days": "Days that count", "keep-cuts": "Cuts that count",
	"spacers": "Spacer blocks", "dxf": "Drawings for machines",
	"preview": "Solids in previews",
	"cad":     "Exact solids for CAD",
	"paper":   "Printed packet", "templates": "Templates and gauges", "sheets": "Layout on sheets",
	"climate": "Climate", "openings": "Openings", "group-openings": "One size for similar openings",
	"slides": "Slides of the shop", "slides-file": "File of shared slides", "drawers": "Drawers",

	// Stock.
	"thickness": "Thickness", "sheet": "Sheet size", "grain": "Grain direction", "price": "Price of a sheet",
	"count": "Sheets in the shop", "batch": "Batch", "other-sheets": "Other sheet sizes", "min-sheet": "Smallest sheet",
	"keep-out": "Clamps and stops", "keep-out.at": "Corner of the area", "keep-out.size": "Size of the area",
	"match": "Matching fronts", "material": "Material", "cut": "Sawn", "density": "Density",
	"stiffness": "Stiffness along the grain", "stiffness-across": "Stiffness across the grain",
	"readings-per-sheet": "Readings of each sheet",
	"tolerance":          "Thickness standard", "kerf": "Kerf", "edge-banding": "Edge banding",
	"movement":           "Movement",
	"edge-banding.price": "Price of the banding",
	"boards":             "Rough boards", "boards.width": "Width of the boards",
	"rough": "Rough thickness", "waste": "Waste", "boards.price": "Price of the wood",

	// Cutters and bits.
	"kind": "Kind", "cutter.width": "Width of one pass", "diameter": "Diameter",
	"groove-cutter": "Cutter for the bottom's grooves",
	"machine":       "Machine in the log", "cutter.name": "Cutter in the log",
	"reach": "Reach", "flutes": "Flutes", "bits": "Bits", "tool": "Tool number", "type": "Chip direction",
	"tip": "Up-cut tip", "feed": "Feed rate", "plunge": "Plunge rate", "speed": "Spindle speed",
	"chip-load": "Chip load", "pass-depth": "Depth of a pass",

	// Joinery.
	"fence-distance": "Fence distance", "cutter-height": "Cutter height", "groove-ends": "Ends of the grooves",
	"bottom-fit": "How the bottom is held", "bottom-height": "Height of the bottom's groove",
	"bottom-clearance": "Bottom clearance, side to side", "bottom-clearance-depth": "Bottom clearance, front to back",
	"dado-clearance": "Clearance in the dados", "groove-clearance": "Clearance in the grooves",
	"glue-space": "Glue space", "faces": "Faces to cut from",

	// Machines.
	"saw": "Table saw", "router-table": "Router table", "max-height": "Highest cut", "max-width": "Widest cutter",
	"rip-capacity": "Rip capacity", "crosscut-capacity": "Crosscut capacity", "fence-capacity": "Fence capacity",
	"max-length-on-sled": "Longest part on the sled", "max-stop": "Furthest stop on the sled",
	"min-length-on-end": "Shortest part on end",
	"max-length-on-end": "Longest part on end", "min-length-along-fence": "Shortest part along the fence",
	"min-width-on-end": "Narrowest part on end", "min-width-along-fence": "Narrowest part along the fence",

	// CNC router.
	"overcut": "Overcut", "relief": "Corner relief", "others": "All other cuts", "dado": "Dados", "groove": "Grooves",
	"rabbet": "Rabbets", "cutout": "Cutouts", "profile": "Profiles", "exact-slots": "Slots as wide as the bit",
	"depth-from": "Depths from", "register": "Registration holes", "place": "Place", "distance": "Distance from the part",
	"tabs": "Tabs", "width": "Width", "height": "Height", "spacing": "Spacing", "as": "Drawn as",
	"engrave": "Engraved numbers", "engrave.height": "Height of the figures", "engrave.depth": "Depth", "bit": "Bit",
	"onion-skin": "Onion skin", "small-part": "Small part", "into-spoilboard": "Into the spoilboard",
	"part-spacing": "Spacing of parts",

	// What is right, and how exactly the shop works.
	"min-tongue-clearance": "Least tongue clearance", "max-tongue-clearance": "Most tongue clearance",
	"min-groove-clearance": "Least groove clearance", "max-groove-clearance": "Most groove clearance",
	"min-bottom-clearance": "Least bottom clearance", "max-bottom-clearance": "Most bottom clearance",
	"flush": "Flush within", "shoulder-gap": "Open shoulder", "end-clearance": "Clearance at a tongue's end",
	"diagonal": "Diagonals", "depth": "Depth", "fence": "Fence setting", "length": "Length of parts",
	"accuracy.cut": "From cut to cut", "accuracy.cutter": "Width of the cutter",
	"accuracy.height": "Height setting",
	"limits.width":    "Width of the box", "limits.depth": "Depth of the box", "limits.height": "Height of the box",

	// Drawings, paper, templates, sheets.
	"version": "DXF version", "dxf.units": "Unit of the drawings", "layers": "Names of layers",
	"elevation": "Cuts at their depth",
	"order":     "Order of cutting", "split": "A file for each bit", "notes": "Notes beside parts", "files": "Names of files",
	"paper.size": "Paper size", "labels": "Labels", "label-columns": "Labels across", "label-rows": "Labels down",
	"templates.stock": "Stock of the templates", "bed": "Bed of the machine", "pin-diameter": "Pin diameter",
	"slot-width": "Slot for the pencil", "roll-width": "Width of the paper roll", "templates.register": "Registration pins",
	"method": "How sheets are cut", "stages": "Turns of the saw", "trim": "Trim of the edges", "flip-on": "Turned over on",
	"pin-distance": "Distance of the pins", "min-offcut": "Smallest offcut to keep",
	"first-cuts": "First cuts of a sheet", "prefer": "Layout to prefer", "times": "Times at the saw",
	"times.setting": "Setting of fence or stop", "times.guide": "Laying of a guide", "times.cut": "One cut",
	"times.turn": "Turning a board", "times.helper": "With a second person", "max-weight": "Heaviest sheet to handle",
	"sheets.kerf": "Saw kerf",

	// Climate.
	"now": "Humidity now", "driest": "Driest humidity", "dampest": "Dampest humidity", "temperature": "Temperature",

	// Openings and slides.
	"diagonals": "Diagonals", "cabinet": "Kind of cabinet", "frame-overhang": "Overhang of the face frame",
	"fronts": "Drawer fronts", "clearance-behind": "Room behind", "lengths": "Lengths", "load": "Load rating",
	"clearance": "Clearance at each side", "clearance-plus": "Box wider by", "clearance-minus": "Box narrower by",
	"clearance-above": "Clearance above", "clearance-below": "Clearance below",
	"inside-deduction": "Inside width deduction", "max-side-thickness": "Thickest side", "bottom-recess": "Bottom recess",
	"notch-width": "Width of the notches", "notch-height": "Height of the notches", "hook-diameter": "Hook bore diameter",
	"hook-depth": "Hook bore depth", "hook-height": "Hook bore height", "hook-inset": "Hook bore inset",
	"screw-line": "Screw line", "setback": "First hole", "hole-pitch": "Hole pitch",
	"runner-width": "Width of runners", "wear-strip": "Thickness of wear strips", "cabinet-stock": "Stock of the cabinet's sides",

	// Drawers.
	"name": "Name", "drawers.count": "How many", "spares": "Spare parts", "outside": "Outside size of the box",
	"sides": "Sides", "box-front": "Box front", "back": "Back", "bottom": "Bottom", "joint": "Corner joint",
	"back-joint": "Back joint", "back-setback": "Setback of the back", "fasteners": "Fasteners",
	"finger-width": "Finger width", "lip": "Lip of the front", "tails": "Tails", "slope": "Slope of the tails",
	"web-frame": "Rails of web frames", "dust-panel": "Thickness of dust panels",
	"dividers": "Dividers", "direction": "Direction", "at": "How many, or where",
	"folders": "Hanging folders", "loose": "Loose", "insert": "Insert", "columns": "Columns", "insert.rows": "Rows",
	"contents-clearance": "Room about what lies in it", "wall-clearance": "Clearance to the walls", "pull": "Pull", "shape": "Shape", "from-top": "Below the top edge", "drawer-front": "Drawer front",
	"overhang-left": "Overhang at the left", "overhang-below": "Overhang below", "handles": "Handles",
	"handle-spacing": "Spacing of the holes", "handle-diameter": "Diameter of the holes",
	"handle-from-top": "Holes below the top edge", "drawers.load": "Load in the drawer",
	"opening": "Opening", "slide": "Slide", "rows": "Rows", "graduation": "Graduation of the rows",
	"arithmetic": "Each higher by", "geometric": "Each times as high", "front-gap": "Gap between fronts",
	"reveal": "Reveal around fronts", "overlay": "Overlay of fronts", "box-heights": "Heights of boxes",
	"line-boring": "Pitch of the line boring",
}

// titleOf is what a shop calls an entry that stands in a section.
func titleOf(section, name string) string {
	if t, own := titles[section+"."+name]; own {
		return t
	}
	return titles[name]
}
