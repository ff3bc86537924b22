// The estimator's page put together: what is typed goes into the job, the job is estimated, the answer is shown.

import { drawPrice, drawSaid, drawTotals } from "./answer.js";
import { Form } from "./fields.js";
import { alike, duration, signed } from "./figures.js";
import { GasLine } from "./gas-line.js";
import { Job } from "./job.js";
import { JointInHand } from "./joint.js";
import { JointList } from "./joint-list.js";
import { capital, frameFields, label, sections } from "./rules.js";
import { OtherWork } from "./other-work.js";
import { PriceBooks } from "./price-books.js";
import { Save } from "./save.js";
import { ask, LatestWins, Problem } from "./service.js";
import { ToMend } from "./to-mend.js";
import { showViews } from "./views.js";

const $ = (id) => document.getElementById(id);
const DRAFT = "seamtally.frame";
// the quote that the frame in hand is of
const DRAFT_OF = "seamtally.frame-of-quote";
const UNITS = "seamtally.units";
// set once the switch was used: until then an example brings its own units
const UNITS_CHOSEN = "seamtally.units-chosen";
const QUIET_MS = 1200;

const state = {
  job: new Job(),
  system: localStorage.getItem(UNITS) ?? "si",
  answer: null,
  /** the kept quote that the frame was opened from */
  quote: null,
};

const estimates = new LatestWins();
const forms = [];
let otherWork;
let priceBooks;
let gasLine;

const list = new JointList(
  $("joints"),
  {
    changed: () => jobChanged(),
    chosen: () => {
      // of the joint that comes in hand, only its line is known so far
      estimate();
      inHand.show();
    },
    noted: (text, faulty) => {
      $("cell-note").textContent = text;
      $("cell-note").classList.toggle("faulty", faulty);
    },
    notice: (text) => toMend.notice(text),
    columns: () => drawColumnChoice(),
  },
  [
    { title: "seam", of: (joint) => joint.seamLength, told: alike },
    { title: "filler", of: (joint) => joint.filler, told: alike },
    { title: "arc", of: (joint) => joint.arcTime, told: () => duration },
    { title: "gas", of: (joint) => joint.gas, told: alike },
  ],
);

const toMend = new ToMend($("to-mend"), (place) => {
  if (place.row !== undefined) list.goTo(place.row, place.field);
  else forms.find((form) => form.has(place.path))?.focus(place.path);
});

const inHand = new JointInHand($("joint-body"), {
  job: () => state.job,
  row: () => list.row,
  system: () => state.system,
  answer: () => (state.answer?.inFull === list.row ? state.answer.joint : undefined),
  isComing: () => estimates.isAwaited,
  changed: () => {
    list.refresh();
    jobChanged();
  },
});

const save = new Save($("save-place"), { state, priceBook: () => priceBooks.unchanged, saved: keepDraft });

// ---- estimating

function jobChanged() {
  save.changed();
  keepDraft();
  estimate();
}

function estimate() {
  const sent = state.job.sentRows();
  if (sent.length === 0) {
    estimates.drop();
    state.answer = null;
    showAnswer(null);
    showProblem(null, []);
    return;
  }
  estimates.ask(
    () => {
      // what is in the job when the question leaves, not when it was put in the queue
      const rows = state.job.sentRows();
      const inFull = list.row;
      const place = rows.indexOf(inFull) + 1;
      return ask("POST", `/v1/frame-totals?units=${state.system}${place > 0 ? `&joint=${place}` : ""}`, { body: state.job.request() }).then(
        (answer) => ({ answer, rows, inFull }),
        (problem) => {
          problem.rows = rows;
          throw problem;
        },
      );
    },
    ({ answer, rows, inFull }) => {
      state.answer = { ...answer, inFull, byRow: new Map(answer.joints.map((joint, i) => [rows[i], joint])) };
      showProblem(null, rows);
      showAnswer(answer);
    },
    (problem) => {
      if (!(problem instanceof Problem)) throw problem;
      showProblem(problem, problem.rows);
    },
  );
}

