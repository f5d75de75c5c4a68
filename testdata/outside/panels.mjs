// Panels as manifold-3d solids, made by its own booleans. Shared by booleans.mjs
// and boxes.mjs.
//
// A panel is {thickness, outline: ring, holes: [ring], pockets: [{outside, depth,
// rings}]}; a ring is [[x, y], ...] in millimeters, counter-clockwise, and among a
// pocket's rings clockwise where it is an island.
import Module from 'manifold-3d';

const wasm = await Module();
wasm.setup();
export const { Manifold, Mesh, CrossSection } = wasm;

// How far cutters stand out of the faces, so that no two surfaces coincide.
const OVER = 1;

export function panel({ thickness, outline, holes = [], pockets = [] }) {
  const blank = Manifold.extrude([outline], thickness);
  const cutters = [
    ...holes.map((ring) => Manifold.extrude([ring], thickness + 2 * OVER).translate([0, 0, -OVER])),
    ...pockets.map(({ outside, depth, rings }) => Manifold.extrude(rings, depth + OVER)
      .translate([0, 0, outside ? -OVER : thickness - depth])),
  ];
  if (cutters.length === 0) return blank;
  return blank.subtract(Manifold.union(cutters));
}

// place stands a panel in a box: origin, and the directions of its x, y and z.
export function place(solid, { origin: o, x, y }) {
  const z = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
  return solid.transform([...x, 0, ...y, 0, ...z, 0, ...o, 1]);
}

// lines reads standard input as one JSON value a line.
export async function lines() {
  let text = '';
  for await (const chunk of process.stdin) text += chunk;
  return text.split('\n').filter((l) => l.trim() !== '').map((l) => JSON.parse(l));
}
