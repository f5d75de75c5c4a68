// A thickness that is changed until a joint jams, as a person sees it: in the picture, in the
// section, in what is said; and back. Prints a line for each thing that was tried (person.mjs).
import { join } from 'node:path';
import { readdirSync } from 'node:fs';
import { accessible, attempt, browser, done, field, file, folder, must, serve, tab, until } from './person.mjs';

// A tongue is half of its board, the dado and the groove are as wide as the cutter, 6.35 mm.
const jobText = `units: mm
stock:
  birch: {thickness: [12.1, 12.12]}
  hard: {thickness: [5.9, 5.91]}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: wide, outside: 460 x 140 x 500, sides: birch, bottom: hard}
`;
const word = 'does not go in';

const bench = file('bench.yaml', jobText);
const job = await serve(['view', bench.path]);
const page = await tab(job.address, { viewport: { width: 1366, height: 900 } });
const red = async () => page.locator('.dw-letters .dw-bad:not([hidden])').allTextContents();
const seen = (what, text) => until(`${what}: ${text}`, async () => (await red()).includes(text));
const verdict = () => page.locator('#verdict').textContent();
const thick = (stock, value) => field(page, 'stock', stock, 'thickness').first().fill(value);
const clearances = page.locator('.dw-drop', { has: page.locator('summary', { hasText: 'Clearance' }) });
const looks = (name) => page.screenshot({ path: join(folder, `${name}.png`) });
// section looks into a joint by its row in the list of clearances, which says the same as the picture.
async function section(row, said) {
  await clearances.locator('summary').click();
  const line = clearances.locator('tr', { hasText: row }).first();
  must((await line.locator('.dw-bad').textContent()) === said, `the list has ${await line.textContent()}`);
  await accessible(page);
  await line.locator('button').click();
}
const outsideIs = async (size) => {
  await field(page, 'drawers', '0', 'outside').fill(size);
  await until(`the size is ${size}`, async () => (await red()).length === 0 && !(await verdict()).startsWith('Cannot be built'));
};
// apart fails where a number in the picture runs into another or over its edge.
async function apart(of = page) {
  const meet = await of.evaluate(() => {
    const stage = document.querySelector('.dw-stage').getBoundingClientRect();
    const all = [...document.querySelectorAll('.dw-letters :is(.dw-play, .dw-name):not([hidden])')].map((e) => [e.textContent, e.getBoundingClientRect()]);
    const over = (a) => a.left < stage.right && a.right > stage.left && a.top < stage.bottom && a.bottom > stage.top && (a.left < stage.left || a.right > stage.right || a.top < stage.top || a.bottom > stage.bottom);
    return all.flatMap(([name, a], i) => [...(over(a) ? [`${name} leaves the picture`] : []),
      ...all.slice(0, i).filter(([, b]) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).map(([other]) => `${name} runs into ${other}`)]);
  });
  must(meet.length === 0, meet.join('\n'));
}

for (const name of ['birch', 'hard']) await page.locator('#fields summary', { hasText: name }).first().click();

await attempt('a tongue, step by step', async () => {
  await until('it goes together', async () => !(await red()).some((text) => text.includes(word)));
  await thick('birch', '[12.55, 12.56]');
  await seen('nearly', '✕ 0.07 mm: tight');
  must(!(await verdict()).startsWith('Cannot be built'), 'a tight joint cannot be built');
  await thick('birch', '12.7'); // 6.35 - 6.35
  await seen('nothing is left', `✕ 0 mm: ${word}`);
  must((await verdict()).includes(`6.35 mm thick, the dado 6.35 mm wide: it ${word}`), `the verdict is ${await verdict()}`);
  await thick('birch', '13'); // 6.35 - 6.5
  await seen('too thick', `✕ -0.15 mm: ${word}`);
  must((await verdict()).startsWith('Cannot be built: 1 mistake') && (await verdict()).includes(`6.5 mm thick, the dado 6.35 mm wide: it ${word}`), `the verdict is ${await verdict()}`);
  must((await page.locator('#stale').textContent()).startsWith('The picture is of this entry.'), 'the picture is told to be old');
  must(Number(await page.locator('.undrawn').count()) === 0, 'the picture is pale');
  must(!(await red()).some((text) => text.includes('overlap')), `the picture says ${await red()}`);
  await apart();
  await accessible(page);
  await looks('jam-tongue');
});

