// Reads binary STL files named on standard input, one a line. Prints for each
// {"file", "status", "volume", "triangles", "open", "low", "high"}: what weld.mjs tells
// of it, and the bounds that three.js finds.
import { readFileSync } from 'node:fs';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { welded } from './weld.mjs';

function read(file) {
  const data = readFileSync(file);
  const n = data.readUInt32LE(80);
  if (data.length !== 84 + 50 * n) throw new Error(`${file}: ${data.length} bytes for ${n} triangles`);
  if (data.subarray(0, 5).toString() === 'solid') throw new Error(`${file}: a binary header that begins with solid`);
  const points = [];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < 3; k++) {
      const at = 84 + 50 * i + 12 + 12 * k;
      points.push([data.readFloatLE(at), data.readFloatLE(at + 4), data.readFloatLE(at + 8)]);
    }
  }
  const geometry = new STLLoader().parse(data.buffer.slice(data.byteOffset, data.byteOffset + data.byteLength));
  geometry.computeBoundingBox();
  return { points, low: geometry.boundingBox.min.toArray(), high: geometry.boundingBox.max.toArray() };
}

for (const file of readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  const { points, low, high } = read(file);
  console.log(JSON.stringify({ file, low, high, ...welded(points) }));
}
