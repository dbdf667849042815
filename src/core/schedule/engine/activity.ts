const decay = 0.95;
const tooMuch = 1e100;

/**
 * Which statements "variable ≥ value" were in recent contradictions: the most active undecided one is decided next.
 *
 * Source: M. W. Moskewicz et al., "Chaff: engineering an efficient SAT solver", DAC 2001, section 3 (decision by decaying sums),
 * here over bounds that come into being when they are first met.
 */
export class Activity {
  #keys = new Int32Array(1 << 13); // hash table: atom + 1, or 0
  #variable: number[] = [];
  #value: number[] = [];
  #score: number[] = [];
  #place: number[] = []; // in the heap, or −1
  readonly #heap: number[] = [];
  /** Atoms of a variable that were taken out while they were decided. */
  readonly #parked: number[][] = [];
  #step = 1;

  #slot(variable: number, value: number): number {
    const mask = this.#keys.length - 1;
    let h = (Math.imul(variable, 0x9e3779b1) ^ Math.imul(value, 0x85ebca6b)) >>> 0;
    h ^= h >>> 15;
    for (let at = h & mask; ; at = (at + 1) & mask) {
      const atom = (this.#keys[at] as number) - 1;
      if (atom < 0 || (this.#variable[atom] === variable && this.#value[atom] === value)) return at;
    }
  }

  #atom(variable: number, value: number): number {
    const at = this.#slot(variable, value);
    const known = (this.#keys[at] as number) - 1;
    if (known >= 0) return known;
    const atom = this.#variable.push(variable) - 1;
    this.#value.push(value);
    this.#score.push(0);
    this.#place.push(-1);
    this.#keys[at] = atom + 1;
    this.#insert(atom);
    if (this.#variable.length * 2 > this.#keys.length) this.#rehash();
    return atom;
  }

  #rehash(): void {
    this.#keys = new Int32Array(this.#keys.length * 4);
    for (let atom = 0; atom < this.#variable.length; atom++)
      this.#keys[this.#slot(this.#variable[atom] as number, this.#value[atom] as number)] = atom + 1;
  }

  /** "side ≥ value" took part in a contradiction. */
  bump(side: number, value: number): void {
    const atom = this.#atom(side >> 1, (side & 1) === 0 ? value : 1 - value);
    const score = (this.#score[atom] as number) + this.#step;
    this.#score[atom] = score;
    if (score > tooMuch) this.#rescale();
    const place = this.#place[atom] as number;
    if (place >= 0) this.#up(place);
  }

  fade(): void {
    this.#step /= decay;
  }

  #rescale(): void {
    this.#score = this.#score.map((score) => score / tooMuch);
    this.#step /= tooMuch;
  }

  /** A bound of the variable was taken back: what was decided of it may be open again. */
  reopen(variable: number): void {
    const parked = this.#parked[variable];
    if (parked === undefined || parked.length === 0) return;
    for (const atom of parked) if ((this.#place[atom] as number) < 0) this.#insert(atom);
    parked.length = 0;
  }

  /** The most active open statement as [variable, value], or undefined. */
  next(isOpen: (variable: number, value: number) => boolean): readonly [number, number] | undefined {
    while (this.#heap.length > 0) {
      const atom = this.#pop();
      const variable = this.#variable[atom] as number;
      const value = this.#value[atom] as number;
      let parked = this.#parked[variable];
      if (parked === undefined) {
        parked = [];
        this.#parked[variable] = parked;
      }
      parked.push(atom);
      if (isOpen(variable, value)) return [variable, value];
    }
    return undefined;
  }

  #insert(atom: number): void {
    this.#place[atom] = this.#heap.push(atom) - 1;
    this.#up(this.#heap.length - 1);
  }

  #up(from: number): void {
    const heap = this.#heap;
    const atom = heap[from] as number;
    const score = this.#score[atom] as number;
    let at = from;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const other = heap[parent] as number;
      if ((this.#score[other] as number) >= score) break;
      heap[at] = other;
      this.#place[other] = at;
      at = parent;
    }
    heap[at] = atom;
    this.#place[atom] = at;
  }

  #pop(): number {
    const heap = this.#heap;
    const top = heap[0] as number;
    this.#place[top] = -1;
    const last = heap.pop() as number;
    if (heap.length > 0) this.#down(last);
    return top;
  }

  /** Puts an atom at the top and lets it sink. */
  #down(atom: number): void {
    const heap = this.#heap;
    const score = this.#score[atom] as number;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heap.length) break;
      const right = child + 1;
      if (
        right < heap.length &&
        (this.#score[heap[right] as number] as number) > (this.#score[heap[child] as number] as number)
      )
        child = right;
      const other = heap[child] as number;
      if ((this.#score[other] as number) <= score) break;
      heap[at] = other;
      this.#place[other] = at;
      at = child;
    }
    heap[at] = atom;
    this.#place[atom] = at;
  }
}
