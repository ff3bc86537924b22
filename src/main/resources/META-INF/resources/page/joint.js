// The joint in hand: its figures, its cautions, the steel review beside it, and what it sets for itself.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { Form } from "./fields.js";
import { duration, number, percent, quantity } from "./figures.js";
import { written } from "./job.js";
import { isCommon, kinds, label } from "./rules.js";
import { ask, Problem } from "./service.js";

const STILL_MS = 250;

export class JointInHand {
  #element;
  #page;
  #figures;
  #review;
  #own;
  #picture;
  #form = null;
  #errors = new Map();
  #shownRow = null;
  // the row whose figures, or whose want of them, stand there
  #drawn = null;
  #asking = null;
  #timer;

  constructor(element, page) {
    this.#element = element;
    this.#page = page;
    this.#figures = document.createElement("div");
    this.#picture = document.createElement("div");
    this.#picture.id = "seam-picture";
    this.#picture.className = "picture";
    this.#review = document.createElement("div");
    this.#review.className = "review";
    this.#own = document.createElement("details");
    this.#own.className = "setting own";
    this.#own.addEventListener("toggle", () => this.#own.open && this.#drawOwnFields());
    element.append(this.#figures, this.#picture, this.#review, this.#own);
  }

  /** Another joint, or other units. */
  show() {
    this.#drawOwn();
    this.answered();
  }

  /** A new answer, which may be the one for the joint that is to be shown: until that comes the last one stays in sight. */
  answered() {
    if (this.#page.answer() || !this.#page.isComing()) this.#draw();
    else this.#stop();
  }

  /** What was to be drawn is of another joint, or of one that is gone. */
  #stop() {
    clearTimeout(this.#timer);
    this.#asking?.abort();
  }

  /** There was no answer: figures of another joint go. */
  notAnswered() {
    if (this.#drawn !== this.#page.row()) this.#draw();
  }

  #draw() {
    const answer = this.#page.answer();
    this.#drawn = this.#page.row();
    this.#element.parentElement.hidden = !answer && !this.#page.job().joints[this.#page.row()];
    this.#drawFigures(answer);
    this.#stop();
    this.#timer = setTimeout(() => {
      this.#asking = new AbortController();
      this.#drawSeam(answer, this.#asking.signal);
      this.#drawReview(answer, this.#asking.signal);
    }, STILL_MS);
  }

  /** @param errors messages by cell ("row|field") */
  setErrors(errors) {
    this.#errors = errors;
    this.#markOwn();
  }

  #markOwn() {
    const prefix = `${this.#page.row()}|`;
    const ofRow = [...this.#errors].filter(([cell]) => cell.startsWith(prefix));
    this.#form?.setErrors(new Map(ofRow.map(([cell, texts]) => [cell.slice(prefix.length), texts])));
  }

