// What a change of set-up has brought in, year by year: it starts at what it cost and is paid back where it crosses zero.

import { money, number, paidBack } from "../figures.js";
import { drawCurves } from "./curves.js";
import { el } from "./parts.js";

const STEPS = 60;

// five lines can still be told apart
const MOST = 5;

/**
 * @param element where it goes; what was in it goes away
 * @param comparison an answer of /v1/gas-setup-comparisons
 * @param options { shiftsPerYear: of the duty }
 */
export function draw(element, comparison, options) {
  const currency = comparison?.currency;
  const changes = (comparison?.setUps.slice(1, MOST) ?? [])
    .map((setUp, i) => ({ ...setUp, place: i + 1 }))
    .filter((setUp) => setUp.costSavedPerYear !== undefined && setUp.price !== undefined)
    .map(({ name, price, costSavedPerYear, paybackShifts, place }) => ({ name, price: Number(price), saved: Number(costSavedPerYear), shifts: paybackShifts, place }));
  if (!currency || changes.length === 0) {
    element.replaceChildren();
    return;
  }
  const years = (change) => (change.shifts === undefined ? null : change.shifts / options.shiftsPerYear);
  const paid = changes.filter((change) => years(change) !== null);
  // half as long again as the last takes, five years at most: further on prices are others
  const until = Math.min(5, Math.max(1 / 12, ...paid.map((change) => years(change) * 1.5)));
  const inMonths = until <= 2;
  const times = Array.from({ length: STEPS + 1 }, (_, i) => (until * i) / STEPS);
  const show = (amount) => `${currency} ${money(amount.toFixed(0))}`;
  const first = paid.reduce((least, change) => (least === null || years(change) < years(least) ? change : least), null);
  drawCurves(
    element,
    {
      caption: "When a change is paid back",
      note: first ? `${first.name} first, after ${paidBack(years(first))}` : "none of them saves gas against the first set-up",
      x: {
        name: inMonths ? "months since the change" : "years since the change",
        values: inMonths ? times.map((time) => time * 12) : times,
        show: (time) => `${number(time)} ${inMonths ? "months" : "years"}`,
      },
      y: { name: `saved less what it cost, ${currency}`, show, range: (plot, least, greatest) => [Math.min(least, 0) * 1.05, Math.max(greatest, 0) * 1.05 || 1] },
      curves: [
        ...changes.map((change) => ({ name: change.name, place: change.place, values: times.map((time) => change.saved * time - change.price) })),
        { name: "paid back", level: true, values: times.map(() => 0) },
      ],
    },
    table(changes, years, currency),
  );
}

function table(changes, years, currency) {
  const heads = ["Change to", `Costs, ${currency}`, `Saves a year, ${currency}`, "Paid back after"];
  return el(
    "div",
    { class: "wide", tabindex: 0, role: "group", "aria-label": "The figures" },
    el(
      "table",
      { class: "figures" },
      el("thead", {}, el("tr", {}, heads.map((head) => el("th", { scope: "col" }, head)))),
      el(
        "tbody",
        {},
        changes.map((change) =>
          el(
            "tr",
            {},
            el("th", { scope: "row" }, change.name),
            el("td", {}, money(change.price.toFixed(2))),
            el("td", {}, money(change.saved.toFixed(2))),
            el("td", {}, years(change) === null ? "never" : paidBack(years(change))),
          ),
        ),
      ),
    ),
  );
}
