// A soup of triangles as one solid of manifold-3d.
import { Manifold, Mesh } from './panels.mjs';

// solidOf takes points, three a triangle, joins equal ones, and makes a solid of them.
export const solidOf = (points) => made(joined(points));

const made = ({ vertices, triangles }) => new Manifold(new Mesh({ numProp: 3, vertProperties: new Float32Array(vertices), triVerts: new Uint32Array(triangles) }));

function joined(points) {
  const vertices = [], index = new Map(), triangles = [];
  for (const [x, y, z] of points) {
    const p = [x + 0, y + 0, z + 0]; // no negative zeros
    const key = p.join();
    if (!index.has(key)) { index.set(key, index.size); vertices.push(...p); }
    triangles.push(index.get(key));
  }
  return { vertices, triangles };
}

// welded tells of such points {triangles, open, status, volume}: "open" counts directed edges
// without an opposite, "status" is manifold-3d's word ("NoError" is good).
export function welded(points) {
  const all = joined(points);
  const out = { triangles: all.triangles.length / 3, open: openEdges(all.triangles) };
  try {
    const solid = made(all);
    out.status = solid.status();
    out.volume = solid.volume();
  } catch (error) {
    out.status = String(error.message ?? error);
    out.volume = 0;
  }
  return out;
}

function openEdges(triangles) {
  const balance = new Map();
  const add = (a, b, by) => balance.set(`${a} ${b}`, (balance.get(`${a} ${b}`) ?? 0) + by);
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[i + k], b = triangles[i + (k + 1) % 3];
      add(a, b, 1);
      add(b, a, -1);
    }
  }
  return [...balance.values()].filter((v) => v > 0).length;
}
