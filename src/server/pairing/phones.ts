import { randomBytes, randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { sha256Hex } from "./authority.ts";
import { writePrivately } from "./shop.ts";

/** A phone, or any other device, that was let in. */
export interface Phone {
  readonly id: string;
  readonly name: string;
  /** The device's own id, by which the same one is known again. */
  readonly device: string;
  readonly letInAt: string;
  /** Over a line that others cannot read, or over plain HTTP. */
  readonly secure: boolean;
  /** Since when it is not let in any more. */
  readonly revokedAt?: string;
}

interface Code {
  readonly sha256: string;
  readonly until: string;
  readonly spentAt?: string;
}

interface Listed {
  readonly codes: readonly Code[];
  readonly phones: readonly (Phone & { readonly tokenSha256: string })[];
}

export type WhyNot = "code-unknown" | "code-spent" | "code-too-old";

/** How long a code lets in. */
export const codeMinutes = 10;

export const phonesFile = (data: string): string => join(data, "pairing", "phones.json");

/**
 * The list of phones that are let in, in one small file that its owner alone can read. Codes and tokens are kept as
 * hashes: whoever sees the file cannot come in by it. It is read anew at each question, since the command line writes it too.
 */
export class Phones {
  readonly #path: string;
  readonly #now: () => Date;
  constructor(data: string, now: () => Date) {
    this.#path = phonesFile(data);
    this.#now = now;
  }

  list(): readonly Phone[] {
    return this.#read().phones.map(({ tokenSha256: _, ...phone }) => phone);
  }

  /** A new code, good once and for a short while. */
  newCode(): { readonly code: string; readonly until: string } {
    const code = randomBytes(16).toString("base64url");
    const until = new Date(this.#now().getTime() + codeMinutes * 60_000).toISOString();
    const { codes, phones } = this.#read();
    const now = this.#now().toISOString();
    // Spent and old ones are remembered for a day, so that their second use can be told from a guess.
    const recent = codes.filter((one) => Date.parse(one.until) > Date.parse(now) - 86_400_000);
    this.#write({ codes: [...recent, { sha256: sha256Hex(code), until }], phones });
    return { code, until };
  }

  /** Lets a phone in for a code; the same device again takes its old place, so that none is listed twice. */
  letIn(
    code: string,
    who: Pick<Phone, "name" | "device" | "secure">,
  ): { readonly phone: Phone; readonly token: string } | WhyNot {
    const { codes, phones } = this.#read();
    const now = this.#now().toISOString();
    const found = codes.find((one) => one.sha256 === sha256Hex(code));
    if (found === undefined) return "code-unknown";
    if (found.spentAt !== undefined) return "code-spent";
    if (found.until < now) return "code-too-old";
    const token = randomBytes(32).toString("base64url");
    const before = phones.find((one) => one.device === who.device);
    const phone = { id: before?.id ?? randomUUID(), ...who, letInAt: now };
    this.#write({
      codes: codes.map((one) => (one === found ? { ...one, spentAt: now } : one)),
      phones: [...phones.filter((one) => one !== before), { ...phone, tokenSha256: sha256Hex(token) }],
    });
    return { phone, token };
  }

  /** The phone that a token belongs to, while it is let in. */
  of(token: string | undefined): Phone | undefined {
    if (token === undefined) return undefined;
    const sha256 = sha256Hex(token);
    return this.#read().phones.find((one) => one.tokenSha256 === sha256 && one.revokedAt === undefined);
  }

  /** Lets a phone in no longer; false when there is none of this id. */
  revoke(id: string): boolean {
    const { codes, phones } = this.#read();
    const revokedAt = this.#now().toISOString();
    if (!phones.some((one) => one.id === id)) return false;
    this.#write({
      codes,
      phones: phones.map((one) => (one.id === id ? { ...one, revokedAt: one.revokedAt ?? revokedAt } : one)),
    });
    return true;
  }

  #read(): Listed {
    if (!existsSync(this.#path)) return { codes: [], phones: [] };
    return JSON.parse(readFileSync(this.#path, "utf8"));
  }

  #write(listed: Listed): void {
    mkdirSync(dirname(this.#path), { recursive: true, mode: 0o700 });
    writePrivately(this.#path, `${JSON.stringify(listed, null, 2)}\n`);
  }
}
