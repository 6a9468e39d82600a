// The jobs of a recording: what they are asked, what they report, what they give.
import { describe, expect, it } from 'vitest';
import { athletes } from '../../presets/index.ts';
import type { HumanAthlete } from '../../sim/index.ts';
import { firstOptions } from '../../src/features/film/recording-options.ts';
import { recordedSkillJob } from '../../src/jobs/kinds/recorded-skill-job.ts';
import type { RecordingRequest, RecordingResult } from '../../src/jobs/kinds/recording-data.ts';
import { recordingFileJob } from '../../src/jobs/kinds/recording-file-job.ts';
import { recordingJob } from '../../src/jobs/kinds/recording-job.ts';
import { writeOwnBvh } from './own-recording.ts';

type Job = { open(subject: never): unknown };

/** All steps of a job in this thread. */
async function run<T>(job: Job, subject: unknown): Promise<{ value: T; reports: { done: number }[] }> {
  const open = (await (job as { open(s: unknown): unknown }).open(subject)) as (
    piece: undefined,
    report: () => void,
  ) => Generator<{ done: number }, T, boolean>;
  const steps = open(undefined, () => {});
  const reports: { done: number }[] = [];
  for (;;) {
    const step = steps.next(false);
    if (step.done) return { value: step.value, reports };
    reports.push(step.value);
  }
}

const bytes = new TextEncoder().encode(writeOwnBvh('back-straight-full', 100));
const request: RecordingRequest = {
  name: 'heron.bvh',
  bytes,
  athlete: athletes['ilse-marrow'] as HumanAthlete,
  options: firstOptions,
};
const studied = await run<RecordingResult>(recordingJob, request);

describe('a recording of our own flight', () => {
  it('is good enough for a test, and the model comes back to it', () => {
    const { study } = studied.value;
    expect(study.quality?.refusals).toEqual([]);
    expect(Math.abs(study.test?.atEnd[0] ?? 1)).toBeLessThan(0.01 * 2 * Math.PI);
    expect(Math.abs(study.test?.atEnd[2] ?? 1)).toBeLessThan(0.01 * 2 * Math.PI);
  });
  it('has poses for its pictures, which lie on its parabola', () => {
    const { study, measured, computed } = studied.value;
    expect(measured?.t.at(-1)).toBe(study.t.at(-1));
    expect(computed?.R_WS.length).toBe(measured?.R_WS.length);
    const [x, y] = [0, 1].map((k) => (measured?.p_WScm_W[k] ?? 9) - study.parabola[k]);
    expect(Math.hypot(x, y)).toBeLessThan(0.02);
  });
  it('reports how far it is, ever further', () => {
    const { reports } = studied;
    expect(reports.length).toBeGreaterThan(3);
    for (let i = 1; i < reports.length; i++) expect(reports[i].done).toBeGreaterThanOrEqual(reports[i - 1].done);
    expect(reports.at(-1)?.done).toBeLessThanOrEqual(1);
  });
  it('what is damaged says the line', async () => {
    const text = new TextDecoder().decode(bytes).replace(/(MOTION\nFrames: \d+\nFrame Time: \S+\n)\S+/, '$1here');
    await expect(run(recordingJob, { ...request, bytes: new TextEncoder().encode(text) })).rejects.toThrow(/line \d+/);
  });
  it('becomes a skill that says which file it is from', async () => {
    const { value } = await run<import('../../sim/index.ts').SkillFile>(recordedSkillJob, {
      ...request,
      title: 'heron',
    });
    expect(value.recordings?.[0]).toMatchObject({ kind: 'capture', file: 'heron.bvh', rateHz: 100 });
    expect(value.title).toBe('heron');
  });
  it('is written in each form, and the table says where it is from', async () => {
    const { study } = studied.value;
    for (const form of ['bvh', 'trc', 'csv'] as const) {
      const { value } = await run<string>(recordingFileJob, { form, study, bytes });
      expect(value.split('\n').length).toBeGreaterThan(study.t.length);
      if (form === 'csv') expect(value).toMatch(/^# program.*\n# call.*page: recording/);
    }
  });
});
