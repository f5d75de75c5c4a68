// Reads boxes, one a line: {name, parts: [{name, panel, origin, x, y}]}. Prints for
// each {"name", "low", "high", "overlaps": [{"a", "b", "volume"}]}: where it
// stands, and the volume in mm3 in which any two parts both are.
import { lines, panel, place, Manifold } from './panels.mjs';

// Panels that were made before: many boxes share some.
const made = new Map();
function once(p) {
  const key = JSON.stringify(p);
  if (!made.has(key)) made.set(key, panel(p));
  return made.get(key);
}

for (const box of await lines()) {
  const parts = box.parts.map((p) => ({ name: p.name, solid: place(once(p.panel), p) }));
  const overlaps = [];
  parts.forEach((a, i) => parts.slice(i + 1).forEach((b) => {
    overlaps.push({ a: a.name, b: b.name, volume: Manifold.intersection(a.solid, b.solid).volume() });
  }));
  const bounds = parts.map(({ solid }) => solid.boundingBox());
  const along = (pick, key) => [0, 1, 2].map((k) => pick(...bounds.map((b) => b[key][k])));
  console.log(JSON.stringify({ name: box.name, low: along(Math.min, 'min'), high: along(Math.max, 'max'), overlaps }));
}
