// Looks at the papers of every example with programs that know nothing of ours: each PDF is sound, has its
// fonts in it, its text can be found, and two renderers that share no code (poppler, and mupdf from the npm
// registry) draw it alike; the bars of a pattern sheet measure 100 mm and 4 in, across and down, in a raster of
// 600 dots an inch of both; an SVG pattern is as large as it says, and its bars measure the same.
//
//   node papers.mjs PATH-TO-SPLAYWRIGHT WORK-FOLDER
import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import * as mupdf from "mupdf";

const [program, work] = process.argv.slice(2);
const out = join(work, "papers");
const OFF = 0.1; // mm that a bar may be off
const MOST = 400_000; // bytes of the set of an example
// How far a cell of 10 mm may differ between the two renderers, as a part of black: thin lines are drawn a
// little lighter or darker by each.
const LIMIT = (a, b) => 0.04 + 0.35 * Math.max(a, b);
const MEASURED = ["reading-nook-step", "lamp-table-stool"]; // an A4 and a Letter, at 600 dots an inch

let bad = 0;
const say = (ok, what) => {
  if (!ok) bad++;
  console.log(`${ok ? "same" : "DIFFERS"}  ${what}`);
};
const there = new Map();
const has = (tool) => {
  if (!there.has(tool)) {
    there.set(tool, spawnSync("sh", ["-c", `command -v ${tool}`]).status === 0);
    if (!there.get(tool)) console.log(`${tool} is not installed: what it would look at is skipped (.ci/setup test installs it)`);
  }
  return there.get(tool);
};
const run = (tool, ...args) => execFileSync(tool, args, { maxBuffer: 1 << 28, stdio: ["ignore", "pipe", "ignore"] });

// Grey pictures, 0 white to 1 black at (x, y).
function pgms(data) {
  const list = [];
  for (let at = 0; at < data.length; ) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(data.subarray(at, at + 64).toString("latin1"));
    const [wide, high, from] = [+head[1], +head[2], at + head[0].length];
    list.push({ wide, high, dark: (x, y) => 1 - data[from + y * wide + x] / 255 });
    at = from + wide * high;
  }
  return list;
}
function pixmap(p) {
  const [wide, high, step, px, n] = [p.getWidth(), p.getHeight(), p.getStride(), p.getPixels(), p.getNumberOfComponents()];
  return { wide, high, dark: (x, y) => 1 - px[y * step + x * n] / 255 };
}
const byPoppler = (file, from, to, dpi) =>
  pgms(run("pdftoppm", "-r", String(dpi), "-gray", "-f", String(from), "-l", String(to), file));
const byMupdf = (doc, page, dpi) =>
  pixmap(doc.loadPage(page - 1).toPixmap(mupdf.Matrix.scale(dpi / 72, dpi / 72), mupdf.ColorSpace.DeviceGray, false, true));

// The mean darkness of cells 10 mm wide (at 100 dots an inch), so that how a renderer softens edges does not
// count, but a word that one of them leaves out does.
function cells(p, wide, high) {
  const step = 40, list = [];
  for (let y = 0; y + step <= high; y += step)
    for (let x = 0; x + step <= wide; x += step) {
      let sum = 0;
      for (let i = 0; i < step * step; i++) sum += p.dark(x + (i % step), y + Math.floor(i / step));
      list.push(sum / step / step);
    }
  return list;
}
function unlike(a, b) {
  if (Math.abs(a.wide - b.wide) > 1 || Math.abs(a.high - b.high) > 1) return { far: 1, ink: 0 };
  const w = Math.min(a.wide, b.wide), h = Math.min(a.high, b.high);
  const [p, q] = [cells(a, w, h), cells(b, w, h)];
  return { far: Math.max(...p.map((d, i) => Math.abs(d - q[i]) / LIMIT(d, q[i]))), ink: p.reduce((s, d) => s + d, 0) / p.length };
}

// The lengths, mm, of solid bars about `long` mm: dark runs that at least five rows (or columns) share.
function bars(p, dots, long, upright) {
  const [lines, along] = upright ? [p.wide, p.high] : [p.high, p.wide];
  const dark = upright ? (u, v) => p.dark(v, u) : (u, v) => p.dark(u, v);
  const found = [];
  let last = null;
  for (let v = 0; v < lines; v++) {
    let here = null;
    for (let u = 0; u < along; u++) {
      if (dark(u, v) < 0.5) continue;
      const from = u;
      while (u < along && dark(u, v) >= 0.5) u++;
      if (Math.abs((u - from) / dots - long) > 0.8) continue;
      const ink = dark((from + u) >> 1, v); // a run of full ink, its soft ends counted in part
      let sum = 0;
      for (let k = Math.max(0, from - 2); k < Math.min(along, u + 2); k++) sum += Math.min(1, dark(k, v) / ink);
      here = { from, ink, length: sum / dots };
    }
    if (here && last && Math.abs(here.from - last.from) <= 2) here.rows = last.rows.concat(here);
    else if (here) here.rows = [here];
    if (last && (!here || here.rows.length === 1) && last.rows.length >= 5) found.push(last.rows);
    last = here;
  }
  if (last && last.rows.length >= 5) found.push(last.rows);
  const median = (rows) => rows.map((r) => r.length).sort((a, b) => a - b)[rows.length >> 1];
  return found.map((rows) => median(rows.filter((r) => r.ink > 0.7)));
}
function measured(p, dots, what) {
  const said = [];
  let ok = true;
  for (const [long, name] of [[100, "100 mm"], [101.6, "4 in"]])
    for (const upright of [false, true]) {
      const got = bars(p, dots, long, upright).filter((l) => Math.abs(l - long) < 0.8);
      const best = got.length ? got.reduce((a, b) => (Math.abs(b - long) < Math.abs(a - long) ? b : a)) : NaN;
      ok &&= Math.abs(best - long) <= OFF;
      said.push(`${name} ${upright ? "down" : "across"} ${best.toFixed(3)}`);
    }
  say(ok, `${what}: bars ${said.join(", ")} mm`);
}

