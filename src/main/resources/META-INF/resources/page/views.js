// The page's parts: one is seen at a time, the address says which. Each is found again where it was left.

const parts = { "set-ups": () => import("./set-ups.js"), quotes: () => import("./quotes.js"), batches: () => import("./batches.js") };
const made = new Map();
// how far down each address was left
const left = new Map();

export function showViews(page) {
  // the browser would put one part where another was left
  history.scrollRestoration = "manual";
  let shown = null;
  let address = null;
  const show = async () => {
    const name = location.hash.slice(1).split("/")[0];
    const wanted = name === "frame" || name in parts ? name : "frame";
    const another = shown !== null && wanted !== shown;
    if (another) left.set(address, scrollY);
    shown = wanted;
    address = wanted in parts ? location.hash : "#frame";
    for (const view of document.querySelectorAll("main > .view")) view.hidden = view.dataset.view !== wanted;
    for (const link of document.querySelectorAll("nav a")) {
      if (link.dataset.view === wanted) link.setAttribute("aria-current", "page");
      else link.removeAttribute("aria-current");
    }
    if (!(wanted in parts)) {
      const place = name && document.getElementById(name);
      if (place) place.scrollIntoView();
      else if (another) scrollTo(0, left.get(address) ?? 0);
      return;
    }
    if (!made.has(wanted)) {
      made.set(wanted, (await parts[wanted]()).show(document.getElementById(`view-${wanted}`), page));
    }
    if (shown !== wanted) return;
    made.get(wanted).seen?.(location.hash.slice(1).split("/").slice(1));
    if (another) scrollTo(0, left.get(address) ?? 0);
  };
  addEventListener("hashchange", show);
  show();
}
