// Checks pages of the viewer in Chromium. Reads {"name", "page", "title", "drawers", "overlaps",
// "checks", "printed"} as JSON, one a line, with the names of the checks that are to be made and the
// words of the packet without spaces; prints for each {"page", "check", "faults", "facts"}.
import { browse, faults, open } from './browser.mjs';
import { lines } from './panels.mjs';
import { moves } from './viewer_moves.mjs';
import { sizes } from './viewer_sizes.mjs';
import { uses } from './viewer_uses.mjs';

// Each check gets the page's own facts and a place for faults.
const checks = { ...moves, ...sizes, ...uses };

// A window as that of a phone, with fingers.
async function phone(browser, job, must) {
  const { context, page, heard } = await open(browser, job.page, { viewport: { width: 390, height: 780 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 });
  const size = await page.evaluate(() => ({ wide: document.documentElement.scrollWidth, canvas: viewer.canvas.getBoundingClientRect().toJSON() }));
  must(size.wide <= 390, `the page is ${size.wide} dots wide`);
  must(size.canvas.height > 250 && size.canvas.width > 350, `the picture is ${size.canvas.width} x ${size.canvas.height}`);
  const small = await page.locator('button:visible, select:visible, input:visible').evaluateAll((all) => all.filter((e) => (e.closest('label') ?? e).getBoundingClientRect().height < 24).map((e) => e.outerHTML.slice(0, 80)));
  must(small.length === 0, `too small for a finger: ${small}`);
  const touch = await context.newCDPSession(page);
  const points = (type, ...list) => touch.send('Input.dispatchTouchEvent', { type, touchPoints: list.map(([x, y], id) => ({ x, y, id })) });
  const camera = () => page.evaluate(() => ({ left: viewer.state.camera.left, scale: viewer.state.camera.scale }));
  const was = await camera();
  const y = size.canvas.y + 60;
  await points('touchStart', [150, y]);
  await points('touchMove', [200, y]);
  await points('touchEnd');
  const turned = await camera();
  must(turned.left > was.left + 5, `a finger turned it from ${was.left} to ${turned.left}`);
  await points('touchStart', [150, y], [200, y]);
  await points('touchMove', [110, y], [240, y]);
  await points('touchEnd');
  const pinched = await camera();
  must(pinched.scale > 1.5 * turned.scale, `two fingers zoomed from ${turned.scale} to ${pinched.scale}`);
  await page.evaluate(() => viewer.show(viewer.state.data.groups.findIndex((g) => g.boxes.length === 1)));
  for (let i = 0; i < 3; i++) await page.getByRole('button', { name: 'Next', exact: true }).tap();
  await page.waitForFunction(() => viewer.assembly.frame === 0);
  await page.emulateMedia({ colorScheme: 'dark' });
  const told = await page.locator('.dw-told').boundingBox(), picture = await page.locator('canvas').boundingBox();
  must(told.height > 40 && told.width <= 390 && told.y >= picture.y + picture.height - 1 && told.y + told.height <= 780 && picture.height > 240, `words of a step are ${told.width} x ${told.height} at ${told.y}, the picture ${picture.height} high`);
  for (const f of await faults(page)) must(false, f);
  heard.forEach((h) => must(false, h));
  await context.close();
}

// Without WebGL, and without scripts, pictures are shown.
async function pictures(browser, job, must, options) {
  const { context, page, heard } = await open(browser, job.page, options);
  const shown = await page.locator('figure svg').evaluateAll((all) => all.filter((e) => e.getBoundingClientRect().width > 100).length);
  must(shown === job.drawers, `${shown} pictures of ${job.drawers} drawers`);
  must(await page.getByText(/WebGL|script/).count() > 0, 'nobody says what to do');
  if (options.javaScriptEnabled !== false) for (const f of await faults(page)) must(false, f);
  heard.forEach((h) => must(false, h));
  await context.close();
}

// report makes a check of a page, if it is asked for, and prints what came of it.
async function report(job, check, act) {
  if (!job.checks.includes(check)) return;
  const wrong = [];
  let facts;
  try {
    facts = await act((good, text) => { if (!good) wrong.push(text); });
  } catch (error) {
    wrong.push(String(error.message ?? error).slice(0, 600));
  }
  console.log(JSON.stringify({ page: job.name, check, faults: wrong, facts: facts ?? {} }));
}

const jobs = await lines();
await browse(true, async (browser) => {
  for (const job of jobs) {
    for (const [name, check] of Object.entries(checks)) {
      await report(job, name, async (must) => {
        const opened = await open(browser, job.page);
        try { return await check(opened, must, job); } finally {
          opened.heard.forEach((h) => must(false, h));
          await opened.context.close();
        }
      });
    }
    await report(job, 'phone', (must) => phone(browser, job, must));
    await report(job, 'without scripts', (must) => pictures(browser, job, must, { javaScriptEnabled: false }));
  }
});
if (jobs.some((job) => job.checks.includes('without WebGL'))) {
  await browse(false, async (browser) => {
    for (const job of jobs) await report(job, 'without WebGL', (must) => pictures(browser, job, must, {}));
  });
}
