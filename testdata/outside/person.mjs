// A person at the page of `drawerwright view`, in Chromium: what the scripts page_*.mjs share. They
// take the command and a folder to work in, and print a line for each thing that was tried:
// {"tried", "fault"}, the fault empty where all went well.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { axe, launch } from './browser.mjs';

export const [command, folder] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });

export const say = (v) => console.log(JSON.stringify(v));

const children = []; // every command that was started

// serve starts the command with arguments, in the folder. What it says on standard error is
// gathered.
export async function serve(args, cwd = folder) {
  const child = spawn(command, args, { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
  children.push(child);
  const ended = new Promise((done) => child.once('exit', done));
  let stopped = false;
  const job = { heard: '', pid: child.pid, ended, stop: (signal = 'SIGINT') => { stopped = true; child.kill(signal); return ended; } };
  child.once('exit', (code, signal) => { if (!stopped) faults.push(`the program ended unasked with ${code ?? signal}: ${job.heard}`); });
  child.stderr.on('data', (d) => { job.heard += d; });
  job.address = await new Promise((done) => child.stdout.once('data', (d) => done(String(d).trim())));
  return job;
}

// file writes a job into the folder, and gives where it is.
export function file(name, text) {
  const path = join(folder, name);
  writeFileSync(path, text);
  return { path, read: () => readFileSync(path, 'utf8') };
}

export const browser = await launch();
const faults = []; // of any page, whatever was being tried

// tab opens a page of a context, and notes whatever it says or asks for that it must not.
export async function tab(address, settings = {}) {
  const context = settings.context ?? await browser.newContext({ viewport: { width: 1500, height: 950 }, acceptDownloads: true, locale: 'en-GB', ...settings });
  const page = await context.newPage();
  page.expected = ['GPU stall'];
  page.on('console', (m) => {
    if (['error', 'warning'].includes(m.type()) && !page.expected.some((e) => m.text().includes(e))) faults.push(`console: ${m.text()}`);
  });
  page.on('pageerror', (e) => faults.push(`page: ${e.stack}`));
  page.on('request', (r) => {
    const url = new URL(r.url());
    if (url.hostname !== '127.0.0.1' && url.protocol !== 'blob:') faults.push(`request to ${r.url()}`);
  });
  page.setDefaultTimeout(5000);
  await page.goto(address);
  await page.waitForSelector('#lists table', { state: 'attached' });
  return page;
}

export const field = (page, ...path) => page.locator(`[data-path='${JSON.stringify(path)}'] :is(input, select)`);
export const source = (page) => page.inputValue('#source');

// unfold opens what the form folds away, and what is folded away in that.
export async function unfold(page) {
  const closed = page.locator('#fields .more:not([open]) > summary');
  while (await closed.count() > 0) await closed.first().click();
}

// answerAs types what the fields of a start card that are empty have as examples.
export async function answerAs(card) {
  await card.waitFor();
  for (const input of await card.locator('input[placeholder^="such as"]').all()) {
    if (await input.inputValue() === '') await input.fill((await input.getAttribute('placeholder')).replace('such as ', ''));
  }
}

// until waits for what must come true; a busy machine may take half a minute.
export async function until(what, test) {
  for (let i = 0; i < 600; i++) {
    if (await test()) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`never: ${what}`);
}

const PATIENCE = 3 * 60 * 1000; // a busy machine needs a tenth of it

// attempt tries one thing. What takes for ever is a fault as another is.
export async function attempt(tried, work) {
  faults.length = 0;
  let fault = '', watch;
  const late = new Promise((_, fail) => { watch = setTimeout(() => fail(new Error('it never ends')), PATIENCE); });
  try {
    await Promise.race([work(), late]);
  } catch (error) {
    fault = error.stack;
  }
  clearTimeout(watch);
  say({ tried, fault: [fault, ...faults].filter(Boolean).join('\n') });
}

// done ends the browser and every command, also those that an attempt left when it failed:
// node would wait for them.
export async function done() {
  for (const child of children) child.kill('SIGKILL');
  await browser.close();
}

export function must(condition, what) {
  if (!condition) throw new Error(what);
}

// accessible runs axe-core over a page.
export async function accessible(page) {
  const found = await page.evaluate(`${axe}; axe.run(document, { resultTypes: ['violations'] })`);
  must(found.violations.length === 0, found.violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.map((n) => n.html).slice(0, 3).join(' ')}`).join('\n'));
}
