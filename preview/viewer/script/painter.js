// The picture of solids by WebGL: faces, lines, the faces of a cut, and what overlaps.

const FACE_VERTEX = `#version 300 es
precision highp float;
uniform mat4 view, model;
in vec3 place, normal;
out vec3 at, turned;
flat out float side; // of the panel: 1 inside, -1 outside, 0 an edge or a wall
void main() {
  vec4 p = model * vec4(place, 1.0);
  at = p.xyz;
  turned = mat3(model) * normal;
  side = abs(normal.z) > 0.5 ? sign(normal.z) : 0.0;
  gl_Position = view * p;
}`;

const FACE_PIXEL = `#version 300 es
precision highp float;
uniform vec3 color, ink, eye, up;
uniform vec4 cut;
uniform float chosen, faces, spacing;
in vec3 at, turned;
flat in float side;
out vec4 dye;
void main() {
  if (dot(at, cut.xyz) > cut.w) discard;
  float lit = 0.76 + 0.16 * abs(dot(turned, eye)) + 0.1 * max(0.0, dot(turned, up));
  vec3 c = color * lit;
  // Outside faces are hatched, a chosen piece has dots: seen without color, too.
  if (faces > 0.5 && side < 0.0 && mod(gl_FragCoord.x + gl_FragCoord.y, 7.0 * spacing) < spacing) c = mix(c, ink, 0.45);
  if (chosen > 0.5) {
    vec2 d = mod(gl_FragCoord.xy, 8.0 * spacing) - 4.0 * spacing;
    if (dot(d, d) < 1.1 * spacing * spacing) c = mix(c, ink, 0.7);
  }
  dye = vec4(c, 1.0);
}`;

const LINE_VERTEX = `#version 300 es
precision highp float;
uniform mat4 view, model;
uniform float nearer;
in vec3 place;
out vec3 at;
void main() {
  vec4 p = model * vec4(place, 1.0);
  at = p.xyz;
  gl_Position = view * p;
  gl_Position.z -= nearer;
}`;

const LINE_PIXEL = `#version 300 es
precision highp float;
uniform vec4 color, cut;
uniform float hatch, slope, spacing;
in vec3 at;
out vec4 dye;
void main() {
  if (dot(at, cut.xyz) > cut.w) discard;
  if (hatch > 0.5 && mod(gl_FragCoord.x + slope * gl_FragCoord.y, hatch * spacing) > spacing) discard;
  dye = color;
}`;

const WHOLE = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
const NO_CUT = [0, 0, 0, 1];

class Painter {
  // An error without WebGL 2.
  constructor(canvas) {
    // What was drawn is kept, so that a printer finds it.
    const gl = canvas.getContext('webgl2', { stencil: true, antialias: true, alpha: false, preserveDrawingBuffer: true });
    if (!gl) throw new Error('no WebGL');
    this.gl = gl;
    this.canvas = canvas;
    this.faces = program(gl, FACE_VERTEX, FACE_PIXEL);
    this.lines = program(gl, LINE_VERTEX, LINE_PIXEL);
    this.made = new Map(); // by solid
    [this.standing, this.cutting] = [new Kept(), new Kept()];
    this.loose = this.buffer(null, [[this.lines.at.place, 3]], 0);
  }

  buffer(numbers, attributes, stride) {
    const { gl } = this;
    const array = gl.createVertexArray(), data = gl.createBuffer();
    gl.bindVertexArray(array);
    gl.bindBuffer(gl.ARRAY_BUFFER, data);
    if (numbers) gl.bufferData(gl.ARRAY_BUFFER, numbers, gl.STATIC_DRAW);
    let offset = 0;
    for (const [where, size] of attributes) {
      gl.enableVertexAttribArray(where);
      gl.vertexAttribPointer(where, size, gl.FLOAT, false, stride, offset);
      offset += 4 * size;
    }
    return { array, data, count: numbers ? numbers.length * 4 / stride : 0 };
  }

  of(solid) {
    let b = this.made.get(solid);
    if (!b) {
      b = {
        faces: this.buffer(solid.triangles, [[this.faces.at.place, 3], [this.faces.at.normal, 3]], 24),
        lines: this.buffer(solid.lines, [[this.lines.at.place, 3]], 12),
      };
      this.made.set(solid, b);
    }
    return b;
  }

  // forget frees what was made for solids.
  forget() {
    const { gl } = this;
    for (const b of this.made.values()) {
      for (const { array, data } of [b.faces, b.lines]) {
        gl.deleteVertexArray(array);
        gl.deleteBuffer(data);
      }
    }
    this.made.clear();
    [this.standing, this.cutting] = [new Kept(), new Kept()];
  }

