// Sound recordings that hostile ones are made of, one of each form.
import { writeC3d } from '../c3d-writer.ts';
import { bytesOf } from '../parts.ts';

export const BVH = `HIERARCHY
ROOT hips
{
  OFFSET 0 0 0
  CHANNELS 6 Xposition Yposition Zposition Zrotation Xrotation Yrotation
  JOINT knee
  {
    OFFSET 0 -0.4 0
    CHANNELS 3 Zrotation Xrotation Yrotation
    End Site
    {
      OFFSET 0 -0.4 0
    }
  }
}
MOTION
Frames: 3
Frame Time: 0.01
1 2 3 10 20 30 40 50 60
1.5 2.5 3.5 11 21 31 41 51 61
2 3 4 12 22 32 42 52 62
`;

export const TRC = [
  'PathFileType\t4\t(X/Y/Z)\tjump.trc',
  'DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\tOrigDataRate\tOrigDataStartFrame\tOrigNumFrames',
  '100\t100\t3\t2\tmm\t100\t1\t3',
  'Frame#\tTime\tLELB\t\t\tRELB\t\t',
  '\t\tX1\tY1\tZ1\tX2\tY2\tZ2',
  '',
  '1\t0.00\t101\t102\t103\t104\t105\t106',
  '2\t0.01\t111\t112\t113\t114\t115\t116',
  '3\t0.02\t121\t122\t123\t124\t125\t126',
  '',
].join('\n');

export const CSV = 'time [s],kneeFlexionL [deg],toe x,toe y,toe z\n0,10,1.5,2,3\n0.01,11,1.6,2,3\n0.02,12,1.7,2,3\n';

export const C3D = writeC3d({
  labels: ['LELB', 'RELB'],
  frames: [0, 1, 2].map((i) => [
    [100 + i, 2, 3],
    [4, 5 + i, 6],
  ]),
});

/** Sound files by the name that they are opened under. */
export const SOUND: ReadonlyMap<string, Uint8Array> = new Map([
  ['jump.bvh', bytesOf(BVH)],
  ['jump.trc', bytesOf(TRC)],
  ['jump.csv', bytesOf(CSV)],
  ['jump.c3d', C3D],
]);
