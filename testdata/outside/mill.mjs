// Reads sheets as dxf_mill.py prints them, one a line. Mills each from both sides with
// manifold-3d, as it is drawn and with what holds the parts cut through, and prints
// {"name", "drawn": [piece], "out": [piece]}: the pieces that it comes apart into, each
// {"volume", "low", "high"} in mm, the waste among them.
import { lines, panel } from './panels.mjs';

const pieces = (sheet, through) => {
  const pockets = [];
  for (const c of sheet.cuts) {
    const depth = through && c.profile ? sheet.thickness + 1 : c.depth;
    for (const rings of c.shape) pockets.push({ outside: c.outside, depth, rings });
  }
  const outline = [[0, 0], [sheet.length, 0], [sheet.length, sheet.width], [0, sheet.width]];
  return panel({ thickness: sheet.thickness, outline, pockets }).decompose().map((m) => {
    const { min, max } = m.boundingBox();
    return { volume: m.volume(), low: [...min], high: [...max] };
  }).filter((p) => p.volume > 1);
};

for (const sheet of await lines()) console.log(JSON.stringify({ name: sheet.name, drawn: pieces(sheet, false), out: pieces(sheet, true) }));