  // draw draws a state with the colors of a theme: numbers from 0 to 1.
  draw(state, theme, dots) {
    const { gl, canvas } = this;
    const { camera } = state;
    const { pieces, ends: [low, high] } = this.standing.of(state.standing(), () => this.stand(state));
    camera.reach = 2 * Math.max(1, Math.hypot(...minus(high, low)), Math.hypot(...minus(camera.at, low)), Math.hypot(...minus(camera.at, high)));
    this.view = camera.matrix();
    this.cut = state.cut().flat();
    this.dots = dots;
    gl.viewport(0, 0, canvas.width, canvas.height);
    gl.clearColor(...theme.ground, 1);
    gl.depthMask(true);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT | gl.STENCIL_BUFFER_BIT);
    gl.enable(gl.DEPTH_TEST);
    gl.depthFunc(gl.LEQUAL);
    gl.disable(gl.BLEND);
    this.solids(pieces, state, theme);
    if (state.section.axis >= 0) this.caps(pieces, state, theme);
    this.edges(pieces, state, theme);
  }

  // stand is the pieces that are drawn, as they stand.
  stand(state) {
    const pieces = state.shown().map((p) => {
      const solid = state.solid(p), f = state.frame(p);
      return { p, made: this.of(solid), model: new Float32Array(matrixOf(f)), ends: [outOf(f, solid.low), outOf(f, solid.high)] };
    });
    return { pieces, ends: state.bounds() };
  }

  solids(pieces, state, theme) {
    const { gl, faces: { uniform, id } } = this;
    gl.useProgram(id);
    gl.uniformMatrix4fv(uniform.view, false, this.view);
    gl.uniform4fv(uniform.cut, this.cut);
    gl.uniform3fv(uniform.ink, theme.ink);
    gl.uniform3fv(uniform.eye, state.camera.axes().eye);
    gl.uniform3fv(uniform.up, [0, 0, 1]);
    gl.uniform1f(uniform.faces, state.marks.faces ? 1 : 0);
    gl.uniform1f(uniform.spacing, this.dots);
    let color, marked, cut = this.cut; // a call that changes nothing takes its time, too
    for (const { p, made, model } of pieces) {
      gl.uniformMatrix4fv(uniform.model, false, model);
      const tint = theme.of(p.part, state.marks.woods);
      if (color !== tint) gl.uniform3fv(uniform.color, color = tint);
      if (marked !== state.marked(p)) gl.uniform1f(uniform.chosen, (marked = state.marked(p)) ? 1 : 0);
      if (cut !== (p.cut ?? this.cut)) gl.uniform4fv(uniform.cut, cut = p.cut ?? this.cut);
      gl.bindVertexArray(made.faces.array);
      gl.drawArrays(gl.TRIANGLES, 0, made.faces.count);
    }
  }

  // caps closes the cut: where more faces of a piece look away from the eye than to it,
  // the plane is inside the piece. Each has hatching of its own.
  caps(pieces, state, theme) {
    const { gl } = this;
    const { axis, at } = state.section;
    gl.enable(gl.STENCIL_TEST);
    for (const { p, made, model, ends } of pieces) {
      if (Math.min(ends[0][axis], ends[1][axis]) >= at || Math.max(ends[0][axis], ends[1][axis]) <= at) continue;
      const plane = planeThrough(ends, axis, at), tint = theme.of(p.part, state.marks.woods);
      gl.useProgram(this.faces.id);
      gl.uniformMatrix4fv(this.faces.uniform.model, false, model);
      gl.colorMask(false, false, false, false);
      gl.depthMask(false);
      gl.disable(gl.DEPTH_TEST);
      gl.stencilFunc(gl.ALWAYS, 0, 255);
      gl.stencilOpSeparate(gl.BACK, gl.KEEP, gl.KEEP, gl.INCR_WRAP);
      gl.stencilOpSeparate(gl.FRONT, gl.KEEP, gl.KEEP, gl.DECR_WRAP);
      gl.bindVertexArray(made.faces.array);
      gl.drawArrays(gl.TRIANGLES, 0, made.faces.count);
      gl.colorMask(true, true, true, true);
      gl.depthMask(true);
      gl.enable(gl.DEPTH_TEST);
      gl.stencilFunc(gl.NOTEQUAL, 0, 255);
      // Hatching first, for what it leaves out does not touch the stencil.
      gl.stencilOp(gl.KEEP, gl.KEEP, gl.KEEP);
      this.put(plane, gl.TRIANGLES, { color: [...mixed(theme.ink, tint, 0.25), 1], hatch: 9 + (p.order % 3) * 3, slope: p.order % 2 ? 1 : -1, nearer: 1e-5, cut: NO_CUT });
      gl.stencilOp(gl.ZERO, gl.ZERO, gl.ZERO);
      this.put(plane, gl.TRIANGLES, { color: [...mixed(tint, theme.ground, 0.45), 1], cut: NO_CUT });
    }
    gl.disable(gl.STENCIL_TEST);
  }

  edges(pieces, state, theme) {
    const { gl, lines: { uniform } } = this;
    const nearer = 1.4 / state.camera.scale / state.camera.reach;
    this.prepare({ color: [...theme.line, 1], nearer, cut: this.cut });
    let marked = false, { cut } = this;
    for (const { p, made, model } of pieces) {
      gl.uniformMatrix4fv(uniform.model, false, model);
      if (marked !== state.marked(p)) gl.uniform4fv(uniform.color, (marked = state.marked(p)) ? [...theme.ink, 1] : [...theme.line, 1]);
      if (cut !== (p.cut ?? this.cut)) gl.uniform4fv(uniform.cut, cut = p.cut ?? this.cut);
      gl.bindVertexArray(made.lines.array);
      gl.drawArrays(gl.LINES, 0, made.lines.count);
    }
    if (state.section.axis >= 0) this.put(this.cutting.of([state.section.axis, state.section.at, state.standing()].join(' '), () => cutLines(state, pieces)), gl.LINES, { color: [...theme.ink, 1], nearer: 2 * nearer, cut: NO_CUT });
  }

  // put draws places that are not kept: {color, hatch, slope, nearer, cut, through}, with
  // `through` before everything.
  put(numbers, kind, how) {
    const { gl } = this;
    if (numbers.length === 0) return;
    this.prepare(how);
    gl.uniformMatrix4fv(this.lines.uniform.model, false, WHOLE);
    gl.bindVertexArray(this.loose.array);
    if (this.loaded !== numbers) {
      gl.bindBuffer(gl.ARRAY_BUFFER, this.loose.data);
      gl.bufferData(gl.ARRAY_BUFFER, numbers, gl.STREAM_DRAW);
      this.loaded = numbers;
    }
    if (how.through) gl.disable(gl.DEPTH_TEST);
    if (how.color[3] < 1) {
      gl.enable(gl.BLEND);
      gl.blendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA);
    }
    gl.drawArrays(kind, 0, numbers.length / 3);
    gl.disable(gl.BLEND);
    gl.enable(gl.DEPTH_TEST);
  }

  prepare({ color, hatch = 0, slope = 1, nearer = 0, cut = this.cut }) {
    const { gl, lines: { uniform, id } } = this;
    gl.useProgram(id);
    gl.uniformMatrix4fv(uniform.view, false, this.view);
    gl.uniform4fv(uniform.cut, cut);
    gl.uniform4fv(uniform.color, color);
    gl.uniform1f(uniform.hatch, hatch);
    gl.uniform1f(uniform.slope, slope);
    gl.uniform1f(uniform.spacing, this.dots);
    gl.uniform1f(uniform.nearer, nearer);
  }
}

