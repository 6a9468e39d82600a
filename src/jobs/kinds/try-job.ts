/** Something to try with a skill: some tens of flights. It can be stopped between two changes. */
import { contactFor, type SkillSpec, type TryChange, tryChangeSteps } from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';

export const tryJob: JobKind<{ readonly spec: SkillSpec }, undefined, undefined, TryChange | undefined> = {
  open: ({ spec }) =>
    async function* () {
      const steps = tryChangeSteps(spec, await loadForJob(() => contactFor(spec)));
      let step = steps.next(false);
      while (!step.done) step = steps.next(yield undefined);
      return step.value;
    },
};
