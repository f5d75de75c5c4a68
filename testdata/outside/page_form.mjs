// Works in the form of the page: see person.mjs.
import { join } from 'node:path';
import { accessible, attempt, done, file, folder, must, serve, source, tab, unfold, until } from './person.mjs';

const jobText = `# Bench drawers
units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525}
  hard: {thickness: 5.9, sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
drawers:
  - name: desk-1
    outside: 460 x 140 x 500   # width x height x depth
    sides: birch
    bottom: hard
`;

// on opens the page of a job and works on it.
const on = (tried, text, work) => attempt(tried, async () => {
  const name = tried.replace(/\W+/g, '-');
  const program = await serve(['view', file(`${name}.yaml`, text).path]);
  const page = await tab(program.address);
  try {
    await work(page);
  } catch (error) {
    await page.screenshot({ path: join(folder, `${name}.png`) });
    throw error;
  } finally {
    await page.close({ runBeforeUnload: false });
    await program.stop();
  }
});

const at = (...path) => `[data-path='${JSON.stringify(path)}']`;
const field = (page, ...path) => page.locator(`${at(...path)} > :is(input, select), ${at(...path)} .chosen > select`);
const saidAt = (page, ...path) => page.locator(`${at(...path)} .said`);
const button = (page, name) => page.getByRole('button', { name, exact: true });
const errors = (page) => page.locator('#messages [data-level=error]').count();
const focus = (page) => page.evaluate(() => document.activeElement.closest('[data-path]')?.dataset.path ?? document.activeElement.getAttribute('aria-label') ?? document.activeElement.value);

await on('trade words and help', jobText, async (page) => {
  const label = page.locator(`${at('drawers', '0', 'outside')} label`);
  must((await label.textContent()) === 'Outside size of the box', `the label is ${await label.textContent()}`);
  must(!(await page.locator('#fields').textContent()).includes('null'), 'the form says null');
  await field(page, 'drawers', '0', 'count').focus();
  const told = await page.locator('#help').textContent();
  const high = (await page.locator('#help').boundingBox()).height;
  for (const part of ['How many', 'Why 1: one box is the least', 'Example: 2', 'In the job file: count']) must(told.includes(part), `the help says ${told}`);
  const described = await field(page, 'drawers', '0', 'count').evaluate((e) => e.getAttribute('aria-describedby').split(' ').map((id) => document.getElementById(id)?.textContent).join(' '));
  must(described.includes('How many of this drawer') && described.includes('Example: 2'), `the field is described by ${described}`);
  await accessible(page);
  await page.locator('#undo').focus();
  await field(page, 'drawers', '0', 'joint').focus(); // whose help is the longest
  must((await page.locator('#help').boundingBox()).height === high && (await page.locator('#help').textContent()).includes('dado-rabbet'), 'the foot follows its help');
  const [words, foot] = [await page.locator('#help > div').boundingBox(), await page.locator('#help').boundingBox()];
  must(words.height >= high && Math.abs(words.y + words.height - foot.y - foot.height) < 2, `the help stands at ${JSON.stringify(words)} of ${JSON.stringify(foot)}`);
});

const openingText = `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525}
  hard: {thickness: [5.9, 5.95], sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
openings:
  base: {width: 564, height: 150, depth: 545, cabinet: frameless, fronts: none}
drawers:
  - {name: tray, opening: base, slide: side-mount, sides: birch, bottom: hard}
`;

