package sheet

// UsualShort is by how much a sheet may be smaller than its size, in mm: the tolerance of
// EN 315 for the length and width of plywood (from memory).
const UsualShort = 3.5

// MaxShort is the most by which a sheet may differ from its size, in mm, before it is
// taken for another size; common practice, no source.
const MaxShort = 50.0
