// Batches: a job file is dropped, worked through in the background, and its results are fetched.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { duration, money, number, quantity } from "./figures.js";
import { ask, fetched, listen, problemOf } from "./service.js";
import { whereInFile } from "./to-mend.js";

const LISTED = 20;
const REFUSALS_SHOWN = 50;
const LONGEST_NAME = 200;
const ENDED = new Set(["done", "cancelled"]);

export function show(element, page) {
  return new BatchesView(element, page);
}

class BatchesView {
  #element;
  #page;
  #batches = [];
  #watched = new Map();
  #problem = null;
  #sending = false;
  #withSettings = true;
  #opened = null;

  constructor(element, page) {
    this.#element = element;
    this.#page = page;
    element.innerHTML = `<h2>Batches</h2>
      <p class="lead">A job file holds many frames: one request a line (NDJSON), or one joint a row (CSV). It is kept, worked through in the background, and nothing in it is lost.</p>
      <div id="drop" class="drop">
        <label class="button" for="job-file">Choose a job file…</label>
        <input type="file" id="job-file" class="unseen" accept=".ndjson,.jsonl,.csv">
        <span>or drop it here</span>
        <label class="check"><input type="checkbox" id="with-settings" checked> with the settings and prices of the frame in hand</label>
      </div>
      <div id="batch-problem" aria-live="polite"></div>
      <div id="batch-list"></div>`;
    const file = element.querySelector("#job-file");
    const drop = element.querySelector("#drop");
    file.addEventListener("change", () => {
      if (file.files.length > 0) this.#send(file.files[0]);
      file.value = "";
    });
    element.querySelector("#with-settings").addEventListener("change", (event) => (this.#withSettings = event.target.checked));
    drop.addEventListener("dragover", (event) => {
      event.preventDefault();
      drop.classList.add("over");
    });
    drop.addEventListener("dragleave", () => drop.classList.remove("over"));
    drop.addEventListener("drop", (event) => {
      event.preventDefault();
      drop.classList.remove("over");
      if (event.dataTransfer.files.length > 0) this.#send(event.dataTransfer.files[0]);
    });
  }

  seen() {
    this.#list();
  }

  async #list() {
    await this.#trying(() => this.#fetch());
  }

  async #fetch() {
    this.#batches = (await ask("GET", `/v1/batches?limit=${LISTED}`)).items;
    this.#batches.filter((batch) => !ENDED.has(batch.state)).forEach((batch) => this.#watch(batch.id));
  }

