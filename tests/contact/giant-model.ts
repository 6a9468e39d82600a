/** The chain of a giant on its sprung rail as a planar MuJoCo model, written from the chain's numbers. */
import type { Hang } from '../../sim/contact/hang.ts';

/** From the grip outward; a joint's hinge turns by its named angle times `sign`. */
export const ORDER = [
  ['arms', undefined, 0],
  ['trunk', 'shoulder', -1],
  ['thighs', 'hip', 1],
  ['shanks', 'knee', -1],
  ['feet', 'ankle', -1],
] as const;

/** Hinges after rail x, y and the grip: the chain's joint of each, and its sign. */
export const hingesOf = ({ chain }: Hang): readonly { readonly sign: number; readonly j: number }[] =>
  ORDER.slice(1).map(([, joint, sign]) => ({ sign, j: chain.joints.findIndex((x) => x.name === joint) }));

export function giantXml({ chain, grip, spec }: Hang): string {
  const { arms } = spec.rail;
  // two springs in series, written apart from the engine: 1/k = 1/k_rail + 1/k_arms; the rail goes along by k/k_rail, which counts twice in its mass and damping
  const series = (k: number): number => (arms === undefined ? k : 1 / (1 / k + 1 / arms));
  const [kx, ky] = spec.rail.stiffness.map(series);
  const [cx, cy] = spec.rail.damping.map((c, i) => c * (series(spec.rail.stiffness[i]) / spec.rail.stiffness[i]) ** 2);
  const mass = spec.rail.mass * (ky / spec.rail.stiffness[1]) ** 2;
  let inner = '';
  let entry: readonly [number, number] = grip.at;
  let close = '';
  for (const [name, joint] of ORDER) {
    const link = chain.links.find((l) => l.name === name);
    if (!link) throw new Error(name);
    const at = joint ? chain.joints.find((j) => j.name === joint)?.point : grip.at;
    if (!at) throw new Error(name);
    const pos = joint ? [at[0] - entry[0], at[1] - entry[1]] : [0, 0];
    entry = at;
    const p = [link.centre[0] - at[0], link.centre[1] - at[1]];
    const I = link.inertia;
    inner += `<body pos="${pos[0]} ${pos[1]} 0"><joint type="hinge" axis="0 0 1"/><inertial pos="${p[0]} ${p[1]} 0" mass="${link.mass}" diaginertia="${I} ${I} ${I}"/>`;
    close += '</body>';
  }
  return `<mujoco><compiler angle="radian"/><option gravity="0 ${-spec.gravity} 0"/><worldbody>
    <body gravcomp="1"><joint type="slide" axis="1 0 0" stiffness="${kx}" damping="${cx}"/><joint type="slide" axis="0 1 0" stiffness="${ky}" damping="${cy}"/>
    <inertial pos="0 0 0" mass="${mass}" diaginertia="1 1 1"/>${inner}${close}</body></worldbody></mujoco>`;
}
