/** A list of statements "side ≥ value" that is emptied and filled again many times a second. */
export class LiteralList {
  sides = new Int32Array(64);
  values = new Int32Array(64);
  length = 0;

  add(side: number, value: number): void {
    if (this.length === this.sides.length) this.#grow();
    this.sides[this.length] = side;
    this.values[this.length++] = value;
  }

  clear(): void {
    this.length = 0;
  }

  #grow(): void {
    const sides = new Int32Array(this.length * 2);
    sides.set(this.sides);
    this.sides = sides;
    const values = new Int32Array(this.length * 2);
    values.set(this.values);
    this.values = values;
  }
}
