// Reads {"file", "moves"} from standard input, one a line: the GLB file of a drawer and, for each
// of its pieces in order, how far it is moved from where it stands, in mm of the box. Prints for
// each {"file", "pieces", "overlaps": [{"a", "b", "volume"}]}: how many pieces there are, and the
// volume in mm3 in which two of them both are, as manifold-3d finds it.
import { readFileSync } from 'node:fs';
import { Vector3 } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { Manifold, lines } from './panels.mjs';
import { solidOf } from './weld.mjs';

const load = (data) => new Promise((resolve, reject) => {
  new GLTFLoader().parse(data.buffer.slice(data.byteOffset, data.byteOffset + data.byteLength), '', resolve, reject);
});

for (const { file, moves } of await lines()) {
  const { scene } = await load(readFileSync(file));
  scene.updateMatrixWorld(true);
  const pieces = [];
  scene.traverse((o) => {
    if (!o.isMesh) return;
    const p = new Vector3();
    const [dx, dy, dz] = moves[pieces.length] ?? [0, 0, 0]; // up is Y in the file, and the front looks along Z
    const points = [...o.geometry.index.array].map((i) => {
      p.fromBufferAttribute(o.geometry.attributes.position, i).applyMatrix4(o.matrixWorld);
      return [p.x * 1000 + dx, p.y * 1000 + dz, p.z * 1000 - dy];
    });
    pieces.push({ name: o.userData.name ?? o.name, solid: solidOf(points) });
  });
  const overlaps = [];
  pieces.forEach((a, i) => pieces.slice(i + 1).forEach((b) => {
    const volume = Manifold.intersection(a.solid, b.solid).volume();
    if (volume > 0) overlaps.push({ a: a.name, b: b.name, volume });
  }));
  console.log(JSON.stringify({ file, pieces: pieces.length, overlaps }));
}
