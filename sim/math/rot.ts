/**
 * Rotations on flat arrays: 3 x 3 matrices row by row (9 numbers), unit quaternions [w, x, y, z]. `o` arguments are
 * offsets into the array before them. No physics.
 */
export type Numbers = Float64Array | number[];
type In = ArrayLike<number>;

/** R of a quaternion (need not be exactly unit: it is used as given, scaled by 1/|q|^2). */
export function matOfQuatInto(q: In, qo: number, R: Numbers, o: number): void {
  const w = q[qo];
  const x = q[qo + 1];
  const y = q[qo + 2];
  const z = q[qo + 3];
  const s = 2 / (w * w + x * x + y * y + z * z);
  const xx = s * x * x;
  const yy = s * y * y;
  const zz = s * z * z;
  const xy = s * x * y;
  const xz = s * x * z;
  const yz = s * y * z;
  const wx = s * w * x;
  const wy = s * w * y;
  const wz = s * w * z;
  R[o] = 1 - yy - zz;
  R[o + 1] = xy - wz;
  R[o + 2] = xz + wy;
  R[o + 3] = xy + wz;
  R[o + 4] = 1 - xx - zz;
  R[o + 5] = yz - wx;
  R[o + 6] = xz - wy;
  R[o + 7] = yz + wx;
  R[o + 8] = 1 - xx - yy;
}

/** Quaternion of R, w >= 0 (Shepperd's choice of the largest component). */
export function quatOfMatInto(R: In, o: number, q: Numbers, qo: number): void {
  const a = R[o];
  const b = R[o + 4];
  const c = R[o + 8];
  const t = a + b + c;
  let w = R[o + 7] - R[o + 5];
  let x = w;
  let y = R[o + 2] - R[o + 6];
  let z = R[o + 3] - R[o + 1];
  if (t >= a && t >= b && t >= c) w = 1 + t;
  else if (a >= b && a >= c) {
    x = 1 + a - b - c;
    y = R[o + 3] + R[o + 1];
    z = R[o + 6] + R[o + 2];
  } else if (b >= c) {
    w = y;
    x = R[o + 1] + R[o + 3];
    y = 1 + b - c - a;
    z = R[o + 7] + R[o + 5];
  } else {
    w = z;
    x = R[o + 2] + R[o + 6];
    y = R[o + 5] + R[o + 7];
    z = 1 + c - a - b;
  }
  const n = Math.sqrt(w * w + x * x + y * y + z * z) * (w < 0 ? -1 : 1);
  q[qo] = w / n;
  q[qo + 1] = x / n;
  q[qo + 2] = y / n;
  q[qo + 3] = z / n;
}

/** q and -q are one attitude: of the quaternion at o the sign nearer to the one at `before`. */
export function keepSign(quat: Numbers, before: number, o: number): void {
  let dot = 0;
  for (let k = 0; k < 4; k++) dot += quat[before + k] * quat[o + k];
  if (dot < 0) for (let k = 0; k < 4; k++) quat[o + k] = -quat[o + k];
}

/** C = A B. */
export function mulInto(A: In, ao: number, B: In, bo: number, C: Numbers, co: number): void {
  for (let i = 0; i < 3; i++) {
    const a = A[ao + 3 * i];
    const b = A[ao + 3 * i + 1];
    const c = A[ao + 3 * i + 2];
    for (let j = 0; j < 3; j++) C[co + 3 * i + j] = a * B[bo + j] + b * B[bo + 3 + j] + c * B[bo + 6 + j];
  }
}

/** C = A^T B. */
export function mulTInto(A: In, ao: number, B: In, bo: number, C: Numbers, co: number): void {
  for (let i = 0; i < 3; i++) {
    const a = A[ao + i];
    const b = A[ao + 3 + i];
    const c = A[ao + 6 + i];
    for (let j = 0; j < 3; j++) C[co + 3 * i + j] = a * B[bo + j] + b * B[bo + 3 + j] + c * B[bo + 6 + j];
  }
}

