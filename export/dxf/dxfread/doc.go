// Package dxfread reads DXF text files back from disk, to prove what is in them.
// It shares no code with the writer in package dxf, so that a mistake there is
// not made here a second time, and it takes what other programs write of the
// same drawing.
//
// [Parse] gives the unit, the comments, the layers and the entities of a
// [File]. It reads polylines of both kinds, circles, lines and arcs of the
// ENTITIES section in drawing units, x to the right, y up. Whatever else stands
// there arrives with its type, its layer and its line; blocks and all other
// sections are passed over.
//
// A file that is damaged is an error with its line, never half a drawing: not
// pairs of lines ([ErrTags]), a number that is none ([ErrNumber]), sections that
// do not close ([ErrSections]), an entity that lacks a part ([ErrIncomplete]).
// Whether a sound file suits a machine is for others to judge.
//
// # Sources
//
// The DXF Reference of the format's publisher (its online help): LWPOLYLINE,
// page GUID-748FC305-F3F2-4F74-825A-61F04D757A50; bulges, GUID-6AC9CF99;
// $ACADVER, GUID-A85E8E67-27CD-4C59-BE61-4DC9FADBE74A; $INSUNITS,
// GUID-A58A87BB-482B-4042-A00A-EEF55A2B4FD8. The group codes of POLYLINE, VERTEX,
// SEQEND, CIRCLE, LINE and ARC, the extrusion direction and the sentinel of the
// binary format are values from memory.
package dxfread
