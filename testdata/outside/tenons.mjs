// Builds stools with tenoned stretchers with a general-purpose mesh-boolean library, from their sizes alone,
// and compares the volumes of sides, stretchers and wedges with what `splaywright derive` says.
//
//   node tenons.mjs PATH-TO-SPLAYWRIGHT
//
// Mortises and wedges are hulls of the points that their lines run through; the program cuts planes.
import { execFileSync } from "node:child_process";
import Module from "manifold-3d";

const program = process.argv[2];
const LIMIT = 1e-7; // relative
const HUGE = 4000, WEB = 1 / 5; // of the side's thickness, behind the slots

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;

const rad = (d) => (d * Math.PI) / 180;
const neg = (a) => a.map((x) => -x);
const dot = (a, b) => a.reduce((s, x, i) => s + x * b[i], 0);
const keep = (body, n, d) => body.trimByPlane(neg(n), -d); // the inner side of n·p = d
const world = () => Manifold.cube([HUGE, HUGE, HUGE], true);
const box = (y0, y1, z0, z1) => [[[0, -1, 0], -y0], [[0, 1, 0], y1], [[0, 0, -1], -z0], [[0, 0, 1], z1]].reduce((b, [n, d]) => keep(b, n, d), world());

function build(s) {
  const a = rad(s.ends), t = s.tenon, r = s.stretcher, flat = r.set === "flat", parts = {};
  const under = s.height - s.top, high = under - r.belowTop, tall = flat ? r.thickness : r.width, wide = flat ? r.width : r.thickness;
  const mid = high - tall / 2, [up, level] = flat ? [t.thickness, t.width] : [t.width, t.thickness];
  const y = [r.across - level / 2, r.across + level / 2], z = [mid - up / 2, mid + up / 2];
  let body = box(r.across - wide / 2, r.across + wide / 2, high - tall, high), tenons = box(...y, ...z), wedge = 0;
  const through = r.joint === "through tenon", flare = through && t.wedges ? t.flare : 0;
  for (const [id, sign] of [["side-left", -1], ["side-right", 1]]) {
    const n = [sign * Math.cos(a), 0, Math.sin(a)], outer = dot(n, [sign * s.width / 2, 0, s.height]), inner = outer - s.side;
    const x = (d, h) => (d - n[2] * h) / n[0]; // of a plane n·p = d at a height
    const line = (d0, h0, d1, h1, from, to) => { // from one plane to another, run on by shares of it
      const p = [x(d0, h0), h0], q = [x(d1, h1), h1];
      return [from, to].map((k) => [p[0] + k * (q[0] - p[0]), p[1] + k * (q[1] - p[1])]);
    };
    const hull = (...lines) => Manifold.hull(lines.flat().flatMap(([px, pz]) => y.map((py) => [px, py, pz])));
    let side = keep(keep(keep(box(-s.depth / 2, s.depth / 2, 0, under), n, outer), neg(n), -inner), [0, 0, 1], under);
    let mortise = hull(line(inner, z[0], outer, z[0] - flare, -1, 2), line(inner, z[1], outer, z[1] + flare, -1, 2));
    const tip = through ? outer + t.proud : inner + t.depth;
    if (!through) mortise = keep(mortise, n, tip);
    parts[id] = side.subtract(mortise);
    body = keep(body, n, inner);
    tenons = keep(tenons, n, tip);
    if (!through || !t.wedges) continue;
    const root = inner + WEB * s.side, opens = flare / t.wedges;
    for (let k = 0; k < t.wedges; k++) {
      const h = z[0] + up * ((k + 0.5) / t.wedges), half = t.slot / 2;
      tenons = tenons.subtract(keep(box(y[0] - 5, y[1] + 5, h - half, h + half), neg(n), -root));
      const w = hull(line(root, h - half, outer, h - half - opens, 0, 3), line(root, h + half, outer, h + half + opens, 0, 3));
      parts[`wedge-${++wedge}`] = keep(w, n, tip);
    }
  }
  parts["stretcher-1"] = body.add(tenons);
  return parts;
}

function yaml(s) {
  const t = s.tenon, r = s.stretcher;
  const sizes = r.joint === "through tenon" ? `proud: ${t.proud}, wedges: ${t.wedges}${t.wedges ? `, slot: ${t.slot}, flare: ${t.flare}` : ""}` : `depth: ${t.depth}`;
  return ["splaywright: 1", "title: tenons", "units: mm", "form: stool",
    `size: {height: ${s.height}, width: ${s.width}, depth: ${s.depth}}`, `splay: {ends: ${s.ends}}`, "timber: white oak",
    `boards: {top: {thickness: ${s.top}}, side: {thickness: ${s.side}}}`, "corners: {joint: butt}",
    `stretchers: [{width: ${r.width}, thickness: ${r.thickness}, set: ${r.set}, below-top: ${r.belowTop}, across: ${r.across}, joint: ${r.joint}, tenon: {width: ${t.width}, thickness: ${t.thickness}, ${sizes}}}]`, ""].join("\n");
}

// The same random pieces each time.
let seed = 7;
function random() {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
}
const between = (lo, hi) => Math.round(1000 * (lo + (hi - lo) * random())) / 1000;
const pick = (list) => list[Math.floor(random() * list.length)];

const pieces = 60;
let passed = 0, failed = 0;
for (let i = 0; i < pieces; i++) {
  const s = { height: between(300, 500), width: between(450, 800), depth: between(240, 340), ends: between(-12, 25), top: between(15, 30), side: between(14, 35) };
  const width = between(35, 80), thickness = between(18, 35);
  s.stretcher = { width, thickness, set: pick(["on edge", "flat"]), belowTop: between(20, 120), across: between(-30, 30), joint: pick(["through tenon", "housed tenon"]) };
  s.tenon = { width: width * pick([0.6, 0.75]), thickness: thickness * pick([0.4, 0.6]), depth: between(5, s.side - 4), proud: pick([0, between(1, 5)]), wedges: pick([0, 1, 2]), slot: between(0.8, 1.5), flare: between(1, 3) };
  const json = JSON.parse(execFileSync(program, ["derive", "-"], { input: yaml(s), stdio: ["pipe", "pipe", "ignore"] }));
  for (const [id, body] of Object.entries(build(s))) {
    const ours = json.parts.find((p) => p.id === id).volume, theirs = body.volume(), off = Math.abs(ours - theirs) / theirs;
    off <= LIMIT ? passed++ : failed++;
    if (off > LIMIT) console.log(`DIFFERS  tenons ${i + 1}: ${id}  ${ours.toFixed(3)} mm³, outside ${theirs.toFixed(3)} (${off.toExponential(1)})`);
  }
}
console.log(`${pieces} stools with tenons; ${passed} parts passed, ${failed} failed`);
process.exit(failed || !passed ? 1 : 0);
