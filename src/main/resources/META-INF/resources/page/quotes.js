// Quotes that are kept: found, opened, compared by revision, printed.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { money } from "./figures.js";
import { capital, label } from "./rules.js";
import { printLinks } from "./save.js";
import { ask, LatestWins, Problem } from "./service.js";

const LISTED = 25;

export function show(element, page) {
  return new QuotesView(element, page);
}

class QuotesView {
  #element;
  #page;
  #items = [];
  #next = null;
  #searches = new LatestWins();
  #problem = null;
  #quote = null;
  #difference = null;

  constructor(element, page) {
    this.#element = element;
    this.#page = page;
    // printed in the page's units
    document.addEventListener("units", () => this.#draw());
    element.innerHTML = `<h2>Quotes</h2>
      <div class="search"><div class="field"><label for="search">Search in frame, reference, notes and number</label><input type="search" id="search"></div></div>
      <div id="quote-problem" aria-live="polite"></div>
      <div id="quote-in-hand"></div>
      <div id="quote-list"></div>`;
    element.querySelector("#search").addEventListener("input", () => this.#list());
  }

  /** @param address what stands behind the part's name: a quote's id */
  seen([id]) {
    this.#list();
    if (id && id !== this.#quote?.id) this.#read(id);
  }

  #list(after) {
    const search = this.#element.querySelector("#search").value.trim();
    const query = new URLSearchParams({ limit: LISTED, ...(search ? { search } : {}), ...(after ? { after } : {}) });
    this.#searches.ask(
      () => ask("GET", `/v1/quotes?${query}`),
      (answer) => {
        this.#items = after ? [...this.#items, ...answer.items] : answer.items;
        this.#next = answer.next ?? null;
        this.#problem = null;
        this.#draw();
      },
      (fault) => this.#failed(fault),
    );
  }

  #failed(fault) {
    if (!(fault instanceof Problem)) throw fault;
    this.#problem = fault;
    this.#draw();
  }

