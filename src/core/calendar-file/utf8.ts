/**
 * The bytes of a text in UTF-8.
 *
 * @param text  any text
 * @returns     its bytes, n
 * @throws DomainError never: half a surrogate pair becomes the replacement character
 *
 * Valid:  any text
 * Source: RFC 3629, section 3
 */
export function bytesOfText(text: string): Uint8Array {
  const out: number[] = [];
  for (const character of text) {
    const given = character.codePointAt(0) as number;
    const c = given >= 0xd800 && given <= 0xdfff ? 0xfffd : given;
    if (c < 0x80) out.push(c);
    else if (c < 0x800) out.push(0xc0 | (c >> 6), 0x80 | (c & 63));
    else if (c < 0x10000) out.push(0xe0 | (c >> 12), 0x80 | ((c >> 6) & 63), 0x80 | (c & 63));
    else out.push(0xf0 | (c >> 18), 0x80 | ((c >> 12) & 63), 0x80 | ((c >> 6) & 63), 0x80 | (c & 63));
  }
  return Uint8Array.from(out);
}

/** Length of the sequence that a first byte opens, and the least code point that needs so many. */
function sequence(first: number): readonly [number, number] | undefined {
  if (first < 0x80) return [1, 0];
  if (first >= 0xc2 && first < 0xe0) return [2, 0x80];
  if (first >= 0xe0 && first < 0xf0) return [3, 0x800];
  return first >= 0xf0 && first < 0xf5 ? [4, 0x10000] : undefined;
}

/**
 * The text of bytes in UTF-8.
 *
 * @param bytes  n bytes
 * @returns      the text; undefined where the bytes are not UTF-8
 * @throws DomainError never
 *
 * Valid:  any bytes
 * Source: RFC 3629, section 4
 */
export function textOfBytes(bytes: Uint8Array): string | undefined {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; ) {
    const first = bytes[at] as number;
    const kind = sequence(first);
    if (kind === undefined) return undefined;
    const [length, least] = kind;
    let code = length === 1 ? first : first & (0xff >> (length + 1));
    for (let k = 1; k < length; k++) {
      const next = bytes[at + k];
      if (next === undefined || (next & 0xc0) !== 0x80) return undefined;
      code = (code << 6) | (next & 63);
    }
    if (code < least || code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff)) return undefined;
    parts.push(String.fromCodePoint(code));
    at += length;
  }
  return parts.join("");
}
