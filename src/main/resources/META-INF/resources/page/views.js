// The page's parts: one is seen at a time, the address says which.

const parts = { "set-ups": () => import("./set-ups.js"), quotes: () => import("./quotes.js"), batches: () => import("./batches.js") };
const made = new Map();

export function showViews(page) {
  const show = async () => {
    const name = location.hash.slice(1).split("/")[0];
    const wanted = name === "frame" || name in parts ? name : "frame";
    for (const view of document.querySelectorAll("main > .view")) view.hidden = view.dataset.view !== wanted;
    for (const link of document.querySelectorAll("nav a")) {
      if (link.dataset.view === wanted) link.setAttribute("aria-current", "page");
      else link.removeAttribute("aria-current");
    }
    if (!(wanted in parts)) return;
    if (!made.has(wanted)) {
      made.set(wanted, (await parts[wanted]()).show(document.getElementById(`view-${wanted}`), page));
    }
    made.get(wanted).seen?.(location.hash.slice(1).split("/").slice(1));
  };
  addEventListener("hashchange", show);
  show();
}
