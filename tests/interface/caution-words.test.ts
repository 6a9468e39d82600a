// Page, command line and JSON say a caution in the same words; at an age without a source they say that nothing is compared.
import { describe, expect, it } from 'vitest';
import {
  buildSkill,
  calcFrames,
  calcJointPeaks,
  flySkill,
  formatSummary,
  frameTimes,
  LIMIT_WORDS,
  launch,
  parseSkill,
  summarize,
} from '../../sim/index.ts';
import { TORQUE_WARNED, warnedSpeed } from '../../sim/measure/known-strength.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { someOf } from '../corpus.ts';
import { fileOf, preset, presetIds, shelf } from '../skill/load.ts';

const engine = makeEngine(shelf);
const summaryOf = (id: string) => {
  const flight = flySkill(preset(id));
  return summarize(flight, calcFrames(flight, frameTimes(flight.duration, 240)));
};
/** those whose take-off needs no computation beside the page */
const plain = presetIds.filter((id) => {
  const [first] = fileOf(id).phases;
  return first.kind === 'flight' || (first.kind === 'contact' && first.given === undefined);
});

describe('cautions', () => {
  it.each(someOf(plain, 3, 2))('%s: what the page shows the command line prints', (id) => {
    const { cautions, notCompared } = engine.fly(fileOf(id));
    const summary = summaryOf(id);
    const text = formatSummary('', '', summary);
    const joints = cautions.filter((c) => c.kind === 'torque' || c.kind === 'speed' || c.kind === 'range');
    for (const { title, detail } of joints) {
      expect(text).toContain(title);
      expect(text).toContain(detail);
    }
    expect(text.includes('Cautions')).toBe(joints.length > 0);
    // one sided words of the same action in the JSON
    expect(summary.said.length).toBe(summary.cautions.length);
    if (notCompared) expect(text).toContain(`${notCompared.title} ${notCompared.detail}`);
    expect(notCompared !== undefined).toBe((preset(id).body.age ?? 18) < 18);
  });

  it('begin at the limit that shares of a search are of, as its words say', () => {
    expect(LIMIT_WORDS).toContain(`${warnedSpeed(1)} times the known speed, ${TORQUE_WARNED} times the known strength`);
    for (const id of ['double-back-tuck', 'back-straight-triple', 'back-pike'].filter((one) =>
      presetIds.includes(one),
    )) {
      const flight = flySkill(preset(id));
      const { speed, torque, cautions } = calcJointPeaks(flight, true);
      for (const [kind, peak] of [
        ['speed', speed],
        ['torque', torque],
      ] as const)
        expect(cautions.some((c) => c.kind === kind)).toBe((peak?.share ?? 0) > 1);
    }
  });

  it('are not said of an age without a source, and no share of a limit is', () => {
    const file = fileOf('double-back-tuck');
    const adult = 'ref' in file.athlete ? shelf.athletes[file.athlete.ref] : file.athlete;
    if (adult.kind !== 'human') throw new Error('no human');
    const { segments: _, ...own } = adult;
    const young = launch(buildSkill(parseSkill({ ...file, athlete: { ...own, ageYears: 14 } }, shelf)));
    const peaks = calcJointPeaks(flySkill(young), true);
    expect([peaks.speed, peaks.torque]).toEqual([undefined, undefined]);
  });

  it('are short sentences: what is asked for, whose strength that is, and of a tuck what the hands carry', () => {
    const [caution] = engine.fly(fileOf('former/double-back-tuck')).cautions;
    expect(caution).toMatchObject({
      title: 'Knee bend asks for 1.8 times the strength known for this joint.',
      detail:
        "Compared with adult men, measured, scaled by mass and stature. The angle lies beyond those measured: two fifths of the best is taken there, our judgement. In a tuck the hands on the shins carry part of this; the model's hands carry nothing.",
    });
  });
});
