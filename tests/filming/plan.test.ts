// A filming plan against other routes to the same numbers: derivatives of projected points, the points of segment frames, marching along lines of sight.
import { describe, expect, it } from 'vitest';
import type { DrawShape } from '../../sim/body/body.ts';
import { type FilmCamera, projectInto, USUAL_CAMERA } from '../../sim/filming/camera.ts';
import { formatCameraCsv } from '../../sim/filming/camera-csv.ts';
import { holdsFrom } from '../../sim/filming/envelope.ts';
import { firstMeeting } from '../../sim/filming/hidden-joints.ts';
import type { Flight } from '../../sim/index.ts';
import { uniformsInto } from '../../sim/math/random.ts';
import { norm, sub, type Triple } from '../../sim/math/vec3.ts';
import { calcSegmentFrames } from '../../sim/measure/segment-frames.ts';
import { plainRuns, wordFilming, wordFilmingFaults } from '../../sim/words/filming-words.ts';
import { DEG, filmedOf, flightOf, planOf, standing } from './filmed.ts';

const full = flightOf('back-straight-full');
const filmed = filmedOf(full);

const contactOf = (flight: Flight, name: string): number => flight.body.contacts.findIndex((c) => c.name === name);

describe('a frame', () => {
  it('pixels and metres of a frame are the derivative of where segment frames have the point', () => {
    const plan = planOf(filmed, { offSquare: 20 * DEG });
    const H = 1e-4;
    const np = plan.parts.length;
    for (const [name, part] of [
      ['fingertipL', 'handL'],
      ['toeR', 'footR'],
      ['head', 'head'],
    ] as const) {
      const c = contactOf(full, name);
      const k = plan.parts.indexOf(part);
      for (const row of [20, 90, 180]) {
        const t = plan.t[row];
        const { p_WC_W: p } = calcSegmentFrames(full, [t - H, t + H]);
        const nc = full.body.contacts.length;
        const [a, b] = [new Float64Array(2), new Float64Array(2)];
        projectInto(plan.sightline, p, 3 * c, a, 0);
        projectInto(plan.sightline, p, 3 * (nc + c), b, 0);
        const px = Math.hypot(b[0] - a[0], b[1] - a[1]) / (2 * H) / 120;
        const m = Math.hypot(...[0, 1, 2].map((d) => p[3 * (nc + c) + d] - p[3 * c + d])) / (2 * H) / 120;
        // central difference: measured 3e-6 of the value
        expect(plan.steps.pixels[np * row + k] / px).toBeCloseTo(1, 4);
        expect(plan.steps.metres[np * row + k] / m).toBeCloseTo(1, 4);
      }
    }
  });

  it('blur is the shutter’s share of a frame, and goes with it; what is read at once has no skew', () => {
    const one = planOf(filmed);
    const { row, part } = one.steps.most;
    const px = one.steps.pixels[one.parts.length * row + part];
    expect(one.steps.blur[row]).toBeCloseTo((px * 120) / 1000, 9);
    expect(planOf(filmed, { shutter: 1 / 2000 }).steps.blur[row]).toBeCloseTo(one.steps.blur[row] / 2, 9);
    expect(Math.max(...planOf(filmed, { lines: 0 }).steps.skew)).toBe(0);
    expect(Math.max(...one.steps.skew)).toBeGreaterThan(1);
  });

  it('twice the frames halve what moves between two, and twice the distance about halves the pixels', () => {
    const one = planOf(filmed);
    const two = planOf(filmed, { framesHz: 240, lines: 0.004 });
    const { row } = one.steps.most;
    expect(two.steps.metres[row * 5]).toBeCloseTo(one.steps.metres[row * 5] / 2, 12);
    const far = planOf(filmed, { away: 17 });
    expect(far.steps.pixels[row * 5] / one.steps.pixels[row * 5]).toBeCloseTo(0.5, 1);
  });
});

