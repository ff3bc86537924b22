// Talking to the service: answers, problems, and one question at a time.

/** Problem details of an answer that is none. */
export class Problem extends Error {
  constructor(status, problem) {
    super(problem.detail ?? problem.title ?? `HTTP ${status}`);
    this.status = status;
    this.title = problem.title ?? "";
    this.violations = problem.violations ?? [];
    this.type = problem.type ?? "";
  }
}

/** Does something: the Problem that it came to, or null where it came to none. Any other fault is thrown on. */
export async function problemOf(act) {
  try {
    await act();
    return null;
  } catch (fault) {
    if (!(fault instanceof Problem)) throw fault;
    return fault;
  }
}

/** What proves that a request comes from this page, where somebody is logged in. */
function fromHere() {
  const token = document.cookie.match(/(?:^|; )csrf-token=([^;]+)/);
  return token ? { "X-CSRF-Token": token[1] } : {};
}

/**
 * Sends a request. All that the page asks of the service goes through here, and so does what every request carries.
 *
 * @return the response, whatever its status; throws a Problem where there is none
 */
async function send(method, path, { body, headers = {}, signal }) {
  try {
    return await fetch(path, { method, body, signal, headers: { ...fromHere(), ...headers } });
  } catch (fault) {
    if (fault.name === "AbortError") throw fault;
    throw new Problem(0, { title: "The service does not answer.", detail: "The service does not answer. Is it running?" });
  }
}

/** The JSON of a response; null where it is empty. */
async function read(response) {
  const text = await response.text();
  try {
    return { text, answer: text === "" ? null : JSON.parse(text) };
  } catch {
    throw new Problem(response.status, { title: "The answer cannot be read.", detail: "The answer broke off." });
  }
}

function refused(response, answer) {
  if (response.status === 401) {
    const title = "You are not logged in, or no longer.";
    return new Problem(401, { title, detail: `${title} Load the page again to log in; the frame in hand stays.` });
  }
  return new Problem(response.status, answer ?? { title: response.statusText });
}

/** Asks, and gives the answer's JSON; throws a Problem. */
export async function ask(method, path, { body, type = "application/json", headers = {}, signal, whole = false } = {}) {
  const response = await send(method, path, {
    body,
    signal,
    headers: { Accept: "application/json", ...(body === undefined || !type ? {} : { "Content-Type": type }), ...headers },
  });
  const { text, answer } = await read(response);
  if (!response.ok) throw refused(response, answer);
  return whole ? { answer, headers: response.headers, text } : answer;
}

/** Asks for something that is no JSON, or is too long to be read at once: gives the response; throws a Problem. */
export async function fetched(path, accept, signal) {
  const response = await send("GET", path, { headers: { Accept: accept }, signal });
  if (!response.ok) throw refused(response, (await read(response)).answer);
  return response;
}

/** What the service tells of something until the page has heard enough. @param told is given each event's JSON */
export function listen(path, told, broken) {
  const events = new EventSource(path);
  events.onmessage = (event) => told(JSON.parse(event.data));
  // a connection that broke is opened again by the browser; one that was refused is not
  events.onerror = () => events.readyState === EventSource.CLOSED && broken();
  return events;
}

/** Asks one question at a time; while one is under way only the latest of the others is kept. */
export class LatestWins {
  #underWay = false;
  #next = null;
  #dropped = 0;
  // how often was dropped when the question under way was asked
  #since = 0;

  /** Whether an answer that somebody waits for is still to come. */
  get isAwaited() {
    return this.#next !== null || (this.#underWay && this.#since === this.#dropped);
  }

  /** Nobody waits any more for what was asked so far. */
  drop() {
    this.#next = null;
    this.#dropped++;
  }

  /** @param question gives a promise; @param done is called with its value, @param failed with its fault */
  ask(question, done, failed) {
    if (this.#underWay) {
      this.#next = [question, done, failed];
      return;
    }
    this.#run(question, done, failed);
  }

  async #run(question, done, failed) {
    this.#underWay = true;
    this.#since = this.#dropped;
    try {
      const answer = await question();
      if (this.#since === this.#dropped) done(answer);
    } catch (fault) {
      if (this.#since === this.#dropped) failed(fault);
    } finally {
      this.#underWay = false;
    }
    if (this.#next) {
      const next = this.#next;
      this.#next = null;
      this.#run(...next);
    }
  }
}
