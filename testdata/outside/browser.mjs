// A real Chromium: pages with what they say, ask for and draw.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';

export const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// launch starts a browser. WebGL is by software, so that every machine has it; --no-sandbox is for root.
export const launch = ({ webgl = true, smooth = true } = {}) => chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', webgl ? '--enable-unsafe-swiftshader' : '--disable-3d-apis', ...(smooth ? [] : ['--webgl-antialiasing-mode=none'])],
});

// browse acts in a browser whose pictures have no smooth edges: these are a third of the work.
export async function browse(webgl, act) {
  const browser = await launch({ webgl, smooth: false });
  try { return await act(browser); } finally { await browser.close(); }
}

// open opens a page; `heard` gathers messages of errors and every request but the page's.
export async function open(browser, file, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  context.setDefaultTimeout(60000); // for busy machines
  const page = await context.newPage();
  const heard = [];
  page.on('console', (m) => { if (m.type() === 'error') heard.push(`console: ${m.text()}`); });
  page.on('pageerror', (e) => heard.push(`script: ${e.message}`));
  const url = `file://${file}`;
  page.on('request', (r) => { if (r.url() !== url && !r.url().startsWith('data:')) heard.push(`request: ${r.url()}`); });
  await page.goto(url);
  if (options.javaScriptEnabled !== false) await settle(page);
  return { context, page, heard };
}

export const near = (a, b, by) => Math.abs(a - b) <= by;

// settle waits until the picture stands still.
export const settle = (page) => page.evaluate(() => new Promise((done) => {
  let n = 3;
  const next = () => (n-- === 0 ? done() : requestAnimationFrame(next));
  next();
}));

// dots draws the picture once more: how many dots are not ground, a sum that tells
// pictures apart, and the colors around places, in dots of the picture from above.
export const dots = (page, at = []) => page.evaluate((at) => {
  const { painter, state, theme, canvas } = viewer, { gl } = painter;
  painter.draw(state, theme, viewer.dots);
  viewer.marks.draw(state, painter, theme, viewer.over);
  const all = new Uint8Array(4 * canvas.width * canvas.height);
  gl.readPixels(0, 0, canvas.width, canvas.height, gl.RGBA, gl.UNSIGNED_BYTE, all);
  let drawn = 0, sum = 0;
  const ground = theme.ground.map((c) => Math.round(255 * c));
  for (let i = 0; i < all.length; i += 4) {
    const other = ground.some((c, k) => Math.abs(all[i + k] - c) > 2);
    if (other) { drawn++; sum = (sum * 31 + i + all[i] + all[i + 1] + all[i + 2]) % 1000000007; }
  }
  const around = at.map(([x, y]) => {
    const found = [];
    for (let dx = -4; dx <= 4; dx++) for (let dy = -4; dy <= 4; dy++) {
      const i = 4 * (Math.round(x) + dx + (canvas.height - 1 - Math.round(y) + dy) * canvas.width);
      found.push([all[i], all[i + 1], all[i + 2]]);
    }
    return found;
  });
  return { drawn, sum, around };
}, at);

// faults is what axe-core calls serious or critical.
export async function faults(page) {
  await page.evaluate(axe);
  return page.evaluate(async () => (await window.axe.run()).violations.filter((v) => ['serious', 'critical'].includes(v.impact))
    .map((v) => `axe ${v.id}: ${v.nodes.slice(0, 3).map((n) => n.html).join(' | ')}`));
}
