// Builds trays, chests and rings with a general-purpose mesh-boolean library, from their sizes and the
// slide-on rule alone, and compares every part's volume with what `splaywright derive` says.
//
//   node walls.mjs PATH-TO-SPLAYWRIGHT
//
// Whole slabs are intersected and subtracted in world coordinates; the program puts each part together
// face by face in its own frame.
import { execFileSync } from "node:child_process";
import Module from "manifold-3d";

const program = process.argv[2];
const LIMIT = 1e-7; // relative
let HUGE = 6000;

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;

const rad = (d) => (d * Math.PI) / 180;
const add = (a, b, k = 1) => a.map((x, i) => x + k * b[i]);
const neg = (a) => a.map((x) => -x);
const dot = (a, b) => a.reduce((s, x, i) => s + x * b[i], 0);
const cross = (a, b) => [
  a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => a.map((x) => x / Math.hypot(...a));

// A plane is [outward normal, point]; keep is the part of a body on its inner side.
const keep = (body, [n, p]) => body.trimByPlane(neg(n), -dot(n, p));
const beyond = (body, [n, p]) => body.trimByPlane(n, dot(n, p));
const world = () => Manifold.cube([HUGE, HUGE, HUGE], true);
const moved = ([n, p], by) => [n, add(p, n, by)];
const level = (body, low, high) => keep(keep(body, [[0, 0, 1], [0, 0, high]]), [[0, 0, -1], [0, 0, low]]);

// Point where three planes meet.
function meet(a, b, c) {
  const bc = cross(b[0], c[0]), ca = cross(c[0], a[0]), ab = cross(a[0], b[0]);
  const k = 1 / dot(a[0], bc);
  return [0, 1, 2].map((i) => k * (dot(...a) * bc[i] + dot(...b) * ca[i] + dot(...c) * ab[i]));
}

function walls(s) {
  const outward = s.form === "chest" ? -1 : 1;
  const n = s.staves || 4, out = [];
  for (let k = 0; k < n; k++) {
    const t = (2 * Math.PI * k) / n, h = [Math.sin(t), -Math.cos(t), 0], long = k % 2 === 0;
    const ring = s.form === "ring";
    const lean = outward * rad(ring || !long ? s.ends : s.front), half = (ring || !long ? s.width : s.depth) / 2;
    const thick = ring ? s.side : long ? s.frontBoard : s.endBoard;
    const normal = [h[0] * Math.cos(lean), h[1] * Math.cos(lean), -Math.sin(lean)];
    const outer = [normal, add(h.map((x) => x * half), [0, 0, s.takenAt === "floor" ? 0 : s.height])];
    out.push({
      id: ring ? `stave-${k + 1}` : ["front", "end-right", "back", "end-left"][k], long, thick, outer, out: h,
      inner: [neg(normal), add(outer[1], normal, -thick)], right: cross([0, 0, 1], h),
    });
  }
  return out;
}

const slab = (s, w) => level(keep(keep(world(), w.outer), w.inner), 0, s.height);

// The tails of a corner: wedges between cheek planes that contain the slope line on the tail board's
// face and the pin board's grain.
function wedges(s, T, P, tailGrain, pinGrain, ends) {
  const floor = [[0, 0, -1], [0, 0, 0]], rim = [[0, 0, 1], [0, 0, s.height]];
  const from = meet(T.outer, ends, floor), to = meet(T.outer, ends, rim);
  const along = unit(add(to, from, -1)), width = Math.hypot(...add(to, from, -1));
  let across = unit(cross(T.outer[0], tailGrain));
  if (dot(across, along) < 0) across = neg(across);
  const finger = s.joint === "finger joint" && width / (2 * s.tails + 1);
  const halfPin = finger || s.halfPin, pin = finger || s.pin, slope = finger ? 0 : Math.tan(rad(s.slope));
  const tail = (width - 2 * halfPin - (s.tails - 1) * pin) / s.tails;
  return Manifold.union(Array.from({ length: s.tails }, (_, i) => {
    const start = halfPin + i * (tail + pin);
    let body = world();
    for (const [y, f] of [[start, -1], [start + tail, 1]]) {
      let n = unit(cross(add(neg(tailGrain), across, f * slope), pinGrain));
      if (dot(n, along) * f < 0) n = neg(n);
      body = keep(body, [n, add(from, along, y)]);
    }
    return body;
  }));
}

// A mitred corner as seen along its line: a point up it, out along the mitre and off it.
function mitre(s, a, b) {
  const floor = [[0, 0, -1], [0, 0, 0]], o = meet(a.outer, b.outer, floor), q = meet(a.inner, b.inner, floor);
  let along = unit(cross(a.outer[0], b.outer[0]));
  if (along[2] < 0) along = neg(along);
  let across = add(o, q, -1);
  across = add(across, along, -dot(across, along));
  const width = Math.hypot(...across), out = unit(across);
  let off = unit(cross(out, along));
  if (dot(off, a.right) < 0) off = neg(off);
  const at = (up, far, aside) => add(add(add(q, along, up), out, far), off, aside);
  const clear = s.bottom ? s.bottom.up + s.bottom.thickness + 3 : 0; // over the bottom's groove
  const reach = (section) => [Math.max(...section.map((p) => (clear - p[2]) / along[2])), Math.min(...section.map((p) => (s.height - p[2]) / along[2]))];
  return { along, out, off, width, at, reach, bisector: unit(add(a.outer[0], b.outer[0])) };
}

// What lies between two planes square to a direction, through two points.
const slice = (body, n, from, to) => keep(keep(body, [neg(n), from]), [n, to]);

// The grooves of a splined corner and the spline in them.
function spline(s, a, b) {
  const k = mitre(s, a, b), g = s.spline;
  const section = [-1, 1].flatMap((o) => [0, 1].map((f) => k.at(0, g.inset + f * g.thickness, (o * g.width) / 2)));
  const [low] = k.reach(section);
  const top = [[0, 0, 1], [0, 0, s.height]], rim = dot(k.along, meet(a.inner, b.inner, top)) - dot(k.along, k.at(0, 0, 0));
  const bar = slice(slice(world(), k.out, k.at(0, g.inset, 0), k.at(0, g.inset + g.thickness, 0)), k.off, k.at(0, 0, -g.width / 2), k.at(0, 0, g.width / 2));
  let groove = level(bar, 0, s.height), part = groove;
  const up = (body, at, sign) => keep(body, [k.along.map((x) => sign * x), k.at(at, 0, 0)]);
  if (s.bottom) [groove, part] = [up(groove, low, -1), up(part, low + 1, -1)];
  if (g.stop) [groove, part] = [up(groove, rim - g.stop, 1), up(part, rim - g.stop - 1, 1)];
  return [groove, part];
}

// The slots of a keyed corner, each as its key fills it.
function keys(s, a, b) {
  const k = mitre(s, a, b), g = s.keys, corner = k.at(0, k.width, 0);
  const floor = [k.bisector, add(corner, k.bisector, -g.depth)], level0 = [k.along, k.at(0, 0, 0)];
  const [low, high] = k.reach([corner, meet(floor, a.outer, level0), meet(floor, b.outer, level0)]);
  const pitch = (high - low) / g.count;
  return Array.from({ length: g.count }, (_, i) => {
    const middle = low + pitch * (i + 0.5);
    return slice(keep(keep(beyond(world(), floor), a.outer), b.outer), k.along, k.at(middle - g.thickness / 2, 0, 0), k.at(middle + g.thickness / 2, 0, 0));
  });
}

function build(s) {
  const w = walls(s), n = w.length, loose = {};
  let key = 0;
  const body = w.map((x) => slab(s, x)), stops = w.map(() => [null, null]); // left, right
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n, a = w[i], b = w[j];
    if (s.joint.startsWith("mitre")) {
      const floor = [[0, 0, -1], [0, 0, 0]], o = meet(a.outer, b.outer, floor), q = meet(a.inner, b.inner, floor);
      let m = unit(cross(add(o, q, -1), cross(a.outer[0], b.outer[0])));
      if (dot(m, a.right) < 0) m = neg(m);
      body[i] = keep(body[i], [m, o]);
      body[j] = keep(body[j], [neg(m), o]);
      if (s.joint === "mitre with splines") {
        const [groove, part] = spline(s, a, b);
        for (const x of [i, j]) body[x] = body[x].subtract(groove);
        loose[`spline-${i + 1}`] = part;
      }
      if (s.joint === "mitre with keys") {
        for (const slot of keys(s, a, b)) {
          for (const x of [i, j]) body[x] = body[x].subtract(slot);
          loose[`key-${++key}`] = slot;
        }
      }
    } else if (s.joint === "housing" || s.joint === "groove and tongue") {
      const first = s.form === "ring" || a.long === (s.on === "front");
      const [c, u] = first ? [i, j] : [j, i], seat = moved([neg(w[c].inner[0]), w[c].inner[1]], s.deep);
      const past = (s.overhang || 0) * Math.abs(dot(w[c].right, w[u].outer[0]));
      const shoulder = [neg(w[c].inner[0]), w[c].inner[1]], full = beyond(slab(s, w[u]), shoulder);
      const housed = keep(keep(full, moved(w[u].outer, -(s.shoulder || 0))), [[0, 0, 1], [0, 0, s.height - (s.stop || 0)]]);
      body[c] = keep(body[c], moved(w[u].outer, past)).subtract(keep(housed, seat));
      body[u] = keep(body[u].subtract(full.subtract(housed)), seat);
      stops[c][first ? 1 : 0] = w[u].inner;
      // Staves with tongues close askew, so that the bottom's groove runs out through them.
      if (s.form !== "ring" || s.joint === "housing") stops[u][first ? 0 : 1] = w[c].inner;
    } else if (s.joint === "butt") {
      const first = s.form === "ring" || a.long === (s.on === "front");
      const [c, u] = first ? [i, j] : [j, i];
      body[c] = keep(body[c], w[u].outer);
      body[u] = keep(body[u], [neg(w[c].inner[0]), w[c].inner[1]]);
      stops[c][first ? 1 : 0] = w[u].inner;
    } else {
      const first = s.form === "ring" ? (i % 2 === 0) === (s.on === "front") : a.long === (s.on === "front");
      const [t, p] = first ? [i, j] : [j, i];
      const grain = [neg(a.right), b.right], [tg, pg] = first ? grain : [grain[1], grain[0]];
      const ends = moved(w[p].outer, -(s.lap || 0));
      const corner = keep(slab(s, w[t]).intersect(slab(s, w[p])), ends), wedge = wedges(s, w[t], w[p], tg, pg, ends);
      body[t] = keep(body[t], ends).subtract(corner.subtract(wedge));
      body[p] = keep(body[p], w[t].outer).subtract(corner.intersect(wedge));
      stops[t][first ? 1 : 0] = moved(w[p].inner, 3);
      stops[p][first ? 0 : 1] = moved(w[t].inner, 3);
    }
  }
  const parts = { ...Object.fromEntries(w.map((x, i) => [x.id, body[i]])), ...loose };
  if (!s.bottom) return parts;
  const u = s.bottom;
  for (let i = 0; i < n; i++) {
    let g = level(keep(beyond(world(), [neg(w[i].inner[0]), w[i].inner[1]]), [w[i].outer[0], add(w[i].inner[1], w[i].outer[0], u.depth)]), u.up, u.up + u.thickness);
    for (const stop of stops[i]) if (stop) g = beyond(g, stop);
    parts[w[i].id] = parts[w[i].id].subtract(g);
  }
  let panel = level(world(), u.up, u.up + u.thickness);
  for (const x of w) panel = keep(panel, [x.outer[0], add(x.inner[1], x.outer[0], u.depth - u.clearance)]);
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n, here = stops[i][1], there = stops[j][0];
    if (!here && !there) continue;
    const limit = (stop, neighbour, own) => square(moved([neg((stop || neighbour.inner)[0]), (stop || neighbour.inner)[1]], -u.clearance), own);
    // A tongue is nowhere wider than at its root: an end that leans under the neighbour stands square instead.
    const square = (end, own) => {
      const under = dot(end[0], own.out);
      if (under >= 0) return end;
      const across = unit(add(end[0], own.out, -under));
      const at = [u.up, u.up + u.thickness].map((z) => meet(end, own.inner, [[0, 0, 1], [0, 0, z]]));
      return [across, at.reduce((p, q) => (dot(across, q) < dot(across, p) ? q : p))];
    };
    panel = panel.subtract(beyond(beyond(level(world(), 0, s.height), limit(here, w[j], w[i])), limit(there, w[i], w[j])));
  }
  return { ...parts, bottom: panel };
}

