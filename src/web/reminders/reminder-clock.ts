/** Something to be told of at its time. The key is that of what comes due, so that nothing is told twice. */
export interface Reminder {
  readonly key: string;
  readonly atMs: number;
  readonly says: string;
}

export interface ClockEffects {
  readonly nowMs: () => number;
  /** Calls `then` after so many milliseconds unless what it returned was called before. */
  readonly wait: (ms: number, then: () => void) => () => void;
  readonly show: (reminder: Reminder) => void;
}

/** Tells each reminder once, when its time comes; what was due before it was heard of is not told. */
export class ReminderClock {
  readonly #effects: ClockEffects;
  readonly #told = new Set<string>();
  #waiting: readonly Reminder[] = [];
  #cancel: () => void = () => undefined;

  constructor(effects: ClockEffects) {
    this.#effects = effects;
  }

  /** Takes the place of whatever was to be told before. */
  set(reminders: readonly Reminder[]): void {
    const now = this.#effects.nowMs();
    const overdue = this.#waiting.filter((one) => one.atMs <= now); // its timer is only late: a page asleep wakes so
    this.#waiting = reminders.filter((one) => one.atMs > now);
    for (const one of overdue) this.#tell(one);
    this.#windUp();
  }

  #tell(one: Reminder): void {
    const said = `${one.key} ${one.atMs}`;
    if (this.#told.has(said)) return;
    this.#told.add(said);
    this.#effects.show(one);
  }

  #windUp(): void {
    this.#cancel();
    const next = Math.min(...this.#waiting.map(({ atMs }) => atMs));
    if (!Number.isFinite(next)) return;
    const left = Math.max(0, next - this.#effects.nowMs());
    this.#cancel = this.#effects.wait(left, () => this.set(this.#waiting));
  }
}