await attempt('lists of what cannot be built', async () => {
  const lists = page.locator('#lists');
  const seenIn = async () => (await lists.innerText()).trim();
  const row = lists.locator('tr', { hasText: 'front tongue clearance in its dado' }).first();
  must((await row.innerText()).includes(`✕ ${word}`) && await row.isVisible(), `the measure is told as ${await row.innerText()}`);
  must(await lists.locator('.fit .mark:visible').count() === 0, 'marks of an earlier entry are seen');
  for (const kind of ['parts', 'setups', 'sheets', 'buy']) {
    await page.locator(`#tab-${kind}`).click();
    await until(`${kind} says why it is empty`, async () => (await seenIn()).startsWith('Nothing to show while the job cannot be built.'));
  }
  await accessible(page);
  await lists.getByRole('button', { name: 'Go to the first mistake' }).click();
  must(await page.evaluate(() => document.activeElement.closest('#form') !== null), 'the way out does not lead to the form');
  await page.locator('#tab-fit').click();
  await until('the measures again', async () => (await seenIn()).startsWith('Measures as set in this entry.'));
  await looks('jam-lists');
});

await attempt('in the section', async () => {
  await section('box front in the dado of the left side', `✕ -0.15 ${word}`);
  await until('the section is shown', async () => await page.locator('#picture label', { hasText: /^cut/ }).locator('select').inputValue() === '2');
  await seen('the section', `✕ -0.15 mm: ${word}`);
  await apart();
  await looks('jam-tongue-section');
  await thick('birch', '16');
  await seen('thicker, in the section', `✕ -1.65 mm: ${word}`);
  await apart();
  await looks('jam-tongue-thick');
  await thick('birch', '[12.1, 12.12]');
  await until('it clears', async () => (await red()).length === 0 && !(await verdict()).startsWith('Cannot be built'));
  must((await page.locator('.dw-letters .dw-play:not([hidden])').allTextContents()).includes('0.3'), 'the clearance is not told any more');
  must(!await page.locator('#stale').isVisible(), 'the lists are told to be old');
  await looks('jam-cleared');
  await page.locator('#picture').getByRole('button', { name: 'corner', exact: true }).click();
});

await attempt('a cut, and clearance made larger', async () => {
  await thick('birch', '13');
  await seen('too thick', `✕ -0.15 mm: ${word}`);
  const cut = page.locator('#picture label', { hasText: /^cut/ }).locator('select');
  await cut.selectOption({ label: 'bottom to top' });
  await seen('where the cut meets it', `✕ -0.15 mm: ${word}`);
  await looks('jam-cut-up');
  await cut.selectOption({ label: 'left to right' });
  await seen('in the middle', `✕ -0.15 mm: ${word}; not in this cut`);
  await apart();
  await cut.selectOption({ label: 'none' });
  await page.locator('#picture summary', { hasText: 'Display' }).click();
  const larger = page.getByLabel('clearance drawn 10 times its size');
  await larger.check();
  await seen('not larger', `✕ -0.15 mm, true size: ${word}`);
  await larger.uncheck();
  await page.keyboard.press('Escape');
  const clear = await page.evaluate(() => {
    const [label, ...sizes] = [...document.querySelectorAll('.dw-letters .dw-bad:not([hidden]), .dw-size:not([hidden])')].map((e) => e.getBoundingClientRect());
    return sizes.every((b) => label.right < b.left || b.right < label.left || label.bottom < b.top || b.bottom < label.top);
  });
  must(clear, 'what does not go in stands on a size');
});

