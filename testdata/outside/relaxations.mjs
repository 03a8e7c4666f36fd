// Holds the values of our linear relaxations against those of a general-purpose solver.
// relaxations.mjs FOLDER: values.json lists the problems in it.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import loader from "highs";

const folder = process.argv[2];
const list = JSON.parse(readFileSync(join(folder, "values.json"), "utf8"));
let worst = 0;
let bad = 0;
for (const { File, Name, Value } of list) {
  const solver = await loader(); // anew for each: nothing is carried over
  const found = solver.solve(readFileSync(join(folder, File), "utf8"));
  const off = Math.abs(found.ObjectiveValue - Value) / Math.max(1, Math.abs(found.ObjectiveValue));
  worst = Math.max(worst, off);
  if (found.Status !== "Optimal" || !(off < 1e-7)) {
    console.log(`DIFFERS  ${Name}: ${Value}, the solver says ${found.ObjectiveValue} (${found.Status})`);
    bad++;
  }
}
console.log(`${list.length - bad} of ${list.length} relaxations agree with the solver; the farthest differs by ${worst.toExponential(1)} of its value`);
process.exit(bad > 0 || list.length < 100 ? 1 : 0);
