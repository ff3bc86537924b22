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

/** Asks, and gives the answer's JSON; throws a Problem. */
export async function ask(method, path, { body, type = "application/json", headers = {}, signal, whole = false } = {}) {
  let response;
  try {
    response = await fetch(path, {
      method,
      body,
      signal,
      headers: { Accept: "application/json", ...(body === undefined || !type ? {} : { "Content-Type": type }), ...headers },
    });
  } catch (fault) {
    if (fault.name === "AbortError") throw fault;
    throw new Problem(0, { title: "The service does not answer.", detail: "The service does not answer. Is it running?" });
  }
  const text = await response.text();
  let answer = null;
  try {
    answer = text === "" ? null : JSON.parse(text);
  } catch {
    throw new Problem(response.status, { title: "The answer cannot be read.", detail: "The answer broke off." });
  }
  if (!response.ok) throw new Problem(response.status, answer ?? { title: response.statusText });
  return whole ? { answer, headers: response.headers, text } : answer;
}

/** Asks one question at a time; while one is under way only the latest of the others is kept. */
export class LatestWins {
  #underWay = false;
  #next = null;

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
    try {
      done(await question());
    } catch (fault) {
      failed(fault);
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
