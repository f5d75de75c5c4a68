// Checks the setups that the viewer shows, in Chromium. Reads {"name", "page", "printed", "fenced", "checks"} as
// JSON, one a line: the words of the packet, whether a saw or router table cuts its boxes; prints for each
// {"page", "check", "faults", "facts"}.
import { browse, dots, faults, open, settle } from './browser.mjs';
import { lines } from './panels.mjs';

const words = (text) => text.replace(/\s/g, '');
const at = (page, list) => page.evaluate((list) => viewer.show(viewer.state.data.groups.findIndex((g) => g.boxes.length === 1) + list), list);
const step = (page) => page.evaluate(() => ({ step: viewer.state.step, fed: viewer.state.fed, moving: viewer.assembly.frame !== 0, steps: viewer.state.steps().length }));
const marked = (page) => page.evaluate(() => {
  const { painter: { gl }, canvas, theme } = viewer, all = new Uint8Array(4 * canvas.width * canvas.height);
  gl.readPixels(0, 0, canvas.width, canvas.height, gl.RGBA, gl.UNSIGNED_BYTE, all);
  let n = 0;
  for (let i = 0; i < all.length; i += 4) if (theme.mark.every((v, k) => Math.abs(255 * v - all[i + k]) < 3)) n++;
  return n;
});

async function setups(page, job, must) {
  const boxes = await page.evaluate(() => viewer.state.data.boxes.length);
  const whose = page.getByLabel('steps of');
  if (!job.fenced) {
    must(await whose.count() === 0 && await page.evaluate(() => viewer.state.data.setups === undefined), 'there are setups without a machine with a fence');
    return { boxes };
  }
  const [next, back] = ['Next', 'Back'].map((name) => page.getByRole('button', { name, exact: true }));
  const told = page.locator('.dw-told [aria-live="polite"]'), card = page.locator('.dw-card');
  const numbers = new Set();
  let count = 0;
  for (let box = 0; box < boxes; box++) {
    await at(page, box);
    await settle(page);
    if (await whose.count() === 0) continue; // all of it is sawn or bored by other means
    must(await card.isHidden(), 'a card stands below a box that is not being cut');
    await whose.selectOption('setups');
    await page.waitForFunction(() => viewer.state.step === 0 && viewer.assembly.frame === 0);
    const { steps } = await step(page);
    for (let i = 0; i < steps; i++) {
      if (i > 0) {
        await next.focus();
        await page.keyboard.press('Enter');
        await page.waitForFunction((i) => viewer.state.step === i && viewer.assembly.frame === 0, i);
      }
      await settle(page);
      const { setting, cut, feed, text } = await page.evaluate(() => viewer.state.at());
      count++;
      numbers.add(`${setting.name}/${cut.number}`);
      must(await told.textContent() === `${i + 1} of ${steps}: ${text}` && text.startsWith(`${setting.name}, cut ${cut.number}: ${cut.text} In the picture: `), `it says ${await told.textContent()}`);
      const said = words(await card.textContent());
      for (const of of [setting.heading, ...setting.cautions, ...cut.cautions, cut.parts]) must(said.includes(words(of)), `the card does not say ${of}`);
      for (const of of [`${cut.number}.${cut.text}`, ...setting.cautions, ...cut.cautions]) must(job.printed.includes(words(of)), `the packet does not say ${of}`);
      for (const [name, value] of setting.figures) must(said.includes(words(name + value)) && job.printed.includes(words(value.replace(/ (mm|in)\b.*/, ''))), `${name} ${value} is not on the card and in the packet`);
      // The part has gone over the cutter, which shows what it takes; the part is another one after it.
      const seen = await page.evaluate(() => viewer.state.shown().filter((p) => p.cut).map((p) => [p.mesh, viewer.state.frame(p).o]));
      must(seen.length === 2 && seen[0][0] !== seen[1][0] && seen[0][0] === feed.after && Math.abs(seen[0][1][1] - feed.origin[1] - feed.by) < 1e-3, `the part stands at ${JSON.stringify(seen)}`);
      must(await marked(page) > 30, `${await marked(page)} dots show what is cut`);
      const low = await page.evaluate(() => {
        const bottom = document.querySelector('.dw-told').getBoundingClientRect().top;
        return [...document.querySelectorAll('.dw-letters span:not([hidden])')].filter((e) => e.getBoundingClientRect().bottom > bottom).map((e) => e.textContent);
      });
      must(low.length === 0, `step ${i + 1}: under the words stand ${low}`);
      if (i === 0) {
        for (const f of await faults(page)) must(false, f);
        const end = (await dots(page)).sum;
        await page.evaluate(() => viewer.assembly.feed(0.5));
        await settle(page);
        must((await dots(page)).sum !== end, 'halfway it looks as at the end');
      }
    }
    must(await next.getAttribute('aria-disabled') === 'true', 'after the last step there is a next one');
  }
  must(numbers.size > 1, `only ${[...numbers]} are shown`);
  // Back to the first and before it, where the box stands; other data keep the step; opening the box ends it.
  await at(page, 0);
  await whose.selectOption('setups');
  await back.click();
  await page.waitForFunction(() => viewer.state.step === -1);
  await settle(page);
  must(await card.isHidden() && await told.textContent() === '', 'before the first step a card is there');
  await next.click();
  await page.evaluate(() => viewer.update(structuredClone(viewer.state.data)));
  await settle(page);
  must((await step(page)).step === 0 && await card.isVisible(), 'other data of the job lose the step');
  await page.evaluate(() => viewer.section(0));
  await settle(page);
  must((await step(page)).step === -1 && await card.isHidden(), 'a cut through the box leaves the machine in the picture');
  await page.evaluate(() => viewer.update({ ...structuredClone(viewer.state.data), setups: undefined }));
  await settle(page);
  must(await whose.count() === 0, 'without a machine with a fence there is a choice of one');
  return { boxes, steps: count, cuts: numbers.size };
}