function program(gl, vertex, pixel) {
  const id = gl.createProgram();
  for (const [kind, text] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, pixel]]) {
    const s = gl.createShader(kind);
    gl.shaderSource(s, text);
    gl.compileShader(s);
    gl.attachShader(id, s);
  }
  gl.linkProgram(id);
  if (!gl.getProgramParameter(id, gl.LINK_STATUS) && !gl.isContextLost()) throw new Error(gl.getProgramInfoLog(id));
  const uniform = {}, at = {};
  for (let i = 0; i < gl.getProgramParameter(id, gl.ACTIVE_UNIFORMS); i++) {
    const { name } = gl.getActiveUniform(id, i);
    uniform[name] = gl.getUniformLocation(id, name);
  }
  for (let i = 0; i < gl.getProgramParameter(id, gl.ACTIVE_ATTRIBUTES); i++) {
    const { name } = gl.getActiveAttrib(id, i);
    at[name] = gl.getAttribLocation(id, name);
  }
  return { id, uniform, at };
}

// planeThrough is a rectangle across an axis at a place, as large as the block between
// two ends, and a hair larger.
function planeThrough(ends, axis, at) {
  const [i, j] = [(axis + 1) % 3, (axis + 2) % 3], hair = 0.1;
  const side = (k, far) => (far ? Math.max(ends[0][k], ends[1][k]) + hair : Math.min(ends[0][k], ends[1][k]) - hair);
  return new Float32Array([[0, 0], [1, 0], [1, 1], [0, 0], [1, 1], [0, 1]].flatMap(([u, v]) => {
    const q = [0, 0, 0];
    q[axis] = at;
    q[i] = side(i, u);
    q[j] = side(j, v);
    return q;
  }));
}

const mixed = (a, b, k) => a.map((v, i) => v + (b[i] - v) * k);

// cutLines is where the plane goes through the faces of pieces.
function cutLines(state, pieces) {
  const [n, far] = state.cut();
  const out = [];
  for (const { p } of pieces) {
    const f = state.frame(p), { places, corners } = state.solid(p);
    const local = turnedInto(f, n), w = far - dot(n, f.o);
    for (let t = 0; t < corners.length; t += 3) {
      const over = [0, 1, 2].map((k) => {
        const i = 3 * corners[t + k];
        return local[0] * places[i] + local[1] * places[i + 1] + local[2] * places[i + 2] - w;
      });
      if (over[0] > 0 === over[1] > 0 && over[1] > 0 === over[2] > 0) continue;
      for (let k = 0; k < 3; k++) {
        const l = (k + 1) % 3;
        if (over[k] > 0 === over[l] > 0) continue;
        const i = 3 * corners[t + k], j = 3 * corners[t + l], s = over[k] / (over[k] - over[l]);
        out.push(...outOf(f, [0, 1, 2].map((m) => places[i + m] + s * (places[j + m] - places[i + m]))));
      }
    }
  }
  return new Float32Array(out);
}
