import { splitJsonArray } from "../../core/notebook/json-text.ts";
import { jsonMemberText } from "./json-member.ts";

export interface NotebookTold {
  readonly id: string;
  readonly name?: string;
  readonly invented?: boolean;
  readonly entries?: number;
}

export interface SendAnswer {
  readonly accepted: readonly string[];
  readonly refused: readonly {
    readonly id: string | null;
    readonly code: string;
    readonly message: string;
  }[];
}

export interface Arrivals {
  readonly texts: readonly string[];
  readonly cursor: string | null;
}

/** The house answered, and said no. Trying again as it is would get the same answer. */
export class Refused extends Error {
  override readonly name = "Refused";
  readonly status: number;
  readonly code: string;
  constructor(status: number, code: string, message: string) {
    super(message);
    this.status = status;
    this.code = code;
  }
}

/** The house does not answer, or not now. Trying again later may do. */
export class OutOfReach extends Error {
  override readonly name: string = "OutOfReach";
}

/** The house answers, and this device is not let in, or no longer. What is written waits here until it is. */
export class NotLetIn extends OutOfReach {
  override readonly name = "NotLetIn";
}

/** Answers about what was sent. Any other (busy, not signed in, another host) says nothing against the entries. */
const aboutTheEntries = new Set([400, 404, 409, 410, 413, 422]);

/** A house that has gone out of reach in the middle of a question may never say so: then the browser would wait for minutes. */
const usualPatienceMs = 30_000;

export type Fetch = (path: string, init?: RequestInit) => Promise<Response>;

/** The notebook's house over HTTP. Texts go and come exactly as they were written. */
export class NotebookApi {
  readonly #fetch: Fetch;
  readonly #patienceMs: number;
  constructor(fetch: Fetch, patienceMs = usualPatienceMs) {
    this.#fetch = fetch;
    this.#patienceMs = patienceMs;
  }

  async notebooks(): Promise<readonly NotebookTold[]> {
    const text = await this.#ask("/api/notebooks");
    const read: unknown = JSON.parse(text);
    const list = Array.isArray(read) ? read : (read as { notebooks?: unknown }).notebooks;
    return Array.isArray(list) ? (list as NotebookTold[]) : [];
  }

  async send(notebook: string, texts: readonly string[]): Promise<SendAnswer> {
    const text = await this.#ask(`/api/notebooks/${notebook}/entries`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: `[${texts.join(",")}]`,
    });
    return JSON.parse(text) as SendAnswer;
  }

  async arrivals(notebook: string, after: string | null, limit: number): Promise<Arrivals> {
    const query = new URLSearchParams({ limit: String(limit), ...(after === null ? {} : { after }) });
    const text = await this.#ask(`/api/notebooks/${notebook}/entries?${query}`);
    const { cursor } = JSON.parse(text) as { cursor?: string | number | null };
    const texts = splitJsonArray(jsonMemberText(text, "entries") ?? "[]");
    if (!texts.ok) throw new OutOfReach(texts.error.message);
    return { texts: texts.value, cursor: cursor === undefined || cursor === null ? after : String(cursor) };
  }

  async #ask(path: string, init?: RequestInit): Promise<string> {
    let response: Response;
    let text: string;
    try {
      response = await this.#fetch(path, { ...init, signal: AbortSignal.timeout(this.#patienceMs) });
      text = await response.text();
    } catch (error) {
      if (error instanceof TypeError || error instanceof DOMException) throw new OutOfReach(error.message);
      throw error;
    }
    if (response.ok) return text;
    const { code, message } = problemIn(text);
    const said = message ?? `${response.status} ${response.statusText}`;
    if (aboutTheEntries.has(response.status)) throw new Refused(response.status, code, said);
    if (response.status === 401) throw new NotLetIn(said);
    throw new OutOfReach(said);
  }
}

function problemIn(text: string): { readonly code: string; readonly message?: string } {
  try {
    const { code, message } = JSON.parse(text) as { code?: unknown; message?: unknown };
    return { code: String(code), ...(typeof message === "string" ? { message } : {}) };
  } catch (error) {
    if (error instanceof SyntaxError) return { code: "unreadable" };
    throw error;
  }
}