await on('the length of the slide', openingText, async (page) => {
  const length = page.locator('#slide-length');
  await until('which is taken', async () => await length.inputValue() === '500 mm');
  await length.fill('450');
  await length.press('Enter');
  await until('a slide of that length', async () => (await source(page)).includes('lengths: [450]') && (await source(page)).includes('slide: side-mount-450'));
  must((await source(page)).includes('slide: side-mount-450'), await source(page));
  await length.fill('400');
  await length.press('Tab');
  await until('the same slide, another length', async () => /lengths: \[?400/.test(await source(page)) && (await source(page)).includes('slide: side-mount-450'));
  must(await errors(page) === 0, 'the job has mistakes');
  await accessible(page);
});

await on('overlay fronts that are not made', openingText, async (page) => {
  const told = page.locator('.said', { hasText: 'No drawer fronts are made' });
  must(!await told.isVisible(), 'it is told without reason');
  await field(page, 'openings', 'base', 'fronts').selectOption('overlay');
  await until('it is told', async () => await told.isVisible());
  await page.screenshot({ path: join(folder, 'overlay.png') });
  await accessible(page);
  await told.getByRole('button').click();
  await until('a front', async () => (await source(page)).includes('drawer-front:') && !await told.isVisible());
  await until('it is in the cut list', async () => (await page.locator('#said').count()) === 1 && await errors(page) === 0);
});

await on('the form stays under the hand', openingText, async (page) => {
  await page.setViewportSize({ width: 1500, height: 520 });
  const top = (f) => f.evaluate((e) => e.getBoundingClientRect().top);
  const sides = field(page, 'drawers', '0', 'bottom');
  await sides.focus();
  const before = await top(sides);
  await page.evaluate(() => { // as a note that appears above, from a change elsewhere
    const source = document.getElementById('source');
    source.value = source.value.replace('width: 564', 'width: wide');
    source.dispatchEvent(new Event('input', { bubbles: true }));
  });
  await until('a note above', async () => (await saidAt(page, 'openings', 'base', 'width').textContent()) !== '');
  must(Math.abs(await top(sides) - before) < 2, `the field went from ${before} to ${await top(sides)}`);
  const next = field(page, 'drawers', '0', 'sides'), stood = await top(next);
  await next.focus();
  await until('the note has its room', async () => await saidAt(page, 'openings', 'base', 'width').isVisible());
  must(Math.abs(await top(next) - stood) < 2, `the next field went from ${stood} to ${await top(next)}`);
  await field(page, 'openings', 'base', 'width').focus();
  for (let i = 0; i < 25; i++) {
    const rolled = await page.locator('#fields').evaluate((e) => e.scrollTop);
    await page.keyboard.press('Tab');
    await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); }));
    const by = await page.locator('#fields').evaluate((e) => e.scrollTop) - rolled;
    must(Math.abs(by) < 120, `Tab rolled by ${by}`);
  }
});

await on('a high bank', openingText.replace('height: 150', 'height: 1900').replace('slide: side-mount', 'rows: 12, slide: side-mount'), async (page) => {
  await until('its front', async () => await page.locator('.front text').count() === 12);
  const cut = await page.locator('.front svg').evaluate((e) => {
    const whole = e.getBoundingClientRect();
    return [...e.querySelectorAll('text')].filter((t) => { const r = t.getBoundingClientRect(); return r.left < whole.left || r.right > whole.right; }).map((t) => t.textContent);
  });
  must(cut.length === 0, `cut off: ${cut}`);
  await page.locator('.front').screenshot({ path: join(folder, 'bank.png') });
});

await on('names say whose', jobText, async (page) => {
  await button(page, 'copy drawer desk-1').click();
  await until('a copy', async () => (await source(page)).includes('- name: desk-2') || (await source(page)).includes('- name: desk-1 2'));
  await button(page, 'remove drawer desk-1 2').click();
  await until('gone', async () => (await source(page)) === jobText);
  await page.locator('#fields summary', { hasText: 'birch' }).click();
  await until('the stock has such buttons', async () => await button(page, 'copy stock birch').count() === 1 && await button(page, 'remove stock birch').count() === 1);
});

await on('messages have no lines in the form', jobText, async (page) => {
  await field(page, 'drawers', '0', 'outside').fill('460 x 140');
  await until('told', async () => (await saidAt(page, 'drawers', '0', 'outside').textContent()) !== '');
  must(!/line \d/.test(await page.locator('#fields').textContent()), 'the form names a line');
  must(/line 9/.test(await page.locator('#messages').textContent()), 'the message list names none');
});

await on('a divider that fits', jobText.replace('birch: {thickness: [12.21, 12.16, 12.24]', 'birch: {thickness: [12.21, 12.16, 12.24]'), async (page) => {
  await unfold(page);
  await page.locator('#fields summary', { hasText: 'Dividers' }).click();
  await button(page, 'add divider to drawer desk-1').click();
  await until('a divider', async () => (await source(page)).includes('dividers: [{'));
  must((await source(page)).includes('stock: hard'), await source(page));
  must(await errors(page) === 0, 'it is an error');
  await until('its first field has the focus', async () => (await focus(page)) === '["drawers","0","dividers","0","direction"]');
});

await on('opening or size', jobText, async (page) => {
  must(!(await field(page, 'drawers', '0', 'opening').count()), 'an opening is asked for');
  await page.getByRole('radio', { name: 'It goes into an opening' }).check();
  await until('an opening', async () => (await source(page)).includes('    opening: opening   # width x height x depth\n'));
  must(await errors(page) === 0, `errors: ${await page.locator('#messages').textContent()}`);
  must(!(await source(page)).includes('outside:'), await source(page));
  must(!(await field(page, 'drawers', '0', 'outside').count()), 'a size is asked for');
  await until('the switch keeps the focus', async () => (await focus(page)) === 'opening');
  await field(page, 'openings', 'opening', 'width').fill('600');
  await until('its width is asked for beside it', async () => (await source(page)).includes('width: 600'));
  await field(page, 'drawers', '0', 'slide').selectOption('undermount');
  await field(page, 'drawers', '0', 'rows').fill('1');
  await until('typed', async () => (await source(page)).includes('slide: undermount') && (await source(page)).includes('rows: 1'));
  await accessible(page);
  await page.getByRole('radio', { name: 'I know the box' }).check();
  await until('back, with what was typed', async () => (await source(page)).includes('outside: 460 x 140 x 500'));
  must(!(await source(page)).includes('slide:'), await source(page));
  await page.getByRole('radio', { name: 'It goes into an opening' }).check();
  await until('and again', async () => /opening: opening[^]*slide: undermount[^]*rows: 1/.test(await source(page)));
  await page.locator('#undo').click();
  await until('undone at once', async () => (await source(page)).includes('outside: 460 x 140 x 500'));
});

