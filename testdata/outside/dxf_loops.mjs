// Reads DXF files named on standard input, one a line, with dxf-parser. Prints
// for each {"file", "entities": [{"layer", "type", "closed", "points"}]}: the
// reader's own view of every polyline and circle.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';

for (const file of readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  const drawing = new DxfParser().parseSync(readFileSync(file, 'utf8'));
  const entities = drawing.entities.map((e) => (e.type === 'CIRCLE'
    ? { layer: e.layer, type: e.type, closed: true, center: [e.center.x, e.center.y], radius: e.radius }
    : { layer: e.layer, type: 'POLYLINE', closed: e.shape === true, points: e.vertices.map((v) => [v.x, v.y, v.bulge ?? 0]) }));
  console.log(JSON.stringify({ file, entities }));
}
