// Reads GLB files named on standard input, one a line. Prints for each {"file",
// "errors", "warnings", "messages", "low", "high", "nodes": [{"name", "part", "mesh",
// "status", "volume", "open"}]}: what gltf-validator counts, the bounds that three.js
// finds in meters, and for each node with a mesh, placed as its matrix says, what
// manifold-3d makes of it once equal coordinates were welded; volumes in mm3.
import { readFileSync } from 'node:fs';
import validator from 'gltf-validator';
import { Box3, Vector3 } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { welded } from './weld.mjs';

const load = (data) => new Promise((resolve, reject) => {
  new GLTFLoader().parse(data.buffer.slice(data.byteOffset, data.byteOffset + data.byteLength), '', resolve, reject);
});

for (const file of readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  const data = readFileSync(file);
  const { issues } = await validator.validateBytes(new Uint8Array(data));
  const { scene, parser } = await load(data);
  scene.updateMatrixWorld(true);
  const box = new Box3().setFromObject(scene, true);
  const out = { file, errors: issues.numErrors, warnings: issues.numWarnings, messages: issues.messages.slice(0, 5), low: box.min.toArray(), high: box.max.toArray(), nodes: [] };
  scene.traverse((o) => {
    if (!o.isMesh) return;
    const { position } = o.geometry.attributes;
    const p = new Vector3();
    const points = [...o.geometry.index.array].map((i) => {
      p.fromBufferAttribute(position, i).applyMatrix4(o.matrixWorld);
      return [p.x * 1000, p.y * 1000, p.z * 1000];
    });
    out.nodes.push({ name: o.userData.name ?? o.name, part: o.userData.part, mesh: parser.associations.get(o).meshes, ...welded(points) });
  });
  console.log(JSON.stringify(out));
}
