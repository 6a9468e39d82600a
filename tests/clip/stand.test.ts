// The camera of a filming plan, from which any flight goes to the right, is found again in W whichever way A travels.
import { describe, expect, it } from 'vitest';
import { seeInto } from '../../sim/clip/sight-look.ts';
import { projectInto, standCamera, USUAL_CAMERA } from '../../sim/filming/camera.ts';
import { type ClipSight, calcClipPlace, calcClipSight, flySkill, type Spot } from '../../sim/index.ts';
import { preset } from '../skill/load.ts';

const picture = { width: USUAL_CAMERA.width, height: USUAL_CAMERA.height };

describe.each(['back-tuck', 'front-tuck'])('%s', (id) => {
  const skill = preset(id);
  const flight = flySkill(skill);
  const place = calcClipPlace({ skill, flight });
  const { way, floorY, p_WFeet_W } = place;
  const massCentre = (t: number): Float64Array => {
    const p = new Float64Array(3);
    flight.massCentreInto(t, p, new Float64Array(3));
    return p;
  };
  /** px to the right that the mass centre goes */
  const goes = (sight: ClipSight): number => {
    const [a, b] = [new Float64Array(2), new Float64Array(2)];
    seeInto(sight, massCentre(0), 0, a, 0);
    seeInto(sight, massCentre(flight.duration), 0, b, 0);
    return b[0] - a[0];
  };

  it('a camera of the plan is found again from a mat that lies along the flight', () => {
    const camera = { ...USUAL_CAMERA, offSquare: 0.2 };
    const sightline = standCamera(camera, { middle: [p_WFeet_W[0] + 0.4 * way, 1.3, 0], floorY, way });
    const seen = (along: number, deep: number): Spot => {
      const at = new Float64Array(2);
      projectInto(sightline, [p_WFeet_W[0] + way * along, floorY, way * deep], 0, at, 0);
      return [at[0], at[1]];
    };
    const at = new Float64Array(2);
    projectInto(sightline, p_WFeet_W, 0, at, 0);
    const sight = calcClipSight({
      picture,
      scale: {
        kind: 'plane',
        corners: [seen(-1, 1), seen(2, 1), seen(2, -1), seen(-1, -1)],
        widthM: 3,
        depthM: 2,
      },
      stand: { feet: [at[0], at[1]], goesRight: true },
      ...place,
    });
    if (sight.sight.kind === 'parallel') throw new Error('in parallel');
    sight.sight.sightline.p_WC_W.forEach((v, k) => {
      expect(v).toBeCloseTo(sightline.p_WC_W[k], 6);
    });
    expect(goes(sight)).toBeGreaterThan(0);
    expect(sight.offSquare.value).toBeGreaterThan(0);
  });

  it('in parallel it goes to the side that was said', () => {
    const sightOf = (goesRight: boolean): ClipSight =>
      calcClipSight({
        picture,
        scale: { kind: 'length', from: [900, 800], to: [900, 400], lengthM: 1.6 },
        stand: { feet: [900, 800], goesRight },
        ...place,
      });
    expect(goes(sightOf(true))).toBeGreaterThan(5);
    expect(goes(sightOf(false))).toBeCloseTo(-goes(sightOf(true)), 9);
  });
});

it('the two travel opposite ways', () => {
  const ways = ['back-tuck', 'front-tuck'].map((id) => {
    const skill = preset(id);
    return calcClipPlace({ skill, flight: flySkill(skill) }).way;
  });
  expect(new Set(ways)).toEqual(new Set([1, -1]));
});
