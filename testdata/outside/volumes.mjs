// Builds stools with a general-purpose mesh-boolean library, from their sizes and the slide-on
// rule alone, and compares every part's volume with what `splaywright derive` says.
//
//   node volumes.mjs PATH-TO-SPLAYWRIGHT
//
// The route is another one than the program's: here whole slabs are intersected and subtracted in
// world coordinates; there each part is put together face by face in its own frame.
import { execFileSync } from "node:child_process";
import Module from "manifold-3d";

const program = process.argv[2];
const LIMIT = 1e-7; // relative
const HUGE = 4000;

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;

const rad = (d) => (d * Math.PI) / 180;
const add = (a, b, k = 1) => a.map((x, i) => x + k * b[i]);
const dot = (a, b) => a.reduce((s, x, i) => s + x * b[i], 0);
const cross = (a, b) => [
  a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => a.map((x) => x / Math.hypot(...a));

// The part of a body on the inner side of the plane through p with outward normal n.
const keep = (body, n, p) => body.trimByPlane(n.map((x) => -x), -dot(n, p));
const world = () => Manifold.cube([HUGE, HUGE, HUGE], true);

// The planes of a stool for the side at x = sign * W/2.
function planes(s, sign) {
  const a = rad(s.ends), b = rad(s.edges);
  const grow = s.takenAt === "floor" ? s.height : 0; // sizes at the floor: back to the top
  const W = s.width - 2 * grow * Math.tan(a), D = s.depth - 2 * grow * Math.tan(b);
  const n = [sign * Math.cos(a), 0, Math.sin(a)];
  const at = [sign * W / 2, 0, s.height];
  return { a, b, W, D, n, at, inAt: add(at, n, -s.side), down: [sign * Math.sin(a), 0, -Math.cos(a)] };
}

function sideSlab(s, P) {
  return keep(keep(world(), P.n, P.at), P.n.map((x) => -x), P.inAt);
}

function topSlab(s) {
  return keep(keep(world(), [0, 0, 1], [0, 0, s.height]), [0, 0, -1], [0, 0, s.height - s.top]);
}

// Front and back planes of the piece, for the top and for flush edges.
function betweenEdges(body, s, P) {
  for (const f of [-1, 1]) {
    body = keep(body, [0, f * Math.cos(P.b), Math.sin(P.b)], [0, f * P.D / 2, s.height]);
  }
  return body;
}

// Square edges: square to the side's face, through the line where the outer face meets the edge plane.
function betweenSquareEdges(body, s, P) {
  for (const f of [-1, 1]) {
    const edge = [0, f * Math.cos(P.b), Math.sin(P.b)];
    const line = unit(cross(edge, P.n));
    let n = unit(cross(line, P.n));
    if (n[1] * f < 0) n = n.map((x) => -x);
    body = keep(body, n, add(P.at, [0, f * P.D / 2, 0]));
  }
  return body;
}

// The wedge of one tail: between its two cheek planes. tail = outward end direction of the tail
// board's grain in its outer face, slide = the pin board's grain.
function tailWedge(s, P, from, to, tailGrain, slide) {
  const slope = Math.tan(rad(s.slope));
  let body = world();
  for (const [y, f] of [[from, -1], [to, 1]]) {
    // Going out along the grain the tail widens.
    const along = [tailGrain[0], f * slope, tailGrain[2]];
    let n = unit(cross(along, slide));
    if (n[1] * f < 0) n = n.map((x) => -x);
    body = keep(body, n, add(P.at, [0, y, 0]));
  }
  return body;
}

function tailsOf(s, P) {
  const tail = (P.D - 2 * s.halfPin - (s.tails - 1) * s.pin) / s.tails;
  return Array.from({ length: s.tails }, (_, i) => {
    const from = -P.D / 2 + s.halfPin + i * (tail + s.pin);
    return [from, from + tail];
  });
}

function build(s) {
  let top = betweenEdges(topSlab(s), s, planes(s, 1));
  const sides = {};
  for (const sign of [-1, 1]) {
    const P = planes(s, sign);
    top = keep(top, P.n, P.at);
    const onTop = s.tailsOn === "top";
    const tailGrain = onTop ? [sign, 0, 0] : P.down.map((x) => -x);
    const slide = onTop ? P.down : [sign, 0, 0];
    const wedges = Manifold.union(tailsOf(s, P).map(([f, t]) => tailWedge(s, P, f, t, tailGrain, slide)));
    let side = keep(keep(sideSlab(s, P), [0, 0, 1], [0, 0, s.height]), [0, 0, -1], [0, 0, 0]);
    side = s.edgeCut === "flush" ? betweenEdges(side, s, P) : betweenSquareEdges(side, s, P);
    const corner = topSlab(s).intersect(sideSlab(s, P));
    const tails = corner.intersect(wedges), pins = corner.subtract(wedges);
    side = side.subtract(onTop ? tails : pins);
    top = top.subtract(onTop ? pins : tails);
    sides[sign < 0 ? "side-left" : "side-right"] = cutFeatures(side, s, P);
  }
  if (s.handHole) top = top.subtract(handHole(s.handHole));
  if (s.hole) top = top.subtract(cylinder([s.hole.x, s.hole.y, 0], [0, 0, 1], s.hole.diameter / 2));
  return { top, ...sides };
}

// A many-sided cylinder with the circle's own area.
function cylinder(at, axis, radius, sides = 2048) {
  const r = radius * Math.sqrt((2 * Math.PI) / (sides * Math.sin((2 * Math.PI) / sides)));
  const z = unit(axis), x = unit(Math.abs(z[1]) < 0.9 ? cross([0, 1, 0], z) : cross([1, 0, 0], z)), y = cross(z, x);
  return Manifold.cylinder(HUGE, r, r, sides, true).transform([...x, 0, ...y, 0, ...z, 0, ...at, 1]);
}

// A hand hole through the top, square to it: two half circles and what lies between.
function handHole(h) {
  const reach = (h.length - h.width) / 2;
  const ends = [-reach, reach].map((x) => cylinder([x, 0, 0], [0, 0, 1], h.width / 2));
  return Manifold.union([...ends, Manifold.cube([2 * reach, h.width, HUGE], true)]);
}

// An arch in the floor end: an arc through the ends of its chord on the outer face's floor arris.
function arch(s, P, floor) {
  const { width, rise } = s.arch;
  const radius = (width * width / 4 + rise * rise) / (2 * rise);
  return cylinder(add(floor, P.down, radius - rise), P.n, radius, 16384);
}

// A round hole through a side, square to its face, measured up the outer face from the floor arris.
function cutFeatures(side, s, P) {
  const floor = add(P.at, P.down, s.height / Math.cos(P.a));
  if (s.arch) side = side.subtract(arch(s, P, floor));
  if (!s.sideHole) return side;
  return side.subtract(cylinder(add(floor, P.down, -s.sideHole.x), P.n, s.sideHole.diameter / 2));
}

function yaml(s) {
  const f = [];
  if (s.hole) f.push(`  - {on: top, kind: hole, diameter: ${s.hole.diameter}, x: ${s.hole.x}, y: ${s.hole.y}}`);
  if (s.sideHole) f.push(`  - {on: side, kind: hole, diameter: ${s.sideHole.diameter}, x: ${s.sideHole.x}, y: 0}`);
  if (s.handHole) f.push(`  - {on: top, kind: hand hole, length: ${s.handHole.length}, width: ${s.handHole.width}}`);
  if (s.arch) f.push(`  - {on: side, kind: arch, width: ${s.arch.width}, rise: ${s.arch.rise}}`);
  return [
    "splaywright: 1", `title: ${s.title}`, "units: mm", "form: stool",
    `size: {height: ${s.height}, width: ${s.width}, depth: ${s.depth}, taken-at: ${s.takenAt}}`,
    `splay: {ends: ${s.ends}, edges: ${s.edges}, edge-cut: ${s.edgeCut}}`, "timber: white oak",
    `boards: {top: {thickness: ${s.top}}, side: {thickness: ${s.side}}}`,
    `corners: {joint: through dovetail, tails-on: ${s.tailsOn}, slope: ${s.slope}, tails: ${s.tails}, pin: ${s.pin}, half-pin: ${s.halfPin}}`,
    ...(f.length ? ["features:", ...f] : []), "",
  ].join("\n");
}

const plain = { title: "plain", height: 260, width: 420, depth: 250, takenAt: "top", ends: 6, edges: 0, edgeCut: "square",
  top: 20, side: 20, slope: 8, tails: 4, pin: 10, halfPin: 8, tailsOn: "top" };
const designs = [
  plain,
  { ...plain, title: "tails on the sides", tailsOn: "side", ends: 9 },
  { ...plain, title: "splayed both ways, square edges", edges: 4, halfPin: 12 },
  { ...plain, title: "splayed both ways, flush edges", edges: 4, halfPin: 12, edgeCut: "flush" },
  { ...plain, title: "sizes at the floor", takenAt: "floor", edges: 3, halfPin: 12, ends: 12 },
  { ...plain, title: "upright", ends: 0 },
  { ...plain, title: "unequal boards, holes", side: 17, top: 24, hole: { diameter: 30, x: 40, y: -20 }, sideHole: { diameter: 25, x: 90 } },
  { ...plain, title: "arch and hand hole", edges: 4, halfPin: 12, arch: { width: 150, rise: 45 }, handHole: { length: 95, width: 28 } },
  { ...plain, title: "wide lean, tails on the sides, flush", ends: 22, edges: 7, halfPin: 18, tailsOn: "side", edgeCut: "flush" },
];

let passed = 0, failed = 0;
for (const s of designs) {
  const json = JSON.parse(execFileSync(program, ["derive", "-"], { input: yaml(s), stdio: ["pipe", "pipe", "inherit"] }));
  for (const [id, body] of Object.entries(build(s))) {
    const ours = json.parts.find((p) => p.id === id).volume, theirs = body.volume();
    const off = Math.abs(ours - theirs) / theirs;
    const ok = off <= LIMIT;
    ok ? passed++ : failed++;
    console.log(`${ok ? "same" : "DIFFERS"}  ${s.title}: ${id}  ${ours.toFixed(3)} mm³, outside ${theirs.toFixed(3)} (${off.toExponential(1)})`);
  }
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed || !passed ? 1 : 0);