await on('made in place', jobText, async (page) => {
  await page.getByRole('radio', { name: 'It goes into an opening' }).check();
  await until('an opening', async () => (await source(page)).includes('opening: opening'));
  await button(page, 'new opening for drawer desk-1').click();
  await page.keyboard.type('pantry');
  await page.keyboard.press('Enter');
  await until('made', async () => (await source(page)).includes('pantry: {') && (await source(page)).includes('    opening: pantry'));

  await until('its width has the focus', async () => (await focus(page)) === '["openings","pantry","width"]');
  must(await errors(page) === 0, 'it is an error');
  await button(page, 'new slide for drawer desk-1').click();
  await page.keyboard.type('quiet');
  await page.keyboard.press('Enter');
  await until('a slide', async () => (await source(page)).includes('quiet: {kind: side-mount}') && (await source(page)).includes('    slide: quiet'));
  must(await errors(page) === 0, 'it is an error');
  await button(page, 'new stock for sides of drawer desk-1').click();
  await page.keyboard.press('Escape');
  await until('the button has the focus again', async () => (await focus(page)) === '["drawers","0","sides"]');
  await button(page, 'new stock for sides of drawer desk-1').click();
  await page.keyboard.type('maple');
  await page.keyboard.press('Enter');
  await until('a stock', async () => (await source(page)).includes('maple: {thickness:') && (await source(page)).includes('    sides: maple'));
  await until('its thickness has the focus', async () => (await focus(page)) === '["stock","maple","thickness"]');
  must(await errors(page) === 0, 'it is an error');
});

await on('caliper readings', jobText, async (page) => {
  const at = page.locator(`[data-readings='["stock","hard","thickness"]']`);
  await page.locator('#fields summary', { hasText: 'hard' }).click();
  await at.locator('input').focus();
  for (const reading of ['5.86', '5.98']) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
  await until('three readings', async () => (await source(page)).includes('hard: {thickness: [5.9, 5.86, 5.98]'));
  // (5.9 + 5.86 + 5.98) / 3 = 5.9133, 5.98 - 5.86 = 0.12
  await until('mean and spread', async () => (await at.locator('p').textContent()) === '3 readings: mean 5.91 mm, spread 0.12 mm');
  must((await at.locator('input').inputValue()) === '', 'the field is not empty for the next one');
  await button(page, 'remove reading 2, 5.86, of hard').click();
  await until('removed', async () => (await source(page)).includes('hard: {thickness: [5.9, 5.98]'));
  await accessible(page);
});

await on('ways out', jobText, async (page) => {
  await page.locator('#file').click();
  await page.fill('#source', jobText.replace('    bottom: hard', '    bottom: hart\n    jont: rabbet'));
  await page.locator('#tab-told').click();
  const way = (where, name) => page.locator(where).getByRole('button', { name, exact: true });
  await way(`${at('drawers', '0', 'bottom')}`, 'Bottom: hard').click();
  await until('a known stock', async () => (await source(page)).includes('    bottom: hard\n'));
  await page.locator('#undo').click();
  await until('undone', async () => (await source(page)).includes('    bottom: hart\n'));
  await way('#messages', 'Bottom: hard').click();
  await way('#messages', 'Call it joint').click();
  await until('both are mended', async () => (await source(page)).includes('    joint: rabbet\n') && await errors(page) === 0);
  must(!/hart|jont/.test(await source(page)), await source(page));
});

await on('a way out of a box that does not fit', jobText, async (page) => {
  await page.locator('#file').click();
  await page.fill('#source', jobText + '    joinery: {bottom-fit: flush}\n');
  const problem = page.locator(`${at('drawers', '0', 'bottom')} .said`);
  const ways = problem.locator('.ways button');
  await until('a way out', async () => (await ways.count()) > 0 && (await problem.textContent()).includes('flush'));
  const before = await problem.locator('p').first().textContent();
  await accessible(page);
  await ways.first().focus();
  await page.keyboard.press('Enter');
  await until('the problem is gone', async () => !(await page.locator('#fields').textContent()).includes(before));
  must(await errors(page) === 0, 'it leads to an error');
});

await done();
