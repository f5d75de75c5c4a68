package job

// Code names the rule that a part of a job file breaks. Codes are stable;
// messages are not.
type Code string

const (
	CodeRead           Code = "read"            // the file could not be read to its end
	CodeTooLarge       Code = "too-large"       // more bytes, marks or depth than any job has
	CodeNotUTF8        Code = "not-utf8"        // text in another encoding
	CodeControl        Code = "control"         // a control character
	CodeTab            Code = "tab"             // a line indented by something else than spaces
	CodeEmpty          Code = "empty"           // nothing but comments
	CodeLayout         Code = "layout"          // lines, colons or commas that do not form entries
	CodeUnclosed       Code = "unclosed"        // a bracket or quote without its end
	CodeUnsupported    Code = "unsupported"     // YAML that a job does without: anchors, tags, block text, more documents
	CodeUnknownKey     Code = "unknown-key"     // an entry that does not exist
	CodeDuplicateKey   Code = "duplicate-key"   // an entry written twice
	CodeMissingKey     Code = "missing-key"     // an entry that is needed
	CodeNoValue        Code = "no-value"        // a key with nothing after it
	CodeWrongKind      Code = "wrong-kind"      // a list, mapping or text where another of them is needed
	CodeNotLength      Code = "not-a-length"    // text that is not a length
	CodeUnknownUnit    Code = "unknown-unit"    // a length in something else than mm, cm, m, in or ft
	CodeNotSize        Code = "not-a-size"      // a size with more or fewer numbers, or with some units left out
	CodeNotNumber      Code = "not-a-number"    // a count or price that is not a plain number
	CodeUnknownWord    Code = "unknown-word"    // none of the words that the entry takes
	CodeOutOfRange     Code = "out-of-range"    // too small or too large
	CodeTooMany        Code = "too-many"        // more drawers, stocks or readings than the limit, or none
	CodeBadName        Code = "bad-name"        // a name or title with signs that it cannot have
	CodeLetters        Code = "letters"         // a name or title in letters that paper lacks
	CodeSameName       Code = "same-name"       // two names that are the same, or the same as file names
	CodeUnknownStock   Code = "unknown-stock"   // a stock that the file does not list
	CodeNoEffect       Code = "no-effect"       // an entry that does nothing beside the others
	CodeUnknownName    Code = "unknown-name"    // an opening, slide or bit that is not there
	CodeFile           Code = "file"            // the name of another file that cannot be one, or a file that cannot be opened
	CodeLog            Code = "log"             // a line of the shop's log that cannot be read
	CodeNotForSaw      Code = "not-for-a-saw"   // a setting that only a router can keep
	CodeCutter         Code = "cutter"          // a tool with entries of another kind of tool
	CodeUnevenReadings Code = "uneven-readings" // readings that differ more than sheets of one order do
	CodeMixedReadings  Code = "mixed-readings"  // readings that differ too much for one stock
	CodeAssumed        Code = "assumed"         // what the file does not say, and is taken to be so
	CodeMoisture       Code = "moisture"        // air in which wood's movement is an estimate
)
