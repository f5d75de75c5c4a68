// Edits of a whole job on the page: another unit, other names, another order; see person.mjs.
import { join } from 'node:path';
import { accessible, attempt, done, field, file, folder, must, serve, source, tab, unfold, until } from './person.mjs';

const jobText = `units: mm   # of bare numbers
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length, material: birch-plywood}   # the good one
  hard: {thickness: 5.9, sheet: 2440 x 1220, material: birch-plywood}
cutter: {kind: saw, width: 6.35}
drawers:
  # the wide one
  - name: wide
    outside: 460 x 140 x 500   # width x height x depth
    sides: birch
    bottom: hard
  - name: narrow
    outside: 300 x 90 x 500
    sides: birch
    bottom: hard
`;

const one = file('arrange.yaml', jobText);
const program = await serve(['view', one.path]);
const page = await tab(program.address);
const named = (name) => page.getByRole('button', { name, exact: true });
const undone = async () => {
  await page.locator('#undo').click();
  await until('undone', async () => (await source(page)) === jobText);
};

await attempt('convert', async () => {
  const depth = () => page.locator('#lists').textContent();
  await named('convert the job: all lengths to inches').click();
  await until('it is in inches', async () => (await source(page)).startsWith('units: in   # of bare numbers'));
  must((await source(page)).includes('outside: 18.1102 x 5.5118 x 19.685   # width x height x depth'), await source(page));
  must((await field(page, 'units').inputValue()) === 'in', 'the form does not follow');
  await until('the lists follow', async () => (await depth()).includes('19.685'));
  await named('convert the job: all lengths to millimeters').click();
  await until('and back', async () => (await source(page)).includes('outside: 460 x 140 x 500   # width'));
  while (await source(page) !== jobText) {
    const now = await source(page);
    await page.locator('#undo').click();
    await until('undone', async () => (await source(page)) !== now);
  }
});

await attempt('rename', async () => {
  await page.locator('#fields summary', { hasText: 'birch' }).click();
  await named('rename stock birch').click();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('ply 12');
  await page.keyboard.press('Enter');
  await until('all that refer to it follow', async () => (await source(page)) === jobText.replaceAll(' birch', ' ply 12').replaceAll('material: ply 12-plywood', 'material: birch-plywood'));
  await until('the focus is on it', () => page.evaluate(() => document.activeElement.textContent.includes('ply 12')));
  await accessible(page);
  await undone();
  page.expected.push('422');
  await page.locator('#fields details[open] summary', { hasText: 'birch' }).waitFor();
  await named('rename stock birch').click();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('hard');
  await page.keyboard.press('Enter');
  await until('a name that is taken is told', async () => (await page.locator('#fields .said:visible').allTextContents()).join().includes('already'));
  must(await source(page) === jobText, 'it was renamed all the same');
});

await attempt('order', async () => {
  must(await named('move up drawer wide').getAttribute('aria-disabled') === 'true', 'the first can go up');
  await named('move down drawer wide').focus();
  await page.keyboard.press('Enter');
  await until('it is the second', async () => (await source(page)).indexOf('- name: narrow') < (await source(page)).indexOf('  # the wide one'));
  await until('and still the one shown', async () => (await field(page, 'drawers', '1', 'name').inputValue()) === 'wide' && (await page.inputValue('#drawer')) === 'wide');
  await until('the button has the focus', () => page.evaluate(() => document.activeElement.id === 'drawer-down'));
  await named('move up drawer wide').click();
  await until('and the first again', async () => (await source(page)) === jobText);
});

await attempt('a load', async () => {
  const told = () => page.locator('#bears').textContent();
  const before = await told();
  must(before.startsWith('The box weighs'), before);
  await unfold(page);
  await field(page, 'drawers', '0', 'load').fill('2 kg');
  await until('it is told', async () => (await told()).includes('Under 2 kg the bottom sags by'));
  await field(page, 'drawers', '0', 'load').fill('3 kg');
  await until('and a change of it', async () => (await told()).includes('Under 3 kg the bottom sags by'));
  await page.screenshot({ path: join(folder, 'arrange.png') });
});

const bankText = `units: in
stock:
  birch: {thickness: [0.472, 0.468, 0.475], sheet: 60 x 60, grain: length}
  ply: {thickness: [0.205, 0.201], sheet: 96 x 48, grain: length}
cutter: {kind: saw, width: 0.246, groove-cutter: 0.125}
openings:
  base: {width: 22 1/8, height: 27 5/8, depth: 21 1/2, cabinet: frameless, fronts: none}
drawers:
  - name: base
    opening: base
    slide: side-mount
    rows: [5 1/2, free, 8]   # from the top
    sides: birch
    bottom: ply
`;

await attempt('a cabinet of rows', async () => {
  const bank = await serve(['view', file('rows.yaml', bankText).path]);
  const wide = await tab(bank.address);
  const rows = (text) => until(`rows ${text}`, async () => (await source(wide)) === bankText.replace('5 1/2, free, 8', text));
  const row = (n) => wide.locator('.front [data-row]').nth(n);
  await until('three rows', async () => (await wide.locator('.front [data-row]').count()) === 3);
  must((await row(0).getAttribute('aria-label')).startsWith('base-1, 5 1/2 in, row 1 of 3'), await row(0).getAttribute('aria-label'));
  for (let i = 0; i < 3; i++) must((await row(i).boundingBox()).height >= 24, 'a row is too low for a finger');
  await accessible(wide);
  await row(0).focus();
  await wide.keyboard.press('ArrowDown');
  await rows('free, 5 1/2, 8');
  await until('the focus goes with it', () => wide.evaluate(() => document.activeElement.dataset.row === '1' && document.activeElement.getAttribute('aria-label').includes('5 1/2 in')));
  await wide.keyboard.press('ArrowDown');
  await rows('free, 8, 5 1/2');
  await wide.keyboard.press('ArrowDown'); // there is no further
  await wide.keyboard.press('ArrowUp');
  await rows('free, 5 1/2, 8');
  const from = await row(2).boundingBox(), to = await row(0).boundingBox();
  await wide.mouse.move(from.x + 60, from.y + from.height / 2);
  await wide.mouse.down();
  await wide.mouse.move(to.x + 60, to.y + to.height / 2 - 4, { steps: 5 });
  await wide.screenshot({ path: join(folder, 'rows.png') });
  await wide.mouse.up();
  await rows('8, free, 5 1/2');
  await wide.close({ runBeforeUnload: false });
  await bank.stop();
});

await done();
