/**
 * The exact text of one member of a JSON object, so that what lies in it passes through unchanged. The object was
 * read by `JSON.parse` before, so this only finds where the member begins and ends.
 */
export function jsonMemberText(text: string, name: string): string | undefined {
  let at = skipSpace(text, text.indexOf("{") + 1);
  while (at < text.length && text[at] === '"') {
    const keyEnd = endOfValue(text, at);
    const key = JSON.parse(text.slice(at, keyEnd)) as string;
    const start = skipSpace(text, text.indexOf(":", keyEnd) + 1);
    const end = endOfValue(text, start);
    if (key === name) return text.slice(start, end);
    at = skipSpace(text, skipSpace(text, end) + 1);
  }
  return undefined;
}

function skipSpace(text: string, from: number): number {
  let at = from;
  while (/\s/.test(text[at] ?? "")) at++;
  return at;
}

/** The place after the value that begins at `from`. */
function endOfValue(text: string, from: number): number {
  let depth = 0;
  let at = from;
  for (; at < text.length; at++) {
    const c = text[at] as string;
    if (c === '"') {
      at++;
      while (text[at] !== '"') at += text[at] === "\\" ? 2 : 1;
    } else if (c === "{" || c === "[") depth++;
    else if (c === "}" || c === "]") depth--;
    else if (depth > 0 || !/[,\s]/.test(c)) continue;
    else return at;
    if (depth < 0) return at;
    if (depth === 0) return at + 1;
  }
  return at;
}
