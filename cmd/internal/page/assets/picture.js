// The box to look at.
import { byId, svg } from './dom.js';

const place = byId('picture');

// show draws the drawer that is shown.
export function show(now) {
  const p = now.picture;
  if (!p) return;
  let path = '';
  for (let i = 0; i < p.lines.length; i += 4) path += `M${p.lines[i]} ${p.lines[i + 1]}L${p.lines[i + 2]} ${p.lines[i + 3]}`;
  const box = `-20 -20 ${p.width + 40} ${p.height + 40}`;
  const name = `the box of ${now.drawers[now.drawer].name}`;
  let drawing = place.querySelector('svg');
  if (!drawing) {
    drawing = svg('svg', { role: 'img' }, svg('path'));
    place.replaceChildren(drawing);
  }
  drawing.setAttribute('viewBox', box);
  drawing.setAttribute('aria-label', name);
  drawing.querySelector('path').setAttribute('d', path);
}
