// Hose set-ups compared under one duty: what each start throws away, what that is a year, and when a change is paid back.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { Form } from "./fields.js";
import { money, number, percent, quantity, signed } from "./figures.js";
import { flattened, tree, written } from "./job.js";
import { capital, comparisonFields, dutyFields, label, setUpFields } from "./rules.js";
import { ask, LatestWins, Problem } from "./service.js";

const KEPT = "seamtally.set-ups";
// what a picture still tells apart
const MOST = 5;
const NARROW = matchMedia("(max-width: 40rem)");

export async function show(element, page) {
  const view = new SetUps(element, page);
  await view.begin();
  return view;
}

class SetUps {
  #element;
  #page;
  #duty = new Map();
  #money = new Map();
  #setUps = [];
  #forms = [];
  #summaries = [];
  #answers = new LatestWins();
  #result;

  constructor(element, page) {
    this.#element = element;
    this.#page = page;
    document.addEventListener("units", () => this.#compare());
  }

  async begin() {
    const kept = localStorage.getItem(KEPT);
    this.#read(kept ? JSON.parse(kept) : await ask("GET", "/page/examples/compare-hoses.json"));
    this.#draw();
    this.#compare();
  }

  /** The frame's gas settings may be others by now. */
  seen() {
    if (this.#result) this.#compare();
  }

  #read(request) {
    this.#duty = flattened(request.duty, rules(dutyFields));
    this.#money = new Map(comparisonFields.filter((rule) => request[rule.field]).map((rule) => [rule.field, String(request[rule.field])]));
    this.#setUps = request.setUps.slice(0, MOST).map((setUp) => flattened(setUp, rules(setUpFields)));
  }

  #request() {
    const request = {
      duty: tree(this.#duty, rules(dutyFields)) ?? {},
      ...(tree(this.#money, rules(comparisonFields)) ?? {}),
      setUps: this.#setUps.map((setUp) => tree(setUp, rules(setUpFields)) ?? {}),
    };
    const gas = this.#page.state.job.settingsTree().gas;
    return written(gas ? { ...request, gas } : request);
  }

  #draw() {
    this.#element.innerHTML = `
      <h2>Gas set-ups compared</h2>
      <p class="lead">The gas settings of the frame in hand hold for all of them; a set-up changes what stands in its own column.</p>
      <section class="card" aria-labelledby="duty-title"><h3 id="duty-title">The work</h3><div class="fields" id="duty-fields"></div></section>
      <section aria-labelledby="set-ups-title">
        <div class="bar"><h3 id="set-ups-title">Set-ups; the first is what the others are measured against</h3>
        <button type="button" id="add-set-up">Add a set-up</button></div>
        <div id="set-up-cards" class="cards"></div>
      </section>
      <div id="set-up-problem" class="to-mend"></div>
      <section aria-labelledby="compared-title">
        <h2 id="compared-title">What each start throws away</h2>
        <div id="transient-picture" class="picture"></div>
        <div id="payback-picture" class="picture"></div>
        <div id="compared"></div>
      </section>`;
    this.#result = this.#find("compared");
    this.#find("add-set-up").addEventListener("click", () => {
      if (this.#setUps.length >= MOST) return;
      this.#setUps.push(new Map([["name", `set-up ${this.#setUps.length + 1}`]]));
      this.#drawForms();
      this.#changed();
      this.#find("set-up-cards").lastElementChild.querySelector("input").focus();
    });
    this.#drawForms();
  }

  #find(id) {
    return this.#element.querySelector("#" + id);
  }