function yaml(s) {
  const ring = s.form === "ring", tails = s.joint.includes("dovetail");
  const boards = ring ? `{side: {thickness: ${s.side}}}`
    : `{front: {thickness: ${s.frontBoard}}, back: {thickness: ${s.frontBoard}}, end: {thickness: ${s.endBoard}}}`;
  const over = (["butt", "housing", "groove and tongue"].includes(s.joint) && !ring ? `, over: ${s.on}` : "")
    + (s.joint === "housing" ? `, depth: ${s.deep}, overhang: ${s.overhang || 0}` : s.joint === "groove and tongue" ? `, depth: ${s.deep}` : "")
    + (["housing", "groove and tongue"].includes(s.joint) ? `${s.shoulder ? `, shoulder: ${s.shoulder}` : ""}, stop: ${s.stop || 0}` : "")
    + (s.joint === "mitre with splines" ? `, spline: {thickness: ${s.spline.thickness}, width: ${s.spline.width}, inset: ${s.spline.inset}, stop: ${s.spline.stop}}` : "")
    + (s.joint === "mitre with keys" ? `, keys: {count: ${s.keys.count}, thickness: ${s.keys.thickness}, depth: ${s.keys.depth}}` : "");
  const fingers = s.joint === "finger joint" ? `, tails-on: ${s.on}, tails: ${s.tails}` : "";
  const tail = tails ? `, tails-on: ${s.on}, slope: ${s.slope}, tails: ${s.tails}, pin: ${s.pin}, half-pin: ${s.halfPin}${s.lap ? `, lap: ${s.lap}` : ""}` : "";
  const u = s.bottom;
  return [
    "splaywright: 1", `title: ${s.title}`, "units: mm", `form: ${s.form}`,
    `size: {height: ${s.height}, width: ${s.width}, ${ring ? `staves: ${s.staves}` : `depth: ${s.depth}`}, taken-at: ${s.takenAt || "top"}}`,
    `splay: {ends: ${s.ends}${ring ? "" : `, front: ${s.front}`}}`, "timber: white oak", `boards: ${boards}`,
    `corners: {joint: ${s.joint}${over}${fingers}${tail}}`,
    ...(u ? [`bottom: {thickness: ${u.thickness}, joint: groove, up: ${u.up}, depth: ${u.depth}, clearance: ${u.clearance}}`] : []), "",
  ].join("\n");
}

