// The eye is far away (a parallel projection, as on paper): it stands so many degrees
// to the left of straight before the box and as many above, and looks at a place.

const LOOKS = {
  corner: [-30, 30],
  front: [0, 0],
  right: [-90, 0],
  behind: [180, 0],
  top: [0, 90],
  below: [0, -90],
};

// OPERATOR is from where a machine is looked at: from before it, over the part to the fence at the right.
const OPERATOR = [30, 28];

// Fewer dots a millimeter than this show nothing, more show grains of float32.
const SMALLEST = 0.02, LARGEST = 400;

class Camera {
  constructor() {
    this.left = LOOKS.corner[0];
    this.above = LOOKS.corner[1];
    this.at = [0, 0, 0];
    this.scale = 1; // dots of the page to the millimeter
    this.width = this.height = 1;
    this.fitted = true; // nobody has zoomed or moved since all was shown
    this.reach = 1; // how far from `at` anything is, in mm
  }

  // axes are right and up in the picture, and the way to the eye.
  axes() {
    const l = this.left * Math.PI / 180, a = this.above * Math.PI / 180;
    const right = [Math.cos(l), -Math.sin(l), 0];
    const eye = [-Math.sin(l) * Math.cos(a), -Math.cos(l) * Math.cos(a), Math.sin(a)];
    return { right, eye, up: cross(eye, right) };
  }

  turn(left, above) {
    this.left = (this.left + left) % 360;
    this.above = within(this.above + above, -90, 90);
  }

  look(name) { [this.left, this.above] = LOOKS[name]; }

  move(dx, dy) {
    this.fitted = false;
    const { right, up } = this.axes();
    this.at = plus(this.at, plus(times(right, -dx / this.scale), times(up, dy / this.scale)));
  }

  // zoom keeps what is under a dot of the page where it is.
  zoom(factor, x = this.width / 2, y = this.height / 2) {
    const dx = x - this.width / 2, dy = y - this.height / 2;
    const scale = within(this.scale * factor, SMALLEST, LARGEST);
    const k = 1 - this.scale / scale;
    this.move(-dx * k, -dy * k);
    this.scale = scale;
  }

  // fit shows a block whole, with so many dots free about it.
  fit(low, high, margin = 0) {
    this.fitted = true;
    this.at = times(plus(low, high), 0.5);
    const { right, up } = this.axes();
    const half = times(minus(high, low), 0.5);
    const extent = (v) => Math.abs(v[0]) * half[0] + Math.abs(v[1]) * half[1] + Math.abs(v[2]) * half[2];
    const room = (dots) => Math.max(dots / 3, Math.min(0.86 * dots, dots - 2 * margin)) / 2;
    this.scale = within(Math.min(room(this.width) / (extent(right) || 1), room(this.height) / (extent(up) || 1)), SMALLEST, LARGEST);
  }

  // project gives the dot of the page at which a place is seen.
  project(p, axes = this.axes()) {
    const d = minus(p, this.at);
    return [this.width / 2 + this.scale * dot(d, axes.right), this.height / 2 - this.scale * dot(d, axes.up)];
  }

  // under is the place, in the plane through `at`, that is seen at a dot.
  under(x, y, axes = this.axes()) {
    return plus(this.at, plus(times(axes.right, (x - this.width / 2) / this.scale), times(axes.up, (this.height / 2 - y) / this.scale)));
  }

  // matrix takes places to what WebGL shows.
  matrix() {
    const { right, up, eye } = this.axes();
    const rows = [times(right, 2 * this.scale / this.width), times(up, 2 * this.scale / this.height), times(eye, -1 / this.reach)];
    const m = [];
    for (let k = 0; k < 3; k++) m.push(rows[0][k], rows[1][k], rows[2][k], 0);
    m.push(...rows.map((r) => -dot(r, this.at)), 1);
    return m;
  }
}
