import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { type Around, Pen, typed } from "../demo/pen.ts";
import type { Body } from "../notebook/kinds/all.ts";
import { jarSetups } from "./coat-setup.ts";
import { logQuestions, ownFrom, waitAnswer, waitQuestion } from "./wait-question.ts";

const minute = (m: number): string => new Date(Date.UTC(2026, 9, 1, 17, 0) + m * 6e4).toISOString();
type Layer = Body<"layer-applied">;

/** A shop at 21 °C and 50 %, a jar of 2 lb and a board of a tenth of a square metre. */
function shop() {
  const pen = new Pen("waits", "Europe/Berlin");
  const spirit = pen.write(minute(-300), "material-bought", {
    form: "solvent",
    name: "ethanol",
    solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  });
  const jar = pen.write(
    minute(-200),
    "batch-mixed",
    {
      code: "J",
      resins: [{ name: "flakes", amount: typed("240 g", "mass") }],
      solvents: [{ material: spirit, amount: typed("1 l", "volume") }],
    },
    { about: [spirit] },
  );
  const board = (name: string) =>
    pen.write(minute(-100), "board-cut", { name, wood: "ash", plank: "P", lengthMm: 500, widthMm: 200 });
  const readAir = (at = -10, percent = 50, wood = "21 °C") =>
    pen.write(minute(at), "air-read", {
      temperature: typed("21 °C", "temperature"),
      relativeHumidity: typed(`${percent} %`, "fraction"),
      wood: typed(wood, "temperature"),
    });
  const coat = (at: number, on: string, more: Partial<Layer> = {}, around: Around = {}) =>
    pen.write(
      minute(at),
      "layer-applied",
      { sort: "coat", targets: [{ board: on }], from: [{ batch: jar }], method: "brush", ...more },
      { about: [on, jar], ...around },
    );
  const ask = (layer: string, on: string) => {
    const entry = pen.book.entry(layer);
    if (entry === undefined) throw new Error("the layer was written");
    return waitQuestion(pen.book, entry, { board: on });
  };
  return { pen, jar, board, readAir, coat, ask };
}

test("without a reading of the air, common practice is shown and why the model is silent", () => {
  const { board, coat, ask } = shop();
  const b = board("B");
  const answer = waitAnswer(ask(coat(0, b), b), null);
  expect(answer).toMatchObject({
    shown: "common practice",
    seconds: 7200,
    model: null,
    why: "no-air-reading",
  });
  expect(answer.common).toMatchObject({ known: "common practice", setByHand: false });
});

// Common practice at 21 °C and 50 %: 1–3 h between brushed coats.
test("with the air read, the model is shown beside common practice; a later coat waits longer over the film beneath", () => {
  const { board, readAir, coat, ask } = shop();
  readAir();
  const b = board("B");
  const layers = [0, 100, 200].map((at) => coat(at, b));
  const [first, , third] = layers.map((layer) => waitAnswer(ask(layer, b), null));
  expect(first).toMatchObject({ shown: "model", common: { seconds: 7200 }, why: null });
  expect(first?.seconds ?? 0).toBeGreaterThan(3600);
  expect(first?.seconds ?? 0).toBeLessThan(3 * 3600);
  expect(third?.seconds ?? 0).toBeGreaterThan(1.2 * (first?.seconds ?? 0));
});

test("a wait that the person set stands before both", () => {
  const { pen, board, readAir, coat, ask } = shop();
  readAir();
  const b = board("B");
  const layer = coat(0, b);
  pen.write(minute(1), "default-changed", { name: "wait-after-brushing-minutes", value: 45 });
  const answer = waitAnswer(ask(layer, b), null);
  expect(answer).toMatchObject({ shown: "set by hand", seconds: 2700 });
  expect(answer.model).toBeGreaterThan(3600);
});

