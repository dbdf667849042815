import { expect, test } from "vitest";
import { randomFromSeed, randomNormal } from "../random.ts";
import { enoughCoats, type LoggedWait, ownWaitFactor, ownWhiteningMargin } from "./own-log.ts";

const hour = 3600;
const wait = (hours: number, ready: boolean): LoggedWait => ({ model: hour, waited: hours * hour, ready });

/** Coats of a hand whose films take so many times the model's hour, waited for between a quarter and four times as long. */
function logged(factor: number, count: number, seed: string): LoggedWait[] {
  const random = randomFromSeed(seed);
  return Array.from({ length: count }, () => {
    const waited = 4 ** (2 * random() - 1);
    return wait(waited, waited > factor * Math.exp(Math.log(1.3) * randomNormal(random)));
  });
}

test("coats that dragged raise it, coats that went well lower it", () => {
  expect(ownWaitFactor([wait(1.5, false)]).estimate).toBeGreaterThan(1.2);
  expect(ownWaitFactor([wait(0.7, true)]).estimate).toBeLessThan(0.9);
});

// Drawn from the model itself: 95 % intervals have to hold the truth in about 95 of 100 logs (88 to 100 is ±3 standard errors).
test.each([0.6, 1, 1.8])("a hand whose films take %d times as long is found", (factor) => {
  let held = 0;
  for (let log = 0; log < 100; log++) {
    const { interval } = ownWaitFactor(logged(factor, 20, `log ${factor} ${log}`));
    if (interval[0] <= factor && factor <= interval[1]) held++;
  }
  expect(held).toBeGreaterThanOrEqual(88);
  const many = ownWaitFactor(logged(factor, 300, `many ${factor}`));
  expect(many.estimate / factor).toBeGreaterThan(0.9);
  expect(many.estimate / factor).toBeLessThan(1.1);
});

test("few coats, or all of one kind, are not enough to be used", () => {
  const { coats, ofEachKind } = enoughCoats;
  expect(ownWaitFactor([]).enough).toBe(false);
  expect(ownWaitFactor(Array.from({ length: 30 }, () => wait(2, true))).enough).toBe(false);
  const good = Array.from({ length: coats - ofEachKind }, () => wait(2, true));
  const bad = Array.from({ length: ofEachKind }, () => wait(0.5, false));
  expect(ownWaitFactor([...good, ...bad]).enough).toBe(true);
  expect(ownWaitFactor([...good, ...bad.slice(1)]).enough).toBe(false);
});

test("a wait of nothing is refused", () => {
  expect(() => ownWaitFactor([wait(0, false)])).toThrow(/not-a-number/);
});

test("coats that whiten with room to spare raise the margin; a log without one says only that it is low enough", () => {
  const clear = [1, 2, 3, 4, 5].map((margin) => ({ margin, whitened: false }));
  const white = [0, 1].map((margin) => ({ margin, whitened: true }));
  const found = ownWhiteningMargin([...clear, ...white]);
  expect(found.enough).toBe(true);
  expect(found.estimate).toBeGreaterThan(0.3);
  expect(found.estimate).toBeLessThan(2);
  const all = ownWhiteningMargin(clear);
  expect([all.enough, all.bad]).toEqual([false, 0]);
  expect(all.estimate).toBeLessThan(0);
});
