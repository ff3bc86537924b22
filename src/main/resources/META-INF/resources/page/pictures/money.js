// Where the money goes: the quote's lines as bars, in the order they are added up.

import { money, percent } from "../figures.js";
import { el, figure, svg } from "./parts.js";

const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * @param element where it goes; what was in it goes away
 * @param answer a frame's estimate
 */
export function draw(element, answer) {
  const cost = answer?.cost;
  const lines = (cost?.lines ?? []).map((line) => ({ ...line, value: Number(line.amount) }));
  const total = Number(cost?.total);
  const longest = Math.max(...lines.map((line) => Math.abs(line.value)));
  if (!cost || !(total > 0) || !(longest > 0)) {
    element.replaceChildren();
    return;
  }
  const first = lines.reduce((most, line) => (line.value > most.value ? line : most));
  element.replaceChildren(
    figure(
      "Where the money goes",
      `${capital(first.item)} is ${percent(first.value / total)} of ${cost.currency} ${money(cost.total)}`,
      el(
        "table",
        { class: "bars" },
        el(
          "thead",
          { class: "unseen" },
          el("tr", {}, ...["Line", cost.currency, "Share"].map((name) => el("th", { scope: "col" }, name))),
        ),
        el(
          "tbody",
          {},
          lines.map((line) =>
            el(
              "tr",
              {},
              el("th", { scope: "row" }, capital(line.item), bar(line.value / longest)),
              el("td", {}, money(line.amount)),
              el("td", {}, percent(line.value / total)),
            ),
          ),
        ),
      ),
    ),
  );
}

function bar(share) {
  return svg(
    "svg",
    { width: "100%", height: 9, "aria-hidden": "true", focusable: "false" },
    svg("rect", { width: "100%", height: 9, class: "track" }),
    svg("rect", { width: `${Math.max(share, 0) * 100}%`, height: 9, class: "amount" }),
  );
}