  async #read(id) {
    try {
      const got = await ask("GET", `/v1/quotes/${id}`, { whole: true });
      this.#quote = { ...got.answer, etag: got.headers.get("ETag") };
      this.#difference = null;
      this.#problem = null;
      this.#draw();
    } catch (fault) {
      this.#failed(fault);
    }
  }

  async #compare(event) {
    event.preventDefault();
    const data = new FormData(event.target);
    try {
      this.#difference = await ask("GET", `/v1/quotes/${this.#quote.id}/difference?from=${data.get("from")}&to=${data.get("to")}`);
      this.#problem = null;
      this.#draw();
    } catch (fault) {
      this.#failed(fault);
    }
  }

  /** Takes the quote's frame in hand, to be revised. */
  #take() {
    const { id, number, revision, etag, request } = this.#quote;
    const { customerReference, validUntil, notes, priceBook, otherWork, ...estimate } = request;
    if (otherWork) estimate.prices = { ...estimate.prices, otherWork };
    this.#page.open(estimate, { id, number, revision, etag, terms: { customerReference, validUntil, notes, priceBook } });
    location.hash = "#frame";
  }

  #draw() {
    render(
      this.#problem
        ? html`<div class="to-mend"><h3>Not answered</h3><p>${this.#problem.message}</p>
            <ul>${this.#problem.violations.map((one) => html`<li>${one.message}</li>`)}</ul></div>`
        : nothing,
      this.#element.querySelector("#quote-problem"),
    );
    render(this.#quote ? this.#inHand(this.#quote) : nothing, this.#element.querySelector("#quote-in-hand"));
    render(
      this.#items.length === 0
        ? html`<p class="of">No quote is kept that has these words.</p>`
        : html`<div class="scroll-x" tabindex="0" role="group" aria-label="Quotes"><table class="figures list">
              <thead><tr><th scope="col">Quote</th><th scope="col">Frame</th><th scope="col">Reference</th><th scope="col">Revision</th><th scope="col">Made</th><th scope="col">Holds until</th><th scope="col">Price</th></tr></thead>
              <tbody>
                ${this.#items.map(
                  (item) => html`<tr><th scope="row"><a href=${`#quotes/${item.id}`}>${item.number}</a></th><td class="words">${item.frame ?? ""}</td><td class="words">${item.customerReference ?? ""}</td>
                    <td>${item.revision}</td><td>${item.made.slice(0, 10)}</td><td>${item.validUntil ?? ""}</td><td class="amount">${money(item.total)} ${item.currency}</td></tr>`,
                )}
              </tbody></table></div>
            ${this.#next ? html`<button type="button" @click=${() => this.#list(this.#next)}>More</button>` : nothing}`,
      this.#element.querySelector("#quote-list"),
    );
  }

  #inHand(quote) {
    const cost = quote.estimate.cost;
    const last = quote.revisions.length;
    return html`<section class="card quote" aria-label=${`Quote ${quote.number}`}>
      <div class="bar"><h3>${quote.number}, revision ${quote.revision}: ${quote.estimate.name ?? "frame"}</h3>
        <button type="button" class="main" @click=${() => this.#take()}>Open and revise</button></div>
      <p><b>${money(cost.total)} ${cost.currency}</b>${quote.customerReference ? html`, ${quote.customerReference}` : nothing}${quote.validUntil ? html`, holds until ${quote.validUntil}` : nothing}${quote.priceBook ? html`, priced by ${quote.priceBook.name ?? quote.priceBook.book}, version ${quote.priceBook.version}` : nothing}</p>
      <p>Print: ${printLinks(quote.id, quote.revision, this.#page.state.system)}</p>
      <table class="figures">
        <thead><tr><th scope="col">Revision</th><th scope="col">Made</th><th scope="col">Price</th><th scope="col">Print</th></tr></thead>
        <tbody>${quote.revisions.map((one) => html`<tr><th scope="row">${one.revision}</th><td>${one.made.slice(0, 16).replace("T", " ")}</td><td>${money(one.total)} ${one.currency}</td><td class="words">${printLinks(quote.id, one.revision, this.#page.state.system)}</td></tr>`)}</tbody>
      </table>
      ${last > 1
        ? html`<form class="search" aria-label="Compare revisions" @submit=${(event) => this.#compare(event)}>
            <div class="field"><label for="from">From revision</label><select id="from" name="from">${this.#options(quote, last - 1)}</select></div>
            <div class="field"><label for="to">to revision</label><select id="to" name="to">${this.#options(quote, last)}</select></div>
            <button>Compare</button>
          </form>`
        : nothing}
      ${this.#difference ? this.#compared(this.#difference) : nothing}
    </section>`;
  }

  #options(quote, chosen) {
    return quote.revisions.map((one) => html`<option value=${one.revision} ?selected=${one.revision === chosen}>${one.revision}</option>`);
  }

  #compared(difference) {
    const signed = (text) => (text === undefined || text === null ? "–" : text.startsWith("-") ? `−${money(text.slice(1))}` : `+${money(text)}`);
    const { moved } = difference;
    return html`<div class="difference">
      <h3>From ${money(difference.from.total)} ${difference.from.currency} to ${money(difference.to.total)} ${difference.to.currency}: ${signed(difference.change)}</h3>
      ${moved
        ? html`<p>The work moved it by ${signed(moved.work)}, other work by ${signed(moved.otherWork)}, prices by ${signed(moved.prices)}${Number(moved.engine) === 0 ? "" : `, the engine by ${signed(moved.engine)}`}.</p>`
        : nothing}
      <table class="figures">
        <thead><tr><th scope="col">Line</th><th scope="col">From</th><th scope="col">To</th><th scope="col">Change</th></tr></thead>
        <tbody>${difference.lines.map((line) => html`<tr><th scope="row">${line.item}</th><td>${line.from ? money(line.from.amount) : "–"}</td><td>${line.to ? money(line.to.amount) : "–"}</td><td>${signed(line.change)}</td></tr>`)}</tbody>
      </table>
      ${difference.fields.length > 0
        ? html`<h3>What was changed</h3><table class="figures">
            <thead><tr><th scope="col">Field</th><th scope="col">From</th><th scope="col">To</th></tr></thead>
            <tbody>${difference.fields.map((field) => html`<tr><th scope="row">${place(field.path)}</th><td class="words">${sent(field.from)}</td><td class="words">${sent(field.to)}</td></tr>`)}</tbody></table>`
        : nothing}
    </div>`;
  }
}

/** "frame.joints[R1].branch.wall" → "R1: branch wall". */
function place(path) {
  const joint = path.match(/^frame\.joints\[(.*)\](?:\.(.+))?$/);
  return joint ? `${joint[1]}: ${label(joint[2] ?? "the joint")}` : capital(label(path.replace(/^frame\./, "")));
}

/** What was sent, a text without its quotes. */
function sent(json) {
  return json === undefined ? "–" : json.startsWith('"') ? JSON.parse(json) : json;
}