const tray = { form: "tray", height: 90, width: 440, depth: 300, front: 14, ends: 9, frontBoard: 12, endBoard: 12, on: "front" };
const tails = { joint: "through dovetail", slope: 8, tails: 2, pin: 10, halfPin: 12 };
const bottom = { thickness: 6, up: 9, depth: 5, clearance: 1 };
const ring = { form: "ring", height: 200, width: 520, ends: 12, side: 18, on: "front" };
const designs = [
  { ...tray, title: "mitred", joint: "mitre", bottom },
  { ...tray, title: "mitred, unlike boards", joint: "mitre", frontBoard: 18 },
  { ...tray, title: "butted, front over", joint: "butt", bottom },
  { ...tray, title: "butted, ends over, sizes at the floor", joint: "butt", on: "end", takenAt: "floor", endBoard: 16 },
  { ...tray, ...tails, title: "dovetailed", bottom },
  { ...tray, ...tails, title: "dovetailed, tails on the ends", on: "end", endBoard: 9, frontBoard: 14 },
  { ...tray, ...tails, title: "lapped", joint: "half-blind dovetail", lap: 4, endBoard: 18 },
  { ...tray, ...tails, title: "leaning inward", front: -6, ends: -11 },
  { ...tray, ...tails, title: "steep", front: 30, ends: 25, height: 120, halfPin: 20 },
  { ...tray, ...tails, title: "chest", form: "chest", height: 380, width: 780, depth: 380, front: 4, ends: 6, frontBoard: 20, endBoard: 20, tails: 7, halfPin: 14, bottom },
  { ...tray, title: "splined", joint: "mitre with splines", spline: { thickness: 3, width: 12, inset: 4, stop: 15 }, bottom },
  { ...tray, title: "keyed", joint: "mitre with keys", keys: { count: 2, thickness: 3, depth: 8 }, bottom },
  { ...tray, title: "tongued", joint: "groove and tongue", deep: 4, shoulder: 5, stop: 12, bottom },
  { ...tray, title: "housed, stopped", joint: "housing", deep: 4, overhang: 12, stop: 12 },
  ...[3, 5, 6, 8, 12].map((staves) => ({ ...ring, title: `ring of ${staves}, mitred`, joint: "mitre", staves })),
  ...[3, 5, 8].map((staves) => ({ ...ring, title: `ring of ${staves}, butted`, joint: "butt", staves })),
  ...[4, 6, 8].map((staves) => ({ ...ring, ...tails, title: `ring of ${staves}, dovetailed`, staves, tails: 5 })),
];

