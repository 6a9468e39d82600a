/** What can be wrong with keys, said with both parties. */
export class ScheduleOrderError extends Error {
  constructor(first: string, firstTime: number, second: string, secondTime: number) {
    super(
      `${first} (at ${firstTime.toFixed(4)} s) and ${second} (at ${secondTime.toFixed(4)} s) have changed order; keys of one angle, and blocks, must follow each other in time as they do in the list`,
    );
    this.name = 'ScheduleOrderError';
  }
}

export class ScheduleValueError extends Error {
  readonly field: string;
  constructor(field: string, value: unknown, allowed: string) {
    super(`${field}: ${String(value)} is not possible; allowed: ${allowed}`);
    this.name = 'ScheduleValueError';
    this.field = field;
  }
}