  #drawForms() {
    const common = { changed: () => this.#changed(), system: () => this.#page.state.system };
    const both = joined(this.#duty, this.#money, new Set(comparisonFields.map((rule) => rule.field)));
    this.#summaries = [];
    this.#forms = [{ prefix: "", form: new Form(this.#find("duty-fields"), { ...common, rules: [...dutyFields, ...comparisonFields], values: both }) }];
    const cards = this.#setUps.map((setUp, i) => {
      const card = document.createElement("section");
      card.className = "card";
      card.setAttribute("aria-label", `Set-up ${i + 1}`);
      const fields = document.createElement("div");
      fields.className = "fields one";
      // on a narrow screen they would stand one below the other at full height
      const own = document.createElement("details");
      own.open = !NARROW.matches;
      const summary = document.createElement("summary");
      own.append(summary, fields);
      card.append(own);
      this.#summaries.push(() => summary.replaceChildren(...summed(setUp, i)));
      this.#forms.push({ prefix: `setUps[${i}].`, form: new Form(fields, { ...common, rules: setUpFields, values: setUp }) });
      if (this.#setUps.length > 2) {
        const remove = document.createElement("button");
        remove.type = "button";
        remove.textContent = `Remove set-up ${i + 1}`;
        remove.addEventListener("click", () => {
          this.#setUps.splice(i, 1);
          this.#drawForms();
          this.#changed();
        });
        own.append(remove);
      }
      return card;
    });
    this.#find("set-up-cards").replaceChildren(...cards);
    this.#find("add-set-up").disabled = this.#setUps.length >= MOST;
    this.#forms.forEach(({ form }) => form.setAssumed(new Map()));
    this.#summaries.forEach((sum) => sum());
  }

  #changed() {
    localStorage.setItem(KEPT, this.#request());
    this.#summaries.forEach((sum) => sum());
    this.#compare();
  }

  #compare() {
    this.#answers.ask(
      () => ask("POST", `/v1/gas-setup-comparisons?units=${this.#page.state.system}`, { body: this.#request() }),
      (answer) => {
        this.#mend(null);
        this.#showFrames(answer);
        this.#drawAnswer(answer);
      },
      (problem) => {
        if (!(problem instanceof Problem)) throw problem;
        this.#mend(problem);
      },
    );
  }

  /** What a set-up leaves blank is as it is in the frame, or assumed there too. */
  #showFrames(answer) {
    const assumed = new Map(answer.assumptions.map((one) => [one.path, one]));
    const ofFrame = new Map();
    for (const { field } of setUpFields) {
      const given = this.#page.state.job.settings.get(`gas.${field}`);
      const found = given ? { value: String(given) } : assumed.get(`gas.${field}`);
      if (found) ofFrame.set(field, found);
    }
    this.#forms.filter(({ prefix }) => prefix !== "").forEach(({ form }) => form.setAssumed(ofFrame, "as the frame:"));
  }

  #mend(problem) {
    const paths = new Map();
    for (const violation of problem?.violations ?? []) {
      const path = violation.path.replace(/^duty\./, "");
      paths.set(path, [...(paths.get(path) ?? []), violation.message]);
    }
    for (const { prefix, form } of this.#forms) {
      form.setErrors(new Map([...paths].filter(([path]) => path.startsWith(prefix)).map(([path, texts]) => [path.slice(prefix.length), texts])));
    }
    const elsewhere = [...paths].filter(([path]) => !this.#forms.some(({ prefix, form }) => path.startsWith(prefix) && form.has(path.slice(prefix.length))));
    render(
      problem
        ? html`<h3>To mend</h3><ul>${elsewhere.length === 0 ? html`<li>${problem.message}</li>` : elsewhere.map(([path, texts]) => html`<li>${placed(path)}: ${texts.join("; ")}</li>`)}</ul>`
        : nothing,
      this.#find("set-up-problem"),
    );
  }

  #drawAnswer(answer) {
    const priced = answer.setUps.some((one) => one.costPerYear);
    render(
      html`<div class="scroll-x" tabindex="0" role="group" aria-label="Set-ups compared">
          <table class="figures">
            <thead>
              <tr><th scope="col">Set-up</th><th scope="col">Gas a start</th><th scope="col">of it surge</th><th scope="col">Peak flow</th><th scope="col">Turbulent for</th>
              <th scope="col">Drift</th><th scope="col">Gas a year</th><th scope="col">Surge a year</th>${priced ? html`<th scope="col">${answer.currency} a year</th><th scope="col">Paid back</th>` : nothing}</tr>
            </thead>
            <tbody>
              ${answer.setUps.map(
                (one) => html`<tr class=${one.name === answer.best ? "best" : ""}>
                  <th scope="row">${one.name}${one.name === answer.best ? html` <b>least gas of those that hold their flow</b>` : nothing}</th>
                  <td>${quantity(one.perStart.total)}</td><td>${quantity(one.perStart.startSurge)}</td>
                  <td>${quantity(one.start?.peakFlow)}</td><td>${quantity(one.start?.turbulentTime)}</td>
                  <td>${percent(one.steady.drift)}</td><td>${quantity(one.perYear)}</td><td>${quantity(one.surgePerYear)}</td>
                  ${priced ? html`<td>${one.costPerYear ? money(one.costPerYear) : "–"}</td><td>${one.paybackShifts === undefined ? "–" : `${number(one.paybackShifts)} shifts`}</td>` : nothing}
                </tr>`,
              )}
            </tbody>
          </table>
        </div>
        <ul class="verdicts">${answer.setUps.map((one) => html`<li><b>${one.name}</b> ${one.verdict.text}.</li>`)}</ul>
        <section class="said"><h3>Cautions</h3><ul>${answer.cautions.map((caution) => html`<li>${caution.text}</li>`)}</ul></section>
        <section class="said"><h3>Assumed</h3><dl>${answer.assumptions.map((one) => html`<dt>${capital(label(one.path))} <b>${signed(one.value)}</b></dt><dd>${one.because}</dd>`)}</dl></section>`,
      this.#result,
    );
    this.#drawPictures(answer);
  }

  /** The first start of each set-up over the others, and what is saved by the months. */
  async #drawPictures(answer) {
    const [transient, payback] = await Promise.all([import("./pictures/transient.js"), import("./pictures/payback.js")]);
    transient.draw(this.#find("transient-picture"), answer);
    payback.draw(this.#find("payback-picture"), answer, { shiftsPerYear: Number(this.#duty.get("shiftsPerYear")) });
  }
}

/** A set-up in a line: its name, and what it changes. */
function summed(setUp, i) {
  const name = document.createElement("b");
  name.textContent = setUp.get("name") ?? `set-up ${i + 1}`;
  const changes = [...setUp].filter(([field]) => field !== "name").map(([field, value]) => `${label(field)} ${value}`);
  const given = document.createElement("span");
  given.className = "given";
  given.textContent = changes.length === 0 ? "changes nothing" : changes.join(" · ");
  return [name, " ", given];
}

/** "setUps[1].price" → "set-up 2, price". */
function placed(path) {
  const setUp = path.match(/^setUps\[(\d+)\](?:\.(.+))?$/);
  return setUp ? `set-up ${Number(setUp[1]) + 1}, ${label(setUp[2] ?? "as a whole")}` : label(path);
}

function rules(fields) {
  const byField = new Map(fields.map((rule) => [rule.field, rule]));
  return (field) => byField.get(field);
}

/** Two maps as one: fields of the second go there. */
function joined(first, second, ofSecond) {
  const of = (path) => (ofSecond.has(path) ? second : first);
  return {
    get: (path) => of(path).get(path),
    has: (path) => of(path).has(path),
    set: (path, value) => of(path).set(path, value),
    delete: (path) => of(path).delete(path),
  };
}
