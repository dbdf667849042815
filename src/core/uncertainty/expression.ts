import { DomainError } from "../domain-error.ts";

/** A formula that was read from text. */
export interface Expression {
  /** Its variables, in the order in which they first stand in it. */
  readonly names: readonly string[];
  /** @param values  one for each of `names` */
  readonly value: (values: readonly number[]) => number;
  /** The partial derivatives by each of `names`, exact but for rounding. */
  readonly gradient: (values: readonly number[]) => readonly number[];
}

type Values = readonly number[];
/** A part of a formula: its value, and its derivative by the i-th variable. */
interface Part {
  readonly at: (v: Values) => number;
  readonly by: (v: Values, i: number) => number;
}

const constant = (x: number): Part => ({ at: () => x, by: () => 0 });
const variable = (index: number): Part => ({
  at: (v) => v[index] as number,
  by: (_, i) => (i === index ? 1 : 0),
});

const operations: Readonly<Record<string, (a: Part, b: Part) => Part>> = {
  "+": (a, b) => ({ at: (v) => a.at(v) + b.at(v), by: (v, i) => a.by(v, i) + b.by(v, i) }),
  "-": (a, b) => ({ at: (v) => a.at(v) - b.at(v), by: (v, i) => a.by(v, i) - b.by(v, i) }),
  "*": (a, b) => ({
    at: (v) => a.at(v) * b.at(v),
    by: (v, i) => a.by(v, i) * b.at(v) + a.at(v) * b.by(v, i),
  }),
  "/": (a, b) => ({
    at: (v) => a.at(v) / b.at(v),
    by: (v, i) => (a.by(v, i) - (a.at(v) / b.at(v)) * b.by(v, i)) / b.at(v),
  }),
  "^": (a, b) => ({
    at: (v) => a.at(v) ** b.at(v),
    by: (v, i) => slopeOfPower(a.at(v), b.at(v), a.by(v, i), b.by(v, i)),
  }),
};

/** Where the exponent does not vary, no logarithm is taken: the base may be negative or zero. */
const slopeOfPower = (a: number, b: number, da: number, db: number): number =>
  (da === 0 ? 0 : b * a ** (b - 1) * da) + (db === 0 ? 0 : a ** b * Math.log(a) * db);

const functions: Readonly<
  Record<string, { readonly at: (x: number) => number; readonly slope: (x: number) => number }>
> = {
  exp: { at: Math.exp, slope: Math.exp },
  cos: { at: Math.cos, slope: (x) => -Math.sin(x) },
  sin: { at: Math.sin, slope: Math.cos },
};

const applied = (name: string, of: Part): Part => {
  const { at, slope } = functions[name] as (typeof functions)[string];
  return { at: (v) => at(of.at(v)), by: (v, i) => slope(of.at(v)) * of.by(v, i) };
};
const negated = (of: Part): Part => ({ at: (v) => -of.at(v), by: (v, i) => -of.by(v, i) });

const token = /\s*(?:(\d+\.?\d*(?:[eE][+-]?\d+)?|\.\d+(?:[eE][+-]?\d+)?)|([A-Za-z_]\w*)|([-+*/^()]))/y;

interface Token {
  readonly kind: "number" | "name" | "sign" | "end";
  readonly text: string;
  readonly at: number;
}

function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  const reader = new RegExp(token);
  for (let at = 0; at < text.trimEnd().length; at = reader.lastIndex) {
    reader.lastIndex = at;
    const [, number, name, sign] = reader.exec(text) ?? [];
    if (number !== undefined) tokens.push({ kind: "number", text: number, at });
    else if (name !== undefined) tokens.push({ kind: "name", text: name, at });
    else if (sign !== undefined) tokens.push({ kind: "sign", text: sign, at });
    else throw unreadable(text, at);
  }
  return [...tokens, { kind: "end", text: "", at: text.length }];
}

const unreadable = (text: string, at: number): DomainError =>
  new DomainError({
    code: "wrong-type",
    field: "expression",
    value: text,
    because: `It cannot be read from character ${at + 1} on: numbers, names, + - * / ^, exp, cos, sin and brackets would do.`,
  });

/** Recursive descent; a level for sums, products, signs and powers, from loosest to tightest. */
class Reader {
  readonly names: string[] = [];
  readonly #text: string;
  readonly #tokens: readonly Token[];
  #next = 0;
  constructor(text: string) {
    this.#text = text;
    this.#tokens = tokensOf(text);
  }

  whole(): Part {
    const part = this.#sum();
    if (this.#token.kind !== "end") throw this.#refusal();
    return part;
  }

  get #token(): Token {
    return this.#tokens[this.#next] as Token; // the end is never passed
  }
  #refusal(): DomainError {
    return unreadable(this.#text, this.#token.at);
  }
  #take(...signs: readonly string[]): string | undefined {
    const { kind, text } = this.#token;
    if (kind !== "sign" || !signs.includes(text)) return undefined;
    this.#next++;
    return text;
  }

  #chain(signs: readonly string[], inner: () => Part): Part {
    let part = inner();
    for (let sign = this.#take(...signs); sign !== undefined; sign = this.#take(...signs))
      part = (operations[sign] as (a: Part, b: Part) => Part)(part, inner());
    return part;
  }
  #sum(): Part {
    return this.#chain(["+", "-"], () => this.#product());
  }
  #product(): Part {
    return this.#chain(["*", "/"], () => this.#signed());
  }
  /** A sign binds less than a power: −2^2 is −4. */
  #signed(): Part {
    if (this.#take("-") !== undefined) return negated(this.#signed());
    const base = this.#atom();
    if (this.#take("^") === undefined) return base;
    return (operations["^"] as (a: Part, b: Part) => Part)(base, this.#signed());
  }
  #atom(): Part {
    const { kind, text } = this.#token;
    if (kind === "number" || kind === "name") this.#next++;
    if (kind === "number") return constant(Number(text));
    if (kind === "name")
      return Object.hasOwn(functions, text) ? applied(text, this.#bracket()) : this.#variable(text);
    return this.#bracket();
  }
  #bracket(): Part {
    if (this.#take("(") === undefined) throw this.#refusal();
    const part = this.#sum();
    if (this.#take(")") === undefined) throw this.#refusal();
    return part;
  }
  #variable(name: string): Part {
    const known = this.names.indexOf(name);
    if (known >= 0) return variable(known);
    return variable(this.names.push(name) - 1);
  }
}

/**
 * Reads a formula from text.
 *
 * Numbers, names, `+ - * /`, `^` (from the right, tighter than a sign), `exp`, `cos`, `sin` and brackets.
 *
 * @param text  the formula
 * @returns     its names, its value and its gradient as functions of the names' values
 * @throws DomainError for text that cannot be read, saying where
 * @example
 * readExpression("2*x^2 - exp(-y)").value([3, 0]) // => 17
 */
export function readExpression(text: string): Expression {
  const reader = new Reader(text);
  const part = reader.whole();
  const { names } = reader;
  return { names, value: part.at, gradient: (values) => names.map((_, i) => part.by(values, i)) };
}
