import { expect, test } from "vitest";
import { DomainError } from "../../domain-error.ts";
import { randomFromSeed } from "../../random.ts";
import { finiteField } from "./finite-field.ts";
import {
  isGraecoLatin,
  mutuallyOrthogonal,
  orthogonalFromFields,
  randomGraecoLatin,
} from "./graeco-latin.ts";
import { carryOverOrders, evenNeighbours, isLatinSquare, randomLatinSquare } from "./latin-square.ts";

const random = randomFromSeed("squares");

test.each([2, 3, 4, 5, 7, 8, 9, 16, 25, 27])("the field of %d elements keeps the laws of a field", (q) => {
  const { add, multiply } = finiteField(q);
  const all = Array.from({ length: q }, (_, x) => x);
  for (const a of all) {
    expect(new Set(all.map((b) => add(a, b))).size).toBe(q);
    if (a > 0) expect(new Set(all.map((b) => multiply(a, b))).size).toBe(q);
    expect([add(a, 0), multiply(a, 1), multiply(a, 0)]).toEqual([a, a, 0]);
    for (const b of all.slice(0, 6))
      for (const c of all.slice(0, 6))
        expect(multiply(a, add(b, c))).toBe(add(multiply(a, b), multiply(a, c)));
  }
});

test("no field has 6 elements", () => {
  expect(() => finiteField(6)).toThrow(DomainError);
});

test.each([1, 2, 3, 6, 7, 10, 13])("a drawn square of %d is Latin", (n) => {
  for (let i = 0; i < 5; i++) expect(isLatinSquare(randomLatinSquare(n, random))).toBe(true);
});

test("squares of order 4 are drawn evenly: 144 of the 576 have twelve small squares in them (McKay and others, 2007)", () => {
  const draws = 3000;
  let full = 0;
  for (let d = 0; d < draws; d++) {
    const square = randomLatinSquare(4, random);
    let small = 0;
    for (let a = 0; a < 4; a++)
      for (let b = a + 1; b < 4; b++)
        for (let x = 0; x < 4; x++)
          for (let y = x + 1; y < 4; y++)
            if (square[a]?.[x] === square[b]?.[y] && square[a]?.[y] === square[b]?.[x]) small++;
    if (small === 12) full++;
  }
  expect(Math.abs(full - draws / 4)).toBeLessThan(5 * Math.sqrt((draws * 3) / 16));
});

test("a broken square is not Latin", () => {
  expect(
    isLatinSquare([
      ["a", "b"],
      ["a", "b"],
    ]),
  ).toBe(false);
  expect(
    isLatinSquare([
      ["a", "b"],
      ["b", "c"],
    ]),
  ).toBe(false);
  expect(isLatinSquare([["a", "b"], ["b"]])).toBe(false);
});

test("Graeco-Latin squares of every order from 3 to 40 but for 6", () => {
  for (let n = 3; n <= 40; n++) {
    if (n === 6) continue;
    const [latin, greek] = randomGraecoLatin(n, random);
    expect([n, isGraecoLatin(latin, greek)]).toEqual([n, true]);
  }
});

test.each([2, 6])("of %d by that many there is none, and it is said", (n) => {
  expect(() => randomGraecoLatin(n, random)).toThrow(`No Graeco-Latin square of ${n} by ${n} exists`);
});

test("two squares that are the same are not Graeco-Latin", () => {
  const square = randomLatinSquare(5, random);
  expect(isGraecoLatin(square, square)).toBe(false);
});

test.each([3, 4, 5, 7, 8, 9, 12])("as many orthogonal squares of %d as are said, every two of them", (n) => {
  const { made } = mutuallyOrthogonal(n);
  const squares = orthogonalFromFields(n, made);
  expect(squares).toHaveLength(made);
  for (const [i, a] of squares.entries())
    for (const b of squares.slice(i + 1)) expect(isGraecoLatin(a, b)).toBe(true);
});

test("orders for judges: each turn once, each follower equally often", () => {
  for (let n = 2; n <= 12; n++) {
    const orders = carryOverOrders(n);
    expect(orders).toHaveLength(n % 2 === 0 ? n : 2 * n);
    expect(evenNeighbours(orders)).toBe(n % 2 === 0 ? 1 : 2);
    for (let turn = 0; turn < n; turn++) {
      const counts = orders.map((order) => order[turn]);
      expect(new Set(counts).size).toBe(n);
    }
  }
  expect(
    evenNeighbours([
      [1, 2, 3],
      [2, 3, 1],
      [3, 1, 2],
    ]),
  ).toBeNull();
});
