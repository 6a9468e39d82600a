/** A made-up flight for judging pictures: a back somersault with a full twist. Not a result of the model. */
import type { Body } from '../../sim/body/body.ts';
import type { Piece } from '../../sim/skill/apparatus-piece.ts';
import type { StageFlight, StagePose } from '../../src/scene/pose-frames.ts';
import { type AnglesDeg, mixAngles, sheetShapes, stagePose } from './poses.ts';

const shape = (name: string): AnglesDeg => sheetShapes.find((one) => one.name === name)?.angles ?? {};
const keys: readonly (readonly [number, AnglesDeg])[] = [
  [0, shape('Arms overhead')],
  [0.09, shape('Arms overhead')],
  [0.25, shape('One up, one down')],
  [0.3, shape('One up, one down')],
  [0.44, shape('Wrapped')],
  [0.68, shape('Wrapped')],
  [0.85, shape('T')],
  [1, { ...shape('T'), hipFlexionL: 20, hipFlexionR: 20 }],
];

const everywhere = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
const floor: Piece = {
  kind: 'floor',
  x: everywhere,
  y: [Number.NEGATIVE_INFINITY, 0],
  z: everywhere,
  floorY: 0,
  way: 1,
};
const mat = (x: number, y: number): Piece => ({
  kind: 'mat',
  x: [x - 1.2, x + 1.2],
  y: [0, y],
  z: [-1, 1],
  floorY: 0,
  way: 1,
});

export interface Mock {
  readonly flight: StageFlight;
  pose(t: number): StagePose;
}

export function mockFlight(
  body: Body,
  { up = 4.6, along = -1.95, from = 0.98, turns = 1, surfaceY = 0, vz = 0.05 } = {},
): Mock {
  const rest = 0.88 + surfaceY;
  const duration = (up + Math.sqrt(up * up + 2 * 9.81 * (from - rest))) / 9.81;
  const com = (t: number): [number, number, number] => [along * t, from + up * t - 4.905 * t * t, vz * t];
  const pose = (t: number): StagePose => {
    const s = t / duration;
    let i = 0;
    while (i < keys.length - 2 && keys[i + 1][0] < s) i++;
    const f = Math.min(1, Math.max(0, (s - keys[i][0]) / (keys[i + 1][0] - keys[i][0])));
    const angles = mixAngles(keys[i][1], keys[i + 1][1], f * f * (3 - 2 * f));
    const twist = 360 * Math.min(1, Math.max(0, (s - 0.15) / 0.75)) ** 1.2;
    const somersault = -8 + 362 * turns * s;
    const made = stagePose(body, t, angles, [somersault, 9 * Math.sin(Math.PI * Math.min(1, s * 1.3)), twist], com(t));
    return { ...made, somersaultRate: 6.9, twistRate: s > 0.15 && s < 0.9 ? 9 : 0 };
  };
  const n = 97;
  const path = new Float64Array(4 * n);
  for (let i = 0; i < n; i++) path.set([(duration * i) / (n - 1), ...com((duration * i) / (n - 1))], 4 * i);
  const ghosts = Array.from({ length: 11 }, (_, i) => pose((duration * i) / 10));
  const flight: StageFlight = {
    key: `mock ${up} ${along} ${turns}`,
    body,
    duration,
    v_WScm_W0: [along, up, vz],
    h_Scm_W: [1.5, 2, 47],
    surfaceY,
    apparatus: {
      pieces: [floor, ...(surfaceY > 0 ? [mat(along * duration, surfaceY)] : [])],
      lands: surfaceY > 0 ? 1 : 0,
    },
    path,
    ghosts,
    wantedSomersault: 2 * Math.PI * turns,
  };
  return { flight, pose };
}
