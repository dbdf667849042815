import { fail, ok, type Result } from "../result.ts";

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const sixBits = new Uint8Array(128).fill(255);
for (let i = 0; i < letters.length; i++) sixBits[letters.charCodeAt(i)] = i;

/**
 * Bytes as text, as RFC 4648 section 4 writes them: padded, without line breaks.
 *
 * @param bytes  n
 * @returns      base64, 4⌈n/3⌉ characters
 * @example
 * base64Of(new Uint8Array([102, 111, 111, 98])) // => 'Zm9vYg=='
 */
export function base64Of(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const four = [three >> 18, (three >> 12) & 63, (three >> 6) & 63, three & 63];
    const used = Math.min(bytes.length - i, 3) + 1;
    parts.push(four.map((value, at) => (at < used ? letters.charAt(value) : "=")).join(""));
  }
  return parts.join("");
}

/**
 * The bytes that a base64 text stands for.
 *
 * @param text  base64 with its padding and nothing besides, scalar
 * @returns     the bytes, n, or what is wrong with the text
 * @example
 * bytesOfBase64('Zg') // => { ok: false, error: 'not-base64' }
 */
export function bytesOfBase64(text: string): Result<Uint8Array, "not-base64"> {
  const padding = text.endsWith("==") ? 2 : text.endsWith("=") ? 1 : 0;
  const length = text.length - padding;
  if (text.length % 4 !== 0) return fail("not-base64");
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  let held = 0;
  for (let i = 0, at = 0; i < text.length; i++) {
    const value = i < length ? (sixBits[text.charCodeAt(i)] ?? 255) : 0;
    if (value === 255) return fail("not-base64");
    held = (held << 6) | value;
    if (i % 4 !== 3) continue;
    for (const shift of [16, 8, 0]) if (at < bytes.length) bytes[at++] = (held >> shift) & 255;
    held = 0;
  }
  return ok(bytes);
}
