// Page, command line and JSON say a caution in the same words; at an age without a source they say that nothing is compared.
import { describe, expect, it } from 'vitest';
import { calcFrames, flySkill, formatSummary, frameTimes, summarize } from '../../sim/index.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { fileOf, preset, presetIds, shelf } from '../skill/load.ts';

const engine = makeEngine(shelf);
const summaryOf = (id: string) => {
  const flight = flySkill(preset(id));
  return summarize(flight, calcFrames(flight, frameTimes(flight.duration, 240)));
};
const plain = presetIds.filter((id) => !id.startsWith('giant') && !id.startsWith('vault'));

describe('cautions', () => {
  it.each(plain)('%s: what the page shows the command line prints', (id) => {
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

  it('are two short sentences: what is asked for, and whose strength that is', () => {
    const [caution] = engine.fly(fileOf('double-back-tuck')).cautions;
    expect(caution).toMatchObject({
      title: 'Knee bend asks for 1.9 times the strength known for this joint.',
      detail: 'Compared with one elite man, measured, scaled by mass.',
    });
  });
});
