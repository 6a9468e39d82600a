/** Reads the frames CSV as a stranger would: by column names, nothing taken from the engine but the text. */
import { calcFrames, type Flight, formatFrames, wordFrames } from '../../sim/index.ts';

export class Table {
  private readonly names: readonly string[];
  private readonly index: ReadonlyMap<string, number>;
  private readonly rows: readonly (readonly string[])[];

  constructor(text: string) {
    const lines = text.trimEnd().split('\n');
    this.names = lines[0].split(',');
    this.index = new Map(this.names.map((n, i) => [n, i]));
    this.rows = lines.slice(1).map((line) => line.split(','));
  }

  get length(): number {
    return this.rows.length;
  }

  /** Names of the columns that begin with `prefix`, without it. */
  endings(prefix: string): string[] {
    return this.names.filter((n) => n.startsWith(prefix)).map((n) => n.slice(prefix.length));
  }

  at(row: number, name: string): number {
    const cell = this.rows[row][this.index.get(name) ?? -1];
    if (cell === undefined || cell === '') throw new RangeError(`no number in column ${name}, row ${row}`);
    return Number(cell);
  }

  several(row: number, names: readonly string[]): number[] {
    return names.map((n) => this.at(row, n));
  }
}

/** The frames at these times through the formatter that the command line uses. */
export function tableOf(flight: Flight, times: readonly number[]): Table {
  const frames = calcFrames(flight, times);
  return new Table([...formatFrames(frames, flight.body, wordFrames(frames))].join(''));
}