  #drawFigures(answer) {
    const row = this.#page.row();
    const mark = answer?.mark ?? this.#page.job().joints[row]?.get("mark");
    document.getElementById("joint-title").textContent = mark ? `Joint ${mark}, row ${row + 1}` : `The joint in row ${row + 1}`;
    const { seam, filler, arc, gas } = answer ?? {};
    const figures = answer && [
      ["kind", answer.kind],
      ["seam", quantity(seam.length)],
      ["dihedral angle", seam.dihedralAngle ? `${number(seam.dihedralAngle.least.value)} to ${quantity(seam.dihedralAngle.greatest)}` : "–"],
      ["mean section", quantity(seam.meanSection)],
      ["deposit", quantity(seam.depositVolume)],
      ["least throat", quantity(seam.leastThroat)],
      ["groove", seam.grooveShare === undefined ? "–" : percent(seam.grooveShare)],
      ["filler", quantity(filler.consumed)],
      ["rods", number(filler.rods)],
      ["current", quantity(arc.current)],
      ["arc", duration(arc.time)],
      ["travel speed", quantity(arc.travelSpeed)],
      ["heat input", quantity(arc.heatInput)],
      ["gas", quantity(gas.total)],
      ["starts", number(gas.starts)],
    ];
    render(
      answer
        ? html`<dl class="strip">${figures.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>
            ${answer.cautions.length > 0
              ? html`<ul class="cautions">${answer.cautions.map((caution) => html`<li>${caution.text}</li>`)}</ul>`
              : nothing}`
        : html`<p class="of">Its figures come as soon as the frame's sizes are there.</p>`,
      this.#figures,
    );
  }

  /** The seam unrolled; a plug has none. */
  async #drawSeam(answer, signal) {
    if (!answer) {
      this.#picture.replaceChildren();
      return;
    }
    await unlessGone(async () => {
      const [deposit, seam] = await Promise.all([
        ask("POST", `/v1/deposits?course=true&units=${this.#page.system()}`, { body: this.#page.job().oneJoint(this.#page.row()), signal }),
        import("./pictures/seam.js"),
      ]);
      if (signal.aborted) return;
      if (deposit.course) seam.draw(this.#picture, deposit);
      else this.#picture.replaceChildren();
    }, () => this.#picture.replaceChildren());
  }

  async #drawReview(answer, signal) {
    if (!answer) {
      render(nothing, this.#review);
      return;
    }
    await unlessGone(
      async () => {
        const review = await ask("POST", `/v1/steel-reviews?units=${this.#page.system()}`, { body: this.#reviewRequest(answer), signal });
        if (!signal.aborted) this.#paintReview(review);
      },
      (problem) => render(html`<h3>Steel review</h3><p class="of">None: ${problem.message}</p>`, this.#review),
    );
  }

  /** The joint's steel, its own filler and those of the catalogue that are usual beside it. */
  #reviewRequest(answer) {
    const job = this.#page.job();
    const joint = job.joints[this.#page.row()];
    const given = (path) => joint.get(path) ?? job.settings.get(path);
    const value = (path) => {
      const found = given(path);
      return found && typeof found === "object" ? found.value : found;
    };
    const number = (text) => (text === undefined ? undefined : Number(text));
    const fillers = [value("filler.classification"), "ER70S-2", "ER80S-D2", "ER70S-6"].filter(
      (filler, i, all) => filler && all.indexOf(filler) === i,
    );
    const thickest = answer.settings.parts.map((part) => part.wall).reduce((most, wall) => (wall.value > most.value ? wall : most));
    const shown = (q) => (q ? `${q.value} ${q.unit}` : undefined);
    return written(
      stripped({
        base: value("steel.base"),
        wall: shown(thickest),
        dilution: number(value("steel.dilution")),
        fillers: fillers.slice(0, 4),
        arc: stripped({
          current: shown(answer.arc.current),
          voltage: value("arc.voltage"),
          travelSpeed: shown(answer.arc.travelSpeed),
        }),
        // the joint's own state when the arc is struck, as its cautions take it
        startTemperature: answer.preheat ? shown(answer.settings.preheat.temperature) : value("preheat.ambient"),
        hydrogen: value("steel.hydrogen"),
        restraint: value("steel.restraint"),
      }),
    );
  }

  #paintReview(review) {
    const base = review.base;
    const hardness = base.hardness;
    render(
      html`<h3>Steel review: ${base.name}</h3>
        <p class="of">Beside the seam, welded from ${quantity(review.conditions.startTemperature)}, ${number(Math.min(hardness.maynier.value, hardness.yurioka.value))} to
          ${number(Math.max(hardness.maynier.value, hardness.yurioka.value))} HV; cools from ${this.#page.system() === "us" ? "1470 to 930 °F" : "800 to 500 °C"} in ${quantity(base.cooling.t85)};
          ${base.carbonEquivalents.map((ce) => `${ce.symbol} ${ce.value.toFixed(2)}${ce.insideRange ? "" : " (outside its range)"}`).join(", ")}.</p>
        <div class="scroll-x" tabindex="0" role="group" aria-label="Fillers compared">
        <table class="figures">
          <thead><tr><th scope="col">Filler</th><th scope="col">Weld metal, at least</th><th scope="col">Preheat</th><th scope="col">Why</th></tr></thead>
          <tbody>
            ${review.fillers.map(
              (one) => html`<tr><th scope="row">${one.rank}. ${one.filler}</th><td>${quantity(one.leastTensileStrength)}</td>
                <td>${one.preheat.advised ? quantity(one.preheat.advised) : one.preheat.verdict}</td>
                <td class="words">${one.preheat.why}</td></tr>`,
            )}
          </tbody>
        </table></div>`,
      this.#review,
    );
  }

  /** What the joint sets for itself: fields that every kind has inside a part. */
  #drawOwn() {
    const row = this.#page.row();
    const joint = this.#page.job().joints[row];
    const kind = kinds.get(joint?.get("kind"));
    this.#own.hidden = !kind;
    this.#form = null;
    if (!kind) return;
    const wasOpen = this.#own.open && this.#shownRow === row;
    this.#shownRow = row;
    const summary = document.createElement("summary");
    const set = ownRules(kind)
      .filter((rule) => joint.has(rule.field) && rule.field.includes("."))
      .map((rule) => `${label(rule.field)} ${joint.get(rule.field)}`);
    const name = document.createElement("b");
    name.textContent = "Set for this joint alone";
    const given = document.createElement("span");
    given.className = "given";
    given.textContent = set.length === 0 ? "as the frame" : set.slice(0, 4).join(" · ");
    summary.append(name, " ", given);
    this.#own.replaceChildren(summary);
    this.#own.open = wasOpen;
    if (wasOpen) this.#drawOwnFields();
  }

  /** They are many, and most joints set none: drawn once they are to be seen. */
  #drawOwnFields() {
    if (this.#form) return;
    const joint = this.#page.job().joints[this.#page.row()];
    const fields = document.createElement("div");
    fields.className = "fields";
    this.#own.append(fields);
    this.#form = new Form(fields, {
      rules: ownRules(kinds.get(joint.get("kind"))),
      values: joint,
      changed: () => this.#page.changed(),
      system: () => this.#page.system(),
    });
    this.#form.setAssumed(new Map());
    this.#markOwn();
  }
}

/** The rules of what a joint may set for itself beside its sizes. */
function ownRules(kind) {
  return kind.fields.filter((rule) => isCommon(rule.field) && !["mark", "count", "kind"].includes(rule.field));
}

/** Does what another joint in hand may cut short. */
async function unlessGone(act, failed) {
  try {
    await act();
  } catch (fault) {
    if (fault.name === "AbortError") return;
    if (!(fault instanceof Problem)) throw fault;
    failed(fault);
  }
}

function stripped(object) {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined && value !== ""));
}
