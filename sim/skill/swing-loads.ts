/** The torques of a swing against the known strength of both limbs together, whatever strength it was swung with. SI */
import { strengthSetAt } from '../body/action-strength.ts';
import type { PlanarJointName } from '../contact/chain.ts';
import type { Swing, SwingJoint } from '../contact/swing.ts';
import { type Said, wordCaution, wordInstant, wordNotCompared } from '../measure/caution-words.ts';
import { actionSource, type Caution, speedSource } from '../measure/cautions.ts';
import { isCompared, knownSpeed, warnedSpeed, warnedTorque } from '../measure/known-strength.ts';
import { listTorqueLoads } from '../measure/torque-loads.ts';

export interface SwingLoads {
  /** times count from the release */
  readonly cautions: readonly Caution[];
  readonly said: readonly Said[];
  /** when, and how much, of each */
  readonly instants: readonly string[];
  readonly notCompared?: Said;
  /** largest torque that each joint needs, N m */
  readonly largest: readonly { readonly joint: PlanarJointName; readonly torque: number; readonly t: number }[];
}

/** Speeds and torques of a swing against what is known of each joint, rad/s and N m. */
export function calcSwingLoads(swing: Swing): SwingLoads {
  const { body, joints } = swing;
  const cautions = isCompared(body)
    ? joints.flatMap((joint) => [...judgeSpeed(swing, joint), ...judgeTorque(swing, joint)])
    : [];
  const notCompared = wordNotCompared(body);
  return {
    cautions,
    said: cautions.map((c) => wordCaution(body, c, true)),
    instants: cautions.map(wordInstant),
    ...(notCompared ? { notCompared } : {}),
    largest: joints.map((joint) => {
      let i = 0;
      for (let k = 1; k < swing.shown; k++) if (Math.abs(joint.needed[k]) > Math.abs(joint.needed[i])) i = k;
      return { joint: joint.name, torque: joint.needed[i], t: swing.columns.t[i] };
    }),
  };
}

function judgeTorque({ body, columns, shown }: Swing, joint: SwingJoint): Caution[] {
  const [angle] = joint.angles;
  const { strength } = body.angles[angle];
  if (!strength) return [];
  const limbs = joint.angles.length;
  const loads = listTorqueLoads(
    {
      rows: shown,
      strength,
      limbs,
      torqueAt: (i) => joint.needed[i],
      angleAt: (i) => joint.q[i],
      rateAt: (i) => joint.qd[i],
    },
    1,
  ).filter((l) => Math.abs(l.torque) / limbs > warnedTorque(l.strength, l.known / limbs));
  const beyond = (l: (typeof loads)[number]): number => Math.abs(l.torque) - l.known;
  const worst = loads.reduce<(typeof loads)[number] | undefined>(
    (a, b) => (a && beyond(a) >= beyond(b) ? a : b),
    undefined,
  );
  if (!worst) return [];
  const { row, from, to, rate, torque, known } = worst;
  return [
    {
      kind: 'torque',
      angle,
      t: columns.t[row],
      value: torque,
      limit: known,
      source: actionSource(body, angle, torque),
      set: strengthSetAt(worst.strength, joint.q[row], rate),
      ...(from === to ? {} : { over: [columns.t[from], columns.t[to]] as const }),
    },
  ];
}

function judgeSpeed({ body, columns, shown }: Swing, joint: SwingJoint): Caution[] {
  const [angle] = joint.angles;
  let i = 0;
  for (let k = 1; k < shown; k++) if (Math.abs(joint.qd[k]) > Math.abs(joint.qd[i])) i = k;
  const value = Math.abs(joint.qd[i]);
  const limit = knownSpeed(body, angle, joint.qd[i]);
  if (!(value > warnedSpeed(limit))) return [];
  return [{ kind: 'speed', angle, t: columns.t[i], value, limit, source: speedSource(body, angle, joint.qd[i]) }];
}
