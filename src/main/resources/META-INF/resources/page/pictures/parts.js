// What the pictures are put together from.

const SVG = "http://www.w3.org/2000/svg";

/** An element of HTML with its attributes and children; what is null is left out. */
export function el(name, attributes = {}, ...children) {
  return filled(document.createElement(name), attributes, children);
}

/** The same of SVG. */
export function svg(name, attributes = {}, ...children) {
  return filled(document.createElementNS(SVG, name), attributes, children);
}

function filled(element, attributes, children) {
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== null && value !== undefined) element.setAttribute(key, value);
  }
  element.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined));
  return element;
}

let made = 0;

/** A figure with its caption; what is seen in it is told in words too. */
export function figure(caption, note, ...children) {
  const id = `picture-${++made}`;
  return el(
    "figure",
    { class: "drawn", "aria-labelledby": id },
    el("figcaption", { id }, el("b", {}, caption), note ? ` ${note}` : null),
    ...children,
  );
}

/** Round steps for an axis from 0 up to a value, about so many. */
export function ticks(greatest, wanted) {
  if (!(greatest > 0)) return [0];
  const rough = greatest / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((n) => n * power).find((n) => n >= rough * 0.999);
  return Array.from({ length: Math.floor(greatest / step + 1e-9) + 1 }, (_, i) => Number((i * step).toPrecision(12)));
}

/** Calls back with the element's width, now and whenever it is another. */
export function whenWide(element, draw) {
  let last = 0;
  const observer = new ResizeObserver(() => {
    if (!element.isConnected) {
      observer.disconnect();
      return;
    }
    const width = Math.floor(element.clientWidth);
    if (width > 0 && width !== last) {
      last = width;
      draw(width);
    }
  });
  observer.observe(element);
}
