/**
 * One spelling for each JSON value: keys in code-unit order, no white space, strings escaped one way, numbers as exact
 * decimals. Numbers are never read as floating point: 9007199254740993 and 9007199254740992 stay two numbers.
 * Of a key given twice the last counts, as when the text is parsed.
 *
 * @param text  valid JSON, nested no deeper than `deepestNesting`
 * @returns     the canonical spelling
 * @example
 * canonicalJson('{"b": 1.50e1, "a": "\\u0041"}') // => '{"a":"A","b":15e0}'
 */
export function canonicalJson(text: string): string {
  let at = 0;
  const skipSpace = (): void => {
    while (" \n\r\t".includes(text[at] ?? "x")) at++;
  };
  const stringText = (): string => {
    const start = at++;
    while (text[at] !== '"') at += text[at] === "\\" ? 2 : 1;
    return text.slice(start, ++at);
  };
  const list = (close: string, item: () => void): void => {
    at++;
    for (skipSpace(); text[at] !== close; skipSpace()) {
      item();
      skipSpace();
      if (text[at] === ",") at++;
    }
    at++;
  };
  const object = (): string => {
    const fields = new Map<string, string>();
    list("}", () => {
      const key = JSON.stringify(JSON.parse(stringText()));
      skipSpace();
      at++; // the colon
      fields.set(key, value());
    });
    const keys = [...fields.keys()].sort();
    return `{${keys.map((key) => `${key}:${fields.get(key)}`).join(",")}}`;
  };
  const array = (): string => {
    const items: string[] = [];
    list("]", () => items.push(value()));
    return `[${items.join(",")}]`;
  };
  const value = (): string => {
    skipSpace();
    const c = text[at];
    if (c === "{") return object();
    if (c === "[") return array();
    if (c === '"') return JSON.stringify(JSON.parse(stringText()));
    const start = at;
    while (/[-+.\w]/.test(text[at] ?? "")) at++;
    const word = text.slice(start, at);
    return /^-?\d/.test(word) ? exactDecimal(word) : word;
  };
  return value();
}

/** `digits e exponent` with neither leading nor trailing zeros among the digits; every zero is `0`. */
function exactDecimal(spelling: string): string {
  const [, sign = "", whole = "", fraction = "", exponent = "0"] =
    /^(-?)(\d+)(?:\.(\d+))?(?:[eE]([-+]?\d+))?$/.exec(spelling) ?? [];
  const digits = `${whole}${fraction}`.replace(/^0+/, "");
  const significant = digits.replace(/0+$/, "");
  if (significant === "") return "0";
  const power = BigInt(exponent) - BigInt(fraction.length) + BigInt(digits.length - significant.length);
  return `${sign}${significant}e${power}`;
}

/** Whether two JSON texts say the same, however they are laid out and their numbers spelt. */
export const sameJson = (a: string, b: string): boolean => a === b || canonicalJson(a) === canonicalJson(b);
