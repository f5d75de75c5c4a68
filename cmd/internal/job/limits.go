package job

// Limits of a job file. Lengths are in millimetres.
const (
	maxFile    = 512 << 10 // bytes; a job of maxDrawers drawers with every key written out is smaller
	maxMarks   = 100_000   // signs that can begin a token; a job of maxFile bytes written by a person has about 65,000, and each costs the scanner some 500 bytes; lines scanned again count again
	maxMerges  = 20        // "<<" in a file; the scanner looks ahead to the end of the line at each
	maxInvalid = 20        // tokens the scanner cannot read before the rest of the file is left alone
	maxDepth   = 32        // brackets and indents inside each other; a job needs 5

	MaxProblems = 500 // kept of one file; nobody mends more in one go
	maxPrinted  = 50  // of those, as many as a person scrolls through
	maxExcerpt  = 100 // characters of a line shown with a problem
	maxQuote    = 40  // characters of the file quoted in a message

	maxDrawers  = 2_000  // drawers that one run still plans in seconds
	maxCount    = 10_000 // of one drawer: far above any order, far below an overflow of parts
	maxStocks   = 100    // more than a shop stores
	maxReadings = 50     // more than anybody measures of one stock
	maxName     = 40     // characters: what a label of the cut list holds
	maxPattern  = 80     // characters of a pattern of names
	maxTitle    = 60     // characters: one line at the head of a packet page

	minSize, maxSize           = 1, 4_000  // sides of drawers and sheets; panel geometry is snapped to a grid that float32 holds up to 4 m
	minThickness, maxThickness = 1, 100    // veneer is no panel, and a beam no drawer side
	minCutter, maxCutter       = 0.5, 60   // from the finest bit to a full dado stack and more
	minSetting, maxSetting     = 0.1, 100  // fence distance and cutter height: within the thickest stock
	maxSlack                   = 50        // of a bottom; more than that drops out of its grooves
	minReach, maxReach         = 1, 200    // of a router bit
	maxFlutes, maxBits         = 12, 50    // edges of a bit; bits of one router
	maxOverRun                 = 20        // beyond the radius; more is another part's wood
	maxPlay                    = 5         // of a joint; more is a slip of the decimal point
	maxPrice                   = 1_000_000 // of one sheet

	// maxSpread is the part of their mean by which readings of one stock may
	// differ. Plywood of one sheet keeps within 5 %; two stocks or a mistyped
	// digit do not keep within 15 %.
	maxSpread = 0.15
)
