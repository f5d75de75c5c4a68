// What the page asks of the program that serves it.

// Refused is an answer that says why not.
export class Refused extends Error {
  constructor(status, answer) {
    super(answer.error ?? 'the program does not answer as it should');
    this.status = status;
    this.answer = answer;
  }
}

async function ask(path, options) {
  let response;
  try {
    response = await fetch(path, { credentials: 'same-origin', cache: 'no-store', ...options });
  } catch (error) {
    if (error.name === 'AbortError') throw error;
    throw new Refused(0, { error: 'the program has ended, or does not answer' });
  }
  if (!response.ok) throw new Refused(response.status, await response.json().catch(() => ({})));
  return response;
}

function post(path, body, signal) {
  return ask(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body), signal });
}

export const job = async () => (await ask('api/job')).json();
export const look = async (text, view) => (await post('api/look', { text, view })).json();
export const edit = async (text, edit, view) => (await post('api/edit', { text, ...edit, view })).json();
export const sheets = async (text, unit, signal) => (await post('api/sheets', { text, unit }, signal)).json();
export const save = async (text, version) => (await post('api/save', { text, version })).json();
export const zip = async (text) => (await post('api/zip', { text })).blob();

// disk is the state of the file if it is no more the one that was seen, else null.
export async function disk(seen) {
  const response = await ask('api/disk?seen=' + encodeURIComponent(seen));
  return response.status === 204 ? null : response.json();
}