/** C = A B^T. */
export function mulBtInto(A: In, ao: number, B: In, bo: number, C: Numbers, co: number): void {
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++)
      C[co + 3 * i + j] =
        A[ao + 3 * i] * B[bo + 3 * j] + A[ao + 3 * i + 1] * B[bo + 3 * j + 1] + A[ao + 3 * i + 2] * B[bo + 3 * j + 2];
}

/** y = R x. */
export function applyInto(R: In, o: number, x: In, xo: number, y: Numbers, yo: number): void {
  const a = x[xo];
  const b = x[xo + 1];
  const c = x[xo + 2];
  y[yo] = R[o] * a + R[o + 1] * b + R[o + 2] * c;
  y[yo + 1] = R[o + 3] * a + R[o + 4] * b + R[o + 5] * c;
  y[yo + 2] = R[o + 6] * a + R[o + 7] * b + R[o + 8] * c;
}

/** y = R^T x. */
export function applyTInto(R: In, o: number, x: In, xo: number, y: Numbers, yo: number): void {
  const a = x[xo];
  const b = x[xo + 1];
  const c = x[xo + 2];
  y[yo] = R[o] * a + R[o + 3] * b + R[o + 6] * c;
  y[yo + 1] = R[o + 1] * a + R[o + 4] * b + R[o + 7] * c;
  y[yo + 2] = R[o + 2] * a + R[o + 5] * b + R[o + 8] * c;
}

/** R of the rotation vector v (axis times angle, rad): Rodrigues. */
export function matOfVectorInto(v: In, R: Numbers, o: number): void {
  const a = Math.hypot(v[0], v[1], v[2]);
  const s = a < 1e-4 ? 1 - (a * a) / 6 : Math.sin(a) / a;
  const c = a < 1e-4 ? 0.5 - (a * a) / 24 : (1 - Math.cos(a)) / (a * a);
  const [x, y, z] = [v[0], v[1], v[2]];
  R[o] = 1 - c * (y * y + z * z);
  R[o + 1] = c * x * y - s * z;
  R[o + 2] = c * x * z + s * y;
  R[o + 3] = c * x * y + s * z;
  R[o + 4] = 1 - c * (x * x + z * z);
  R[o + 5] = c * y * z - s * x;
  R[o + 6] = c * x * z - s * y;
  R[o + 7] = c * y * z + s * x;
  R[o + 8] = 1 - c * (x * x + y * y);
}

/** Rotation vector of R with angle in [0, pi]. */
export function vectorOfMatInto(R: In, o: number, v: Numbers): void {
  const q = [0, 0, 0, 0];
  quatOfMatInto(R, o, q, 0);
  const n = Math.hypot(q[1], q[2], q[3]);
  const k = n < 1e-9 ? 2 : (2 * Math.atan2(n, q[0])) / n;
  v[0] = k * q[1];
  v[1] = k * q[2];
  v[2] = k * q[3];
}

/** R_WF = Rz(somersault) Rx(tilt) Ry(twist). */
export function matOfAttitude(somersault: number, tilt: number, twist: number): Float64Array {
  const [cs, ss] = [Math.cos(somersault), Math.sin(somersault)];
  const [ct, st] = [Math.cos(tilt), Math.sin(tilt)];
  const [cw, sw] = [Math.cos(twist), Math.sin(twist)];
  return Float64Array.of(
    cs * cw - ss * st * sw,
    -ss * ct,
    cs * sw + ss * st * cw,
    ss * cw + cs * st * sw,
    cs * ct,
    ss * sw - cs * st * cw,
    -ct * sw,
    st,
    ct * cw,
  );
}

/** Inverse of matOfAttitude: [somersault in (-pi, pi], tilt in [-pi/2, pi/2], twist in (-pi, pi]]. */
export function attitudeOfMat(R: In, o = 0): [number, number, number] {
  return [
    Math.atan2(-R[o + 1], R[o + 4]),
    Math.asin(Math.max(-1, Math.min(1, R[o + 7]))),
    Math.atan2(-R[o + 6], R[o + 8]),
  ];
}
