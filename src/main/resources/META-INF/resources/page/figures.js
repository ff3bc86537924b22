// Figures as people read them: three digits, or all of those before the point; each unit where its figures are handy.

const three = new Intl.NumberFormat("en", { maximumSignificantDigits: 3 });
const whole = new Intl.NumberFormat("en", { maximumFractionDigits: 0 });
const UNIT = { mm2: "mm²", mm3: "mm³", in2: "in²", in3: "in³", cm3: "cm³", m3: "m³", ft3: "ft³", "ft3/h": "ft³/h", degC: "°C", degF: "°F", deg: "°" };

export function number(value) {
  return grouped((Math.abs(value) < 1000 ? three : whole).format(value));
}

// a thin space, since a comma is a decimal point to many
function grouped(text) {
  return text.replaceAll(",", "\u202f");
}

// from which size on, or below which, a quantity is told in another unit, which has so many of the first
const OTHER_UNITS = {
  ft3: { below: 0.1, small: "in3", times: 1728 },
  L: { below: 0.1, small: "mL", times: 1000, from: 1000, large: "m3", holds: 1000 },
  g: { from: 1000, large: "kg", holds: 1000 },
  mm: { from: 10_000, large: "m", holds: 1000 },
  mm3: { from: 10_000, large: "cm3", holds: 1000 },
  kJ: { from: 10_000, large: "MJ", holds: 1000 },
};

/** The unit that a quantity of some size is told in, and how many of its own unit's that is. */
function handy({ value, unit: own }) {
  const other = OTHER_UNITS[own];
  const size = Math.abs(value);
  if (other && size > 0 && size < other.below) return { name: unit(other.small), times: other.times };
  if (other && size >= other.from) return { name: unit(other.large), times: 1 / other.holds };
  return { name: unit(own), times: 1 };
}

/** A figure and its unit; the sign for degrees stands close. */
function together(figure, name) {
  return figure + (name === "°" ? name : "\u00a0" + name);
}

export function unit(name) {
  return UNIT[name] ?? name;
}

/** A text with the signs that paper has: °C for degC, ft³ for ft3. */
export function signed(text) {
  return text.replaceAll(/\bdeg([CF])\b/g, "°$1").replaceAll(/ deg\b/g, "°").replaceAll(/\b(ft|in|mm|cm|m)([23])\b/g, (_, length, power) => length + (power === "2" ? "²" : "³"));
}

/** A quantity with its unit. */
export function quantity(q) {
  if (!q) return "–";
  const { name, times } = handy(q);
  return together(number(q.value * times), name);
}

/**
 * How quantities that stand one below the other are told: all in the unit of the largest and as fine as that one.
 *
 * @param quantities of one unit; some may be undefined
 * @return a function that tells one of them
 */
export function alike(quantities) {
  const largest = quantities.reduce((most, q) => (q && (!most || Math.abs(q.value) > Math.abs(most.value)) ? q : most), undefined);
  if (!largest) return quantity;
  const { name, times } = handy(largest);
  const size = Math.abs(largest.value * times);
  const decimals = size === 0 ? 0 : Math.min(9, Math.max(0, 2 - Math.floor(Math.log10(size) + 1e-9)));
  const format = new Intl.NumberFormat("en", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return (q) => (q ? together(q.value === 0 ? "0" : grouped(format.format(q.value * times)), name) : "–");
}

/** Seconds as people say them: 42 s, 4 min 6 s, 16 min, 1 h 37 min. */
export function duration(q) {
  if (!q) return "–";
  const seconds = Math.round(q.value);
  if (seconds < 60) return `${seconds}\u00a0s`;
  if (seconds < 600) return parts(seconds, 60, "min", "s");
  return parts(Math.round(seconds / 60), 60, "h", "min");
}

function parts(total, size, large, small) {
  const of = (figure, name) => (figure === 0 ? [] : [`${figure}\u00a0${name}`]);
  return [...of(Math.floor(total / size), large), ...of(total % size, small)].join("\u00a0");
}

/** After how long a change is paid back: a forecast, and no finer than that. */
export function paidBack(years) {
  const about = (figure, name) => `about ${grouped(whole.format(figure))}\u00a0${name}${figure === 1 ? "" : "s"}`;
  const weeks = (years * 365.25) / 7;
  if (weeks < 9) return about(Math.max(1, Math.ceil(weeks)), "week");
  return years < 2 ? about(Math.round(years * 12), "month") : about(Math.round(years), "year");
}

export function percent(share) {
  return `${(share * 100).toFixed(1)}\u00a0%`;
}

export function money(text) {
  const [whole, part] = text.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, "\u202f");
  return part === undefined ? grouped : `${grouped}.${part}`;
}
