// Builds the top board on which figures are compared with a general-purpose mesh-boolean library,
// checks its volume and prints the median time: one line a board, "TopBoard <ms> <mm³>".
//
//   node board.mjs [RUNS]
//
// The board: a slab 400 × 300 × 22 mm, both ends undercut by 6°, sockets through the thickness and 22 mm deep along the board
// that follow the leaning end and widen from 0.4 of their pitch at the end to 0.6, four holes of
// radius 12.5 with 48 facets.
import Module from "manifold-3d";

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;

const runs = Number(process.argv[2] ?? 101);
const L = 400, W = 300, T = 22, DEEP = 22, LEAN = (6 * Math.PI) / 180, R = 12.5, FACETS = 48;
const slope = Math.tan(LEAN);
const boards = [
  // The first volume was computed independently, in closed form; the second follows from it below.
  { name: "TopBoard", sockets: 6 }, { name: "TopBoard40", sockets: 40 },
];

// A prism over the quadrilateral q at z = 0 that moves along x by slope for each mm up, from z = -T - 1 to 1.
function leaning(q, sx) {
  const at = (z) => q.map(([x, y]) => [x + sx * z, y, z]);
  return Manifold.hull([...at(-T - 1), ...at(1)]);
}

function build(n) {
  const used = [];
  const keep = (m) => (used.push(m), m);
  // The end at x = ±L/2 on the outer face comes in by slope towards the inner face.
  let body = keep(Manifold.hull([-1, 1].flatMap((s) => [-1, 1].flatMap((t) =>
    [[s * L / 2, t * W / 2, 0], [s * (L / 2 - T * slope), t * W / 2, -T]]))));
  const pitch = W / n, cutters = [];
  for (const s of [-1, 1]) {
    for (let i = 0; i < n; i++) {
      const y = -W / 2 + pitch * (i + 0.5);
      // The cheeks go on 5 mm beyond the end, so that no face is flush.
      const out = 5, grow = (0.1 * pitch) / DEEP, a = 0.2 * pitch - grow * out, b = 0.3 * pitch;
      const x0 = s * (L / 2 + out), x1 = s * (L / 2 - DEEP);
      cutters.push(keep(leaning([[x0, y - a], [x0, y + a], [x1, y + b], [x1, y - b]], s * slope)));
    }
  }
  for (const [x, y] of [[-100, -75], [100, -75], [100, 75], [-100, 75]]) {
    const c = keep(Manifold.cylinder(T + 2, R, R, FACETS));
    cutters.push(keep(c.translate([x, y, -T - 1])));
  }
  body = keep(Manifold.difference([body, ...cutters]));
  const volume = body.volume(); // forces the work
  used.forEach((m) => m.delete());
  return volume;
}

// Closed form, for any number of sockets: they take half of the width whatever their number.
const body = L * W * T - T * T * slope * W;
const hole = (FACETS / 2) * Math.sin((2 * Math.PI) / FACETS) * R * R * T;
const want = body - 2 * 0.5 * W * DEEP * T - 4 * hole;
if (Math.abs(want - 2436465.221607) > 1e-6) throw new Error(`closed form ${want}`);

for (const b of boards) {
  const times = [];
  let volume = 0;
  for (let i = 0; i < runs; i++) {
    const t = performance.now();
    volume = build(b.sockets);
    times.push(performance.now() - t);
  }
  if (!(Math.abs(volume - want) < 1e-7 * want)) throw new Error(`${b.name}: ${volume} mm³, want ${want}`);
  times.sort((x, y) => x - y);
  console.log(`${b.name} ${times[times.length >> 1].toFixed(4)} ${volume.toFixed(6)}`);
}
