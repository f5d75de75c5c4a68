// Numbers that come before what is said of them, where a job has many drawers; see person.mjs.
import { accessible, attempt, done, field, file, must, serve, source, tab, until } from './person.mjs';

const stocks = `units: mm
stock:
  birch: {thickness: 12.2, sheet: 1525 x 1525, grain: length}
  hard: {thickness: [5.92, 5.86, 5.95], sheet: 2440 x 1220}
cutter: {kind: saw, width: 6.35}
`;
const bank = (i) => `  - {name: bank${i}, opening: base${i}, slide: side-mount, rows: 12, sides: birch, bottom: hard}\n`;
const opening = (i) => `  base${i}: {width: ${560 + 4 * i}, height: 2100, depth: 545, cabinet: frameless, fronts: overlay}\n`;
const program = await serve(['view', file('soon.yaml', `${stocks}openings:\n${opening(1)}${opening(2)}drawers:\n${bank(1)}${bank(2)}`).path]);
const page = await tab(program.address);

// Asked are what the page asks for, and held what gives the rest of an answer on, one after the other.
const asked = [], held = [];
let holds = false;
await page.route(/api\/sheets/, (route) => {
  asked.push('sheets');
  return route.continue();
});
await page.route(/api\/(look|edit)/, (route) => {
  const { view } = route.request().postDataJSON();
  asked.push(view.soon ? 'soon' : 'whole');
  if (view.soon || !holds) return route.continue();
  held.push(() => route.continue());
});
const given = []; // requests that the page gave up
page.on('requestfailed', (r) => given.push(r.postDataJSON()?.view?.soon ? 'soon' : 'whole'));

const busy = async () => (await page.locator('#result').getAttribute('aria-busy')) === 'true';
const lists = () => page.locator('#lists').textContent();
const messages = () => page.locator('#messages').textContent();
// right holds what is listed against what the program says of the text.
const right = async () => {
  holds = false;
  const wanted = await page.evaluate(async (text) => {
    const body = JSON.stringify({ text, view: { show: 'told' } });
    const answer = await fetch('api/look', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body });
    return (await answer.json()).problems.map((p) => p.said || p.message);
  }, await source(page));
  // The text of the file is folded away, so messages use the words of the form.
  const listed = await page.locator('#messages li button > :not(.place, .hint, .in-file)').allTextContents();
  must(wanted.length > 0 && listed.join('\n') === wanted.join('\n'), `listed:\n${listed.join('\n')}\nwanted:\n${wanted.join('\n')}`);
};
const thickness = field(page, 'stock', 'birch', 'thickness');
const numbers = async (value) => {
  const before = await lists();
  await thickness.fill(value);
  await until('new numbers', async () => (await lists()) !== before);
};

await attempt('numbers first', async () => {
  await until('all is said at the beginning', async () => !(await busy()) && (await messages()).length > 0);
  await page.locator('#fields summary', { hasText: 'birch' }).first().click();
  const before = await messages();
  asked.length = 0;
  holds = true;
  await numbers('12.45');
  must(await busy(), 'the page does not say that it works');
  must((await messages()) === before, 'messages change with the numbers');
  await until('the rest is asked for', () => held.length === 1);
  must(asked.join() === 'soon,whole', asked.join());
  await page.locator('#verdict .working').waitFor({ state: 'visible' });
  await accessible(page);
  held.pop()();
  await until('all is said', async () => !(await busy()));
  must((await messages()) !== before, 'messages stay');
  await right();
  await page.locator('#verdict .working').waitFor({ state: 'hidden' });
});

await attempt('typing goes on', async () => {
  holds = true;
  await numbers('12.3');
  await until('the rest is asked for', () => held.length === 1);
  await numbers('12.34');
  await until('the first is given up', () => given.join() === 'whole');
  await until('the rest of the second is asked for', () => held.length === 2);
  held.splice(0).forEach((go) => go());
  await until('all is said', async () => !(await busy()));
  await right();
});

await attempt('a mistake', async () => {
  holds = false;
  await thickness.fill('0.2');
  await until('it is told at once, with the rest', async () => (await page.locator('#messages li[data-level=error]').count()) > 0);
  must(!(await busy()), 'the page says that it works');
  holds = true;
  await thickness.fill('12.2');
  await until('it is gone with the first numbers', async () => (await page.locator('#messages li[data-level=error]').count()) === 0);
  await until('the rest is asked for', () => held.length === 1);
  must(await busy(), 'the page does not say that it works');
  held.pop()();
  await until('all is said', async () => !(await busy()));
});

await attempt('all at once', async () => {
  holds = false;
  asked.length = 0;
  await page.locator('#tab-buy').click();
  await until('what to buy is there', async () => (await lists()).includes('birch'));
  must(asked.join() === 'soon', asked.join());
  must(!(await busy()), 'the page says that it works');
});

await attempt('sheets last', async () => {
  await page.locator('#tab-sheets').click();
  await until('sheets are there', async () => (await page.locator('#lists figure').count()) > 0 && !(await busy()));
  asked.length = 0;
  holds = true;
  await thickness.fill('12.28');
  await until('the rest is asked for', () => held.length === 1);
  must(asked.join() === 'soon,whole', asked.join());
  held.pop()();
  await until('the sheets are asked for', () => asked.length === 3);
  must(asked.join() === 'soon,whole,sheets', asked.join());
  await until('and drawn', async () => (await page.locator('#lists').getAttribute('aria-busy')) === null && (await page.locator('#lists figure').count()) > 0);
});

await done();
