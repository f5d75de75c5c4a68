// How quick the page of `drawerwright view` is, in Chromium that draws without a graphics processor.
// Takes the command, a folder to work in, and how many keys are pressed; prints lines of
// {"drawers", "p50", "p95", "picture", "paint", "bytes"}: from a key in a thickness to the frame with
// the new numbers, in ms, in the middle and for 19 of 20; to the frame with the new picture, for 19 of
// 20; from the address to the first paint in a new window, the middle of some; and the bytes of the
// page itself.
import { done, field, file, folder, must, say, serve, tab } from './person.mjs';

const rounds = Number(process.argv[4]);

const stocks = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length, price: 58}
  hard: {thickness: [5.92, 5.86, 5.95], sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
`;

// cabinets are a job of banks of twelve drawers, each cabinet of another width.
function cabinets(n) {
  const each = Array.from({ length: n }, (_, i) => i + 1);
  return `${stocks}openings:
${each.map((i) => `  base${i}: {width: ${560 + 4 * i}, height: 2100, depth: 545, cabinet: frameless, fronts: overlay}\n`).join('')}drawers:
${each.map((i) => `  - {name: bank${i}, opening: base${i}, slide: side-mount, rows: 12, sides: birch, bottom: hard}\n`).join('')}`;
}

const jobs = new Map([
  [1, `${stocks}drawers:\n  - {name: wide, count: 2, outside: 460 x 140 x 500, sides: birch, bottom: hard}\n`],
  [12, cabinets(1)],
  [60, cabinets(5)],
]);

// keys presses keys in the first field of a thickness, and measures each.
const keys = (rounds) => (async () => {
  const lists = document.getElementById('lists');
  const times = [], pictures = [];
  // moves waits until something in an element changes, or the part of it that a selector
  // names, which may be made anew.
  const moves = (e, part) => new Promise((done, failed) => {
    const late = setTimeout(() => failed(new Error(`nothing moved in ${part ?? e.id} for a minute`)), 60000);
    const holds = (node) => node.closest?.(part) || node.querySelector?.(part);
    const watch = new MutationObserver((list) => {
      if (part && !list.some((m) => m.target.closest?.(part) || m.target.parentElement?.closest(part) || [...m.addedNodes].some(holds))) return;
      clearTimeout(late);
      watch.disconnect();
      done();
    });
    watch.observe(e, { subtree: true, childList: true, characterData: true, attributes: !part });
  });
  const told = async () => { while (document.getElementById('result').getAttribute('aria-busy') === 'true') await new Promise((done) => setTimeout(done, 10)); };
  const framed = () => new Promise((done) => requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = done; c.port2.postMessage(0); }));
  for (let i = 0; i < rounds; i++) {
    await told(); // what is said of the last numbers would be taken for new ones
    await new Promise((done) => setTimeout(done, 120)); // nobody types faster for long; the picture is drawn meanwhile
    const input = document.querySelector(`[data-path='["stock","birch","thickness"]'] input`); // it may be another one by now
    input.focus();
    const from = performance.now();
    const moved = moves(lists), drawn = moves(document.getElementById('picture'), '.dw-fact'); // set when the picture is asked for
    input.value = (12 + (37 * i % 600) / 1000).toFixed(3); // none that was there before
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
    await moved;
    await framed();
    times.push(performance.now() - from);
    await drawn;
    await framed();
    pictures.push(performance.now() - from);
  }
  return [times, pictures];
})();

// part is the time below which a part of times lies, without the first, while everything is new.
function part(times, p) {
  const list = times.slice(Math.floor(times.length / 6)).sort((a, b) => a - b);
  return list[Math.min(list.length - 1, Math.floor(list.length * p))];
}

// painted is from the address to the first paint, and what the page loads, in a new window.
async function painted(address) {
  const page = await tab(address);
  const told = await page.evaluate(() => ({
    paint: performance.getEntriesByName('first-contentful-paint')[0]?.startTime,
    bytes: [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')].filter((e) => !e.name.includes('/api/'))
      .reduce((n, e) => n + e.decodedBodySize, 0),
  }));
  await page.context().close();
  return told;
}

for (const [drawers, text] of jobs) {
  const job = await serve(['view', file(`${drawers}.yaml`, text).path]);
  const opened = [];
  for (let i = 0; i < 5; i++) opened.push(await painted(job.address));
  const page = await tab(job.address);
  page.setDefaultTimeout(60000);
  await page.locator('#fields summary', { hasText: 'birch' }).first().click();
  await field(page, 'stock', 'birch', 'thickness').waitFor();
  if (drawers > 1) await page.locator('#whole').check();
  const [times, pictures] = await page.evaluate(keys, rounds);
  must(times.every((t) => t > 0) && opened.every((o) => o.paint > 0 && o.bytes > 0), JSON.stringify([times, opened]));
  say({ drawers, p50: part(times, 0.5), p95: part(times, 0.95), picture: part(pictures, 0.95), paint: part(opened.map((o) => o.paint), 0.5), bytes: opened[0].bytes });
  await page.context().close();
  await job.stop();
}
await done();
