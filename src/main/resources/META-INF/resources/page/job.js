// The frame in hand: what was typed, field by field, as text. A request is written from it and nothing is read twice.

import { frameFields, jointFields, kindNames, kinds, ruleOf, sections } from "./rules.js";

const NUMBER = /^-?(0|[1-9]\d*)([.]\d+)?([eE][+-]?\d+)?$/;

/** A value that the page shows but does not take apart, such as an analysis of one's own. */
export class Whole {
  constructor(value) {
    this.value = value;
  }

  toString() {
    return "own analysis";
  }
}

/** JSON text that goes out as it stands: 0.30 stays 0.30. */
class Token {
  constructor(text) {
    this.text = text;
  }
}

/** JSON of a tree with tokens in it. */
function written(node) {
  if (node instanceof Token) return node.text;
  if (Array.isArray(node)) return `[${node.map(written).join(",")}]`;
  if (node && typeof node === "object") {
    return `{${Object.entries(node)
      .map(([name, value]) => `${JSON.stringify(name)}:${written(value)}`)
      .join(",")}}`;
  }
  return JSON.stringify(node);
}

function leaf(value, rule) {
  if (value instanceof Whole) return value.value;
  const numeric = rule && (rule.holds === "number" || rule.holds === "whole-number");
  // what is no number goes out as text, and the answer says what is wrong with it
  if (numeric && NUMBER.test(value)) return new Token(value);
  if (rule?.holds === "true-or-false" && (value === "yes" || value === "no")) return value === "yes";
  return value;
}

function put(tree, path, value) {
  const names = path.split(".");
  let node = tree;
  for (const name of names.slice(0, -1)) node = node[name] ??= {};
  node[names.at(-1)] = value;
}

/** Fields of one part as a tree; null where nothing is given. */
export function tree(fields, ruleFor) {
  const made = {};
  let given = false;
  for (const [field, value] of fields) {
    if (value === "") continue;
    put(made, field, leaf(value, ruleFor(field)));
    given = true;
  }
  return given ? made : null;
}

function flatten(node, ruleFor, into = new Map(), prefix = "") {
  for (const [name, value] of Object.entries(node ?? {})) {
    const field = prefix + name;
    const rule = ruleFor(field);
    if (value === null || value === undefined) continue;
    if (typeof value === "object" && !(rule?.holds ?? "part").includes("analysis")) {
      if (!Array.isArray(value)) flatten(value, ruleFor, into, field + ".");
    } else if (typeof value === "object") {
      into.set(field, new Whole(value));
    } else {
      into.set(field, typeof value === "boolean" ? (value ? "yes" : "no") : String(value));
    }
  }
  return into;
}

const sectionRules = new Map(
  sections.flatMap((section) => section.fields.map((rule) => [`${section.name}.${rule.field}`, rule])),
);
const frameRules = new Map(frameFields.map((rule) => [rule.field, rule]));

/** The rule of a setting, such as "gas.hose.length". */
export function settingRule(path) {
  return sectionRules.get(path);
}

export class Job {
  constructor() {
    this.frame = new Map();
    this.settings = new Map();
    /** one map of fields for each joint */
    this.joints = [];
    this.otherWork = [];
  }

  static read(request) {
    const job = new Job();
    const { joints = [], ...frame } = request.frame ?? {};
    job.frame = flatten(frame, (field) => frameRules.get(field));
    job.joints = joints.map((joint) => flatten(joint, (field) => ruleOf(joint.kind, field)));
    const settings = Object.fromEntries(sections.map((section) => [section.name, request[section.name]]));
    job.settings = flatten(settings, settingRule);
    job.otherWork = (request.prices?.otherWork ?? []).map((line) => flatten(line, () => undefined));
    return job;
  }

  /** A joint that has nothing but its kind is not begun yet, and goes nowhere. */
  static isBegun(joint) {
    return [...joint].some(([field, value]) => field !== "kind" && value !== "");
  }

  /** Rows that go out, by their place among those that do. */
  sentRows() {
    return this.joints.flatMap((joint, row) => (Job.isBegun(joint) ? [row] : []));
  }

  jointTree(row) {
    const joint = this.joints[row];
    const kind = joint.get("kind");
    return tree(joint, (field) => ruleOf(kind, field) ?? jointFields.get(field)) ?? {};
  }

  settingsTree() {
    const made = tree(this.settings, settingRule) ?? {};
    const lines = this.otherWork.map((line) => tree(line, () => undefined)).filter((line) => line);
    if (lines.length > 0) (made.prices ??= {}).otherWork = lines;
    return made;
  }

  requestTree() {
    const frame = tree(this.frame, (field) => frameRules.get(field)) ?? {};
    frame.joints = this.sentRows().map((row) => this.jointTree(row));
    return { frame, ...this.settingsTree() };
  }

  /** The request as it is sent, and kept. */
  request(more = {}) {
    return written({ ...this.requestTree(), ...more });
  }

  /** What all joints share, as settings of a job file. */
  settingsText() {
    return written(this.settingsTree());
  }

  /**
   * The request of a quote that is to be kept.
   *
   * @param terms what a quote says besides; with a price book named, the prices in hand stay behind
   * @param linesOfBook how many of the first lines of other work are the price book's own
   */
  quoteRequest(terms, linesOfBook = 0) {
    const { prices, ...rest } = this.requestTree();
    if (!terms.priceBook) return written({ ...rest, ...(prices ? { prices } : {}), ...terms });
    const otherWork = prices?.otherWork?.slice(linesOfBook) ?? [];
    return written({ ...rest, ...(otherWork.length > 0 ? { otherWork } : {}), ...terms });
  }

  /** The prices in hand, lines of other work apart. */
  #prices() {
    const { otherWork, ...prices } = this.settingsTree().prices ?? {};
    return prices;
  }

  pricesText() {
    return written(this.#prices());
  }

  otherWorkTexts() {
    return (this.settingsTree().prices?.otherWork ?? []).map(written);
  }

  /** A price book's next version, of the prices in hand: other work is the order's own and stays out. */
  priceBookRequest(more) {
    return written({ ...more, prices: this.#prices() });
  }

  /** Takes other prices in hand. @return how many lines of other work they brought, which stand first now */
  takePrices(prices) {
    for (const path of [...this.settings.keys()]) if (path.startsWith("prices.")) this.settings.delete(path);
    flatten({ prices }, settingRule).forEach((value, path) => this.settings.set(path, value));
    const lines = (prices.otherWork ?? []).map((line) => flatten(line, () => undefined));
    this.otherWork.unshift(...lines);
    return lines.length;
  }

  /** One joint by itself, with what all joints share. */
  oneJoint(row) {
    const { labour, prices, ...shared } = this.settingsTree();
    return written({ joint: this.jointTree(row), ...shared });
  }

  /** A joint like the one above, of which only the kind is known. */
  freshJoint(row) {
    const above = this.joints[Math.min(row, this.joints.length) - 1];
    const kind = above?.get("kind");
    return new Map([["kind", kinds.has(kind) ? kind : kindNames[0]]]);
  }
}

export { flatten as flattened, written };
