// What an estimate says of the whole frame: price, what it takes, cautions, assumptions.

import { html, nothing, render } from "/_static/lit-html/lit-html.js";
import { duration, money, number, percent, quantity, signed } from "./figures.js";
import { capital, label } from "./rules.js";

const $ = (id) => document.getElementById(id);

export function drawPrice(answer, stale) {
  const cost = answer?.cost;
  render(
    html`${stale ? html`<p class="stale">As it was before: ${stale}</p>` : nothing}
    ${cost
      ? html`<p class="total"><span class="amount">${money(cost.total)}</span> <span class="code">${cost.currency}</span></p>
          <p class="of">${cost.heading ? `${cost.heading}, ` : ""}${number(answer.quantity)} ${answer.quantity === 1 ? "frame" : "frames"}${answer.quantity === 1 ? "" : html`; ${money(cost.perFrame)} each`}</p>
          <table class="lines">
            <tbody>
              ${cost.lines.map(
                (line) => html`<tr><th scope="row">${line.item}</th><td>${line.rate ? rate(line.rate) : ""}</td><td class="amount">${money(line.amount)}</td></tr>`,
              )}
            </tbody>
          </table>
          ${wasted(answer)}`
      : answer
        ? html`<p class="of">No prices are given, so there is no price. They stand under “How it is welded and priced”.</p>`
        : html`<p class="of">Type a joint, or start from an example.</p>`}`,
    $("price-body"),
  );
}

/** What becomes of the gas, in a line. */
function wasted({ forQuantity: { gas } }) {
  if (!(gas.total.value > 0)) return nothing;
  return html`<p class="of">Gas: ${quantity(gas.total)}, ${percent((gas.startSurge.value + gas.leak.value) / gas.total.value)} of it thrown away.</p>`;
}

/** A share as per cent, a price by a unit as it stands. */
function rate(text) {
  return text.includes("/") ? text : percent(Number(text)).replace(".0", "");
}

export function drawTotals(answer) {
  if (!answer) {
    render(nothing, $("totals"));
    return;
  }
  const { perFrame: one, forQuantity: all } = answer;
  const rows = [
    ["Seam", quantity(one.seam.length), quantity(all.seam.length)],
    ["Deposit", quantity(one.seam.depositVolume), quantity(all.seam.depositVolume)],
    ["Filler consumed", quantity(one.filler.consumed), quantity(all.filler.consumed)],
    ["Rods", number(one.filler.rods), number(all.filler.rods)],
    ["Arc, tacks included", duration(one.labour.arc), duration(all.labour.arc)],
    ["Handling", duration(one.labour.handling), duration(all.labour.handling)],
    ["Fit-up", duration(one.labour.fitUp), duration(all.labour.fitUp)],
    ["Set-up", duration(one.labour.setUp), duration(all.labour.setUp)],
    ["Preheating", duration(one.labour.preheat), duration(all.labour.preheat)],
    ["Labour", duration(one.labour.total), duration(all.labour.total)],
    ["Gas", quantity(one.gas.total), quantity(all.gas.total)],
    ["of it start surge", quantity(one.gas.startSurge), quantity(all.gas.startSurge)],
    ["Arc starts", number(one.gas.starts), number(all.gas.starts)],
    ["Electricity for the arc", quantity(one.arc.energy), quantity(all.arc.energy)],
    ...(one.preheat ? [["Preheat supplied", quantity(one.preheat.energy), quantity(all.preheat.energy)]] : []),
  ];
  render(
    html`<table class="figures">
      <thead><tr><th scope="col">Work and material</th><th scope="col">A frame</th><th scope="col">The order</th></tr></thead>
      <tbody>${rows.map(([name, each, order]) => html`<tr><th scope="row">${name}</th><td>${each}</td><td>${order}</td></tr>`)}</tbody>
    </table>`,
    $("totals"),
  );
}

/** Cautions and assumptions in full; by the price, which stays in sight, how many there are, and the way to the gas. */
export function drawSaid(answer) {
  const cautions = answer?.cautions ?? [];
  drawCautions(cautions);
  drawAssumptions(answer);
  const count = (list, one, several) => `${list.length} ${list.length === 1 ? one : several}`;
  render(
    answer
      ? html`<a href="#cautions-title">${count(cautions, "caution", "cautions")}</a>,
          <a href="#assumptions-title">${count(answer.assumptions, "assumed", "assumed")}</a>${answer.forQuantity.gas.total.value > 0 ? html`, <a href="#gas-picture">where the gas goes</a>` : nothing}`
      : nothing,
    $("said"),
  );
}

function drawCautions(list) {
  render(
    list.length === 0
      ? html`<p class="of">None yet.</p>`
      : html`<ul>${list.map((caution) => html`<li>${caution.joints ? html`<b>${caution.joints.join(", ")}</b> ` : nothing}${caution.text}</li>`)}</ul>`,
    $("cautions"),
  );
}

function drawAssumptions(answer) {
  render(
    !answer || answer.assumptions.length === 0
      ? html`<p class="of">Nothing yet.</p>`
      : html`<dl>
          ${answer.assumptions.map(
            (one) => html`<dt>${words(one.path)} <b>${signed(one.value)}</b>${one.joints && one.joints.length < answer.joints.length ? html` <span class="for">${one.joints.join(", ")}</span>` : nothing}</dt>
              <dd>${one.because}</dd>`,
          )}
        </dl>`,
    $("assumptions"),
  );
}

function words(path) {
  return capital(label(path.replace(/^frame\.joints\[[^\]]+\]\./, "")));
}