// The part is fed, and what is played goes on to the next step or stops.
async function moves(page, job, must) {
  const play = page.getByRole('button', { name: /^(Play|Stop)$/ });
  await at(page, 0);
  await settle(page);
  await page.getByLabel('steps of').selectOption('setups');
  must((await step(page)).moving, 'the part does not move');
  await page.waitForFunction(() => viewer.state.step === 0 && viewer.assembly.frame === 0);
  must((await step(page)).fed === 1, 'the part is not fed all the way');
  await play.click();
  await page.waitForFunction(() => viewer.assembly.playing && viewer.state.step === 2);
  await play.click();
  await settle(page);
  must((await step(page)).fed === 1 && await play.textContent() === 'Play', 'stopped, the part is on its way');
}

// Where no motion is wanted, the part is there at once, and nothing plays.
async function calm(page, job, must) {
  await page.emulateMedia({ colorScheme: 'dark' });
  await at(page, 0);
  await settle(page);
  await page.getByLabel('steps of').selectOption('setups');
  const now = await step(page);
  must(now.step === 0 && now.fed === 1 && !now.moving, `it moves: ${JSON.stringify(now)}`);
  await settle(page);
  must(await page.getByRole('button', { name: 'Play', exact: true }).count() === 0, 'there is a button that plays');
  for (const f of await faults(page)) must(false, f);
}

// On a phone the picture and the words have room.
async function phone(page, job, must) {
  await at(page, 0);
  await settle(page);
  await page.getByLabel('steps of').selectOption('setups');
  await page.waitForFunction(() => viewer.state.step === 0 && viewer.assembly.frame === 0);
  await settle(page);
  const picture = await page.locator('canvas').boundingBox(), told = await page.locator('.dw-told').boundingBox();
  must(picture.height > 200 && told.width <= 390 && told.y + told.height <= 781, `the picture is ${picture.height} high, the words end at ${told.y + told.height}`);
  for (const f of await faults(page)) must(false, f);
}

const still = { reducedMotion: 'reduce' };
const checks = [['setups', setups, still], ['moves', moves, {}], ['calm', calm, still], ['phone', phone, { viewport: { width: 390, height: 780 } }]];
const jobs = await lines();
await browse(true, async (browser) => {
  for (const job of jobs) {
    for (const [check, act, options] of checks) {
      if (!job.checks.includes(check)) continue;
      const wrong = [];
      let facts = {};
      const must = (good, text) => { if (!good) wrong.push(text); };
      const { page, context, heard } = await open(browser, job.page, options);
      try { facts = await act(page, job, must) ?? {}; } catch (error) { wrong.push(String(error.message ?? error).slice(0, 600)); }
      heard.forEach((h) => must(false, h));
      await context.close();
      console.log(JSON.stringify({ page: job.name, check, faults: wrong, facts }));
    }
  }
});
