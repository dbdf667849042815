/** Walks valid JSON text and spells each value in one way. */
class Speller {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  value(): string {
    this.#skipSpace();
    const first = this.#text[this.#at];
    if (first === "{") return this.#object();
    if (first === "[") return this.#array();
    if (first === '"') return this.#string();
    const start = this.#at;
    while (/[-+.\w]/.test(this.#text[this.#at] ?? "")) this.#at++;
    const word = this.#text.slice(start, this.#at);
    return /^-?\d/.test(word) ? exactDecimal(word) : word;
  }

  #skipSpace(): void {
    while (" \n\r\t".includes(this.#text[this.#at] ?? "end")) this.#at++;
  }

  #string(): string {
    const start = this.#at++;
    while (this.#text[this.#at] !== '"') this.#at += this.#text[this.#at] === "\\" ? 2 : 1;
    return JSON.stringify(JSON.parse(this.#text.slice(start, ++this.#at)));
  }

  /** Steps over the bracket that opens, the commas and the one that closes. */
  #each(close: string, item: () => void): void {
    this.#at++;
    for (this.#skipSpace(); this.#text[this.#at] !== close; this.#skipSpace()) {
      item();
      this.#skipSpace();
      if (this.#text[this.#at] === ",") this.#at++;
    }
    this.#at++;
  }

  #object(): string {
    const fields = new Map<string, string>();
    this.#each("}", () => {
      const key = this.#string();
      this.#skipSpace();
      this.#at++; // the colon
      fields.set(key, this.value());
    });
    const keys = [...fields.keys()].sort();
    return `{${keys.map((key) => `${key}:${fields.get(key)}`).join(",")}}`;
  }

  #array(): string {
    const items: string[] = [];
    this.#each("]", () => items.push(this.value()));
    return `[${items.join(",")}]`;
  }
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
export const canonicalJson = (text: string): string => new Speller(text).value();

/** Whether two JSON texts say the same, however they are laid out and their numbers spelt. */
export const sameJson = (a: string, b: string): boolean => a === b || canonicalJson(a) === canonicalJson(b);