  async #trying(act) {
    this.#problem = await problemOf(act);
    this.#draw();
  }

  async #send(file) {
    this.#sending = true;
    this.#draw();
    const type = /\.csv$/i.test(file.name) ? "text/csv" : "application/x-ndjson";
    const settings = this.#page.state.job.settings.size > 0 && this.#withSettings ? this.#page.state.job.settingsText() : null;
    await this.#trying(async () => {
      let body = file.slice(0, file.size, type);
      if (settings) {
        body = new FormData();
        body.append("settings", new Blob([settings], { type: "application/json" }));
        body.append("jobs", file.slice(0, file.size, type), file.name);
      }
      const query = new URLSearchParams({ units: this.#page.state.system, ...(nameOf(file) ? { name: nameOf(file) } : {}) });
      const batch = await ask("POST", `/v1/batches?${query}`, {
        body,
        type: settings ? null : type,
        headers: { "Idempotency-Key": crypto.randomUUID() },
      });
      this.#put(batch);
      this.#watch(batch.id);
    });
    this.#sending = false;
    this.#draw();
  }

  #put(batch) {
    const at = this.#batches.findIndex((one) => one.id === batch.id);
    if (at < 0) this.#batches.unshift(batch);
    else this.#batches[at] = batch;
    this.#draw();
  }

  #watch(id) {
    if (this.#watched.has(id)) return;
    const told = (batch) => {
      this.#put(batch);
      if (ENDED.has(batch.state)) stop();
    };
    const stop = () => {
      events.close();
      this.#watched.delete(id);
    };
    const events = listen(`/v1/batches/${id}/events`, told, stop);
    this.#watched.set(id, stop);
  }

  async #remove(batch) {
    await this.#trying(async () => {
      // an event on its way would put it back on the list
      this.#watched.get(batch.id)?.();
      await ask("DELETE", `/v1/batches/${batch.id}`);
      await this.#fetch();
    });
  }

  async #open(batch) {
    if (this.#opened?.id === batch.id) {
      this.#opened = null;
      this.#draw();
      return;
    }
    await this.#trying(async () => {
      const [summary, refusals] = await Promise.all([ask("GET", `/v1/batches/${batch.id}/summary`), this.#refusals(batch.id)]);
      this.#opened = { id: batch.id, summary, refusals };
    });
  }

  /** The first refusals; a file's worth of them is downloaded instead. */
  async #refusals(id) {
    const stopping = new AbortController();
    const response = await fetched(`/v1/batches/${id}/refusals`, "application/x-ndjson", stopping.signal);
    const lines = [];
    const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
    let rest = "";
    for (;;) {
      const { value, done } = await reader.read();
      rest += value ?? "";
      const parts = rest.split("\n");
      rest = parts.pop();
      lines.push(...parts.filter(Boolean).map((line) => JSON.parse(line)));
      if (done || lines.length > REFUSALS_SHOWN) break;
    }
    stopping.abort();
    return lines.filter((line) => line.problem);
  }

  #draw() {
    render(
      this.#problem
        ? html`<div class="to-mend"><h3>Not taken</h3><p>${this.#problem.message}</p>
            <ul>${this.#problem.violations.slice(0, 20).map((one) => html`<li>${one.path ? `${whereInFile(one.path)}: ` : ""}${one.message}</li>`)}</ul></div>`
        : this.#sending
          ? html`<p class="notice">Sending…</p>`
          : nothing,
      this.#element.querySelector("#batch-problem"),
    );
    render(
      this.#batches.length === 0 ? html`<p class="of">No batch is kept.</p>` : html`<ul class="batches">${this.#batches.map((batch) => this.#row(batch))}</ul>`,
      this.#element.querySelector("#batch-list"),
    );
  }

  #row(batch) {
    const { frames, read, done, refused } = batch.counts;
    const ended = ENDED.has(batch.state);
    const opened = this.#opened?.id === batch.id ? this.#opened : null;
    return html`<li class="card" data-batch=${batch.id}>
      <div class="bar">
        <b>${batch.name ?? when(batch.created)}</b>
        ${batch.name ? html`<span class="of">${when(batch.created)}</span>` : nothing}
        <span class="state">${batch.state}</span>
        <span>${number(read)} of ${number(frames)} frames, ${number(refused)} refused${batch.framesPerSecond && !ended ? `, ${number(batch.framesPerSecond)} a second` : ""}${batch.timeLeft && !ended ? `, ${duration(batch.timeLeft)} left` : ""}</span>
      </div>
      <progress max=${frames} value=${read} aria-label=${`Batch ${batch.name ?? `of ${when(batch.created)}`}`}></progress>
      <div class="tools">
        <a class="button" href=${`/v1/batches/${batch.id}/results`} download=${`results-${batch.id}.ndjson`}>Results</a>
        <button type="button" @click=${() => this.#csv(batch)} ?disabled=${done + refused === 0}>Results as CSV</button>
        <button type="button" aria-expanded=${String(Boolean(opened))} @click=${() => this.#open(batch)}>Summary and refusals</button>
        ${refused > 0 ? html`<a class="button" href=${`/v1/batches/${batch.id}/refusals`} download=${`refusals-${batch.id}.ndjson`}>Refusals</a>` : nothing}
        <button type="button" @click=${() => this.#remove(batch)}>${ended ? "Remove" : "Cancel"}</button>
      </div>
      ${opened ? this.#detail(opened) : nothing}
    </li>`;
  }

  #detail({ summary, refusals }) {
    return html`<div class="detail">
      <table class="figures">
        <tbody>
          <tr><th scope="row">Filler consumed</th><td>${quantity(summary.filler.consumed)}</td></tr>
          <tr><th scope="row">Gas</th><td>${quantity(summary.gas.total)}</td></tr>
          <tr><th scope="row">of it start surge</th><td>${quantity(summary.gas.startSurge)}</td></tr>
          <tr><th scope="row">Labour</th><td>${duration(summary.labour.total)}</td></tr>
          ${summary.money.map((one) => html`<tr><th scope="row">${one.currency}</th><td>${money(one.total)}</td></tr>`)}
        </tbody>
      </table>
      ${refusals.length > 0
        ? html`<h3>Refused</h3><ul class="refusals">${refusals.slice(0, REFUSALS_SHOWN).map(
            (line) => html`<li>line ${line.line}: ${(line.problem.violations ?? []).map((one) => (one.path ? `${whereInFile(one.path)}: ${one.message}` : one.message)).join("; ") || line.problem.detail || line.problem.title}</li>`,
          )}</ul>${refusals.length > REFUSALS_SHOWN ? html`<p class="of">and more: download them</p>` : nothing}`
        : html`<p class="of">Nothing was refused.</p>`}
    </div>`;
  }

  /** The table comes by the Accept header, which a link cannot send. */
  async #csv(batch) {
    await this.#trying(async () => {
      const response = await fetched(`/v1/batches/${batch.id}/results`, "text/csv");
      const link = document.createElement("a");
      link.href = URL.createObjectURL(await response.blob());
      link.download = `results-${batch.id}.csv`;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    });
  }
}

/** A file's name as a batch's: a line, and not a longer one than is taken. */
function nameOf(file) {
  return [...file.name.replaceAll(/\p{Cc}/gu, "")].slice(0, LONGEST_NAME).join("").trim();
}

const clock = new Intl.DateTimeFormat("en-CA", { dateStyle: "short", timeStyle: "short", hour12: false });

function when(text) {
  return clock.format(new Date(text));
}
