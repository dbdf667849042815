import { DomainError } from "../domain-error.ts";

/** Something that a view reads: its number goes up when it changes. */
export interface Source {
  current(): number;
}

interface Memo {
  value: unknown;
  changedAt: number;
  checkedAt: number;
  reads: ReadonlyMap<Source, number>;
  running: boolean;
}

/**
 * Remembers derived values with what each of them read. A value is computed again only when something it read has changed;
 * a value that comes out the same as before leaves those that read it alone.
 */
export class Tracking {
  readonly #frames: Map<Source, number>[] = [];
  readonly #memos = new Map<string, Memo & Source>();

  /** Notes that the value being computed, if any, reads `source`. */
  read(source: () => Source): void {
    const frame = this.#frames.at(-1);
    if (frame === undefined) return;
    const it = source();
    if (!frame.has(it)) frame.set(it, it.current());
  }

  /** The value under `key` at `version`, computed if it must be. */
  derive<T>(key: string, version: () => number, compute: () => T): T {
    let memo = this.#memos.get(key);
    if (memo === undefined) {
      memo = this.#newMemo(version, compute);
      this.#memos.set(key, memo);
    }
    const it = memo;
    this.#refresh(it, version(), compute, key);
    this.read(() => it);
    return it.value as T; // a key stands for one computation, so the type is that of its first value
  }

  #newMemo(version: () => number, compute: () => unknown): Memo & Source {
    const memo = { value: undefined, changedAt: 0, checkedAt: -1, reads: new Map(), running: false };
    return Object.assign(memo, {
      current: () => {
        this.#refresh(memo, version(), compute, "");
        return memo.changedAt;
      },
    });
  }

  #refresh(memo: Memo, version: number, compute: () => unknown, key: string): void {
    if (memo.running) {
      const because = "It is derived from itself: the entries' links form a ring.";
      throw new DomainError({ code: "contradiction", field: "derive", value: key, because });
    }
    if (memo.checkedAt === version) return;
    if (memo.checkedAt >= 0 && this.#unchanged(memo)) {
      memo.checkedAt = version;
      return;
    }
    const reads = new Map<Source, number>();
    this.#frames.push(reads);
    memo.running = true;
    try {
      const value = compute();
      if (memo.checkedAt < 0 || !Object.is(value, memo.value)) memo.changedAt = version;
      memo.value = value;
      memo.reads = reads;
      memo.checkedAt = version;
    } finally {
      memo.running = false;
      this.#frames.pop();
    }
  }

  /** Looks in the order of reading: what came later was perhaps only read because of what came before. */
  #unchanged(memo: Memo): boolean {
    memo.running = true;
    try {
      for (const [source, seen] of memo.reads) if (source.current() !== seen) return false;
      return true;
    } finally {
      memo.running = false;
    }
  }
}
