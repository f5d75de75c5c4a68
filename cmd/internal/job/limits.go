package job

// Limits of a job file. Lengths are in millimeters. They are of the file, not of the trade, and only
// the reader asks for them: each lies so far beyond what shops have that a value past it is a slip of
// the pen (a lost point, another unit, a key for its neighbor) or more than one run holds. So are
// those that have a reason of the trade beside them, as minFinger, minPitch, maxSpread and the
// ranges of materials: what is good work within them is judged by geom (clearances by joinery.Limits,
// machines by setup, bits by mill, slides by opening, loads by strength).
const (
	// maxFile is in bytes: a job of 4,000 drawers with every key written out is smaller, and one of maxDrawers with
	// five lines each.
	maxFile = 1 << 20
	// maxMarks is of signs that can begin a token: a job of maxFile bytes written by a person has about 130,000, and
	// each costs the scanner some 500 bytes; lines scanned again count again.
	maxMarks   = 150_000
	maxMerges  = 20 // "<<" in a file; the scanner looks ahead to the end of the line at each
	maxInvalid = 20 // tokens the scanner cannot read before the rest of the file is left alone
	maxDepth   = 32 // brackets and indents inside each other; a job needs 5

	MaxProblems = 500 // kept of one file; nobody mends more in one go
	maxPrinted  = 50  // of those, as many as a person scrolls through
	maxExcerpt  = 74  // characters of a line shown with a problem
	maxQuote    = 40  // characters of the file quoted in a message

	maxDrawers  = 5_000  // drawers that one run still plans in seconds
	maxCount    = 10_000 // of one drawer: far above any order, far below an overflow of parts
	maxStocks   = 100    // more than a shop stores
	maxReadings = 50     // more than anybody measures of one stock
	maxName     = 40     // characters: what a label of the cut list holds
	maxPattern  = 80     // characters of a pattern of names
	maxTitle    = 60     // characters: one line at the head of a packet page

	// Sides of drawers and sheets; panel geometry is snapped to a grid that float32 holds up to 4 m.
	minSize, maxSize           = 1, 4_000
	minThickness, maxThickness = 1, 100          // veneer is no panel, and a beam no drawer side
	minCutter, maxCutter       = 0.5, 60         // from the finest bit to a full dado stack and more
	minSetting, maxSetting     = 0.1, 100        // fence distance and cutter height: within the thickest stock
	maxBottomClearance         = 50              // of a bottom; more than that drops out of its grooves
	minReach, maxReach         = 1, 200          // of a router bit
	maxFlutes, maxBits         = 12, 50          // edges of a bit; bits of one router
	maxTool                    = 999             // the number of a bit in its machine
	maxFeed, maxSpeed          = 100_000, 60_000 // mm and turns a minute: beyond any router's
	maxOvercut                 = 20              // beyond the radius; more is another part's wood
	maxClearance               = 5               // of a joint; more is a slip of the decimal point
	maxPrice                   = 1_000_000       // of one sheet
	minFinger                  = 1.5             // of a box joint: the finest bit and a little wood
	minPull                    = 5               // a cut that no finger goes into
	minHandle, maxHandleBore   = 10, 20          // between the holes of a handle; their diameter
	minBoard, maxRough         = 20, 200         // rough boards: no strip, and no beam
	maxWaste                   = 200             // percent: more is firewood
	minBanding, maxBanding     = 0.1, 10         // from printed paper to a solid lipping
	maxGap, maxOverlay         = 100, 300        // between drawers and about fronts; beside an opening
	maxSlideLength             = 500             // any measure of a slide but its length
	minPitch                   = 10              // of its holes; they stand 32 mm apart or 16
	maxSlideLine               = 200             // of its screws below the box
	maxRatio                   = 3               // of a row to the one above it

	minHumidity, maxHumidity       = 5, 95       // percent: what the equation for wood's moisture was made for
	minTemperature, maxTemperature = 0, 60       // degrees Celsius: where people work and goods are kept
	minDensity, maxDensity         = 50, 1_600   // kg/m3: foam core to the densest laminate
	minStiffness, maxStiffness     = 100, 40_000 // N/mm2: soft fiberboard to the stiffest wood and beyond
	minMovement, maxMovement       = 0.02, 1     // percent for one of moisture: no wood moves by so little or so much
	minLoad, maxLoad               = 0.1, 1_000  // kg in one drawer

	maxOpenings, maxSlides = 500, 200 // of one file: a kitchen has dozens, a shop's list fewer
	maxRows                = 40       // in one opening; of maxSize they would be 100 mm high
	maxSteps               = 50       // heights of boxes that a shop makes
	maxCells               = 20       // of an insert, one way
	minFolder              = 5        // how far a hanging folder stands up over its rails
	maxTails               = 50       // at one end of a side
	maxDividers            = 50       // entries of one drawer, and places of one entry
	minSpacer, maxSpacers  = 0.01, 24 // the thinnest feeler gauge; pieces of one set that are put together
	maxSpares              = 1_000    // of each part
	maxPath                = 200      // characters of a file's name

	// maxSpread is the part of their mean by which readings of one stock may
	// differ. Plywood of one sheet keeps within 5 %; two stocks or a mistyped
	// digit do not keep within 15 %.
	maxSpread = 0.15
)
