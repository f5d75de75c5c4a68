// Package dxf writes drawings of closed and open polylines and circles in the
// DXF text format, as the file that a toolpath program opens. It knows the
// format and nothing of what is drawn.
//
// Declare layers with [Drawing.Layer], draw on them with [Drawing.Polyline] and
// [Drawing.Circle], and write the file with [Drawing.WriteTo]. The zero
// [Drawing] is an empty one in millimeters, of the version [R2000]. Whatever is
// wrong with what was drawn is kept and said by WriteTo before
// it writes a byte, so that the calls in between need no checks.
//
// Coordinates are in the drawing's own unit, x to the right, y up, z = 0. A
// bulge bends the edge from its vertex to the next: the tangent of a quarter of
// the included angle, positive for an arc that runs counter-clockwise, so 1 is
// a half circle. The same calls give the same bytes: the file holds no time, no
// name of a computer and nothing that is random.
//
// # Sources
//
// The DXF Reference of the format's publisher (its online help): LWPOLYLINE,
// page GUID-748FC305-F3F2-4F74-825A-61F04D757A50; bulges, GUID-6AC9CF99;
// $ACADVER, GUID-A85E8E67-27CD-4C59-BE61-4DC9FADBE74A; $INSUNITS,
// GUID-A58A87BB-482B-4042-A00A-EEF55A2B4FD8; names, GUID-8EC065EC; colors,
// GUID-D08F9A8E. The order of the sections and the least set of tables and
// dictionaries are as the notes of an open DXF library tell them (secondary).
// The layout of POLYLINE, VERTEX and SEQEND, of the table records, of LAYOUT and
// MLINESTYLE, and the meaning of $MEASUREMENT are values from memory, tried
// against several independent readers.
package dxf
