/** What would fix the landing: a second or two of flights. It can be stopped between two changes, and ends with what it has. */
import { contactFor, type FixAnswer, type FixProgress, fixLandingSteps, type SkillSpec } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

export const fixJob: JobKind<{ readonly spec: SkillSpec }, undefined, FixProgress, FixAnswer> = {
  latestEveryMs: 30,
  open: ({ spec }) =>
    async function* () {
      const steps = fixLandingSteps(spec, await loadForJob(() => contactFor(spec)));
      let step = steps.next(false);
      while (!step.done) step = steps.next(yield step.value);
      return step.value;
    },
};
