import type { Report } from "./faults.ts";
import { textOfBytes } from "./utf8.ts";

const cr = 13;
const lf = 10;

/** The lines as they stand in the file, without their ends. */
function physicalLines(bytes: Uint8Array, report: Report): Uint8Array[] {
  const lines: Uint8Array[] = [];
  let start = 0;
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at];
    if (byte !== cr && byte !== lf) continue;
    const isEnd = byte === cr && bytes[at + 1] === lf;
    if (!isEnd) report("crlf");
    lines.push(bytes.subarray(start, at));
    if (isEnd) at++;
    start = at + 1;
  }
  if (start < bytes.length) {
    report("crlf");
    lines.push(bytes.subarray(start));
  }
  return lines;
}

const isFolded = (line: Uint8Array): boolean => line[0] === 32 || line[0] === 9;
const hasControl = (line: Uint8Array): boolean => line.some((b) => (b < 32 && b !== 9) || b === 127);

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, p) => sum + p.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** The text of one unfolded line; a character that is cut by a fold is reported. */
function lineText(parts: readonly Uint8Array[], report: Report): string {
  const whole = textOfBytes(joined(parts));
  if (whole === undefined) {
    report("utf8");
    return "";
  }
  if (parts.some((part) => textOfBytes(part) === undefined)) report("fold75");
  return whole;
}

/** Content lines, unfolded, with what is wrong with the bytes. RFC 5545, section 3.1. */
export function unfoldedLines(given: Uint8Array, report: Report): string[] {
  const hasMark = given[0] === 0xef && given[1] === 0xbb && given[2] === 0xbf;
  if (hasMark) report("utf8");
  const groups: Uint8Array[][] = [];
  for (const line of physicalLines(hasMark ? given.subarray(3) : given, report)) {
    if (line.length > 75) report("fold75");
    if (hasControl(line)) report("no-control");
    const group = groups.at(-1);
    if (isFolded(line) && group !== undefined) group.push(line.subarray(1));
    else groups.push([line]);
  }
  return groups.map((parts) => lineText(parts, report));
}
