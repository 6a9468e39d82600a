/** The cautions of a flight by joint name and in degrees, most serious first, in the words of the sim. */

import { type Body, listCautions, type Caution as SimCaution } from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';
import { withoutSide } from '../../sim/math/side.ts';
import type { JointCaution } from './result.ts';

export function readCautions(body: Body, found: readonly SimCaution[]): JointCaution[] {
  return listCautions(body, found).map(({ caution, both, title, detail }) => {
    const scale = caution.kind === 'torque' ? 1 : DEG;
    const { name } = body.angles[caution.angle];
    return {
      kind: caution.kind,
      angle: both ? withoutSide(name) : name,
      t: caution.t,
      value: caution.value * scale,
      limit: caution.limit * scale,
      title,
      detail,
    };
  });
}
