// What fields there are, what they hold and how they are called: read off the rules that the service wrote into the page.

const rules = JSON.parse(document.getElementById("rules").textContent);

export const sections = rules.sections;
export const frameFields = rules.frame;
export const otherWorkFields = rules.otherWork;
export const dutyFields = rules.duty;
export const comparisonFields = rules.comparison;
export const setUpFields = rules.setUp;

/** The kinds of joint, each with its fields by name. */
export const kinds = new Map(
  rules.kinds.map((kind) => [kind.kind, { ...kind, byField: new Map(kind.fields.map((rule) => [rule.field, rule])) }]),
);

export const kindNames = [...kinds.keys()];

/** Every field that some kind has, in the order of the kinds, once each. */
export const jointFields = new Map();
for (const kind of kinds.values()) {
  for (const rule of kind.fields) {
    if (!jointFields.has(rule.field)) jointFields.set(rule.field, rule);
  }
}

const kindRule = {
  field: "kind",
  holds: "word",
  needed: true,
  description: "What kind of joint it is; it says which sizes the joint has.",
  words: kindNames,
  example: kindNames[0],
};
jointFields.set("kind", kindRule);

/** The rule of a joint's field; undefined where its kind has no such field. */
export function ruleOf(kind, field) {
  return field === "kind" ? kindRule : kinds.get(kind)?.byField.get(field);
}

/** Whether every kind has a field. */
export function isCommon(field) {
  return field === "kind" || [...kinds.values()].every((kind) => kind.byField.has(field));
}

/** "branch.outsideDiameter" → "branch outside diameter"; "arc.arcEfficiency" → "arc efficiency". */
export function label(field) {
  return field
    .replaceAll(".", " ")
    .replaceAll(/([a-z])([A-Z])/g, (_, before, after) => before + " " + after.toLowerCase())
    .replaceAll(/\b(\w+) \1\b/g, "$1");
}

export function capital(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

// units that say the same in the other system, as shops use them
const PAIRS = [
  ["in", "mm"],
  ["ft", "m"],
  ["ft3/h", "L/min"],
  ["psi", "kPa"],
  ["degF", "degC"],
  ["in/min", "mm/s"],
  ["/lb", "/kg"],
  ["/ft3", "/m3"],
];

/** The unit that a bare number is given in a field, in inches ("us") or millimetres ("si"); null where there is none. */
export function unitOfBareNumber(rule, system) {
  if (!rule?.units || !rule.example) return null;
  const unit = (rule.example.match(rule.holds === "price" ? /\/.*$/ : /[^\d.\s/-].*$/) ?? [null])[0]?.trim();
  if (!unit) return null;
  const [from, to] = system === "si" ? [0, 1] : [1, 0];
  const pair = PAIRS.find((units) => units[from] === unit);
  const wanted = pair ? pair[to] : unit;
  return rule.units.includes(wanted) ? wanted : rule.units.includes(unit) ? unit : null;
}

/** Range and units of a field, in a line. */
export function range(rule, system) {
  const parts = [];
  if (rule.told) parts.push(rule.told[system]);
  else if (rule.min !== undefined && rule.max !== undefined && rule.holds !== "text") parts.push(`${rule.min} to ${rule.max}`);
  if (rule.words && rule.words.length <= 8) parts.push(rule.words.join(", "));
  return parts.join("; ");
}

const BARE = /^[+-]?(\d+([.]\d*)?|[.]\d+|\d+\/\d+|\d+[- ]\d+\/\d+)$/;

/**
 * What stands in a field once it is typed: a bare number gets the page's unit, to be seen from then on, and nothing else
 * is changed.
 */
export function settled(text, rule, system) {
  const typed = text.trim();
  if (!rule || typed === "") return typed;
  if (BARE.test(typed)) {
    const unit = unitOfBareNumber(rule, system);
    if (unit) return unit.startsWith("/") ? typed + unit : `${typed} ${unit}`;
    if (rule.holds === "number" && typed.startsWith(".")) return "0" + typed;
  }
  if (rule.holds === "true-or-false") {
    if (/^(y|yes|true)$/i.test(typed)) return "yes";
    if (/^(n|no|false)$/i.test(typed)) return "no";
  }
  return typed;
}
