// Solids as they are drawn: triangles with flat normals, and the lines where a surface
// turns sharply.

// Faces that turn by less than 25 degrees are chords of one arc, without a line between.
const SHARP = Math.cos(25 * Math.PI / 180);

// Solids are those of a scene, each unpacked when it is first shown: {corners, triangles: 18
// numbers a triangle (place and normal of each corner), lines: 6 numbers a line, low, high}.
class Solids {
  constructor(data) {
    const text = atob(data.bytes);
    const bytes = new Uint8Array(text.length);
    for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
    this.view = new DataView(bytes.buffer);
    this.meshes = data.meshes;
    this.made = [];
  }

  of(n) { return this.made[n] ??= this.unpack(this.meshes[n]); }

  unpack(m) {
    const { view } = this;
    const places = new Float32Array(3 * m.vertices);
    for (let i = 0; i < places.length; i++) places[i] = view.getFloat32(m.at + 4 * i, true);
    const at = m.at + 12 * m.vertices;
    const corners = new Uint32Array(3 * m.triangles);
    for (let i = 0; i < corners.length; i++) corners[i] = m.wide ? view.getUint32(at + 4 * i, true) : view.getUint16(at + 2 * i, true);
    return solidOf(places, corners);
  }
}

function solidOf(places, corners) {
  const at = (i) => [places[3 * i], places[3 * i + 1], places[3 * i + 2]];
  const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < places.length; i++) {
    low[i % 3] = Math.min(low[i % 3], places[i]);
    high[i % 3] = Math.max(high[i % 3], places[i]);
  }
  const triangles = new Float32Array(6 * corners.length);
  const sides = new Map(); // by both ends: the normal of the face first met
  const lines = [];
  for (let t = 0; t < corners.length; t += 3) {
    const ids = [corners[t], corners[t + 1], corners[t + 2]];
    const [a, b, c] = ids.map(at);
    const n = unit(cross(minus(b, a), minus(c, a)));
    [a, b, c].forEach((p, k) => triangles.set([...p, ...n], 6 * (t + k)));
    for (let k = 0; k < 3; k++) {
      const i = ids[k], j = ids[(k + 1) % 3];
      const key = i < j ? i * 4294967296 + j : j * 4294967296 + i;
      const other = sides.get(key);
      if (other === undefined) sides.set(key, n);
      else if (dot(other, n) < SHARP) lines.push(...at(i), ...at(j));
    }
  }
  return { places, corners, triangles, lines: new Float32Array(lines), low, high };
}
