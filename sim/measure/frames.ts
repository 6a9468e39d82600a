/**
 * What is measured in every frame of a flight, as columns. SI and radians; vectors are stored (n x 3), quaternions
 * (n x 4), row by row. NaN is "not defined here" (blank in CSV, null in JSON). Meanings: docs/conventions.md.
 */
export interface Frames {
  readonly n: number;
  readonly t: Float64Array; // (n)
  readonly p_WBo_W: Float64Array; // (n x 3) root origin
  readonly quat_WB: Float64Array; // (n x 4) root attitude
  readonly v_WBo_W: Float64Array; // (n x 3)
  readonly w_WB_B: Float64Array; // (n x 3) in the root frame
  readonly q: Float64Array; // (n x hinges)
  readonly qd: Float64Array; // (n x hinges)
  readonly tau: Float64Array; // (n x hinges) joint torque along each hinge axis, parent on child
  readonly angles: Float64Array; // (n x Body.angles) named angles
  readonly angleRates: Float64Array; // (n x Body.angles)
  readonly p_WScm_W: Float64Array; // (n x 3)
  readonly v_WScm_W: Float64Array; // (n x 3)
  readonly quat_WF: Float64Array; // (n x 4)
  readonly w_WF_F: Float64Array; // (n x 3) body-axis angular velocity of F: [front-back, long, lateral] = x, y, z
  readonly w_S_W: Float64Array; // (n x 3) I_S^-1 h
  readonly somersault: Float64Array; // (n) counted continuously, + backward
  readonly tilt: Float64Array; // (n) + head to world right
  readonly twist: Float64Array; // (n) counted continuously, + to the athlete's left
  readonly somersaultRate: Float64Array;
  readonly tiltRate: Float64Array;
  readonly twistRate: Float64Array;
  readonly tiltFromH: Float64Array; // (n) NaN at h = 0
  readonly principal: Float64Array; // (n x 3) ascending, unlabelled
  readonly moments: Float64Array; // (n x 3) about F: [lateral (Z), front-back (X), long (Y)]
  readonly h_Scm_W: Float64Array; // (n x 3) summed from the segments
  readonly h_Scm_F: Float64Array; // (n x 3)
  /** group names in the order of hGroups_W: 'upper', 'arms', 'legs' or 'whole' */
  readonly groups: readonly string[];
  readonly hGroups_W: Float64Array; // (n x groups x 3)
  readonly hGroups_F: Float64Array; // (n x groups x 3), in the axes of F: x front-back, y long, z lateral
  readonly ePotential: Float64Array; // (n) zero at the landing surface
  readonly eRising: Float64Array; // (n) m v_y^2 / 2
  readonly eAlong: Float64Array; // (n) m (v_x^2 + v_z^2) / 2
  readonly eRotation: Float64Array; // (n) h . I_S^-1 h / 2
  readonly eLimbs: Float64Array; // (n)
  readonly eTotal: Float64Array; // (n)
  readonly jointPower: Float64Array; // (n)
  readonly jointWork: Float64Array; // (n) since take-off, by quadrature of jointPower
  readonly pelvisTurn: Float64Array; // (n) how far the pelvis has turned about its long axis since take-off
  readonly shoulderTurn: Float64Array; // (n) the same of the shoulder line
  /** time from which somersault, tilt, twist are not defined (|tilt| beyond 80 deg), or undefined */
  readonly undefinedFrom?: number;
}
