/**
 * How far a recorded limb is spun about its bone against ours. Elbow and knee bend about one axis of ours (Z); a skeleton has it where its
 * maker put it. The plane in which the limb is seen to bend, as a mean over the recording weighted by how much it bends, says where.
 */

/** Sum of sin^2 of the bends, in rows, under which nothing is read from them. */
const FEWEST = 2;

/**
 * `bone`: (n x 3) direction of the lower limb's -Y in the frame of the upper limb, at each row. `forward`: it bends to +X (elbow) or -X
 * (knee). Returns the angle about Y by which the upper limb's frame is to be turned, rad; 0 where it hardly bends.
 */
export function hingeSpin(bone: Float64Array, forward: 1 | -1): number {
  let c = 0;
  let s = 0;
  let weight = 0;
  for (let i = 0; i < bone.length; i += 3) {
    const x = forward * bone[i];
    const z = forward * bone[i + 2];
    const bend = Math.hypot(x, z);
    if (!(bend > 0)) continue;
    // a row counts by sin^2 of its bend
    c += x * bend;
    s -= z * bend;
    weight += bend * bend;
  }
  return weight < FEWEST ? 0 : Math.atan2(s, c);
}
