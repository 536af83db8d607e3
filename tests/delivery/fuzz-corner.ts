/**
 * Long runs of the corner's closed form against its slow twins, by hand: npx tsx tests/delivery/fuzz-corner.ts slow|flood seed runs
 */
import { cornerSpare } from '../../src/delivery/corner-spare.js';
import { floods, slowSpare } from './corner-slow.js';

const [mode = 'slow', seed = '1', runs = '100'] = process.argv.slice(2);
const HEADINGS = 720;
const STEP = 30;

let state = Number(seed);
function random(): number {
  state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
  return state / 0x7fffffff;
}

let told = 0;
let wrong = 0;
let worst = 0;
for (let run = 0; run < Number(runs); run++) {
  const angle = ((5 + 170 * random()) * Math.PI) / 180;
  const corner = { width: 300 + 1200 * random(), widthAfter: 300 + 1200 * random(), angle };
  const shape = {
    halfLength: 20 + 1000 * random(),
    halfWidth: random() < 0.2 ? 0 : 20 + 500 * random() ** 2,
    radius: mode === 'flood' || random() < 0.4 ? 0 : 300 * random(),
  };
  const { atLeast, atMost } = cornerSpare(corner, shape);
  if (mode === 'flood') {
    // A flood is right only for passages that differ by two steps.
    if (Math.abs(atLeast) < 2 * STEP || Math.abs(atLeast) > 300) continue;
    told++;
    if (floods(corner, shape, STEP) === atLeast > 0) continue;
  } else {
    told++;
    const slow = slowSpare(corner, shape, HEADINGS);
    const reach = Math.hypot(shape.halfLength, shape.halfWidth);
    const miss = ((Math.PI / HEADINGS) * 2 * reach) / Math.min(1, 2 * Math.sin(angle / 2)) + 0.02;
    const off = Math.max(slow - atMost, atLeast - slow);
    worst = Math.max(worst, off);
    if (off <= miss) continue;
  }
  wrong++;
  console.log('differs', JSON.stringify({ corner, shape, atLeast, atMost }));
}
console.log(`${mode}: ${told} told, ${wrong} differ, worst ${worst.toFixed(3)} mm beyond the bracket`);
