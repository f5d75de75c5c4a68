// Reads shop.html on a phone, in Chromium: ticks that stay, also where nothing can be kept, all
// of it in reach of a thumb, for everybody, and on paper. Takes the page of a job and its title,
// the page of another job, and a folder for pictures; prints a line for each thing that was tried:
// {"tried", "fault"}, the fault empty where all went well.
import { join } from 'node:path';
import { browse, faults, open } from './browser.mjs';

const [file, title, other, pictures] = process.argv.slice(2);
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };

function must(condition, what) {
  if (!condition) throw new Error(what);
}

const ticked = (page) => page.$$eval('input:checked', (list) => list.map((box) => box.id).join(' '));
const kept = (page) => page.textContent('#kept');

await browse(true, async (browser) => {
  const attempt = async (tried, settings, work) => {
    let fault = '';
    const { context, page, heard } = await open(browser, file, { ...phone, ...settings });
    try {
      await work(page, context);
    } catch (error) {
      fault = error.stack;
    }
    await context.close();
    console.log(JSON.stringify({ tried, fault: [fault, ...heard.filter((h) => !settings.expected?.test(h))].filter(Boolean).join('\n') }));
  };

  await attempt('ticks that stay', {}, async (page, context) => {
    must((await kept(page)).includes('stay on this phone'), await kept(page));
    must(await ticked(page) === '', 'a new page has ticks');
    await page.tap('label:has(#tick-1)');
    await page.tap('label:has(#tick-3)');
    must((await page.textContent('#cuts .count')).startsWith('2 of '), `counted ${await page.textContent('#cuts .count')}`);
    await page.reload();
    must(await ticked(page) === 'tick-1 tick-3', `after a reload ${await ticked(page)}`);
    const next = await context.newPage();
    await next.goto(`file://${file}`);
    must(await ticked(next) === 'tick-1 tick-3', `in another tab ${await ticked(next)}`);
    await next.tap('label:has(#tick-3)');
    await page.waitForFunction(() => !document.getElementById('tick-3').checked);
    await next.goto(`file://${other}`);
    must(await ticked(next) === '', `of another job ${await ticked(next)}`);
    await page.keyboard.press('Tab');
    page.once('dialog', (d) => d.dismiss());
    await page.tap('#clear');
    must(await ticked(page) === 'tick-1', 'cleared without a yes');
    page.once('dialog', (d) => d.accept());
    await page.tap('#clear');
    must(await ticked(page) === '', 'not cleared');
    await page.reload();
    must(await ticked(page) === '', 'cleared ticks came back');
  });

  await attempt('the keyboard', {}, async (page) => {
    await page.focus('#tick-2');
    await page.keyboard.press(' ');
    must(await ticked(page) === 'tick-2', 'space does not tick');
  });

  await attempt('a browser that keeps nothing', {}, async (page, context) => {
    await context.addInitScript(() => Object.defineProperty(globalThis, 'localStorage', { get() { throw new DOMException('denied', 'SecurityError'); } }));
    await page.reload();
    must((await kept(page)).includes('keeps nothing'), await kept(page));
    await page.tap('label:has(#tick-1)');
    must(await ticked(page) === 'tick-1' && (await page.textContent('#cuts .count')).startsWith('1 of '), 'no tick for the visit');
  });

  await attempt('a browser that is full', {}, async (page) => {
    await page.evaluate(() => { Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }; });
    await page.tap('label:has(#tick-1)');
    must((await kept(page)).includes('keeps nothing'), await kept(page));
    must(await ticked(page) === 'tick-1', 'no tick for the visit');
  });

  await attempt('without scripts', { javaScriptEnabled: false }, async (page) => {
    must((await kept(page)).includes('script does not run'), await kept(page));
    await page.tap('label:has(#tick-1)');
    must(await page.isChecked('#tick-1'), 'no tick without scripts');
  });

  for (const colorScheme of ['light', 'dark']) {
    await attempt(colorScheme, { colorScheme }, async (page) => {
      must(await page.title() === `${title}: shop` && await page.textContent('h1') === title, `title ${await page.title()}, ${await page.textContent('h1')}`);
      must(await page.evaluate(() => document.querySelectorAll('img, script').length === 1), 'text of a job is markup');
      must(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), 'wider than the phone');
      const small = await page.evaluate(() => [...document.querySelectorAll('input, button, nav a, summary')].filter((e) => e.checkVisibility())
        .map((e) => [e.outerHTML.slice(0, 60), e.getBoundingClientRect()]).filter(([, b]) => b.height < 44 || b.width < 44).map(([html]) => html));
      must(small.length === 0, `under 44 px: ${small.slice(0, 3)}`);
      const figures = await page.$$eval('.figure', (list) => list.map((e) => parseFloat(getComputedStyle(e).fontSize)));
      must(figures.every((px) => px >= 32), `figures of ${figures} px`);
      const found = await faults(page);
      must(found.length === 0, found.join('\n'));
      await page.screenshot({ path: join(pictures, `shop-${colorScheme}.png`) });
      await page.tap('nav a[href="#setups"]');
      await page.screenshot({ path: join(pictures, `shop-setups-${colorScheme}.png`) });
    });
  }

  await attempt('on paper', {}, async (page) => {
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    const closed = await page.$$eval('details:not([open])', (list) => list.length);
    must(closed === 0, `${closed} folds stay closed on paper`);
    must(!await page.isVisible('nav') && !await page.isVisible('#clear'), 'buttons on paper');
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await page.pdf({ path: join(pictures, 'shop.pdf'), format: 'A4' });
  });
});
