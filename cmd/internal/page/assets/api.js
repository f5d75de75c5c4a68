// What the page asks of the program that serves it.

// Refused is an answer that says why not.
export class Refused extends Error {
  constructor(status, answer) {
    super(answer.error ?? 'the program does not answer as it should');
    this.status = status;
    this.answer = answer;
  }
}

let file = new URLSearchParams(location.search).get('file'); // null for the one that the program was started with

// use says which file the page is about from now on; the empty name is that of a job without one.
export function use(name) { file = name; }

// about is an address with the file that it is about: that of the page, if it is no other.
const about = (path, name = file) => (name === null ? path : `${path}${path.includes('?') ? '&' : '?'}file=${encodeURIComponent(name)}`);

async function ask(path, { about: name, ...options } = {}) {
  let response;
  try {
    response = await fetch(about(path, name), { credentials: 'same-origin', cache: 'no-store', ...options });
  } catch (error) {
    if (error.name === 'AbortError') throw error;
    throw new Refused(0, { error: 'the program has ended, or does not answer' });
  }
  if (!response.ok) throw new Refused(response.status, await response.json().catch(() => ({})));
  return response;
}

function post(path, body, more) {
  return ask(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body), ...more });
}

export const start = async () => (await ask('api/start')).json();
export const begin = async (measured) => (await post('api/begin', measured)).json();
export const slide = async (measured) => (await post('api/slide', measured)).json();
export const name = async (name) => (await post('api/name', { name })).json();
export const here = (tab) => post('api/here', { tab });
export const job = async () => (await ask('api/job')).json();
export const look = async (text, view, signal) => (await post('api/look', { text, view }, { signal })).json();
export const edit = async (text, edit, view) => (await post('api/edit', { text, ...edit, view })).json();
export const sheets = async (text, unit, signal) => (await post('api/sheets', { text, unit }, { signal })).json();
export const first = async (box, signal) => (await post('api/first', box, { signal })).json();
// save writes the file of a name, which the page need not be about yet.
export const save = async (name, text, version) => (await post('api/save', { text, version }, { about: name })).json();
export const take = (text, what, signal) => post('api/take', { text, what }, { signal });

// disk is the state of the file if it is no more the one that was seen, else null.
export async function disk(seen) {
  const response = await ask('api/disk?seen=' + encodeURIComponent(seen));
  return response.status === 204 ? null : response.json();
}

// changed reports whether one of some files beside the job, each with the version that was read, is another now.
export async function changed(files) {
  const query = files.map((f) => `name=${encodeURIComponent(f.name)}&seen=${encodeURIComponent(f.version)}`).join('&');
  return (await ask(`api/beside?${query}`)).status !== 204;
}

// leave tells that a tab is closed; it is sent when the page has gone.
export function leave(tab, unsaved) {
  navigator.sendBeacon(about('api/leave'), new Blob([JSON.stringify({ tab, unsaved })], { type: 'application/json' }));
}
