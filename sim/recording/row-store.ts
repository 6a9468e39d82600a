/** Rows of numbers whose count is not known beforehand, kept in blocks that never move. */
import type { ReadSteps } from './steps.ts';

const BLOCK = 1 << 16;

export class RowStore {
  rows = 0;
  readonly width: number;
  readonly #perBlock: number;
  readonly #blocks: Float64Array[] = [];

  constructor(width: number) {
    this.width = width;
    this.#perBlock = Math.max(1, Math.floor(BLOCK / Math.max(1, width)));
  }

  push(row: Float64Array): void {
    const at = this.rows++ % this.#perBlock;
    if (at === 0) this.#blocks.push(new Float64Array(this.#perBlock * this.width));
    this.#blocks[this.#blocks.length - 1].set(row, at * this.width);
  }

  /** Hands out each row as an offset into its block. */
  *eachRow(use: (data: Float64Array, o: number, row: number) => void): ReadSteps<void> {
    for (let b = 0, i = 0; b < this.#blocks.length; b++) {
      for (let k = 0; k < this.#perBlock && i < this.rows; k++) use(this.#blocks[b], k * this.width, i++);
      yield { done: i / this.rows };
    }
  }
}