describe('the room', () => {
  it('holds every point of the body, and a hand or foot reaches each of its sides', () => {
    const plan = planOf(filmed);
    const { p_WC_W: p, p_WBo_W } = calcSegmentFrames(full, plan.t);
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    for (const points of [p, p_WBo_W])
      for (let i = 0; i < points.length; i++) {
        low[i % 3] = Math.min(low[i % 3], points[i]);
        high[i % 3] = Math.max(high[i % 3], points[i]);
      }
    for (let k = 0; k < 3; k++) {
      expect(plan.room.low[k]).toBeLessThanOrEqual(low[k]);
      expect(plan.room.high[k]).toBeGreaterThanOrEqual(high[k]);
      // flesh about the outermost points
      expect(low[k] - plan.room.low[k] + plan.room.high[k] - high[k]).toBeLessThan(0.2);
    }
  });

  it('in the picture it is tight about every projected point', () => {
    const plan = planOf(filmed, { offSquare: 25 * DEG });
    const { p_WC_W: p } = calcSegmentFrames(full, plan.t);
    const at = new Float64Array(2);
    const box = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i < p.length; i += 3) {
      projectInto(plan.sightline, p, i, at, 0);
      box[0] = Math.min(box[0], at[0]);
      box[1] = Math.min(box[1], at[1]);
      box[2] = Math.max(box[2], at[0]);
      box[3] = Math.max(box[3], at[1]);
    }
    const { left, top, right, bottom } = plan.picture;
    const slack = [box[0] - left, box[1] - top, right - box[2], bottom - box[3]];
    for (const px of slack) {
      expect(px).toBeGreaterThan(-1e-6);
      // contact balls are inside of the flesh by at most 4 cm: 12 px at this distance
      expect(px).toBeLessThan(14);
    }
  });

  it('a camera too near loses it at an edge, says what and when, and from the distance it names all is held', () => {
    const plan = planOf(filmed, { away: 5 });
    expect(plan.picture.leaves.length).toBeGreaterThan(0);
    expect(plan.holdsFrom).toBeDefined();
    const away = plan.holdsFrom as number;
    expect(planOf(filmed, { away }).picture.leaves).toEqual([]);
    expect(planOf(filmed, { away: away - 0.2 }).picture.leaves.length).toBeGreaterThan(0);
    expect(wordFilmingFaults(plan)[0]).toMatch(
      /^The (hands|feet) leave the picture at the (top|bottom).*first at 0\.\d\d s; 7\.\d m would hold all of it\.$/,
    );
    expect(
      holdsFrom(filmed.filmed, { ...USUAL_CAMERA, aim: 20, up: 0.1, view: 5 * DEG }, filmed.stand),
    ).toBeUndefined();
  });

  it('a camera in the way of the flight is refused', () => {
    expect(() => planOf(filmed, { away: 1, offSquare: 90 * DEG })).toThrow(/away: 1 is not possible/);
  });
});