function showAnswer(answer) {
  drawPrice(answer, null);
  list.setAnswers(state.answer?.byRow ?? new Map());
  later(() => {
    drawTotals(answer);
    drawSaid(answer);
    showAssumed(answer);
    inHand.answered();
    drawPictures(answer);
  });
  speakPrice(answer);
}

// the price and the rows are painted first; the rest follows in the next frame, once for many answers
let waiting = null;
function later(draw) {
  if (!waiting) setTimeout(() => requestAnimationFrame(() => {
    const latest = waiting;
    waiting = null;
    latest();
  }), 30);
  waiting = draw;
}

/** Where the gas goes, where the money goes: fetched once there is something to be seen. */
async function drawPictures(answer) {
  const places = [$("gas-picture"), $("money-picture")];
  if (!answer) {
    places.forEach((place) => place.replaceChildren());
    return;
  }
  const [gas, money] = await Promise.all([import("./pictures/gas.js"), import("./pictures/money.js")]);
  gas.draw(places[0], answer);
  if (answer.cost) money.draw(places[1], answer);
  else places[1].replaceChildren();
}

function showAssumed(answer) {
  const assumed = new Map((answer?.assumptions ?? []).map((one) => [one.path, one]));
  forms.forEach((form) => form.setAssumed(assumed));
  gasLine?.draw();
}

function showProblem(problem, rows) {
  const places = toMend.show(problem, rows, list.inEdit);
  list.setErrors(places.cells);
  inHand.setErrors(places.cells);
  forms.forEach((form) => form.setErrors(places.paths));
  otherWork?.setErrors(places.paths);
  if (problem) inHand.notAnswered();
  if (problem) drawPrice(state.answer, places.count === 1 ? "one thing is to be mended." : `${places.count} things are to be mended.`);
}

let speaking;
function speakPrice(answer) {
  clearTimeout(speaking);
  speaking = setTimeout(() => {
    const said = answer?.cost ? `Price ${answer.cost.total} ${answer.cost.currency}` : "";
    // the same price is not said again because another joint came in hand
    if ($("spoken").textContent !== said) $("spoken").textContent = said;
  }, QUIET_MS);
}

// ---- settings

function drawForms() {
  forms.length = 0;
  forms.push(
    new Form($("frame-fields"), {
      rules: frameFields,
      values: prefixed(state.job.frame, "frame."),
      prefix: "frame.",
      changed: jobChanged,
      system: () => state.system,
      note: $("frame-note"),
    }),
  );
  $("settings").replaceChildren(...sections.map(drawSection));
  showAssumed(state.answer);
}

/** A job's frame fields under their paths in a request. */
function prefixed(map, prefix) {
  const bare = (path) => path.slice(prefix.length);
  return {
    get: (path) => map.get(bare(path)),
    has: (path) => map.has(bare(path)),
    set: (path, value) => map.set(bare(path), value),
    delete: (path) => map.delete(bare(path)),
  };
}

function drawSection(section) {
  const details = document.createElement("details");
  details.className = "setting";
  const summary = document.createElement("summary");
  const name = document.createElement("b");
  name.textContent = capital(label(section.name));
  const given = document.createElement("span");
  given.className = "given";
  summary.append(name, " ", given);
  const fields = document.createElement("div");
  fields.className = "fields";
  details.append(summary, fields);
  const sum = () => {
    if (section.name === "gas") return;
    if (section.name === "prices") priceBooks?.changed();
    const values = section.fields
      .map((rule) => state.job.settings.get(`${section.name}.${rule.field}`))
      .filter((value) => value !== undefined && value !== "")
      .map((value) => signed(String(value)));
    given.textContent = values.length === 0 ? (section.name === "prices" ? "none given" : "all assumed") : values.slice(0, 6).join(" · ");
  };
  const changed = () => {
    sum();
    jobChanged();
    if (section.name === "gas") gasLine.draw();
  };
  const form = new Form(fields, {
    rules: section.fields,
    values: state.job.settings,
    prefix: section.name + ".",
    changed,
    system: () => state.system,
  });
  forms.push(form);
  if (section.name === "gas") gasLine = new GasLine(form, given);
  if (section.name === "prices") {
    const books = document.createElement("div");
    books.className = "price-books";
    fields.before(books);
    otherWork = new OtherWork(details, state.job, changed);
    priceBooks = new PriceBooks(books, {
      job: () => state.job,
      pricesChanged: () => {
        form.refresh();
        otherWork.refresh();
        changed();
      },
    });
    details.addEventListener("toggle", () => details.open && priceBooks.seen());
  }
  sum();
  return details;
}