test("what keeps the model silent is said: another liquid, a part without a name, air that nobody works in", () => {
  const { board, readAir, coat, ask, pen } = shop();
  readAir(-10, 50, "-5 °C");
  const b = board("B");
  const why = (more: Partial<Layer>): string | null => waitAnswer(ask(coat(0, b, more), b), null).why;
  expect(why({})).toBe("air-out-of-range");
  expect(why({ from: [{ name: "a varnish" }] })).toBe("jar-not-known");
  const nameless = pen.write(minute(-50), "batch-mixed", {
    code: "N",
    resins: [{ name: "flakes", amount: typed("24 g", "mass") }],
    solvents: [{ name: "thinner", amount: typed("80 g", "mass") }],
  });
  expect(why({ from: [{ batch: nameless }] })).toBe("part-without-a-name");
});

/** Twelve boards of two coats: a second one after each of these parts of the model's wait. */
function loggedShop(wentAt: (part: number) => Layer["went"]) {
  const { pen, board, readAir, coat, ask, jar } = shop();
  readAir();
  const b = board("measure");
  const model = waitAnswer(ask(coat(0, b), b), null).model ?? 0;
  [0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.6, 3].forEach((part, i) => {
    const on = board(`B${i}`);
    coat(0, on);
    coat((part * model) / 60, on, { went: wentAt(part) ?? "well" });
  });
  return { pen, ask, coat, board, jar, model };
}

test("a log of coats that dragged early and went well late gives the person's own factor, and then it is used", () => {
  const { pen, ask, coat, board } = loggedShop((part) => (part < 1.5 ? "dragged" : "well"));
  const questions = logQuestions(pen.book);
  expect(questions.waits).toHaveLength(12);
  const { wait } = ownFrom(questions);
  expect(wait).toMatchObject({ coats: 12, bad: 6, enough: true });
  expect(wait.interval[0]).toBeLessThan(1.5);
  expect(wait.interval[1]).toBeGreaterThan(1.5);
  expectNear(wait.estimate, 1.5, { relative: 0.1 });
  const b = board("next");
  const answer = waitAnswer(ask(coat(1, b), b), wait);
  expect(answer.shown).toBe("own log");
  expectNear(answer.seconds, (answer.model ?? 0) * wait.estimate, { relative: 1e-12 });
});

test("a remembered coat tells nothing of waits, neither after it nor before; without its hour it has no air either", () => {
  const { pen, board, readAir, coat, ask } = shop();
  readAir();
  const [before, after, neither] = [board("B1"), board("B2"), board("B3")];
  coat(0, before, {}, { remembered: true });
  coat(60, before, { went: "dragged" });
  coat(0, after);
  const about = coat(60, after, { went: "dragged" }, { remembered: true, happenedKnownTo: "hour" });
  coat(0, neither);
  coat(60, neither, { went: "dragged" });
  expect(logQuestions(pen.book).waits).toHaveLength(1);
  expect(waitAnswer(ask(about, after), null).why).toBeNull();
  const day = coat(180, after, {}, { remembered: true, happenedKnownTo: "day" });
  expect(waitAnswer(ask(day, after), null)).toMatchObject({
    shown: "common practice",
    why: "time-not-known",
  });
});

test("a log without a single bad coat is told and not used", () => {
  const { pen } = loggedShop(() => "well");
  const { wait, whitening } = ownFrom(logQuestions(pen.book));
  expect([wait.enough, whitening.enough]).toEqual([false, false]);
  expect([wait.bad, whitening.bad, whitening.coats]).toEqual([0, 0, 12]);
});

test("whitened coats are kept out of the waits, and move the margin", () => {
  const { pen } = loggedShop((part) => (part < 1 ? "whitened" : "well"));
  const questions = logQuestions(pen.book);
  expect(questions.waits).toHaveLength(9);
  const { whitening } = ownFrom(questions);
  expect(whitening).toMatchObject({ bad: 3, enough: true });
});

test("a coat to come: a jar in the last air, over bare wood or a film", () => {
  const { pen, jar } = shop();
  const air = { temperature: 294.15, relativeHumidity: 0.5, wood: 290.15 };
  const { setups } = jarSetups(pen.book, jar, "pad", air, 20e-6);
  expect(setups?.[0]).toMatchObject({ liquidTemperature: 290.15, applied: { beneath: 20e-6 } });
  expectNear((setups?.[0]?.applied.thickness ?? 0) * 1e6, 28.5, { relative: 1e-9 });
  expect(jarSetups(pen.book, "nothing", "pad", air).why).toBe("jar-not-known");
});
