// The shop's price books: one is chosen and its prices are taken in hand, or the prices in hand become its next version.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { capital, label } from "./rules.js";
import { ask, problemOf } from "./service.js";

const KEPT = "seamtally.price-book";

const path = (name) => `/v1/price-books/${encodeURIComponent(name)}`;

/** Price books by name; those that no quote can take yet are told as such. */
export async function books() {
  const all = [];
  let after = "";
  do {
    const stretch = await ask("GET", `/v1/price-books?limit=100${after}`);
    all.push(...stretch.items);
    after = stretch.next ? `&after=${encodeURIComponent(stretch.next)}` : null;
  } while (after !== null);
  return all;
}

export class PriceBooks {
  #element;
  #page;
  #books = null;
  #keeping = false;
  #said = "";
  #problem = null;
  /** whose prices were taken in hand: {name, version, effective, prices, lines} */
  #taken = null;

  /** @param page { job(), pricesChanged() } */
  constructor(element, page) {
    this.#element = element;
    this.#page = page;
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "null");
    this.#taken = kept;
    this.#draw();
  }

  /** The prices are looked at: now it matters which books there are. */
  async seen() {
    if (this.#books !== null) return;
    await this.#trying(async () => (this.#books = await books()));
  }

  /** The book that the prices in hand are from, as they stand there; null where there is none. */
  get unchanged() {
    const taken = this.#taken;
    if (!taken || taken.prices !== this.#page.job().pricesText()) return null;
    const lines = this.#page.job().otherWorkTexts().slice(0, taken.lines.length);
    return lines.join() === taken.lines.join() ? taken : null;
  }

  /** A price was changed. */
  changed() {
    this.#said = "";
    this.#draw();
  }

  /** Another frame is in hand. @param name the book that its quote was priced by, if it was by one */
  async opened(name) {
    this.#keeping = false;
    this.#said = "";
    this.#problem = null;
    this.#remember(null);
    if (name) await this.#take(name);
  }

  #remember(taken) {
    this.#taken = taken;
    localStorage.setItem(KEPT, JSON.stringify(taken));
    this.#draw();
  }

  async #trying(act) {
    this.#problem = await problemOf(act);
    this.#draw();
  }

  /** Takes the prices that quotes of today take from a book. */
  async #take(name) {
    this.#said = "";
    await this.#trying(async () => {
      const { current, versions } = await ask("GET", path(name));
      if (!current) {
        this.#said = `${name} is used from ${versions[0].effective} on: no quote takes it yet.`;
        return;
      }
      const job = this.#page.job();
      if (this.unchanged) job.otherWork.splice(0, this.#taken.lines.length);
      const count = job.takePrices(current.prices);
      this.#taken = {
        name: current.name,
        version: current.version,
        effective: current.effective,
        note: current.note,
        prices: job.pricesText(),
        lines: job.otherWorkTexts().slice(0, count),
      };
      this.#page.pricesChanged();
      this.#remember(this.#taken);
    });
  }

  async #keep(event) {
    event.preventDefault();
    const data = new FormData(event.target);
    const name = data.get("name").trim();
    const note = data.get("note").trim();
    const effective = data.get("effective");
    await this.#trying(async () => {
      // a version goes on top of the one that was looked at, and of no other
      let headers = { "If-None-Match": "*" };
      if (this.#books?.some((book) => book.name === name)) {
        const got = await ask("GET", path(name), { whole: true });
        headers = { "If-Match": got.headers.get("ETag") };
      }
      const made = await ask("PUT", path(name), { body: this.#page.job().priceBookRequest({ effective, ...(note ? { note } : {}) }), headers });
      this.#books = await books();
      this.#keeping = false;
      await this.#take(name);
      this.#said = `Kept as version ${made.version} of ${made.name}, used from ${made.effective} on.`;
    });
    this.#element.querySelector("[role=alert], [role=status]")?.focus();
  }

  #draw() {
    const taken = this.#taken;
    const unchanged = this.unchanged;
    render(
      html`<div class="tools">
          <label for="price-book">Price book</label>
          <select id="price-book" @change=${(event) => this.#chosen(event.target)}>
            <option value="">${taken && !unchanged ? `${taken.name}, changed here` : "none: prices typed here"}</option>
            ${(this.#books ?? (taken ? [taken] : [])).map((book) => html`<option value=${book.name}>${book.name}</option>`)}
          </select>
          <button type="button" aria-expanded=${String(this.#keeping)} @click=${() => this.#openKeeping()}>Keep these prices…</button>
        </div>
        <p class="of">${unchanged
          ? `Version ${unchanged.version}, used from ${unchanged.effective} on${unchanged.note ? `: ${unchanged.note}` : ""}.`
          : taken
            ? `No longer as in version ${taken.version}: a quote takes what stands here.`
            : "A quote takes what stands here."}</p>
        ${this.#said ? html`<p class="notice" role="status" tabindex="-1">${this.#said}</p>` : nothing}
        ${this.#problem
          ? html`<div class="to-mend" role="alert" tabindex="-1"><p>${this.#problem.status === 412 ? "Somebody made a later version of it meanwhile: choose it above and look at it first." : this.#problem.message}</p>
              <ul>${this.#problem.violations.slice(0, 10).map((one) => html`<li>${one.path ? `${capital(label(one.path))}: ` : ""}${one.message}</li>`)}</ul></div>`
          : nothing}
        ${this.#keeping ? this.#form() : nothing}`,
      this.#element,
    );
    // whatever was picked there: what is in hand counts
    this.#element.querySelector("#price-book").value = unchanged?.name ?? "";
  }

  #chosen(select) {
    if (select.value) this.#take(select.value);
    else this.#remember(null);
  }

  #openKeeping() {
    this.#keeping = !this.#keeping;
    this.#draw();
    if (this.#keeping) this.#element.querySelector("#book-name").focus();
  }

  #form() {
    return html`<form class="save" aria-label="Keep these prices in a price book" @submit=${(event) => this.#keep(event)}>
      <div class="fields">
        <div class="field"><label for="book-name">Price book (a new name makes a new book)</label>
          <input type="text" id="book-name" name="name" required maxlength="60" list="book-names" autocomplete="off" .value=${this.#taken?.name ?? ""}>
          <datalist id="book-names">${(this.#books ?? []).map((book) => html`<option value=${book.name}></option>`)}</datalist></div>
        <div class="field"><label for="book-effective">Used from</label>
          <input type="date" id="book-effective" name="effective" required .value=${new Date().toISOString().slice(0, 10)}></div>
        <div class="field"><label for="book-note">Why, for the shop</label><input type="text" id="book-note" name="note" maxlength="1000"></div>
      </div>
      <div class="tools"><button class="main">Keep as its next version</button>
        <button type="button" @click=${() => this.#openKeeping()}>Close</button></div>
    </form>`;
  }
}
