import { type Fetch, OutOfReach } from "../book-store/api.ts";
import { hasHouse } from "../has-house.ts";
import { siteAddress } from "../router.ts";

/** Where this page stands: who it is to the house, over what line, and where the secure door is. */
export interface Door {
  readonly asker: "this-machine" | "phone" | "nobody";
  readonly secure: boolean;
  readonly secureAddress: string | null;
  readonly fingerprint: string | null;
}

export interface PhoneTold {
  readonly id: string;
  readonly name: string;
  readonly letInAt: string;
  readonly secure: boolean;
  readonly revokedAt?: string;
}

export interface Invitation {
  readonly until: string;
  readonly addresses: readonly string[];
}

/** An answer that says no, in words for the person. */
export class SaidNo extends Error {
  override readonly name = "SaidNo";
  readonly status: number;
  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

/** The house's list of who is let in, over HTTP. */
export class PairingApi {
  readonly #fetch: Fetch;
  constructor(fetch: Fetch) {
    this.#fetch = fetch;
  }

  door(): Promise<Door> {
    return this.#ask("/door");
  }

  list(): Promise<{ readonly paired: boolean; readonly phones: readonly PhoneTold[] }> {
    return this.#ask("");
  }

  invite(): Promise<Invitation> {
    return this.#ask("/codes", "POST");
  }

  async revoke(id: string): Promise<void> {
    await this.#ask(`/${id}`, "DELETE");
  }

  letIn(asked: { readonly code: string; readonly name: string; readonly device: string }): Promise<unknown> {
    return this.#ask("/let-in", "POST", asked);
  }

  async #ask<T>(path: string, method = "GET", body?: unknown): Promise<T> {
    let response: Response;
    try {
      response = await this.#fetch(`/api/phones${path}`, {
        method,
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
    } catch (error) {
      if (error instanceof TypeError) throw new OutOfReach(error.message);
      throw error;
    }
    const text = await response.text();
    if (response.ok) return (text === "" ? undefined : JSON.parse(text)) as T;
    throw new SaidNo(response.status, messageIn(text) ?? `${response.status} ${response.statusText}`);
  }
}

function messageIn(text: string): string | undefined {
  try {
    return (JSON.parse(text) as { message?: string }).message;
  } catch {
    return undefined; // not from Lacbench itself: the status is all there is to say
  }
}

export const pairingApi = new PairingApi((path, init) => fetch(path, init));

/**
 * Where a phone opens what this page shows: a code that was printed at the computer itself must not name the computer's
 * own address, under which a phone would find only itself. Out of reach it is where this page came from.
 */
export async function addressForPhones(): Promise<string> {
  if (!hasHouse) return addressHere;
  try {
    return (await pairingApi.door()).secureAddress ?? addressHere;
  } catch (error) {
    if (error instanceof OutOfReach || error instanceof SaidNo) return addressHere;
    throw error;
  }
}

/** Where these pages came from; the path of a page goes behind it. */
export const addressHere = location.origin + siteAddress("/").slice(0, -1);
