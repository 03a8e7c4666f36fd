// Gives random pieces of every form and joint to a general-purpose mesh-boolean library, as the closed
// polyhedra that the program made: every part must be a solid to it, of the same volume, and no two parts
// of a piece may share wood.
//
//   node pieces.mjs FOLDER-OF-PIECES
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import Module from "manifold-3d";

// The library keeps corners in single precision: 3e-5 mm half a metre from the origin. Volumes are taken about
// the part's own middle, which is nearer; overlaps need all parts where they stand.
const VOLUME = 2e-6; // relative
const SMALL = 0.05; // mm³: what that rounding comes to over the faces of a key or a wedge
const OVERLAP = 1; // mm³: and over those of a joint

const wasm = await Module();
wasm.setup();
const { Manifold, Mesh } = wasm;

// A face is flattened along its longest direction, and triangulated by the library.
function triangles(part) {
  const out = [];
  for (const { Normal: n, Loops } of part.Faces) {
    const k = [0, 1, 2].reduce((b, i) => (Math.abs(n[i]) > Math.abs(n[b]) ? i : b), 0);
    const [u, v] = n[k] > 0 ? [(k + 1) % 3, (k + 2) % 3] : [(k + 2) % 3, (k + 1) % 3];
    const ids = Loops.flat();
    const loops = Loops.map((l) => l.map((i) => [part.Points[i][u], part.Points[i][v]]));
    for (const t of wasm.triangulate(loops, -1)) out.push(t.map((i) => ids[i]));
  }
  return out;
}

function middle(part) {
  return [0, 1, 2].map((k) => {
    const along = part.Points.map((p) => p[k]);
    return (Math.min(...along) + Math.max(...along)) / 2;
  });
}

function body(part, about = [0, 0, 0]) {
  const mesh = new Mesh({
    numProp: 3, vertProperties: new Float32Array(part.Points.flatMap((p) => p.map((x, k) => x - about[k]))), triVerts: new Uint32Array(triangles(part).flat()),
  });
  return new Manifold(mesh);
}

const folder = process.argv[2];
const files = readdirSync(folder).filter((f) => f.endsWith(".json")).sort();
let bad = 0, parts = 0, pairs = 0, worstVolume = 0, worstOverlap = 0;
for (const f of files) {
  const piece = JSON.parse(readFileSync(join(folder, f), "utf8"));
  const bodies = [];
  for (const p of piece.Parts) {
    let b, off, volume;
    try {
      b = body(p);
      const own = body(p, middle(p));
      volume = own.volume();
      own.delete();
      off = Math.max(0, Math.abs(volume - p.Volume) - SMALL) / p.Volume;
    } catch (e) {
      off = NaN;
    }
    parts++;
    if (!(off < VOLUME)) {
      console.log(`DIFFERS  ${piece.Title}: ${p.ID}: ${p.Volume}, the library says ${volume}`);
      bad++;
    } else worstVolume = Math.max(worstVolume, off);
    bodies.push(b);
  }
  for (let i = 0; i < bodies.length; i++) {
    for (let j = 0; j < i; j++) {
      const rail = (p) => p.ID.startsWith("stretcher-");
      const [a, b] = [piece.Parts[i], piece.Parts[j]];
      if (!bodies[i] || !bodies[j] || (a.Wedge && rail(b)) || (b.Wedge && rail(a))) continue;
      const shared = Manifold.intersection(bodies[i], bodies[j]).volume();
      pairs++;
      if (!(shared < OVERLAP)) {
        console.log(`OVERLAPS ${piece.Title}: ${a.ID} and ${b.ID} share ${shared.toFixed(3)} mm³`);
        bad++;
      } else worstOverlap = Math.max(worstOverlap, shared);
    }
  }
  bodies.forEach((b) => b && b.delete());
}
console.log(`${files.length} pieces, ${parts} parts, ${pairs} pairs: volumes differ by ${worstVolume.toExponential(1)} at most, overlaps come to ${worstOverlap.toFixed(3)} mm³ at most; ${bad} bad`);
process.exit(bad > 0 || files.length < 200 ? 1 : 0);
