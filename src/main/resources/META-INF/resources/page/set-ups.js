// Hose set-ups compared under one duty: what each start throws away, what that is a year, and when a change is paid back.
// The first is the frame in hand as it stands, and changing it there or here is one thing; the others can be put in.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { button, Form, formNote } from "./fields.js";
import { alike, money, paidBack, percent, signed } from "./figures.js";
import { flattened, tree, written } from "./job.js";
import { capital, comparisonFields, dutyFields, label, setUpFields } from "./rules.js";
import { ask, LatestWins, Problem } from "./service.js";

const KEPT = "seamtally.set-ups";
// what a picture still tells apart
const MOST = 5;
// what a set-up sets of the gas, and what the frame's own has of that
const gasRules = setUpFields.filter((rule) => rule.field !== "name" && rule.field !== "price");
const ofFrame = (field) => `gas.${field}`;
const FRAMES_OWN = new RegExp(`^gas[.](?=(?:${gasRules.map(({ field }) => field.replaceAll(".", "[.]")).join("|")})$)`);
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
    if (!this.#result) return;
    this.#forms.forEach(({ form }) => form.refresh());
    this.#summaries.forEach((sum) => sum());
    this.#compare();
  }

  #read(request) {
    this.#duty = flattened(request.duty, rules(dutyFields));
    this.#money = new Map(comparisonFields.filter((rule) => request[rule.field]).map((rule) => [rule.field, String(request[rule.field])]));
    const setUps = request.setUps.map((setUp) => flattened(setUp, rules(setUpFields)));
    // the first has nothing of its own: it is the frame
    if (gasRules.some(({ field }) => setUps[0]?.has(field))) setUps.unshift(new Map([["name", "as today"]]));
    this.#setUps = setUps.slice(0, MOST);
  }

  get #frame() {
    return this.#page.state.job.settings;
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
      <p class="lead">The first is the frame in hand. Each of the others changes what stands in its own column, and can be put into the frame.</p>
      <section class="card" aria-labelledby="duty-title"><h3 id="duty-title">The work</h3><div class="fields" id="duty-fields"></div></section>
      <section aria-labelledby="set-ups-title">
        <div class="bar"><h3 id="set-ups-title">Set-ups; the first is what the others are measured against</h3>
        <button type="button" id="add-set-up">Add a set-up</button></div>
        <div id="set-up-cards" class="cards"></div>
        <div id="set-up-note"></div>
      </section>
      <div id="set-up-problem" class="to-mend"></div>
      <section aria-labelledby="compared-title">
        <h2 id="compared-title">What each start throws away</h2>
        <div class="pictures">
          <div id="transient-picture" class="picture"></div>
          <div id="payback-picture" class="picture"></div>
        </div>
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
    const note = formNote();
    this.#find("set-up-note").replaceChildren(note);
    const cards = this.#setUps.map((setUp, i) => (i === 0 ? this.#frameCard(setUp, { ...common, note }) : this.#setUpCard(setUp, i, { ...common, note })));
    this.#find("set-up-cards").replaceChildren(...cards);
    this.#find("add-set-up").disabled = this.#setUps.length >= MOST;
    this.#forms.forEach(({ form }) => form.setAssumed(new Map()));
    this.#summaries.forEach((sum) => sum());
  }

  /** The frame's own gas settings as a column. */
  #frameCard(setUp, common) {
    const { card, toFrame, fields, summary } = emptyCard("The frame in hand", 0);
    card.classList.add("of-frame");
    const note = document.createElement("p");
    note.className = "of";
    const link = document.createElement("a");
    link.href = "#gas-picture";
    link.textContent = "where its gas goes";
    note.append("A change here changes the frame: see ", link, ".");
    toFrame.append(note);
    const changed = (path) => {
      if (path !== "name") this.#page.gasChanged();
      this.#changed();
    };
    const ownRules = setUpFields.filter(({ field }) => field !== "price");
    this.#forms.push({ prefix: "setUps[0].", form: new Form(fields, { ...common, changed, rules: ownRules, values: withFrame(setUp, () => this.#frame) }) });
    this.#summaries.push(() => summary.replaceChildren(...summed(setUp, 0)));
    return card;
  }

  #setUpCard(setUp, i, common) {
    const { card, toFrame, own, fields, summary } = emptyCard(`Set-up ${i + 1}`, i);
    this.#forms.push({ prefix: `setUps[${i}].`, form: new Form(fields, { ...common, rules: setUpFields, values: setUp }) });
    if (this.#setUps.length > 2) {
      own.append(
        button(`Remove set-up ${i + 1}`, () => {
          this.#setUps.splice(i, 1);
          this.#drawForms();
          this.#changed();
        }),
      );
    }
    const said = document.createElement("p");
    said.setAttribute("role", "status");
    const use = button("Use in the frame", () => this.#use(setUp, use, said));
    toFrame.append(use, said);
    this.#summaries.push(() => {
      summary.replaceChildren(...summed(setUp, i));
      const changes = gasRules.filter(({ field }) => setUp.has(field));
      const isThere = changes.length > 0 && changes.every(({ field }) => this.#frame.get(ofFrame(field)) === setUp.get(field));
      use.textContent = isThere ? "In the frame" : "Use in the frame";
      use.disabled = isThere || changes.length === 0;
      if (!isThere) render(nothing, said);
    });
    return card;
  }

  /** What a set-up changes becomes the frame's own. */
  #use(setUp, use, said) {
    const frame = this.#frame;
    const before = new Map();
    for (const { field } of gasRules) {
      if (!setUp.has(field)) continue;
      before.set(ofFrame(field), frame.get(ofFrame(field)));
      frame.set(ofFrame(field), setUp.get(field));
    }
    this.#frameChanged();
    const takeBack = () => {
      before.forEach((value, path) => (value === undefined ? frame.delete(path) : frame.set(path, value)));
      this.#frameChanged();
      use.focus();
    };
    render(
      html`The frame has it now: <a href="#gas-picture">where its gas goes</a>, <a href="#frame">its price</a>.
        <button type="button" class="link" @click=${takeBack}>Take it back</button>`,
      said,
    );
    said.querySelector("a").focus();
  }

  #frameChanged() {
    this.#page.gasChanged();
    this.#forms.forEach(({ form }) => form.refresh());
    this.#changed();
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
    const frames = new Map();
    for (const { field } of gasRules) {
      const given = this.#frame.get(ofFrame(field));
      const found = given ? { value: String(given) } : assumed.get(ofFrame(field));
      if (found) frames.set(field, found);
    }
    const [, first, ...others] = this.#forms;
    first.form.setAssumed(frames);
    others.forEach(({ form }) => form.setAssumed(frames, "as the frame:"));
  }

  #mend(problem) {
    const paths = new Map();
    for (const violation of problem?.violations ?? []) {
      // what the frame's own gas is refused for stands in the first column
      const path = violation.path.replace(/^duty\./, "").replace(FRAMES_OWN, "setUps[0].");
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
    const shifts = Number(this.#duty.get("shiftsPerYear"));
    const column = (title, of) => {
      const told = alike(answer.setUps.map(of));
      return [title, (one) => told(of(one))];
    };
    const columns = [
      column("Gas a start", (one) => one.perStart.total),
      column("of it surge", (one) => one.perStart.startSurge),
      column("Peak flow", (one) => one.start?.peakFlow),
      column("Turbulent for", (one) => one.start?.turbulentTime),
      ["Drift", (one) => percent(one.steady.drift)],
      column("Gas a year", (one) => one.perYear),
      column("Surge a year", (one) => one.surgePerYear),
      ...(priced
        ? [
            [`${answer.currency} a year`, (one) => (one.costPerYear ? money(one.costPerYear) : "–")],
            ["Paid back after", (one) => (one.paybackShifts === undefined ? "–" : paidBack(one.paybackShifts / shifts))],
          ]
        : []),
    ];
    render(
      html`<h3>Side by side</h3>
        <div class="scroll-x" tabindex="0" role="group" aria-label="Set-ups compared">
          <table class="figures side-by-side">
            <thead>
              <tr><th scope="col">Set-up</th>${columns.map(([title]) => html`<th scope="col">${title}</th>`)}</tr>
            </thead>
            <tbody>
              ${answer.setUps.map(
                (one) => html`<tr class=${one.name === answer.best ? "best" : ""}>
                  <th scope="row">${one.name}${one.name === answer.best ? html` <b>least gas of those that hold their flow</b>` : nothing}</th>
                  ${columns.map(([, told]) => html`<td>${told(one)}</td>`)}
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

/** A column without its fields yet: its title, what it has to do with the frame, a fold for the fields. */
function emptyCard(name, i) {
  const card = document.createElement("section");
  card.className = "card";
  const title = document.createElement("h4");
  title.id = `set-up-title-${i}`;
  title.textContent = name;
  card.setAttribute("aria-labelledby", title.id);
  const toFrame = document.createElement("div");
  const fields = document.createElement("div");
  fields.className = "fields one";
  // on a narrow screen they would stand one below the other at full height
  const own = document.createElement("details");
  own.open = !NARROW.matches;
  const summary = document.createElement("summary");
  own.append(summary, fields);
  card.append(title, toFrame, own);
  return { card, toFrame, own, fields, summary };
}

/** A set-up in a line: its name, and what it changes. */
function summed(setUp, i) {
  const name = document.createElement("b");
  name.textContent = setUp.get("name") ?? `set-up ${i + 1}`;
  const changes = [...setUp].filter(([field]) => field !== "name").map(([field, value]) => `${label(field)} ${value}`);
  const given = document.createElement("span");
  given.className = "given";
  given.textContent = i === 0 ? "its own gas settings" : changes.length === 0 ? "changes nothing" : changes.join(" · ");
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

/** The first set-up's name, and beside it the frame's own gas settings. */
function withFrame(setUp, frame) {
  const of = (field) => (field === "name" ? [setUp, field] : [frame(), ofFrame(field)]);
  const on = (act) => (field, ...more) => {
    const [map, path] = of(field);
    return map[act](path, ...more);
  };
  return { get: on("get"), has: on("has"), set: on("set"), delete: on("delete") };
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
