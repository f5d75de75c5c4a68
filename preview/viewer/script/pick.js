// What is seen at a dot of the page: the piece nearest to the eye there.

// hit gives how near to the eye the line through a place meets a solid, or nothing.
// Both place and direction are in the solid's own frame.
function hit(solid, p, d, beyond) {
  // Against the block about it first.
  let from = -Infinity, to = Infinity;
  for (let k = 0; k < 3; k++) {
    if (Math.abs(d[k]) < 1e-9) {
      if (p[k] < solid.low[k] || p[k] > solid.high[k]) return null;
      continue;
    }
    const a = (solid.low[k] - p[k]) / d[k], b = (solid.high[k] - p[k]) / d[k];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  if (from > to + 1e-6) return null;
  let best = null;
  const v = solid.places, c = solid.corners;
  for (let t = 0; t < c.length; t += 3) {
    const i = 3 * c[t], j = 3 * c[t + 1], k = 3 * c[t + 2];
    // Where the line meets the triangle's plane, by T. Moller and B. Trumbore, "Fast,
    // Minimum Storage Ray/Triangle Intersection", 1997.
    const ax = v[j] - v[i], ay = v[j + 1] - v[i + 1], az = v[j + 2] - v[i + 2];
    const bx = v[k] - v[i], by = v[k + 1] - v[i + 1], bz = v[k + 2] - v[i + 2];
    const hx = d[1] * bz - d[2] * by, hy = d[2] * bx - d[0] * bz, hz = d[0] * by - d[1] * bx;
    const det = ax * hx + ay * hy + az * hz;
    if (Math.abs(det) < 1e-12) continue;
    const sx = p[0] - v[i], sy = p[1] - v[i + 1], sz = p[2] - v[i + 2];
    const u = (sx * hx + sy * hy + sz * hz) / det;
    if (u < 0 || u > 1) continue;
    const qx = sy * az - sz * ay, qy = sz * ax - sx * az, qz = sx * ay - sy * ax;
    const w = (d[0] * qx + d[1] * qy + d[2] * qz) / det;
    if (w < 0 || u + w > 1) continue;
    const near = (bx * qx + by * qy + bz * qz) / det;
    if ((best === null || near > best) && !beyond(near)) best = near;
  }
  return best;
}

// seenAt finds the piece that is seen at a dot.
function seenAt(state, x, y, axes = state.camera.axes()) {
  const from = state.camera.under(x, y, axes);
  const [n, far] = state.cut();
  const start = dot(n, from), rate = dot(n, axes.eye);
  let seen = null, nearest = -Infinity;
  for (const p of state.shown()) {
    const f = state.frame(p);
    const near = hit(state.solid(p), into(f, from), turnedInto(f, axes.eye), (t) => start + rate * t > far);
    if (near !== null && near > nearest) [seen, nearest] = [p, near];
  }
  return seen;
}
