// Keeping the frame in hand as a quote, or as the next revision of the one it was opened from.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { ask, Problem } from "./service.js";
import { where } from "./to-mend.js";

export class Save {
  #element;
  #page;
  #problem = null;
  #busy = false;
  #open = false;
  #saved = null;
  #changedSince = false;
  // which row each joint that was sent stands in
  #rows = [];
  // the same for every try of one quote, so that a try whose answer was lost is not kept twice
  #key = null;

  constructor(element, page) {
    this.#element = element;
    this.#page = page;
    // printed in the page's units
    document.addEventListener("units", () => this.#draw());
  }

  show() {
    this.#open = !this.#open;
    this.#saved = null;
    this.#problem = null;
    this.#key = crypto.randomUUID();
    this.#draw();
    if (!this.#open) return;
    this.#element.querySelector("input").focus();
  }

  /** Another frame is in hand. */
  close() {
    this.#open = false;
    this.#saved = null;
    this.#draw();
  }

  /** What was saved is no longer what the page shows. */
  changed() {
    if (!this.#saved || this.#changedSince) return;
    this.#changedSince = true;
    this.#draw();
  }

  #terms(form) {
    const data = new FormData(form);
    const terms = {};
    for (const name of ["customerReference", "validUntil", "notes", "priceBook"]) {
      const text = (data.get(name) ?? "").trim();
      if (text !== "") terms[name] = text;
    }
    return terms;
  }

  async #send(event) {
    event.preventDefault();
    const form = event.target;
    const terms = this.#terms(form);
    const book = this.#page.priceBook();
    const revise = event.submitter?.value === "revise" ? this.#page.state.quote : null;
    this.#busy = true;
    this.#changedSince = false;
    this.#rows = this.#page.state.job.sentRows();
    this.#draw();
    try {
      const { answer, headers } = await ask("POST", revise ? `/v1/quotes/${revise.id}/revisions` : "/v1/quotes", {
        body: this.#page.state.job.quoteRequest(terms, book?.lines.length),
        headers: { "Idempotency-Key": this.#key, ...(revise ? { "If-Match": revise.etag } : {}) },
        whole: true,
      });
      this.#page.state.quote = { id: answer.id, number: answer.number, revision: answer.revision, etag: headers.get("ETag"), terms };
      this.#page.saved();
      this.#saved = answer;
      this.#problem = null;
      this.#open = false;
    } catch (fault) {
      if (!(fault instanceof Problem)) throw fault;
      this.#problem = fault;
      // a request that was refused may be sent again with other words
      if (fault.status !== 0 && fault.status < 500) this.#key = crypto.randomUUID();
    }
    this.#busy = false;
    this.#draw();
    this.#element.querySelector(this.#saved ? "a" : "[role=alert]")?.focus();
  }

  #draw() {
    render(this.#open ? this.#form() : this.#saved ? this.#done() : nothing, this.#element);
  }

  #form() {
    const quote = this.#page.state.quote;
    const given = quote?.terms ?? {};
    const book = this.#page.priceBook();
    return html`<form class="save" aria-label="Save as a quote" @submit=${(event) => this.#send(event)}>
      <div class="fields">
        <div class="field"><label for="save-reference">Customer's reference</label><input type="text" id="save-reference" name="customerReference" maxlength="200" .value=${given.customerReference ?? ""}></div>
        <div class="field"><label for="save-valid">Price holds until</label><input type="date" id="save-valid" name="validUntil" .value=${given.validUntil ?? ""}></div>
        <div class="field"><label for="save-book">Priced by</label>
          <select id="save-book" name="priceBook">${book ? html`<option value=${book.name} selected>price book ${book.name}, version ${book.version}</option>` : nothing}<option value="">the prices ${book ? "as they stand here" : "typed here"}</option></select></div>
      </div>
      <div class="field"><label for="save-notes">Notes to the customer</label><textarea id="save-notes" name="notes" maxlength="4000" .value=${given.notes ?? ""}></textarea></div>
      ${this.#problem
        ? html`<div class="to-mend" role="alert" tabindex="-1"><h3>Not saved</h3><p>${this.#problem.message}</p>
            <ul>${this.#problem.violations.slice(0, 10).map((one) => html`<li>${one.path ? `${where(one.path, this.#rows)}: ` : ""}${one.message}</li>`)}</ul></div>`
        : nothing}
      <div class="tools">
        ${quote ? html`<button class="main" value="revise" ?disabled=${this.#busy}>Save as revision ${quote.revision + 1} of ${quote.number}</button>` : nothing}
        <button class=${quote ? "" : "main"} value="new" ?disabled=${this.#busy}>Save as a new quote</button>
        <button type="button" @click=${() => this.close()}>Close</button>
      </div>
    </form>`;
  }

  #done() {
    const { id, number, revision } = this.#saved;
    return html`<p class="notice" role="status">Saved as <a href=${`#quotes/${id}`}>${number}, revision ${revision}</a>.
      Print: ${printLinks(id, revision, this.#page.state.system)}.${this.#changedSince
        ? html` <b>The frame was changed since</b>: save it again to quote what stands here now.`
        : nothing}</p>`;
  }
}

/** Links to a revision's printed forms, in a system of units. */
export function printLinks(id, revision, units) {
  const link = (form, format, text) =>
    html`<a href=${`/v1/quotes/${id}/print?form=${form}&format=${format}&revision=${revision}&units=${units}`} target="_blank" rel="noopener">${text}</a>`;
  return html`${link("customer", "html", "for the customer")} (${link("customer", "pdf", "PDF")}),
    ${link("shop-floor", "html", "for the shop floor")} (${link("shop-floor", "pdf", "PDF")})`;
}
