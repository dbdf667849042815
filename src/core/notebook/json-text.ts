import type { Problem } from "../registry/problem.ts";
import { readJson } from "../registry/read-json.ts";
import { fail, ok, type Result } from "../result.ts";

/** An entry nests a handful deep; a text nested beyond this is an attack on whoever walks it. */
export const deepestNesting = 64;

const quote = 0x22;
const backslash = 0x5c;
const comma = 0x2c;
const isOpening = (c: number): boolean => c === 0x7b || c === 0x5b;
const isClosing = (c: number): boolean => c === 0x7d || c === 0x5d;
const isSpace = (c: number): boolean => c === 0x20 || c === 0x0a || c === 0x0d || c === 0x09;

const unreadable = (because: string): Problem => ({
  code: "unreadable",
  field: "input",
  message: `The input cannot be read as a JSON list: ${because}.`,
  value: null,
  limits: null,
});
const tooDeep: Problem = {
  code: "too-deep",
  field: "input",
  message: `This is nested more than ${deepestNesting} deep. A flatter one would do.`,
  value: null,
  limits: { max: deepestNesting },
};

/** The place of the quote that ends the string begun at `start`, or the length of the text where none does. */
function endOfString(text: string, start: number): number {
  for (let end = text.indexOf('"', start + 1); end !== -1; end = text.indexOf('"', end + 1)) {
    let before = end;
    while (text.charCodeAt(before - 1) === backslash) before--;
    if ((end - before) % 2 === 0) return end;
  }
  return text.length;
}

function trimmed(text: string, from: number, to: number): string {
  let start = from;
  let end = to;
  while (start < end && isSpace(text.charCodeAt(start))) start++;
  while (end > start && isSpace(text.charCodeAt(end - 1))) end--;
  return text.slice(start, end);
}

/**
 * Reads one JSON value after a look at how deep it nests.
 *
 * @param text  JSON, scalar
 * @returns     the value, or the problem `unreadable` or `too-deep`
 * @example
 * readShallowJson('{"a": 1}') // => { ok: true, value: { a: 1 } }
 */
export function readShallowJson(text: string): Result<unknown, Problem> {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === quote) i = endOfString(text, i);
    else if (isOpening(c)) {
      if (++depth > deepestNesting) return fail(tooDeep);
    } else if (isClosing(c)) depth--;
  }
  return readJson(text);
}

/**
 * Cuts the text of a JSON array into the exact texts of its elements, so that number spellings, key order and fields
 * that nobody here knows pass through unchanged. An element is cut out, not judged: read each with `readShallowJson`.
 *
 * @param text  a JSON array, scalar
 * @returns     the texts of its elements without the white space around them, n
 * @example
 * splitJsonArray('[ {"a": 1.0}, 2 ]') // => { ok: true, value: ['{"a": 1.0}', '2'] }
 */
export function splitJsonArray(text: string): Result<readonly string[], Problem> {
  const whole = trimmed(text, 0, text.length);
  if (!whole.startsWith("[")) return fail(unreadable("a list in square brackets was expected"));
  const parts: string[] = [];
  let depth = 0;
  let start = 1;
  for (let i = 0; i < whole.length; i++) {
    const c = whole.charCodeAt(i);
    if (c === quote) i = endOfString(whole, i);
    else if (isOpening(c)) depth++;
    else if (c === comma && depth === 1) {
      parts.push(trimmed(whole, start, i));
      start = i + 1;
    } else if (isClosing(c) && --depth === 0) {
      const last = trimmed(whole, start, i);
      if (i !== whole.length - 1 || c !== 0x5d)
        return fail(unreadable("something follows the end of the list"));
      if (last !== "" || parts.length > 0) parts.push(last);
      return parts.includes("") ? fail(unreadable("an element of the list is empty")) : ok(parts);
    }
  }
  return fail(unreadable("the list has no end"));
}
