// Reads binary STL files named on standard input, one a line. Prints for each
// {"file", "status", "volume", "triangles", "open"}: "open" counts directed edges
// without an opposite by exact coordinates; "status" is manifold-3d's word after
// equal coordinates were welded ("NoError" is good).
import { readFileSync } from 'node:fs';
import { Manifold, Mesh } from './panels.mjs';

function read(file) {
  const data = readFileSync(file);
  const n = data.readUInt32LE(80);
  if (data.length !== 84 + 50 * n) throw new Error(`${file}: ${data.length} bytes for ${n} triangles`);
  if (data.subarray(0, 5).toString() === 'solid') throw new Error(`${file}: a binary header that begins with solid`);
  const vertices = [], index = new Map(), triangles = [];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < 3; k++) {
      const at = 84 + 50 * i + 12 + 12 * k;
      const p = [data.readFloatLE(at), data.readFloatLE(at + 4), data.readFloatLE(at + 8)].map((v) => v + 0);
      const key = p.join();
      if (!index.has(key)) { index.set(key, index.size); vertices.push(...p); }
      triangles.push(index.get(key));
    }
  }
  return { vertices, triangles };
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

for (const file of readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  const { vertices, triangles } = read(file);
  const out = { file, triangles: triangles.length / 3, open: openEdges(triangles) };
  try {
    const solid = new Manifold(new Mesh({ numProp: 3, vertProperties: new Float32Array(vertices), triVerts: new Uint32Array(triangles) }));
    out.status = solid.status();
    out.volume = solid.volume();
  } catch (error) {
    out.status = String(error.message ?? error);
    out.volume = 0;
  }
  console.log(JSON.stringify(out));
}