await attempt('what is said of a part, and a slip in a size', async () => {
  await page.locator('#picture').getByRole('button', { name: 'Parts', exact: true }).click();
  await page.locator('.dw-piece', { hasText: 'box front' }).click();
  const told = page.locator('.dw-said'), had = await told.textContent();
  must(had.endsWith('x 13 mm') || had.endsWith('× 13 mm'), `said is ${had}`);
  await thick('birch', '13.2');
  await until('the part is told anew', async () => (await told.textContent()).endsWith('× 13.2 mm'));
  await page.locator('.dw-piece', { hasText: 'box front' }).click();
  await page.locator('#picture').getByRole('button', { name: 'Parts', exact: true }).click();
  const outside = field(page, 'drawers', '0', 'outside');
  for (const [typed, is] of [['5oo', '460 x 140 x 5oo'], ['520', '460 x 140 x 520']]) {
    await page.getByRole('button', { name: /^depth of the box/ }).click();
    await page.locator('.ask input').fill(typed);
    await page.keyboard.press('Enter');
    await until(`${typed} is taken`, async () => await outside.inputValue() === is);
  }
});

await attempt('the focus after a way out', async () => {
  await thick('birch', '[12.1, 12.12]');
  await outsideIs('460 x 140 x 500');
  await thick('birch', '[12.55, 12.56]');
  await seen('nearly', '✕ 0.07 mm: tight');
  await page.locator('#fields .ways button').first().focus();
  await page.keyboard.press('Enter');
  await until('it is mended', async () => !(await red()).includes('✕ 0.07 mm: tight'));
  must(await page.evaluate(() => document.activeElement.matches('#form input, #form select, #form summary')), 'the focus is lost');
  await page.locator('#undo').click();
  await thick('birch', '[12.1, 12.12]');
  await outsideIs('460 x 140 x 500');
});

await attempt('a bottom', async () => {
  await thick('hard', '6.5');
  await seen('too thick', `✕ -0.15 mm: ${word}`);
  must((await verdict()).includes(`the bottom is 6.5 mm thick, its groove 6.35 mm wide: it ${word}`), `the verdict is ${await verdict()}`);
  await looks('jam-bottom');
  await section('bottom in the groove of the left side', `✕ -0.15 ${word}`);
  await seen('the section', `✕ -0.15 mm: ${word}`);
  await apart();
  await looks('jam-bottom-section');
  await page.locator('#undo').click();
  await until('it clears', async () => !(await red()).some((text) => text.includes(word)));
  await page.locator('#picture').getByRole('button', { name: 'corner', exact: true }).click();
});

await attempt('as measured', async () => {
  await thick('hard', '[6.2, 6.3, 6.4]'); // 6.35 - 6.4
  const all = page.locator('#picture').getByRole('button', { name: 'As measured', exact: true }), tools = page.getByRole('group', { name: 'As measured' });
  must(!await tools.isVisible(), 'the choice of boards stands there unasked');
  await all.click();
  await tools.locator('select').selectOption('most');
  await seen('the thickest boards', `✕ -0.05 mm: ${word}`);
  await section('bottom in the groove of the left side', `✕ -0.05 ${word}`);
  const told = page.locator('.dw-joint'), move = page.getByRole('button', { name: /^(Take apart|Close joint)$/ });
  await until('it stops', async () => (await told.textContent()).startsWith('bottom in the groove of the left side: groove 6.35 mm, bottom 6.4 mm, clearance -0.05 mm: does not go in; it stops '));
  await accessible(page);
  await looks('jam-measured');
  await tools.locator('select').selectOption('least');
  await until('thin boards are home', async () => (await told.textContent()).endsWith('bottom 6.2 mm, clearance 0.15 mm: goes together'));
  await move.click();
  await until('it can be closed', async () => await move.textContent() === 'Close joint' && await told.textContent() !== '');
  await move.click();
  await until('it is closed', async () => await move.textContent() === 'Take apart' && await told.textContent() !== '');
  // Where boards are not known, nothing can be chosen; the choice is kept.
  await thick('hard', '6.5');
  await seen('too thick', `✕ -0.15 mm: ${word}`);
  must(!await tools.isVisible(), 'boards of what cannot be built can be chosen');
  must((await told.textContent()).includes(`${word}; it stops `), `told is ${await told.textContent()}`);
  await thick('hard', '[6.2, 6.3, 6.4]');
  await until('the choice is kept', async () => await tools.isVisible() && await tools.locator('select').inputValue() === '0' && (await told.textContent()).includes('bottom 6.2 mm'));
  await tools.locator('select').selectOption('mean');
  await all.click();
  for (let i = 0; i < 3; i++) await page.locator('#undo').click();
  await page.locator('#picture').getByRole('button', { name: 'corner', exact: true }).click();
});

