// Frames for a picture under a dragging hand differ from the full ones in the joints' work alone, and little.
import { expect, test } from 'vitest';
import { calcFrames, flySkill, frameTimes } from '../../sim/index.ts';
import { someOf } from '../corpus.ts';
import { preset, presetIds } from '../skill/load.ts';

/** Share of the greatest energy of the flight; measured at most 9.7e-5 (dive-forward-one-and-half-pike). */
const WORK = 2e-4;

for (const id of someOf(presetIds, 3)) {
  test(`${id}: rough frames keep the joints' work to ${WORK} of the energy and all else bit for bit`, () => {
    const flight = flySkill(preset(id));
    const times = frameTimes(flight.duration, 60);
    const { jointWork, ...full } = calcFrames(flight, times);
    const { jointWork: roughWork, ...rough } = calcFrames(flight, times, { isRough: true });
    expect(rough).toEqual(full);
    const scale = Math.max(...full.eTotal.map(Math.abs));
    const apart = Math.max(...jointWork.map((w, i) => Math.abs(w - roughWork[i])));
    expect(apart).toBeGreaterThan(0);
    expect(apart / scale).toBeLessThan(WORK);
  });
}