describe('a hidden joint', () => {
  it('of one who stands, the arm behind the trunk is hidden all the time and the near one never', () => {
    // facing +X and going along +X: the camera is at the right
    const plan = planOf(filmedOf(standing(1)));
    const shareOf = (joint: string, side: string): number =>
      plan.hidden.find((one) => one.joint === joint && one.side === side)?.share ?? -1;
    for (const joint of ['shoulder', 'elbow', 'wrist', 'hip', 'knee', 'ankle']) {
      // the near hand hangs over the near hip
      expect(shareOf(joint, 'R'), joint).toBe(joint === 'hip' ? 1 : 0);
      expect(shareOf(joint, 'L'), joint).toBe(1);
    }
  });

  it('from in front a skill without a twist shows left and right alike', () => {
    const plan = planOf(filmedOf(flightOf('back-pike')), { offSquare: 90 * DEG });
    for (const { joint, side, spans } of plan.hidden) {
      const mate = plan.hidden.find((one) => one.joint === joint && one.side !== side);
      // both ends of a span are found to 1 ms
      expect(mate?.spans.length, joint).toBe(spans.length);
      spans.forEach((span, i) => {
        expect(Math.abs(span.from - (mate?.spans[i].from ?? Number.NaN))).toBeLessThan(0.0011);
        expect(Math.abs(span.to - (mate?.spans[i].to ?? Number.NaN))).toBeLessThan(0.0011);
      });
    }
    expect(plan.hidden.some(({ share }) => share > 0)).toBe(true);
  });

  it('where a line first meets a volume is where marching along it finds the first point inside', () => {
    const draw = new Float64Array(12);
    const STEP = 0.002;
    let met = 0;
    for (let i = 0; i < 60; i++) {
      uniformsInto(7, i, draw);
      const [a, b, c] = [0, 3, 6].map((o): Triple => [draw[o] - 0.5, draw[o + 1] - 0.5, draw[o + 2] - 0.5]);
      const shape: DrawShape =
        i % 2 === 0
          ? { kind: 'capsule', a_B: a, b_B: b, radiusA: 0.05 + 0.2 * draw[9], radiusB: 0.05 + 0.2 * draw[10] }
          : {
              kind: 'ellipsoid',
              centre_B: a,
              radii: [0.1 + 0.3 * draw[9], 0.1 + 0.3 * draw[10], 0.1 + 0.3 * draw[11]],
            };
      const eye: Triple = [3, 1 + draw[11], 2];
      const target = [0, 1, 2].map((k) => a[k] + 0.4 * c[k]) as Triple;
      const line = sub(target, eye);
      const length = norm(line);
      const along = line.map((x) => x / length) as Triple;
      let marched = Infinity;
      for (let s = 2; s < 6 && marched === Infinity; s += STEP)
        if (isInside(shape, [0, 1, 2].map((k) => eye[k] + s * along[k]) as Triple)) marched = s;
      const found = firstMeeting(shape, eye, along);
      // a line that grazes for less than a step is not marched into
      if (marched === Infinity) expect(found === Infinity || grazes(shape, eye, along, found, STEP), `${i}`).toBe(true);
      else {
        met++;
        expect(Math.abs(found - marched), `${i}`).toBeLessThan(2 * STEP);
      }
    }
    expect(met).toBeGreaterThan(40);
  });
});

const grazes = (shape: DrawShape, eye: Triple, along: Triple, s: number, step: number): boolean =>
  !isInside(shape, [0, 1, 2].map((k) => eye[k] + (s + step) * along[k]) as Triple);

/** A capsule as many balls along its axis. */
function isInside(shape: DrawShape, p: Triple): boolean {
  if (shape.kind === 'ellipsoid')
    return [0, 1, 2].reduce((sum, k) => sum + ((p[k] - shape.centre_B[k]) / shape.radii[k]) ** 2, 0) < 1;
  for (let g = 0; g <= 1.0001; g += 0.02) {
    const d = [0, 1, 2].map((k) => p[k] - shape.a_B[k] - g * (shape.b_B[k] - shape.a_B[k])) as Triple;
    if (norm(d) < shape.radiusA + g * (shape.radiusB - shape.radiusA)) return true;
  }
  return false;
}

describe('in words and as CSV', () => {
  it('the sentence says rate, distance, what moves farthest, and its blur', () => {
    expect(plainRuns(wordFilming(planOf(filmed)))).toMatch(
      /^At 120 frames a second from 8\.5 m, the (left|right) hand moves 13 cm and 33 pixels a frame, blurred by 4\.0\.$/,
    );
    const slow = wordFilmingFaults(planOf(filmed, { framesHz: 30, lines: 0.02 }));
    expect(slow.join(' ')).toMatch(/30 frames a second: the .* hand moves \d\d cm between two\./);
  });

  it('a row for each picture: the joint where the plan has it hidden is hidden there', () => {
    const camera: FilmCamera = { ...USUAL_CAMERA, framesHz: 60 };
    const rows = [...formatCameraCsv(full, camera, filmed.stand)].map((line) => line.trim().split(','));
    expect(rows.length).toBe(1 + Math.floor(full.duration * 60) + 1);
    const plan = planOf(filmed, camera);
    const column = rows[0].indexOf('shoulderR_hidden');
    const { spans } = plan.hidden.find(({ joint, side }) => joint === 'shoulder' && side === 'R') ?? { spans: [] };
    let compared = 0;
    for (const row of rows.slice(1)) {
      const t = Number(row[1]);
      if (spans.some(({ from, to }) => Math.abs(t - from) < 0.005 || Math.abs(t - to) < 0.005)) continue;
      compared++;
      expect(row[column]).toBe(spans.some(({ from, to }) => t > from && t < to) ? '1' : '0');
    }
    expect(compared).toBeGreaterThan(40);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([rows[0].length]));
  });
});