/** The frame's gas settings were changed elsewhere than in their own fields. */
function gasChanged() {
  forms.forEach((form) => form.refresh());
  gasLine.draw();
  jobChanged();
}

function drawColumnChoice() {
  const boxes = list.choice.map(({ field, shown, chosen }) => {
    const line = document.createElement("label");
    const box = document.createElement("input");
    box.type = "checkbox";
    box.checked = shown;
    box.disabled = shown && !chosen;
    box.addEventListener("change", () => list.choose(field, box.checked));
    line.append(box, " ", capital(label(field)));
    return line;
  });
  $("columns").replaceChildren(...boxes);
}

// ---- frames

let keeping = null;
function keepDraft() {
  clearTimeout(keeping);
  keeping = setTimeout(keepDraftNow, 300);
}

/** Writes what waits to be written, and nothing else: the frame may be in hand on another of the page's windows too. */
function keepDraftNow() {
  if (keeping === null) return;
  clearTimeout(keeping);
  keeping = null;
  localStorage.setItem(DRAFT, state.job.request());
  localStorage.setItem(DRAFT_OF, JSON.stringify(state.quote));
}

/** Takes a frame in hand, and keeps it. @param quote the kept quote that it is of */
function open(request, quote = null) {
  show(request, quote);
  priceBooks.opened(quote?.terms.priceBook);
  keepDraft();
}

function show(request, quote = null) {
  // an answer under way is another frame's
  estimates.drop();
  state.job = Job.read(request);
  state.answer = null;
  state.quote = quote;
  save.close();
  list.show(state.job, state.system);
  drawForms();
  inHand.show();
  estimate();
}

async function openExample(file, units) {
  const request = await ask("GET", `/page/examples/${file}`);
  if (!localStorage.getItem(UNITS_CHOSEN)) setUnits(units);
  open(request);
}

function setUnits(system) {
  if (system === state.system) return;
  state.system = system;
  localStorage.setItem(UNITS, system);
  document.querySelector(`input[name=units][value=${system}]`).checked = true;
  document.dispatchEvent(new CustomEvent("units", { detail: system }));
  list.setSystem(system);
  showAssumed(state.answer);
  inHand.show();
}

function wire() {
  $("row-insert").addEventListener("click", () => list.insertRow());
  $("row-duplicate").addEventListener("click", () => list.duplicateRows());
  $("row-remove").addEventListener("click", () => list.removeRows());
  $("undo").addEventListener("click", () => list.undo());
  $("save-quote").addEventListener("click", () => save.show());
  $("new-frame").addEventListener("click", () => open({}));
  $("example").addEventListener("change", (event) => {
    const { value: file, selectedOptions: [chosen] } = event.target;
    event.target.value = "";
    if (file) openExample(file, chosen.dataset.units).catch((problem) => toMend.notice(problem.message));
  });
  for (const radio of document.querySelectorAll("input[name=units]")) {
    radio.checked = radio.value === state.system;
    radio.addEventListener("change", () => {
      localStorage.setItem(UNITS_CHOSEN, "yes");
      setUnits(radio.value);
      estimate();
    });
  }
}

wire();
// what is led to in the rail comes to stand below the price
new ResizeObserver(([{ target }]) => target.parentElement.style.setProperty("--price", `${target.offsetHeight}px`)).observe($("price"));
addEventListener("pagehide", keepDraftNow);
showViews({ state, open, gasChanged });
const draft = localStorage.getItem(DRAFT);
show(draft ? JSON.parse(draft) : {}, JSON.parse(localStorage.getItem(DRAFT_OF) ?? "null"));
document.documentElement.dataset.ready = "yes";
