// The box to look at: the viewer where the browser draws in three dimensions, else a
// picture of lines.
import { byId, svg } from './dom.js';
import * as marked from './marked.js';
import * as sizes from './sizes.js';

const place = byId('picture');
const drawing = svg('svg', { role: 'img' }, svg('path'));

let viewer = null, seen = '', waiting = null;
let number = 0; // that is marked
let numbers = new Set(); // of the latest scene
let sought = ''; // the measure whose joint is to be looked into

// update shows the latest scene, a frame after the new numbers: where WebGL is done by
// software a picture takes longer than all the rest.
function update() {
  const scene = waiting;
  waiting = null;
  viewer.update(scene);
  if (number) mark(number);
  if (sought) joint(sought);
}

// mark marks the pieces with the number of a part, none with 0, in the latest scene.
export function mark(n) {
  number = n;
  if (viewer?.works && !waiting) viewer.number(n);
}

// has reports whether what is drawn has a part of a number, or of none.
export const has = (n) => n === 0 || numbers.has(n);

// joint looks into a joint of a measure, once the latest scene is drawn.
export function joint(measure) {
  if (!viewer?.works) return;
  sought = waiting ? measure : '';
  if (waiting || !viewer.joint(measure)) return;
  place.scrollIntoView({ block: 'nearest' });
}

// old says whether the picture is of an earlier text, whose clearances are not told any more.
export const old = (on) => viewer?.stale(on);

// show draws what is looked at. It reports whether the picture has to be asked for as
// lines, because there is no viewer.
export function show(now) {
  sizes.show(now);
  if (now.scene) {
    const next = JSON.stringify(now.scene);
    if (next === seen) return false;
    seen = next;
    numbers = new Set(now.scene.parts.map((p) => p.number));
    if (!viewer) {
      viewer = globalThis.mountViewer(place, now.scene, { pictures: [drawing], embedded: true, resize: sizes.ask, place: sizes.of, move: sizes.move, chosen: (n) => { number = n; marked.chosen(n); } });
      return !viewer.works;
    }
    if (!waiting) requestAnimationFrame(() => requestAnimationFrame(update));
    waiting = now.scene;
    return false;
  }
  const p = now.picture;
  if (!p) return false;
  let path = '';
  for (let i = 0; i < p.lines.length; i += 4) path += `M${p.lines[i]} ${p.lines[i + 1]}L${p.lines[i + 2]} ${p.lines[i + 3]}`;
  drawing.setAttribute('viewBox', `-20 -20 ${p.width + 40} ${p.height + 40}`);
  drawing.setAttribute('aria-label', `the box of ${now.drawers[now.drawer].name}`);
  drawing.querySelector('path').setAttribute('d', path);
  return false;
}
