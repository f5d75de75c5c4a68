// Package viewer is the page on which boxes are looked at before a board is cut: one
// file that needs no library and asks for nothing, so that it opens from a memory
// stick. [Write] writes it for a scene.
//
// # For another page
//
// A page that is served can show the same viewer with data of its own:
//
//   - [Script] is the whole program, one classic script without imports. It defines one
//     global, mountViewer, and does nothing by itself.
//   - [Style] is its style sheet. All rules are for what stands within ".dw-viewer"; the
//     colors are custom properties set on that element.
//   - [Data] is a scene as JSON, safe to be put into a script element of any type.
//
// In the page:
//
//	const viewer = mountViewer(element, sceneData, options)
//	viewer.update(sceneData)  // another state of the job
//	viewer.number(3)          // marks the pieces of the parts with that number
//	viewer.destroy()          // takes it out of the page and frees what it holds
//	viewer.works              // false where WebGL is missing
//	viewer.frames             // {drawn, last, longest}: frames and their script's time in ms
//
// element is an empty block element; it gets the class dw-viewer and fills with canvas
// and controls. It should have a height (it takes 100% of its parent's). sceneData is
// the parsed JSON of [Data]. options may be left out; options.pictures is a list of
// SVG elements or other nodes, one a drawer in the order of sceneData.boxes, that are
// shown instead where WebGL is missing. Without it the page says only what to do.
// options.resize(axis, button, piece) is called when a person chooses a dimension of the box, or
// of the place of a piece, and options.chosen(number) when a part is chosen; options.place(piece)
// gives {axis, mm, name, piece} for one that can be moved, and options.move(piece, mm) moves it.
// options.embedded is for a viewer that is part of a page: its lists are folded away,
// and the page says whether it is light or dark.
//
// update keeps what a person has set: the direction looked from, the group, the parts
// hidden or chosen (by box and piece name), the section, how far the box is opened and
// drawers are pulled out. A step of assembly or of setups stays as well.
// Boards and machine stay as they were chosen. What no longer exists is forgotten. It is cheap enough
// to call on every change of a job; it draws once, in the next frame. Nothing is drawn while nothing
// changes: pieces move from one step of assembly to the next, and a joint closes, by frames of the
// browser, at once where a person wants no motion.
//
// The script sets no inline style attribute in markup and makes no network request,
// worker, eval or timer, so that it runs under the policy
// "default-src 'none'; script-src ...; style-src ...".
//
// # The data
//
//	{"title", "unit": "mm" or "in", "ease": 10,
//	 "meshes": [{"at": offset in bytes, "vertices": n, "triangles": n, "wide": true where corners are uint32}],
//	 "roles":  {role: {"light": "#rrggbb", "dark": "#rrggbb"}},
//	 "stocks": {stock: {"light", "dark"}}, of those that the job names,
//	 "parts":  [{"name", "number", "role", "label", "stock", "grained", "length", "width", "thickness",
//	             "quantity", "mesh", "milled", "eased",
//	             "pockets": [{"kind", "face", "at": [x, y], "size": [length, width], "depth", "through"}]}],
//	 "boxes":  [{"name", "count", "size": [width, height, depth],
//	             "opening": [text of each step],
//	             "steps": [{"text", "from", "open", "glue": [[piece, x, y, z, x, y, z]],
//	                        "clamps": [{"low", "high", "pad"}]}],
//	             "pieces": [{"name", "part", "origin": [x, y, z], "x": [..], "y": [..],
//	                         "moves": [[step, dx, dy, dz]]}],
//	             "plays": [{"name", "play": 0 or below of what does not go in,
//	                        "axis": 0 to 2, "along": 0 to 2, "low": [..], "high": [..],
//	                        "in", "of": pieces, what is in the slot and whose it is, "pocket": of that part,
//	                        "way": [..], how far "of" moves to be out, "up": true where the clearance is above "in",
//	                        "open": true of a notch at an edge, which has no width,
//	                        "measure": what judges it, "verdict": the word where that is not right,
//	                        "jams": true where nothing goes in}],
//	             "overlaps": [{"name", "low", "high"}],
//	             "off": {source: [a, b]}, a board's least and most, or a x draw + b of the machine,
//	             "joints": [{"name": as "measure" has it, "clearance", "slot", "tongue": forms of what is off,
//	                         "within": what is in the slot, "said": [{"state", "sign", "words", "jams"}],
//	                         "verdicts": a digit, one of "said", for each choice of boards and draw}]}],
//	 "draws": {source: [random numbers, of the numbered boxes of the forecast]},
//	 "groups": [{"name", "boxes": [index], "at": [[x, y, z]],
//	             "carcass", of boxes that share an opening:
//	              {"low", "high" of the opening, "travel": [mm, of each box], "assumed": [text],
//	               "outlines": [{"name", "low", "high", "box": index in the group, -1 of none's,
//	                             "motion": "stays", "moves" or "runs", "usual": true where a size is a usual one}],
//	               "clearances": [{"name", "gap", "axis", "low", "high", "box"}],
//	               "collisions": [{"name", "by", "low", "high", "pulled": true where closed drawers do not}]}}],
//	 "setups": [{"name", "heading", "figures": [[name, value]], "notes", "cautions", "cutter", "height",
//	             "cuts": [{"number", "text", "parts", "notes", "cautions",
//	                       "feeds": [{"parts": [index], "edge", "down": face, "pass", "passes", "fence",
//	                                  "before", "after": meshes, "origin", "x", "y", "by": how far along Y,
//	                                  "rows": [mm to the right of the first finger], "lead": mm before the cut,
//	                                  "machine": [{"mesh", "role", "fed": true of what goes along}]}]}]}],
//	 "bytes":  base64 of all meshes: for each its vertices, x y z as float32 little
//	           endian in mm, then the corners of its triangles as uint16, padded to 4 bytes}
//
// Steps are those of assembly, as the packet has them. In each, opening has come to so many of its
// steps ("open"), and pieces that come off before its step "from" are not on yet. Glue is on a face
// of a piece, from corner to corner where that stands in the box; a clamp is blocks, of wood where
// they are pads.
//
// A form {"at", "by": [[source, times]], "bends": [{"times", "a", "b"}]} is at, and times what each
// source is off by, and times the lesser of two forms at each bend. Choices are boards at the least,
// the mean and the most of their readings, each with the machine as set and with the errors of each
// numbered box. The script adds up and judges nothing.
//
// Setups are of machines with a fence, where there are any, with the words of their cards. Their places
// are those of the machine: the operator feeds along Y, away from himself, with the fence at his right,
// X = 0 at the near side of the cutter and Z = 0 on the table.
//
// Everything is in millimeters, whatever the unit that numbers are shown in; places
// are those of the package scene.
package viewer
