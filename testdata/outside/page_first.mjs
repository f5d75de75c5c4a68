// The form for the first box on the page: typed in, judged, and added to the log; see person.mjs.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { accessible, attempt, done, field, file, folder, must, serve, source, tab, until } from './person.mjs';

const bench = file('first.yaml', `units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24]}
  hard: {thickness: [5.92, 5.86, 5.95]}
cutter: {kind: saw, width: 6.35}
log: shop.csv
drawers:
  - {name: wide, outside: 460 x 140 x 500, sides: birch, bottom: hard}
  - {name: small, outside: 300 x 90 x 400, sides: birch, bottom: hard}
`);
const one = await serve(['view', bench.path]);
const page = await tab(one.address);
const row = (what) => page.locator(`#lists tr:has(th:text-is("${what}"))`);
const input = (what) => row(what).locator('input');
const verdict = (what) => row(what).locator('td').last().textContent();
const head = () => page.locator('#lists .head').textContent();
const log = () => readFileSync(join(folder, 'shop.csv'), 'utf8');

await attempt('the form', async () => {
  await page.click('#tab-first');
  await until('its rows are there', async () => (await page.locator('#lists input').count()) === 23);
  must((await page.locator('#lists').textContent()).includes('unplug the machine'), 'no caution');
  must((await page.locator('#lists caption').allTextContents()).join() === 'on the test piece,on the parts,on the box', 'other tables');
  await accessible(page);
});

await attempt('what is typed is judged', async () => {
  await input('from the end to a dado').fill('6.3');
  await page.keyboard.press('Tab');
  await until('it is over', async () => (await verdict('from the end to a dado')) === 'over');
  must((await head()).includes('it is not right'), await head());
  must(await page.locator('#lists .todo').isVisible(), 'nothing is said of what to do');
  await input('height').fill('14,0');
  await page.keyboard.press('Tab');
  await until('a mistake is told', async () => (await verdict('height')).startsWith('it has a comma'));
  must(await input('height').getAttribute('aria-invalid') === 'true', 'the field is not marked');
  await page.click('#lists button');
  await until('the log does not take it', async () => (await page.locator('#lists .logged').textContent()).startsWith('Nothing is added'));
  await accessible(page);
  await page.screenshot({ path: join(folder, 'first.png') });
});

await attempt('a right box goes into the log, once', async () => {
  for (const e of await page.locator('#lists tbody tr').all()) {
    const [least, most] = (await e.locator('td').first().textContent()).split(/\sto\s/).map(Number);
    await e.locator('input').fill(((least + most) / 2).toFixed(2));
  }
  await page.keyboard.press('Tab');
  await until('it is right', async () => (await head()) === 'First box of wide: it is right; leave all as it is, and cut the rest.');
  await page.click('#lists button');
  await until('it is added', async () => (await page.locator('#lists .logged').textContent()) === '4 lines added to shop.csv.');
  await page.click('#lists button');
  await until('and no more', async () => (await page.locator('#lists .logged').textContent()) === 'Nothing is added: shop.csv has these readings of this day already.');
  must(log().split('\n').length === 6, log());
  must(await source(page) === bench.read(), 'the job has become another');
});

await attempt('each drawer has its own, and keeps it', async () => {
  await page.selectOption('#drawer', { index: 1 });
  await until('the other is empty', async () => (await head()).startsWith('First box of small: ') && (await input('height').inputValue()) === '');
  await page.selectOption('#drawer', { index: 0 });
  await until('the first is back', async () => (await head()).startsWith('First box of wide: it is right'));
  await field(page, 'drawers', '0', 'outside').first().fill('470 x 140 x 500');
  await until('the limits follow the job', async () => (await row('width front').locator('td').first().textContent()).startsWith('469.'));
  await until('what was typed is out now', async () => (await verdict('width front')).startsWith('it is too far') || (await verdict('width front')) === 'under');
  await page.selectOption('#unit', 'in');
  await until('inches', async () => (await row('width front').locator('td').first().textContent()).startsWith('18.'));
});

await attempt('a log that has changed is noticed', async () => {
  await page.click('#tab-fit');
  const cuts = () => page.locator('#lists tr:has(th:text-is("saw, cutter")) td').first().textContent().catch(() => '');
  await until('one cut is known', async () => (await cuts()) === '1');
  writeFileSync(join(folder, 'shop.csv'), `${log()}2026-03-02,saw,,cutter,6.35,6.36,mm,kept\r\n`);
  await until('two are, and nobody asked', async () => (await cuts()) === '2');
});

await done();