// The same random pieces each time.
let seed = 20;
function random() {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
}
const between = (lo, hi) => Math.round(1000 * (lo + (hi - lo) * random())) / 1000;
const pick = (list) => list[Math.floor(random() * list.length)];
for (let i = 0; i < 200; i++) {
  const s = {
    title: `random ${i + 1}`, form: pick(["tray", "chest", "ring"]), height: between(80, 200), width: between(500, 800), depth: between(450, 700),
    front: between(-10, 20), ends: between(-10, 20), frontBoard: between(9, 22), endBoard: between(9, 22), side: between(9, 22),
    joint: pick(["mitre", "butt", "housing", "through dovetail", "half-blind dovetail", "finger joint",
      "mitre with splines", "mitre with keys", "groove and tongue"]), on: pick(["front", "end"]),
    takenAt: pick(["top", "floor"]), slope: between(4, 12), tails: pick([1, 2, 3]), pin: between(6, 14), halfPin: between(9, 15),
    deep: between(2, 6), overhang: pick([0, 10]),
  };
  if (s.form === "ring") s.staves = s.joint.includes("dovetail") || s.joint === "finger joint" ? pick([4, 6, 8]) : pick([3, 4, 5, 6, 7, 8]), s.overhang = 0;
  const thin = s.form === "ring" ? s.side : Math.min(s.frontBoard, s.endBoard);
  if (s.joint === "groove and tongue") s.shoulder = between(2, thin / 2), s.overhang = 0;
  if (s.joint === "groove and tongue" || s.joint === "housing") s.stop = pick([0, between(5, 30)]);
  if (s.joint === "mitre with splines") s.spline = { thickness: between(2, thin / 3), width: between(5, thin), inset: between(thin / 5, thin / 3), stop: pick([0, between(5, 25)]) };
  if (s.joint === "mitre with keys") s.keys = { count: pick([1, 2, 3]), thickness: between(2, 5), depth: between(3, thin / 2) };
  if (s.joint === "half-blind dovetail") s.lap = between(2, 6);
  if (random() < 0.4) s.bottom = { thickness: between(4, 8), up: between(8, 14), depth: between(2, 5), clearance: between(0, 1) };
  designs.push(s);
}