function sound(dir, file, title) {
  const path = join(dir, file);
  if (has("qpdf")) {
    const r = spawnSync("qpdf", ["--check", path], { encoding: "utf8" });
    if (r.status !== 0) say(false, `${file}: qpdf --check: ${r.stdout}${r.stderr}`);
  }
  if (has("pdffonts")) {
    const rows = run("pdffonts", path).toString().trim().split("\n").slice(2);
    const out = rows.filter((r) => !/\s(yes)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$/.test(r));
    if (rows.length === 0 || out.length) say(false, `${file}: fonts that are not embedded: ${out}`);
  }
  if (has("pdfinfo")) {
    const info = run("pdfinfo", path).toString();
    if (!info.includes(title)) say(false, `${file}: the title ${title} is not in its metadata`);
  }
}

function drawnAlike(dir, file, words) {
  const path = join(dir, file), doc = mupdf.Document.openDocument(readFileSync(path), "application/pdf");
  const pages = doc.countPages();
  let worst = 0, text = "";
  const theirs = byPoppler(path, 1, pages, 100);
  for (let n = 1; n <= pages; n++) {
    text += doc.loadPage(n - 1).toStructuredText().asText() + "\n";
    const u = unlike(byMupdf(doc, n, 100), theirs[n - 1]);
    worst = Math.max(worst, u.far);
    if (u.far > 1) say(false, `${file}, page ${n}: the two renderers differ by ${u.far.toFixed(2)} of what is allowed`);
    if (u.ink < 1e-4) say(false, `${file}, page ${n}: is blank`);
  }
  const other = run("pdftotext", path, "-").toString();
  for (const w of words)
    if (!text.includes(w) || !other.includes(w)) say(false, `${file}: "${w}" is not found in its text`);
  return { pages, worst, doc, path };
}

function svgIsTrue(dir, file) {
  if (!has("rsvg-convert")) return;
  const path = join(dir, file), said = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(readFileSync(path, "utf8"));
  const dots = 10; // a millimetre
  const png = run("rsvg-convert", "--dpi-x", "254", "--dpi-y", "254", "--background-color", "white", path);
  const p = pixmap(new mupdf.Image(png).toPixmap());
  const near = (got, want) => got >= Math.floor(want * dots) && got <= Math.ceil(want * dots) + 1; // whole dots
  const ok = near(p.wide, said[1]) && near(p.high, said[2]);
  say(ok, `${file}: says ${said[1]} × ${said[2]} mm, read back as ${p.wide / dots} × ${p.high / dots} mm`);
  measured(p, dots, file);
}

if (!has("pdftoppm")) process.exit(0);
rmSync(out, { recursive: true, force: true });
const names = run(program, "new", "--list").toString().trim().split("\n").map((l) => l.split(/\s+/)[0]);
for (const name of names) {
  const dir = join(out, name);
  mkdirSync(dir, { recursive: true });
  run(program, "papers", `example:${name}`, "--to", dir, "--patterns", "--as", "pdf,svg");
  const files = readdirSync(dir), title = run(program, "new", "--from", name).toString().match(/^title: (.*)$/m)[1];
  const pdfs = files.filter((f) => f.endsWith(".pdf"));
  const set = pdfs.find((f) => !f.startsWith("pattern-") && f !== "board-plan.pdf");
  for (const f of pdfs) sound(dir, f, title);
  const { pages, worst } = drawnAlike(dir, set, [title, "General arrangement", "Cut list", "Steps"]);
  const bytes = statSync(join(dir, set)).size;
  say(bytes <= MOST, `${name}: ${pdfs.length} PDFs sound; the set's ${pages} sheets in ${bytes} bytes (at most ${MOST}); renderers differ by at most ${worst.toFixed(2)} of what is allowed`);
  const sheets = pdfs.filter((f) => f.startsWith("pattern-") && !f.endsWith("-one-page.pdf"));
  const one = drawnAlike(dir, sheets[0], ["100 mm", "check the bars"]);
  if (!MEASURED.includes(name)) continue;
  const n = Math.min(2, one.pages);
  for (const [who, p] of [["mupdf", byMupdf(one.doc, n, 600)], ["poppler", byPoppler(one.path, n, n, 600)[0]]])
    measured(p, 600 / 25.4, `${name}, ${sheets[0]} by ${who}`);
  svgIsTrue(dir, sheets[0].replace(/\.pdf$/, ".svg"));
}
process.exit(bad ? 1 : 0);
