// The start of two to five hose set-ups over each other: flow against time since the valve opened.

import { alike, number, quantity, unit } from "../figures.js";
import { drawCurves } from "./curves.js";
import { el } from "./parts.js";

/** The Reynolds number above which the jet out of a nozzle turns turbulent. */
const TURBULENT = 2300;

// five lines can still be told apart
const MOST = 5;

/**
 * @param element where it goes; what was in it goes away
 * @param comparison an answer of /v1/gas-setup-comparisons
 */
export function draw(element, comparison) {
  const setUps = comparison?.setUps.slice(0, MOST).filter((setUp) => setUp.start.curve.length > 1) ?? [];
  if (setUps.length === 0) {
    element.replaceChildren();
    return;
  }
  const shownUntil = Math.max(...setUps.map((setUp) => last(setUp.start.curve).time.value));
  const times = [...new Set([...setUps.flatMap((setUp) => setUp.start.curve.map((point) => point.time.value)), shownUntil])].sort((a, b) => a - b);
  const flowUnit = unit(setUps[0].steady.flow.unit);
  const limits = new Map();
  for (const { name, steady } of setUps) {
    const limit = number((steady.flow.value * TURBULENT) / steady.nozzleReynolds);
    limits.set(limit, [...(limits.get(limit) ?? []), name]);
  }
  const levels = [...limits].map(([shown, names]) => ({
    name: `turbulent above ${shown}\u00a0${flowUnit}${limits.size > 1 ? ` (${names.join(", ")})` : ""}`,
    level: true,
    values: times.map(() => setUps.find((setUp) => names.includes(setUp.name)).steady).map((steady) => (steady.flow.value * TURBULENT) / steady.nozzleReynolds),
  }));
  const highest = setUps.reduce((most, setUp) => (setUp.start.peakFlow.value > most.start.peakFlow.value ? setUp : most));
  drawCurves(
    element,
    {
      caption: "What comes out when the valve opens",
      note: `on a hose that has filled up; the highest peak is ${quantity(highest.start.peakFlow)}, of ${highest.name}`,
      x: { name: "time since the valve opened, s", values: times, show: (time) => `${number(time)}\u00a0s` },
      y: {
        name: `flow, ${flowUnit}`,
        show: (flow) => `${number(flow)}\u00a0${flowUnit}`,
        range: (plot, least, greatest) => [0, greatest * 1.05],
      },
      curves: [...setUps.map((setUp) => ({ name: setUp.name, values: times.map((time) => flowAt(setUp, time)) })), ...levels],
    },
    table(setUps),
  );
}

const last = (list) => list[list.length - 1];

/** Between two points on the straight line; past the curve's end the flow is steady. */
function flowAt(setUp, time) {
  const curve = setUp.start.curve;
  const i = curve.findIndex((point) => point.time.value >= time);
  if (i < 0) return setUp.steady.flow.value;
  if (i === 0 || curve[i].time.value === time) return curve[i].flow.value;
  const [before, after] = [curve[i - 1], curve[i]];
  const share = (time - before.time.value) / (after.time.value - before.time.value);
  return before.flow.value + share * (after.flow.value - before.flow.value);
}

function table(setUps) {
  const columns = [(start) => start.peakFlow, (start) => start.netSurge, (start) => start.timeWithin5Percent].map((of) => {
    const told = alike(setUps.map(({ start }) => of(start)));
    return (start) => told(of(start));
  });
  const heads = ["Set-up", "Peak", "Surge, hose full", "Within 5\u00a0% after", "Turbulent for"];
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
        setUps.map(({ name, start }) =>
          el(
            "tr",
            {},
            el("th", { scope: "row" }, name),
            columns.map((told) => el("td", {}, told(start))),
            el("td", {}, start.turbulentTime ? quantity(start.turbulentTime) : "all along"),
          ),
        ),
      ),
    ),
  );
}
