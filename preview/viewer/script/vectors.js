// Vectors are arrays of three numbers, in millimeters or without a unit.
const plus = (a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const minus = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a, k) => [a[0] * k, a[1] * k, a[2] * k];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => times(a, 1 / (Math.hypot(...a) || 1));
const within = (v, low, high) => Math.min(high, Math.max(low, v));

// A frame is where something stands: {o, x, y, z}, its origin and its axes.
const frameOf = (o, x, y) => ({ o, x, y, z: cross(x, y) });
const outOf = (f, p) => [
  f.o[0] + f.x[0] * p[0] + f.y[0] * p[1] + f.z[0] * p[2],
  f.o[1] + f.x[1] * p[0] + f.y[1] * p[1] + f.z[1] * p[2],
  f.o[2] + f.x[2] * p[0] + f.y[2] * p[1] + f.z[2] * p[2],
];
const turnedInto = (f, v) => [dot(v, f.x), dot(v, f.y), dot(v, f.z)];
const into = (f, p) => turnedInto(f, minus(p, f.o));
const matrixOf = (f) => [...f.x, 0, ...f.y, 0, ...f.z, 0, ...f.o, 1];
