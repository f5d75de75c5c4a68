// The box to look at: the viewer where the browser draws in three dimensions, else a
// picture of lines.
import { byId, svg } from './dom.js';
import * as marked from './marked.js';
import * as sizes from './sizes.js';

const place = byId('picture');
const drawing = svg('svg', { role: 'img' }, svg('path'));

let viewer = null, seen = '', waiting = null;
let sought = ''; // the measure whose joint is to be looked into

// update shows the latest scene, a frame after the new numbers: where WebGL is done by
// software a picture takes longer than all the rest.
function update() {
  const scene = waiting;
  waiting = null;
  viewer.update(scene);
  if (sought) joint(sought);
}

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
    if (!viewer) {
      viewer = globalThis.mountViewer(place, now.scene, { pictures: [drawing], embedded: true, resize: sizes.ask, place: sizes.of, move: sizes.move, chosen: marked.chosen });
      if (viewer.works) marked.begin((n) => viewer.number(n));
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
