// Figures as people read them.

const four = new Intl.NumberFormat("en", { maximumSignificantDigits: 4 });
const UNIT = { mm2: "mm²", mm3: "mm³", in2: "in²", in3: "in³", ft3: "ft³", "ft3/h": "ft³/h", degC: "°C", degF: "°F", deg: "°" };

export function number(value) {
  // a thin space, since a comma is a decimal point to many
  return four.format(value).replaceAll(",", "\u202f");
}

export function unit(name) {
  return UNIT[name] ?? name;
}

/** A text with the sign for degrees where it has the word. */
export function signed(text) {
  return text.replaceAll(/\bdeg([CF])\b/g, "°$1").replaceAll(/ deg\b/g, "°");
}

/** A quantity with its unit. */
export function quantity(q) {
  if (!q) return "–";
  const shown = unit(q.unit);
  return number(q.value) + (shown === "°" ? shown : "\u00a0" + shown);
}

/** Seconds as hours and minutes, or minutes and seconds. */
export function duration(q) {
  if (!q) return "–";
  const seconds = Math.round(q.value);
  const two = (n) => String(n).padStart(2, "0");
  if (seconds < 3600) return `${Math.floor(seconds / 60)}:${two(seconds % 60)}\u00a0min`;
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)}:${two(minutes % 60)}\u00a0h`;
}

export function percent(share) {
  return `${(share * 100).toFixed(1)}\u00a0%`;
}

export function money(text) {
  const [whole, part] = text.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, "\u202f");
  return part === undefined ? grouped : `${grouped}.${part}`;
}
