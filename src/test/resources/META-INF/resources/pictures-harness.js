// Draws each picture from the service's own answers.

import { draw as gas } from "/page/pictures/gas.js";
import { draw as money } from "/page/pictures/money.js";
import { draw as payback } from "/page/pictures/payback.js";
import { draw as seam } from "/page/pictures/seam.js";
import { draw as transient } from "/page/pictures/transient.js";

const at = (id) => document.getElementById(id);

async function ask(path, request) {
  const answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(request) });
  if (!answer.ok) throw new Error(await answer.text());
  return answer.json();
}

async function example(name) {
  const answer = await fetch(`/page/examples/${name}.json`);
  if (!answer.ok) throw new Error(name);
  return answer.json();
}

const tubes = (outsideDiameter, angle) => ({
  joint: {
    kind: "tube-to-tube",
    branch: { outsideDiameter, wall: "2 mm" },
    main: { outsideDiameter: "40 mm", wall: "2 mm" },
    angle,
    fillet: { leg: "3 mm" },
  },
});

const frame = await example("trail-buggy-rear-bay");
frame.gas.leak = "0.1 L/min";
frame.frame.joints[0].backPurge = { flow: "10 ft3/h", time: "1 min" };
const estimate = await ask("/v1/frame-estimates", frame);
gas(at("gas"), estimate);
money(at("money"), estimate);
seam(at("seam"), await ask("/v1/deposits?course=true", tubes("30 mm", "45 deg")));
seam(at("equal"), await ask("/v1/deposits?course=true&units=us", tubes("40 mm", "90 deg")));
seam(
  at("ring"),
  await ask("/v1/deposits?course=true", { joint: { kind: "plate-fillet", plate: { thickness: "5 mm" }, length: "80 mm", fillet: { leg: "4 mm" } } }),
);
const hoses = await example("compare-hoses");
const comparison = await ask("/v1/gas-setup-comparisons", hoses);
transient(at("transient"), comparison);
payback(at("payback"), comparison, { shiftsPerYear: Number(hoses.duty.shiftsPerYear) });
// what cannot be drawn leaves nothing behind
delete estimate.cost;
money(at("none"), estimate);
document.documentElement.dataset.ready = "yes";