await attempt('begun with a jam, light and dark', async () => {
  const other = await serve(['view', file('jammed.yaml', jobText.replace('[12.1, 12.12]', '13')).path]);
  for (const colorScheme of ['light', 'dark']) {
    const context = await browser.newContext({ viewport: { width: 1366, height: 900 }, colorScheme });
    const jammed = await context.newPage();
    await jammed.goto(other.address);
    await until('it is drawn', async () => (await jammed.locator('.dw-letters .dw-bad:not([hidden])').allTextContents()).includes(`✕ -0.15 mm: ${word}`));
    must((await jammed.locator('#stale').textContent()) === 'The picture is of this entry.', `told is ${await jammed.locator('#stale').textContent()}`);
    must(await jammed.locator('#drawer option').count() === 1, 'no drawer can be chosen');
    await accessible(jammed);
    await jammed.screenshot({ path: join(folder, `jammed-${colorScheme}.png`) });
    await context.close();
    if (colorScheme === 'light') continue;
    await other.stop();
  }
});

await attempt('a cabinet, and a phone', async () => {
  const bank = jobText.replace('[12.1, 12.12]', '13') + "  - {name: bank, opening: base, slide: side-mount, rows: 3, sides: birch, bottom: hard}\nopenings: {base: {width: 564, height: 600, depth: 545, cabinet: frameless, fronts: overlay}}\n";
  const other = await serve(['view', file('bank.yaml', bank).path]);
  const small = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };
  for (const [name, settings] of [['cabinet', { viewport: { width: 1366, height: 900 } }], ['phone', small]]) {
    const context = await browser.newContext(settings), jammed = await context.newPage();
    await jammed.goto(other.address);
    if (name === 'phone') await jammed.locator('[data-to=result]').tap();
    else {
      await jammed.locator('#drawer option').nth(1).waitFor({ state: 'attached' });
      await jammed.selectOption('#drawer', { index: 1 });
      await jammed.locator('#whole').check();
    }
    await until('it is red', async () => (await jammed.locator('.dw-letters .dw-bad:not([hidden])').allTextContents()).filter((text) => text === `✕ -0.15 mm: ${word}`).length === (name === 'phone' ? 1 : 3));
    must(!(await jammed.locator('.dw-tools').textContent()).includes('null'), 'the tools say null');
    await apart(jammed);
    await accessible(jammed);
    await jammed.screenshot({ path: join(folder, `jam-${name}.png`) });
    await context.close();
  }
  await other.stop();
});

await attempt('nothing is written', async () => {
  must(bench.read() === jobText, 'the file has changed unasked');
  const left = readdirSync(folder).filter((name) => !name.endsWith('.png'));
  must(left.sort().join() === 'bank.yaml,bench.yaml,jammed.yaml', `the folder has ${left}`);
});

await done();
