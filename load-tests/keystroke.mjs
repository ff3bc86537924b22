// Types in the page through the WebDriver protocol and lets the page's own clock tell how long each key took.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const [page, keystrokes, joints] = [process.argv[2], Number(process.argv[3]), Number(process.argv[4])];
const WARM_UP = 60;
const SERVICE_WARM_UP_MS = 20_000;

const port = await new Promise((free) => {
  const server = createServer().listen(0, "127.0.0.1", () => {
    const { port } = server.address();
    server.close(() => free(port));
  });
});
const profile = mkdtempSync(join(tmpdir(), "keystroke-"));
const driver = spawn("chromedriver", [`--port=${port}`], { stdio: "ignore" });
let session;

async function ask(method, path, body) {
  const response = await fetch(`http://127.0.0.1:${port}${path}`, { method, body: body && JSON.stringify(body) });
  const { value } = await response.json();
  if (!response.ok) throw new Error(`${method} ${path}: ${value.message}`);
  return value;
}

const run = (script, ...args) => ask("POST", `/session/${session}/execute/sync`, { script, args });
const pause = (ms) => new Promise((done) => setTimeout(done, ms));

async function until(what, holds) {
  for (let i = 0; i < 600; i++) {
    if (await holds()) return;
    await pause(100);
  }
  throw new Error(`waited in vain until ${what}`);
}

/** A frame of joints that are all different, priced. */
function frame() {
  const rows = Array.from({ length: joints }, (_, i) => ({
    mark: `J${i + 1}`,
    count: 1 + (i % 4),
    kind: "tube-to-tube",
    branch: { outsideDiameter: `${(25 + (i % 40) * 0.25).toFixed(2)} mm`, wall: `${(1.5 + (i % 7) * 0.1).toFixed(1)} mm` },
    main: { outsideDiameter: `${40 + (i % 9)} mm`, wall: "2 mm" },
    angle: `${45 + (i % 46)} deg`,
  }));
  return { frame: { name: "Many joints", quantity: 1000, joints: rows }, prices: { currency: "EUR", labour: "60/h", filler: "15/kg", gas: "9/m3" } };
}

/** The service has been in use for a while: other frames of that size, one after the other. */
async function warmUp() {
  const end = performance.now() + SERVICE_WARM_UP_MS;
  for (let i = 0; performance.now() < end; i++) {
    const other = frame();
    other.frame.joints[i % joints].branch.outsideDiameter = `${30 + (i % 97) * 0.01} mm`;
    const response = await fetch(new URL("/v1/frame-totals?joint=1", page), {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(other),
    });
    if (!response.ok) throw new Error(`warm-up: ${response.status} ${await response.text()}`);
    await response.text();
  }
}

// a thousand frames, so that a hundredth of a millimetre moves the price; each key is timed from its event to the frame in which the price stands painted
const WATCH = `
  window.times = [];
  let pressed = null;
  document.addEventListener('keydown', (event) => { pressed = event.timeStamp; }, true);
  new MutationObserver(() => {
    if (pressed === null) return;
    const from = pressed;
    pressed = null;
    requestAnimationFrame(() => { const port = new MessageChannel(); port.port1.onmessage = () => times.push(performance.now() - from); port.port2.postMessage(0); });
  }).observe(document.getElementById('price-body'), {subtree: true, childList: true, characterData: true});`;

try {
  await warmUp();
  await until("the driver answers", () => ask("GET", "/status").then(() => true, () => false));
  const args = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--window-size=1440,1000", `--user-data-dir=${profile}`];
  session = (await ask("POST", "/session", { capabilities: { alwaysMatch: { browserName: "chrome", "goog:chromeOptions": { args } } } })).sessionId;
  // put there from a file beside the page: the page itself keeps what it shows as it is left
  await ask("POST", `/session/${session}/url`, { url: new URL("/page/mark.svg", page).href });
  await run("localStorage.setItem('seamtally.frame', arguments[0])", JSON.stringify(frame()));
  await ask("POST", `/session/${session}/url`, { url: page });
  await until("the frame is priced", () => run("return Boolean(document.querySelector('#price .total'))"));
  await run("const cell = document.querySelector('#joints tbody tr:nth-child(3) td[data-col=\"3\"]'); cell.focus(); cell.dispatchEvent(new PointerEvent('pointerdown', {bubbles: true}))");
  await run(WATCH);
  const key = async (value) => {
    const before = await run("return times.length");
    await ask("POST", `/session/${session}/actions`, { actions: [{ type: "key", id: "keys", actions: [{ type: "keyDown", value }, { type: "keyUp", value }] }] });
    await until("the price moves", async () => (await run("return times.length")) > before);
  };
  const type = async (count) => {
    for (let i = 0; i < count; i++) await key(i % 2 === 0 ? String(1 + (i % 9)) : "\uE003");
  };
  // an edit that always leaves a size that is taken: 30.5x mm
  await ask("POST", `/session/${session}/actions`, { actions: [{ type: "key", id: "keys", actions: ["3", "0", ".", "5"].flatMap((value) => [{ type: "keyDown", value }, { type: "keyUp", value }]) }] });
  await pause(2000);
  await type(WARM_UP);
  await run("times.length = 0");
  await type(keystrokes);
  const times = (await run("return times")).sort((a, b) => a - b);
  const at = (share) => times[Math.min(times.length - 1, Math.ceil(share * times.length) - 1)].toFixed(1);
  console.log(`${joints} joints, ${times.length} keystrokes, key to painted price: median ${at(0.5)} ms, 95 % ${at(0.95)} ms, 99 % ${at(0.99)} ms, most ${at(1)} ms`);
} finally {
  if (session) await ask("DELETE", `/session/${session}`).catch(() => {});
  driver.kill();
  rmSync(profile, { recursive: true, force: true });
}
