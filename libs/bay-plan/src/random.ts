/**
 * The seeded generator of the search: Mulberry32 (32-bit state, Tommy Ettinger, public domain). Good enough to vary a
 * search, not for anything else.
 */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = seed | 0;
  }

  /** in [0, 1) */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let z = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    z = (z + Math.imul(z ^ (z >>> 7), 61 | z)) ^ z;
    return ((z ^ (z >>> 14)) >>> 0) / 4294967296;
  }

  /** a whole number in [0, n); 0 for n below 1 */
  below(n: number): number {
    return (this.next() * n) | 0;
  }
}
