/** Cautions as JSON, in the units people type, with the words of the page. */
import type { Body } from '../body/body.ts';
import { DEG } from '../math/angles.ts';
import type { Said } from '../measure/caution-words.ts';
import type { Caution } from '../measure/cautions.ts';

export const linesOf = (said: Said | undefined): string[] | null => (said ? [said.title, said.detail] : null);

/** `said`: of each in turn. */
export const beyondOf = (body: Body, cautions: readonly Caution[], said: readonly Said[]): object[] =>
  cautions.map((c, i) => {
    const scale = c.kind === 'torque' ? 1 : DEG;
    const unit = { range: 'deg', speed: 'deg/s', torque: 'N m' }[c.kind];
    return {
      kind: c.kind,
      angle: body.angles[c.angle].name,
      atS: c.t,
      ...(c.over ? { meanFromS: c.over[0], meanToS: c.over[1] } : {}),
      value: c.value * scale,
      limit: c.limit * scale,
      unit,
      timesKnown: c.kind === 'range' || c.limit === 0 ? null : Math.abs(c.value) / c.limit,
      said: linesOf(said[i]),
      source: c.source,
    };
  });
