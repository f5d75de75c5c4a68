// Mouse, touch and keys on the picture.

// Degrees a dot of dragging, and a key; dots a key moves; what one step of a wheel zooms.
const DRAG = 0.4, KEY_TURN = 5, KEY_MOVE = 24, KEY_ZOOM = 1.15, WHEEL = 0.0015;

// A pointer that moved less than this many dots has clicked.
const STILL = 4;

// listen calls `changed` after every change, and `clicked` with a dot. It gives what
// takes its listeners away.
function listen(canvas, viewer) {
  const gone = new AbortController();
  const on = (what, act, options = {}) => canvas.addEventListener(what, act, { signal: gone.signal, ...options });
  const pointers = new Map();
  let moved = 0;
  let dragged = null; // a piece, with where the pointer took it: it moves, not the eye
  let rolls = false; // a finger that does not go sideways is left to the page, which it rolls
  const place = (e) => {
    const r = canvas.getBoundingClientRect();
    return [e.clientX - r.left, e.clientY - r.top];
  };
  on('pointerdown', (e) => {
    canvas.setPointerCapture(e.pointerId);
    if (pointers.size === 0) {
      moved = 0;
      dragged = viewer.drag(...place(e));
      if (dragged) dragged.from = place(e);
      rolls = !dragged && e.pointerType === 'touch' && getComputedStyle(canvas).touchAction === 'pan-y';
    }
    pointers.set(e.pointerId, place(e));
  });
  on('pointermove', (e) => {
    const before = pointers.get(e.pointerId);
    if (!before) return;
    const { camera } = viewer.state;
    const now = place(e), dx = now[0] - before[0], dy = now[1] - before[1];
    rolls &&= pointers.size < 2 && Math.abs(dy) > Math.abs(dx);
    if (rolls) return;
    moved += Math.abs(dx) + Math.abs(dy);
    if (dragged) viewer.shift(dragged, now[0] - dragged.from[0], now[1] - dragged.from[1]);
    else if (pointers.size >= 2) {
      const [other] = [...pointers].filter(([id]) => id !== e.pointerId).map(([, p]) => p);
      const apart = (p) => Math.hypot(p[0] - other[0], p[1] - other[1]);
      camera.zoom(apart(now) / (apart(before) || 1), (now[0] + other[0]) / 2, (now[1] + other[1]) / 2);
      camera.move(dx / 2, dy / 2);
    } else if (e.buttons & 6 || e.shiftKey) camera.move(dx, dy);
    else camera.turn(dx * DRAG, dy * DRAG);
    pointers.set(e.pointerId, now);
    viewer.changed();
  });
  const up = (e) => {
    if (dragged && pointers.has(e.pointerId)) {
      viewer.drop(dragged, moved >= STILL && e.type === 'pointerup');
      dragged = null;
    }
    if (pointers.delete(e.pointerId) && pointers.size === 0 && moved < STILL && e.type === 'pointerup' && e.button === 0) viewer.clicked(...place(e));
  };
  on('pointerup', up);
  on('pointercancel', up);
  on('contextmenu', (e) => e.preventDefault());
  on('wheel', (e) => {
    e.preventDefault();
    viewer.state.camera.zoom(Math.exp(-e.deltaY * WHEEL), ...place(e));
    viewer.changed();
  }, { passive: false });
  on('keydown', (e) => {
    if (!e.ctrlKey && !e.metaKey && !e.altKey && press(viewer, e)) {
      e.preventDefault();
      viewer.changed();
    }
  });
  return () => gone.abort();
}

// press does what a key asks for; false for one that it does not know.
function press(viewer, e) {
  const { state } = viewer, { camera } = state;
  const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  if (arrows[e.key]) {
    const [x, y] = arrows[e.key];
    if (e.shiftKey) camera.move(-x * KEY_MOVE, -y * KEY_MOVE);
    else camera.turn(x * KEY_TURN, y * KEY_TURN);
    return true;
  }
  switch (e.key) {
    case '+': case '=': camera.zoom(KEY_ZOOM); return true;
    case '-': camera.zoom(1 / KEY_ZOOM); return true;
    case '0': case 'Home': viewer.fit(); return true;
    case '[': case ']': viewer.open(state.opened + (e.key === ']' ? 0.05 : -0.05)); return true;
    case '.': case ',': viewer.assembly.by(e.key === '.' ? 1 : -1); return true;
    case 'n': case 'p': viewer.next(e.key === 'n' ? 1 : -1); return true;
    case 'h': viewer.toggle(state.chosen); return true;
    case 'Escape': viewer.escape(); return true;
  }
  return false;
}

const KEYS = [
  ['arrows', 'turn'], ['shift and arrows', 'move'], ['+ and -', 'zoom'], ['0', 'show all'],
  ['] and [', 'open, close'], ['. and ,', 'next step of assembly or setups, step before'], ['n and p', 'next part, part before'], ['h', 'hide or show the chosen part'], ['Escape', 'choose none, leave a joint'],
];
