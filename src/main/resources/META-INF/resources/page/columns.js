// Which columns the joint list has: what the kinds in use need, what holds a value, and what was chosen.

import { isCommon, jointFields, label, ruleOf } from "./rules.js";

const FIRST = ["mark", "count", "kind"];

/** All fields in the order of their columns: what every joint has first, its sizes, then the rest. */
export const ordered = [
  ...FIRST,
  ...[...jointFields.keys()].filter((field) => !isCommon(field)),
  ...[...jointFields.keys()].filter((field) => isCommon(field) && !FIRST.includes(field)),
];

/** A joint's sizes, tacks and segments are seen without asking; what it may set for itself beside them is not. */
function isUsual(field) {
  const parts = field.split(".").length;
  const rule = jointFields.get(field);
  if (FIRST.includes(field)) return true;
  return isCommon(field) ? rule.holds === "whole-number" : parts < 3;
}

/** Whether a column stands there by itself, whatever was chosen. */
export function isShown(field, joints, kindsUsed) {
  if (joints.some((joint) => joint.has(field) && joint.get(field) !== "")) return true;
  return isUsual(field) && kindsUsed.some((kind) => ruleOf(kind, field));
}

/** What people may write over a column: its label or the field's name, whatever the case and the signs between. */
function key(text) {
  return text.toLowerCase().replaceAll(/[^a-z0-9]/g, "");
}

const byKey = new Map(ordered.flatMap((field) => [[key(label(field)), field], [key(field), field]]));

/** The field and unit of a heading such as "branch wall [in]"; field undefined where there is none. */
export function ofHeading(text) {
  const match = text.match(/^(.*?)\s*(?:[[(]([^\])]+)[\])])?\s*$/);
  return { field: byKey.get(key(match[1])), unit: match[2] ?? null };
}
