// How far apart two patches look, from what a colour meter read on each.
import { colourDifferenceCie2000 } from "lacbench/core";

const lemon = { L: 62.1, a: 18.4, b: 44.9 };
const garnet = { L: 58.7, a: 21.0, b: 41.2 };
console.log(`ΔE00 is ${colourDifferenceCie2000(lemon, garnet).toFixed(1)}.`);