let passed = 0, failed = 0, refused = 0, again = 0;
for (const s of designs) {
  let out;
  try {
    out = execFileSync(program, ["derive", "-"], { input: yaml(s), stdio: ["pipe", "pipe", "ignore"] });
  } catch (e) {
    if (e.status !== 1) throw e; // 1: a finding stops the piece, which happens to a few random ones
    refused++;
    continue;
  }
  const json = JSON.parse(out);
  for (const [id, body] of Object.entries(build(s))) {
    const ours = json.parts.find((p) => p.id === id).volume;
    let theirs = body.volume(), off = Math.abs(ours - theirs) / theirs;
    if (off > LIMIT) { // the library may lose a face where planes coincide: slabs of another size decide
      again++;
      HUGE = 5371;
      theirs = build(s)[id].volume();
      off = Math.abs(ours - theirs) / theirs;
      HUGE = 6000;
    }
    const ok = off <= LIMIT;
    ok ? passed++ : failed++;
    if (!ok || !s.title.startsWith("random") && ["front", "stave-1", "bottom"].includes(id)) {
      console.log(`${ok ? "same" : "DIFFERS"}  ${s.title}: ${id}  ${ours.toFixed(3)} mm³, outside ${theirs.toFixed(3)} (${off.toExponential(1)})`);
    }
  }
}
console.log(`${designs.length} pieces of walls, ${refused} stopped by a finding; ${passed} parts passed, ${failed} failed, ${again} built twice`);
process.exit(failed || !passed || refused > 40 || again > 5 ? 1 : 0);
