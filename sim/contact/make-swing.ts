/** SwingSpec -> Swing. The run goes to where a late release is known; columns are read from it when they are asked for. */
import type { Hang } from './hang.ts';
import { withArms } from './rail.ts';
import { releaseTime } from './release-time.ts';
import type { Swing, SwingError, SwingState } from './swing.ts';
import { readTable, type SwingTable } from './swing-columns.ts';
import { SwingReader } from './swing-reader.ts';
import type { SwingRun } from './swing-run.ts';
import { getRun } from './swing-runs.ts';
import { BEYOND_RELEASE, checkSwing, type SwingSpec } from './swing-spec.ts';
import { STEP } from './swing-stepper.ts';

/** Known errors at the default step: above what was measured on two giants (docs/numerics.md, "Swing"). */
export const SWING_ERRORS: Readonly<Record<'driven' | 'limited', SwingError>> = {
  driven: { angle: 1e-6, force: 1e-6, speed: 1e-6, energy: 1e-6 },
  limited: { angle: 1e-6, force: 1e-6, speed: 1e-6, energy: 1e-6 },
};

export function makeSwing(asked: SwingSpec): Swing {
  const spec = asked.start.kind === 'caught' ? { ...asked, rail: withArms(asked.rail, asked.start.arms) } : asked;
  checkSwing(spec);
  const { hang, stepper } = getRun(spec);
  const released = releaseTime(hang, stepper, spec);
  const duration = released ?? spec.duration;
  const until = released === undefined ? 0 : BEYOND_RELEASE;
  return new RunSwing(spec, hang, stepper.advanceTo(duration + until), duration, released !== undefined, until);
}

class RunSwing implements Swing {
  readonly spec: SwingSpec;
  readonly duration: number;
  readonly released: boolean;
  readonly until: number;
  private readonly reader: SwingReader;
  private known: SwingTable | undefined;

  constructor(spec: SwingSpec, hang: Hang, run: SwingRun, duration: number, released: boolean, until: number) {
    this.spec = spec;
    this.duration = duration;
    this.released = released;
    this.until = until;
    this.reader = new SwingReader(hang, run);
  }

  get body() {
    return this.spec.body;
  }
  get rail() {
    return this.spec.rail;
  }
  get step() {
    return this.spec.step ?? STEP;
  }
  get columns() {
    return this.table.columns;
  }
  get joints() {
    return this.table.joints;
  }
  get shown() {
    return this.table.shown;
  }
  get strength() {
    return this.spec.strength ?? 1;
  }
  get driven() {
    return this.table.driven;
  }
  get peaks() {
    return this.table.peaks;
  }
  get radius() {
    return this.table.radius;
  }
  get error() {
    return SWING_ERRORS[this.driven ? 'driven' : 'limited'];
  }

  stateAt(t: number): SwingState {
    const within = this.within(t);
    return this.reader.stateAt(this.duration + within, within);
  }

  shapeInto(t: number, angles: Float64Array, rates: Float64Array): void {
    this.reader.shapeInto(this.duration + this.within(t), angles, rates);
  }

  private within(t: number): number {
    return Math.min(Math.max(t, -this.duration), this.until);
  }

  private get table(): SwingTable {
    this.known ??= readTable(this.reader, this.duration, this.until);
    return this.known;
  }
}
